/** What is seen of a drawing, as shares of its ground; null: all of it. */
export interface Seen { readonly x: number; readonly y: number; readonly width: number; readonly height: number }

const MOST = 40;
const STEP = 1.25;
/** A press that moves less than this, in CSS pixels, is a click. */
const SLIP = 4;

interface ZoomOptions {
    /** The element that holds the drawing; it stays, while the drawing in it may be another one after a patch. */
    readonly holder: () => HTMLElement | null;
    readonly root: HTMLElement;
    readonly seen: Seen | null;
    /** After every change, with the magnification. */
    readonly changed: (seen: Seen | null, times: number) => void;
}

/** Zooms and pans a drawing by its viewBox: with the wheel about the pointer, by dragging, with two fingers, by steps. */
export class Zoom {
    private seen: Seen | null;
    private readonly pointers = new Map<number, { x: number; y: number }>();
    private from: { x: number; y: number } | undefined;
    private dragging = false;

    constructor(private readonly options: ZoomOptions) {
        this.seen = isSeen(options.seen) ? options.seen : null;
        const { root } = options;
        root.addEventListener('wheel', event => this.wheel(event), { passive: false });
        root.addEventListener('pointerdown', event => this.down(event));
        root.addEventListener('pointermove', event => this.move(event));
        for (const end of ['pointerup', 'pointercancel'] as const) root.addEventListener(end, event => this.up(event));
        // what ends a drag is no click on what lies under it
        root.addEventListener('click', event => {
            if (!this.dragging) return;
            this.dragging = false;
            event.preventDefault();
            event.stopPropagation();
        }, { capture: true });
    }

    /** Puts the zoom on the drawing that is there now. */
    apply(): void {
        const svg = this.svg();
        const ground = svg && this.ground(svg);
        if (!svg || !ground) return;
        const { x, y, width, height } = this.seen ?? { x: 0, y: 0, width: 1, height: 1 };
        svg.setAttribute('viewBox', [x * ground.width, y * ground.height, width * ground.width, height * ground.height].map(n => Math.round(n * 100) / 100).join(' '));
    }

    in(): void { this.by(STEP); }
    out(): void { this.by(1 / STEP); }
    fit(): void { this.see(null); }

    /** Moves what is seen by shares of it. */
    pan(right: number, down: number): void {
        const { x, y, width, height } = this.now();
        this.see({ x: x + right * width, y: y + down * height, width, height });
    }

    /** Brings an element of the drawing into sight, where it is not. */
    show(element: Element): void {
        const holder = this.options.holder()?.getBoundingClientRect(), box = element.getBoundingClientRect();
        if (!holder || !this.seen) return;
        const over = (low: number, high: number, from: number, to: number): number => (low < from ? low - from - 20 : high > to ? high - to + 20 : 0);
        const right = over(box.left, box.right, holder.left, holder.right), down = over(box.top, box.bottom, holder.top, holder.bottom);
        if (right !== 0 || down !== 0) this.pan(right / holder.width, down / holder.height);
    }

    private svg(): SVGSVGElement | null {
        return this.options.holder()?.querySelector('svg') ?? null;
    }

    private ground(svg: SVGSVGElement): { width: number; height: number } | undefined {
        const [width, height] = (svg.dataset['ground'] ?? '').split(' ').map(Number);
        return width && height ? { width, height } : undefined;
    }

    private now(): Seen {
        return this.seen ?? { x: 0, y: 0, width: 1, height: 1 };
    }

    private by(times: number, at?: { x: number; y: number }): void {
        const { x, y, width, height } = this.now();
        const factor = Math.min(Math.max(times, width), MOST * width);
        const [ax, ay] = at ? [at.x, at.y] : [x + width / 2, y + height / 2];
        this.see({ x: ax - (ax - x) / factor, y: ay - (ay - y) / factor, width: width / factor, height: height / factor });
    }

    private see(seen: Seen | null): void {
        if (seen && seen.width >= 0.999) seen = null;
        if (seen) {
            const { width, height } = seen;
            // some of the drawing stays in sight
            const within = (from: number, size: number): number => Math.min(1 - size * 0.2, Math.max(-size * 0.8, from));
            seen = { x: within(seen.x, width), y: within(seen.y, height), width, height };
        }
        this.seen = seen;
        this.apply();
        this.options.changed(seen, 1 / this.now().width);
    }

    /** A point of the screen, as shares of the ground. */
    private point(event: { clientX: number; clientY: number }): { x: number; y: number } | undefined {
        const svg = this.svg(), matrix = svg?.getScreenCTM(), ground = svg && this.ground(svg);
        if (!matrix || !ground) return undefined;
        const { x, y } = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix.inverse());
        return { x: x / ground.width, y: y / ground.height };
    }

    private isIn(event: Event): boolean {
        return this.options.holder()?.contains(event.target as Node) ?? false;
    }

    private wheel(event: WheelEvent): void {
        if (!this.isIn(event)) return;
        event.preventDefault();
        if (event.shiftKey) return this.pan(Math.sign(event.deltaY || event.deltaX) * 0.1, 0);
        const lines = event.deltaMode === WheelEvent.DOM_DELTA_LINE ? 16 : 1;
        this.by(Math.exp(-event.deltaY * lines * (event.ctrlKey ? 0.01 : 0.0018)), this.point(event));
    }

    private down(event: PointerEvent): void {
        if (!this.isIn(event) || event.button !== 0) return;
        this.dragging = false;
        this.pointers.set(event.pointerId, { x: event.clientX, y: event.clientY });
        this.from = { x: event.clientX, y: event.clientY };
    }

    private move(event: PointerEvent): void {
        const before = this.pointers.get(event.pointerId), holder = this.options.holder();
        if (!before || !holder || !this.from) return;
        const now = { x: event.clientX, y: event.clientY };
        if (!this.dragging) {
            if (Math.hypot(now.x - this.from.x, now.y - this.from.y) < SLIP) return;
            // not sooner: a pointer that is held gives its click to the holder
            this.dragging = true;
            holder.setPointerCapture(event.pointerId);
            holder.classList.add('moving');
        }
        const other = [...this.pointers].find(([id]) => id !== event.pointerId)?.[1];
        const matrix = this.svg()?.getScreenCTM(), ground = this.svg() && this.ground(this.svg()!);
        this.pointers.set(event.pointerId, now);
        if (!matrix || !ground) return;
        if (other) {
            const apart = (a: { x: number; y: number }): number => Math.max(10, Math.hypot(a.x - other.x, a.y - other.y));
            return this.by(apart(now) / apart(before), this.point({ clientX: (now.x + other.x) / 2, clientY: (now.y + other.y) / 2 }));
        }
        const { x, y, width, height } = this.now();
        this.see({ x: x - (now.x - before.x) / matrix.a / ground.width, y: y - (now.y - before.y) / matrix.d / ground.height, width, height });
    }

    private up(event: PointerEvent): void {
        if (!this.pointers.delete(event.pointerId)) return;
        this.options.holder()?.classList.remove('moving');
        // the click that belongs to a drag comes at once, or never
        if (this.pointers.size === 0) setTimeout(() => { this.dragging = false; });
    }
}

function isSeen(seen: Seen | null | undefined): seen is Seen {
    return seen !== null && seen !== undefined && [seen.x, seen.y, seen.width, seen.height].every(Number.isFinite) && seen.width > 0 && seen.height > 0;
}
