import type { PageContent } from '../pages/page.ts';
import type { Pane } from './start.ts';
import { Walk } from './walk.ts';
import { Zoom, type Seen } from './zoom.ts';

/** What is kept of a drawing's zoom in a pane's state. */
export interface SeenState { readonly seen?: Seen | null }

/**
 * A drawing that is zoomed, panned and walked through, for any pane with an element `[data-zoom]` that holds an `svg` whose
 * `data-ground` says its size, and parts of class `part`. Its buttons: `data-act` zoom-in, zoom-out, fit. `#zoom` shows the
 * magnification, `#readout` the name of the part that is pointed at.
 */
export class Drawing<Content extends PageContent, State extends SeenState> {
    private readonly zoom: Zoom;
    private readonly walk: Walk;

    constructor(private readonly pane: Pane<Content, State>) {
        const { root } = pane;
        const holder = (): HTMLElement | null => root.querySelector<HTMLElement>('[data-zoom]');
        this.zoom = new Zoom({ root, holder, seen: pane.state.seen ?? null, changed: (seen, times) => {
            pane.remember({ ...pane.state, seen });
            this.say(times);
        } });
        this.walk = new Walk(root, '[data-zoom] .part', part => {
            this.zoom.show(part);
            this.read(part);
        });
        root.addEventListener('keydown', event => this.pressed(event));
        root.addEventListener('pointerover', event => this.read((event.target as Element).closest('[data-zoom] .part')));
    }

    /** After every patch. */
    shown(): void {
        this.zoom.apply();
        this.walk.apply();
    }

    act(name: string): void {
        if (name === 'zoom-in') this.zoom.in();
        else if (name === 'zoom-out') this.zoom.out();
        else this.zoom.fit();
    }

    private say(times: number): void {
        const words = `${Math.round(times * 100)} %`;
        const sign = this.pane.root.querySelector('#zoom');
        if (sign) sign.textContent = words;
        this.pane.announce(words);
    }

    private read(part: Element | null): void {
        const readout = this.pane.root.querySelector('#readout');
        if (readout) readout.textContent = part?.getAttribute('aria-label') ?? '';
    }

    private pressed(event: KeyboardEvent): void {
        if (!(event.target as Element).closest('[data-zoom]') || event.ctrlKey || event.metaKey) return;
        const direction = PANS[event.key];
        if (direction && (event.shiftKey || event.altKey)) this.zoom.pan(...direction);
        else if (event.key === '+' || event.key === '=') this.zoom.in();
        else if (event.key === '-') this.zoom.out();
        else if (event.key === '0') this.zoom.fit();
        else return;
        event.preventDefault();
    }
}

const PANS: Readonly<Record<string, readonly [number, number]>> = { ArrowRight: [0.15, 0], ArrowLeft: [-0.15, 0], ArrowDown: [0, 0.15], ArrowUp: [0, -0.15] };
