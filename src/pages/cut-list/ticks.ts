import type { Cut, ListedPiece } from './content.ts';

/** Whether a piece is cut, and whether it is still to be cut the same way. */
type Condition = 'to cut' | 'cut' | 'changed';

/** The key a cut piece is ticked off by: its name, and how it was cut. */
export function tickKey(piece: ListedPiece, cut: Cut): string {
    return `${piece.id}#${cut.print}`;
}

/** What is ticked off, by piece. */
export class Ticked {
    private readonly prints = new Map<string, string[]>();
    constructor(keys: ReadonlySet<string>) {
        for (const key of keys) {
            const at = key.lastIndexOf('#');
            const id = key.slice(0, at);
            this.prints.set(id, [...this.prints.get(id) ?? [], key.slice(at + 1)]);
        }
    }

    conditionOf(piece: ListedPiece, cut: Cut): Condition {
        const prints = this.prints.get(piece.id);
        return prints === undefined ? 'to cut' : prints.includes(cut.print) ? 'cut' : 'changed';
    }

    /** Long points it was cut at, in ticks, where it was cut otherwise than it is listed now. */
    cutAt({ id }: ListedPiece): number | undefined {
        const print = this.prints.get(id)?.at(-1);
        const ticks = Number(print?.split('.')[0]);
        return Number.isFinite(ticks) ? ticks : undefined;
    }

    keysOf(id: string): readonly string[] {
        return (this.prints.get(id) ?? []).map(print => `${id}#${print}`);
    }

    /** Pieces that are cut and stand in the list no more: the room has changed. */
    gone(pieces: readonly ListedPiece[]): readonly string[] {
        const there = new Set(pieces.map(({ id }) => id));
        return [...this.prints.keys()].filter(id => !there.has(id)).sort();
    }
}

/** What to tell the keeper of ticks when pieces are ticked off, or are not cut after all. A tick of another cut goes either way. */
export function tickChange(
    pieces: readonly { readonly piece: ListedPiece; readonly cut: Cut }[], on: boolean, ticked: Ticked,
): { readonly add: readonly string[]; readonly remove: readonly string[] } {
    const add = on ? pieces.map(({ piece, cut }) => tickKey(piece, cut)) : [];
    const kept = new Set(add);
    return { add, remove: pieces.flatMap(({ piece }) => ticked.keysOf(piece.id)).filter(key => !kept.has(key)) };
}
