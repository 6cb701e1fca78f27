import type { ViewContent } from '../../pages/view/content.ts';
import { WHAT_CHANGED } from '../../pages/view/changed-key.ts';
import { renderView } from '../../pages/view/render.ts';
import { changedWords, pieceIn, pieceWords, walkedPieces, wasCommit } from '../../pages/view/render-changed.ts';
import { VIEW_STATE, type Look, type ViewState } from '../../pages/view/state.ts';
import { VIEW_STYLE } from '../../pages/view/style.ts';
import { startPane, type Pane } from '../start.ts';
import { keyOf } from './keys.ts';
import { Viewer } from './viewer.ts';
import { Watching } from './watching.ts';

type ViewPane = Pane<ViewContent, ViewState>;

let viewer: Viewer | undefined;
/** The canvas the viewer draws on: when the page is made anew, so is the viewer. */
let canvas: HTMLCanvasElement | undefined;
let watching: Watching | undefined;
let pointedAt: ReadonlySet<string> = new Set();

startPane<ViewContent, ViewState>({
    kind: 'view', state: VIEW_STATE, render: renderView, style: VIEW_STYLE, formats: ['html', 'svg', 'gltf', 'ifc'],
    begin(pane) {
        watching = new Watching(pane, () => viewer);
        listen(pane);
    },
    shown(pane) {
        ready(pane);
        viewer?.show(pane.content, pane.state);
        watching?.shown();
        mark(pane);
    },
    reveal(pane, key) {
        if (key.endsWith(`.${WHAT_CHANGED}`)) return showChanged(pane, true);
        const step = /^step\.(\d+)$/.exec(key)?.[1];
        if (step !== undefined) watching?.open(Number(step));
    },
    lit(pane, also) {
        pointedAt = also;
        mark(pane);
    },
    acts: {
        look: element => viewer?.lookFrom(element.getAttribute('data-look') as Look),
        nearer: () => viewer?.zoom(1 / 1.25),
        farther: () => viewer?.zoom(1.25),
        fit: () => viewer?.fit(),
        'play-open': () => watching?.open(),
        play: () => watching?.play(1),
        'play-back': () => watching?.play(-1),
        on: () => watching?.move(1),
        back: () => watching?.move(-1),
        first: () => watching?.go(0),
        last: () => watching?.go(Infinity),
        list: (_, pane) => pane.set({ ...pane.state, list: !pane.state.list }),
        changed: (_, pane) => showChanged(pane, !pane.state.changed),
        pick: (element, pane) => pick(pane, element.getAttribute('data-key'), true),
        finding(element, pane) {
            const at = pane.content?.sources[Number(element.getAttribute('data-at'))];
            if (at) pane.send({ type: 'select', at });
        },
    },
});

/** The viewer for the canvas that is on the page; where the machine has no WebGL the list of pieces stands in for it. */
function ready(pane: ViewPane): void {
    const there = pane.root.querySelector<HTMLCanvasElement>('#canvas') ?? undefined;
    if (there === canvas) return;
    canvas = there;
    viewer = undefined;
    if (!there) return;
    try {
        viewer = new Viewer(there);
    } catch {
        document.documentElement.classList.add('no-gl');
        if (!pane.state.list) queueMicrotask(() => pane.set({ ...pane.state, list: true }));
    }
    there.addEventListener('keydown', event => { if (key(event, pane)) event.preventDefault(); });
}

function mark(pane: ViewPane): void {
    const { content, state, shown } = pane;
    if (!content || !viewer) return;
    const wrong = content.findings.filter(({ severity }) => severity === 'error').flatMap(({ keys }) => keys);
    const lit = [...shown.lit, ...pointedAt, ...watching?.lit ?? [], ...(state.piece === null ? [] : [state.piece])];
    viewer.mark({ lit: new Set(lit), wrong: new Set([...content.wrong, ...wrong]) });
}

function pick(pane: ViewPane, key: string | null, toText: boolean): void {
    const { content, state } = pane, piece = content && pieceIn(content, state, key);
    pane.set({ ...state, piece: piece?.key ?? null });
    if (!content || !piece) return;
    pane.announce(pieceWords(content, state, piece));
    const at = content.sources[piece.at], was = wasCommit(content, state, piece);
    if (toText && at) pane.send({ type: 'select', at, ...was !== undefined && { was } });
}

function showChanged(pane: ViewPane, changed: boolean): void {
    pane.set({ ...pane.state, changed, ...changed && { play: false } });
    if (pane.content) pane.announce(changedWords(pane.content, pane.state));
}

function listen(pane: ViewPane): void {
    const { root } = pane;
    let down: { readonly x: number; readonly y: number } | undefined;
    root.addEventListener('pointerdown', event => { down = event.target === canvas ? { x: event.clientX, y: event.clientY } : undefined; });
    // a click, not the end of a turn
    root.addEventListener('pointerup', event => {
        if (event.target !== canvas || !down || Math.hypot(event.clientX - down.x, event.clientY - down.y) > 4 || event.button !== 0) return;
        pick(pane, viewer?.pieceAt(event)?.key ?? null, true);
    });
    root.addEventListener('pointermove', event => {
        if (event.target === canvas && event.buttons === 0) canvas.classList.toggle('over', viewer?.pieceAt(event) !== undefined);
    });
    // a slider says its state when it is let go; until then the picture alone follows
    root.addEventListener('input', event => {
        const slider = event.target as HTMLInputElement;
        const name = slider.type === 'range' ? slider.getAttribute('data-state') : null;
        if (name === 'apart' || name === 'cut') viewer?.preview({ [name]: slider.value });
    });
}

/** True where the key meant something. */
function key(event: KeyboardEvent, pane: ViewPane): boolean {
    const what = keyOf(event);
    if (!what || !viewer) return false;
    switch (what.do) {
        case 'turn': viewer.turn(what.aside, what.up); return true;
        case 'move': viewer.move(what.aside, what.up); return true;
        case 'zoom': viewer.zoom(what.by); return true;
        case 'fit': viewer.lookFrom('floor'); return true;
        case 'walk': walk(pane, what.by); return true;
        case 'words': if (pane.state.piece !== null) pick(pane, pane.state.piece, true); return true;
        case 'changed': if (!pane.content?.changes || pane.state.play) return false; showChanged(pane, !pane.state.changed); return true;
        case 'play': if (!pane.state.play) return false; watching?.play(1); return true;
        case 'nothing': pick(pane, null, false); return true;
    }
}

/** To the next piece that is shown, or the one before, round and round. */
function walk(pane: ViewPane, by: 1 | -1): void {
    const pieces = pane.content ? walkedPieces(pane.content, pane.state) : [];
    if (pieces.length === 0) return;
    const now = pieces.findIndex(({ key: each }) => each === pane.state.piece);
    const next = now < 0 ? (by > 0 ? 0 : pieces.length - 1) : (now + by + pieces.length) % pieces.length;
    pick(pane, pieces[next]!.key, false);
}
