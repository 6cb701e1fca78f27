/**
 * Walking through the parts of a drawing with the arrow keys, and one by one in their order with Page Down and Page Up, since arrows pass what lies
 * under something else: the drawing is one stop of the Tab key, and the stop is the part that was last walked to or clicked.
 */
export class Walk {
    private key: string | undefined;

    /** `parts`: those that can be walked to, in a sensible order; `shown`: called with the part that got the focus. */
    constructor(private readonly root: HTMLElement, private readonly selector: string, shown: (part: SVGElement) => void) {
        root.addEventListener('keydown', event => this.pressed(event));
        root.addEventListener('focusin', event => {
            const part = (event.target as Element).closest<SVGElement>(selector);
            if (!part) return;
            this.stopAt(part);
            shown(part);
        });
    }

    /** After a patch: the stop is where it was; at first at the first coffer, for walls lie beneath all else, or at the first part there is. */
    apply(): void {
        const all = this.all();
        const at = all.find(part => part.dataset['key'] === this.key) ?? all.find(part => part.dataset['key']?.startsWith('coffer.')) ?? all[0];
        if (at) this.stopAt(at, all);
    }

    private all(): SVGElement[] {
        return [...this.root.querySelectorAll<SVGElement>(this.selector)];
    }

    private stopAt(part: SVGElement, all = this.all()): void {
        this.key = part.dataset['key'];
        for (const each of all) {
            const stop = each === part ? '0' : '-1';
            // a plan has hundreds of parts, and nearly all are as they should be
            if (each.getAttribute('tabindex') !== stop) each.setAttribute('tabindex', stop);
        }
    }

    private pressed(event: KeyboardEvent): void {
        const part = (event.target as Element).closest<SVGElement>(this.selector);
        if (!part || event.altKey || event.ctrlKey || event.metaKey || event.shiftKey) return;
        const next = this.next(part, event.key);
        if (!next) return;
        event.preventDefault();
        next.focus({ preventScroll: true });
    }

    private next(part: SVGElement, key: string): SVGElement | undefined {
        const direction = DIRECTIONS[key];
        if (!direction && !ORDERED.includes(key)) return undefined;
        const seen = this.all().filter(each => each.getBoundingClientRect().width > 0 || each.getBoundingClientRect().height > 0);
        if (!direction) {
            const at = seen.indexOf(part);
            return key === 'Home' ? seen[0] : key === 'End' ? seen.at(-1) : seen[(at + (key === 'PageDown' ? 1 : -1) + seen.length) % seen.length];
        }
        const from = centerOf(part), [right, down] = direction;
        let best: SVGElement | undefined, least = Infinity;
        for (const each of seen) {
            const { x, y } = centerOf(each);
            const along = (x - from.x) * right + (y - from.y) * down, aside = Math.abs((x - from.x) * down) + Math.abs((y - from.y) * right);
            if (along < 1 || aside > along * 2 + 40) continue;
            const far = along + 2 * aside;
            if (far < least) [best, least] = [each, far];
        }
        return best;
    }
}

/** Keys that go by the order of the parts. */
const ORDERED = ['Home', 'End', 'PageDown', 'PageUp'];
const DIRECTIONS: Readonly<Record<string, readonly [number, number]>> = { ArrowRight: [1, 0], ArrowLeft: [-1, 0], ArrowDown: [0, 1], ArrowUp: [0, -1] };

function centerOf(part: Element): { x: number; y: number } {
    const { left, right, top, bottom } = part.getBoundingClientRect();
    return { x: (left + right) / 2, y: (top + bottom) / 2 };
}
