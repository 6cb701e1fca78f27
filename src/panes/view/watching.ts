import type { ViewContent } from '../../pages/view/content.ts';
import { doingWords, doneWords, momentAt, stepsDone } from '../../pages/view/playing.ts';
import type { ViewState } from '../../pages/view/state.ts';
import { SIGNS } from '../../pages/shared/signs.ts';
import { t } from '../../pages/shared/words.ts';
import type { Pane } from '../start.ts';
import { Player } from './player.ts';
import type { Viewer } from './viewer.ts';

type ViewPane = Pane<ViewContent, ViewState>;

/** Watching how the ceiling is put up: its buttons, keys and slider, what it says, and what the viewer shows of it. */
export class Watching {
    private readonly player: Player;
    private order: ViewContent['order'] = null;
    private done = -1;

    constructor(private readonly pane: ViewPane, private readonly viewer: () => Viewer | undefined) {
        const calm = matchMedia('(prefers-reduced-motion: reduce)');
        this.player = new Player({
            at: at => this.show(at), stopped: () => this.pane.redraw(),
            step: done => {
                this.done = done;
                this.pane.set({ ...this.pane.state, step: done });
                if (this.order) this.pane.announce(doneWords(this.order, done));
            },
        }, () => calm.matches);
        pane.root.addEventListener('input', event => {
            const slider = event.target as HTMLInputElement;
            if (slider.id === 'scrub') this.go(Number(slider.value));
        });
        pane.root.addEventListener('keydown', event => { if ((event.target as Element).closest('#player') && this.key(event)) event.preventDefault(); });
    }

    /** After every change of what is on the screen. */
    shown(): void {
        const { content, state } = this.pane, order = state.play ? content?.order ?? null : null, done = order ? stepsDone(order, state.step) : -1;
        if (order !== this.order || done !== this.done) {
            this.order = order;
            this.done = done;
            this.player.put(order ?? undefined, Math.max(0, done));
            this.show(done);
        }
        // a slider that has the focus is left as it is by whoever draws the page
        const slider = this.pane.root.querySelector<HTMLInputElement>('#scrub');
        if (slider) slider.value = String(Math.max(0, this.done));
        const { direction } = this.player;
        for (const [id, own, name, sign] of [['act-play', 1, t('Play'), SIGNS.play], ['act-play-back', -1, t('Play backwards'), SIGNS.playBack]] as const) {
            const button = this.pane.root.querySelector(`#${id}`), words = direction === own ? t('Stop') : name;
            button?.querySelector('path')?.setAttribute('d', direction === own ? SIGNS.stop : sign);
            for (const attribute of ['title', 'aria-label']) button?.setAttribute(attribute, words);
        }
    }

    /** Pieces of the step that was done last, while nothing moves. */
    get lit(): readonly string[] {
        return this.order && this.player.direction === 0 && this.done > 0 ? this.order.steps[this.done - 1]!.pieces.map(({ key }) => key) : [];
    }

    open(step?: number): void {
        const { state } = this.pane, play = step !== undefined || !state.play;
        this.pane.set({ ...state, play, ...step !== undefined && { step } });
        if (play && this.order) this.pane.announce(doneWords(this.order, this.done));
    }

    play(direction: 1 | -1): void {
        if (!this.order) return;
        if (this.player.direction !== 0) {
            const was = this.player.direction;
            this.player.stop();
            if (was === direction) return;
        }
        this.player.play(direction);
        this.pane.redraw();
    }

    move(by: number): void {
        if (this.order) this.go(this.done + by);
    }

    go(to: number): void {
        if (!this.order) return;
        this.player.stop();
        const step = Math.min(this.order.steps.length, Math.max(0, to));
        if (step === this.done) return;
        this.pane.set({ ...this.pane.state, step });
        this.pane.announce(doneWords(this.order, step));
    }

    private key(event: KeyboardEvent): boolean {
        if (event.altKey || event.ctrlKey || event.metaKey || event.shiftKey) return false;
        const onSlider = (event.target as Element).id === 'scrub';
        switch (event.key) {
            // a button does what it is for
            case ' ': if (!onSlider) return false; this.play(1); return true;
            case 'ArrowRight': case 'ArrowUp': this.move(1); return true;
            case 'ArrowLeft': case 'ArrowDown': this.move(-1); return true;
            case 'Home': this.go(0); return true;
            case 'End': this.go(Infinity); return true;
            default: return false;
        }
    }

    private show(at: number): void {
        const { order } = this, words = this.pane.root.querySelector('#player-words');
        this.viewer()?.stand(order ? momentAt(order, at) : null);
        if (!order || !words) return;
        const said = Number.isInteger(at) ? doneWords(order, at) : doingWords(order, Math.floor(at) + 1);
        if (words.textContent !== said) words.textContent = said;
    }
}
