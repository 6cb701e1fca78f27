import { CHUNK, type Span } from '../../pages/cut-list/render.ts';

/** Lists up to this long stand in the page whole. */
const WHOLE = 4 * CHUNK;
const ROW_HEIGHT = 33;

/**
 * Which chunks of a long table stand in the page: those that are seen, and one more on either side. The others are gaps as
 * high as they were when they were last seen, so that the list scrolls as if it were all there.
 */
export class LongList {
    private count = 0;
    private span: Span = { from: 0, to: 1 };
    private readonly heights = new Map<number, number>();
    private root: Element | undefined;
    private waits = false;

    begin(root: Element, redraw: () => void): void {
        this.root = root;
        // scrolling does not bubble, but it can be caught on its way down
        root.addEventListener('scroll', event => {
            if ((event.target as Element).id !== 'list' || this.waits) return;
            this.waits = true;
            requestAnimationFrame(() => {
                this.waits = false;
                this.follow(redraw);
            });
        }, { capture: true, passive: true });
    }

    /** The chunks to put into the page for so many rows. */
    spanOf(count: number): Span {
        if (count !== this.count) {
            this.count = count;
            this.heights.clear();
        }
        if (count <= WHOLE) return { from: 0, to: Infinity };
        const last = this.last();
        return { from: Math.min(this.span.from, last), to: Math.min(this.span.to, last) };
    }

    /** After drawing: the gaps get their heights. */
    fit(): void {
        for (const chunk of this.root?.querySelectorAll<HTMLElement>('.chunk') ?? []) this.heights.set(Number(chunk.dataset['chunk']), chunk.offsetHeight);
        const [before, after] = ['gap-before', 'gap-after'].map(id => document.getElementById(id));
        const { from, to } = this.spanOf(this.count);
        if (before) before.style.height = `${this.sum(0, from - 1)}px`;
        if (after) after.style.height = `${this.sum(to + 1, this.last())}px`;
    }

    /** Brings a row into the page, and the list to where it is. */
    show(row: number, redraw: () => void): void {
        if (this.count <= WHOLE) return;
        const chunk = Math.floor(row / CHUNK);
        this.span = { from: Math.max(0, chunk - 1), to: chunk + 1 };
        redraw();
        const list = document.getElementById('list');
        if (list) list.scrollTop = this.sum(0, chunk - 1);
    }

    /** Once chunks are in the page they may be higher or lower than was reckoned, so that others are seen: then once more. */
    private follow(redraw: () => void, tries = 4): void {
        const list = document.getElementById('list');
        if (!list || this.count <= WHOLE) return;
        const seen = { from: this.chunkAt(list.scrollTop), to: this.chunkAt(list.scrollTop + list.clientHeight) };
        let from = Math.max(0, seen.from - 1), to = seen.to + 1;
        // a chunk in which somebody is ticking stays
        const focused = Number(document.activeElement?.closest<HTMLElement>('.chunk')?.dataset['chunk'] ?? NaN);
        if (Math.abs(focused - seen.from) <= 3) [from, to] = [Math.min(from, focused), Math.max(to, focused)];
        if (from === this.span.from && to === this.span.to) return;
        this.span = { from, to };
        redraw();
        if (tries > 1) this.follow(redraw, tries - 1);
    }

    private last(): number {
        return Math.ceil(this.count / CHUNK) - 1;
    }

    private chunkAt(offset: number): number {
        let sum = 0, chunk = 0;
        for (; chunk < this.last(); chunk++) {
            sum += this.height(chunk);
            if (sum > offset) break;
        }
        return chunk;
    }

    private sum(from: number, to: number): number {
        let sum = 0;
        for (let chunk = from; chunk <= to; chunk++) sum += this.height(chunk);
        return sum;
    }

    /** As measured, or as high as the measured rows are on average. */
    private height(chunk: number): number {
        const known = this.heights.get(chunk);
        if (known !== undefined) return known;
        const rows = Math.min(CHUNK, this.count - chunk * CHUNK);
        const measured = [...this.heights].reduce((sum, [, height]) => sum + height, 0);
        const measuredRows = [...this.heights.keys()].reduce((sum, key) => sum + Math.min(CHUNK, this.count - key * CHUNK), 0);
        return rows * (measuredRows > 0 ? measured / measuredRows : ROW_HEIGHT);
    }
}
