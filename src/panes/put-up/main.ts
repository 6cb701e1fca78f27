import type { PutUpContent } from '../../pages/put-up/content.ts';
import { nowWords, PUT_UP_STATE, renderPutUp, stepOf, stepsOn, type PutUpState } from '../../pages/put-up/render.ts';
import { PUT_UP_STYLE } from '../../pages/put-up/style.ts';
import { startPane, type Pane } from '../start.ts';

type PutUpPane = Pane<PutUpContent, PutUpState>;

startPane<PutUpContent, PutUpState>({
    kind: 'put-up', state: PUT_UP_STATE, render: renderPutUp, style: PUT_UP_STYLE, formats: ['html', 'csv'],
    begin(pane) {
        pane.root.addEventListener('keydown', event => { if (alongSteps(event, pane)) event.preventDefault(); });
        // a slider says its state when it is let go; until then the plan alone follows
        pane.root.addEventListener('input', event => {
            const slider = event.target as HTMLInputElement;
            if (slider.id === 'scrub') go(pane, Number(slider.value));
        });
    },
    shown(pane) {
        const { content } = pane;
        if (!content) return;
        const now = stepOf(content, pane.state), slider = pane.root.querySelector<HTMLInputElement>('#scrub');
        paint(pane.root, now);
        // one that has the focus is left as it is by whoever draws the page
        if (slider) slider.value = String(now);
    },
    reveal(pane, key) {
        const step = pane.content && stepsOn(pane.content).find(({ pieces }) => pieces.some(each => each.key === key));
        if (step) go(pane, step.number);
    },
    acts: {
        step: (element, pane) => go(pane, Number(element.getAttribute('data-number'))),
        first: (_, pane) => go(pane, 1),
        back: (_, pane) => move(pane, -1),
        on: (_, pane) => move(pane, 1),
        last: (_, pane) => go(pane, Infinity),
    },
});

/** What is up, what goes up now, and what is still to come. */
function paint(root: Element, now: number): void {
    for (const step of root.querySelectorAll('#plan [data-step]')) {
        const number = Number(step.getAttribute('data-step'));
        step.classList.toggle('up', number < now);
        step.classList.toggle('now', number === now);
        step.classList.toggle('later', number > now);
    }
}

function move(pane: PutUpPane, by: number): void {
    if (pane.content) go(pane, stepOf(pane.content, pane.state) + by);
}

function go(pane: PutUpPane, to: number): void {
    const { content, state } = pane;
    if (!content) return;
    const steps = stepsOn(content), step = Math.min(steps.length, Math.max(1, to));
    if (step === stepOf(content, state)) return;
    pane.set({ ...state, step });
    pane.root.querySelector(`#step-${step}`)?.scrollIntoView({ block: 'nearest' });
    pane.announce(nowWords(steps, step));
}

/** From step to step along their heads. True where the key meant something. */
function alongSteps(event: KeyboardEvent, pane: PutUpPane): boolean {
    const head = (event.target as Element).closest('.step .head');
    if (!head || !pane.content || event.altKey || event.ctrlKey || event.metaKey || event.shiftKey) return false;
    const now = stepOf(pane.content, pane.state);
    const to = { ArrowDown: now + 1, ArrowRight: now + 1, ArrowUp: now - 1, ArrowLeft: now - 1, Home: 1, End: Infinity }[event.key];
    if (to === undefined) return false;
    go(pane, to);
    pane.root.querySelector<HTMLElement>(`#step-${stepOf(pane.content, pane.state)}-head`)?.focus();
    return true;
}
