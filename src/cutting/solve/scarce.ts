import { STEPS, type Effort } from './effort.ts';
import { gathered } from './layouts.ts';
import { canCut, WHOLE, type BoardKind, type CuttingProblem, type Item, type Layout, type Picks, type StripCut } from './problem.ts';

/** Boards of which there are few, and the pieces that come out of no others, cut so that all of these have a place. */
interface Scarce { readonly layouts: readonly Layout[]; readonly left: readonly number[]; readonly free: readonly number[] }

/**
 * Places for all pieces that come out of nothing but boards of which there are so many: by trying every way, the longest piece first, as far as
 * that comes to an end soon. Says what is left to plan then. Undefined where no way was found, or there are no such pieces.
 */
export function onScarceBoards(problem: CuttingProblem, effort: Effort): Scarce | undefined {
    const { items, boards } = problem;
    const isNeedy = items.map(item => !boards.some(kind => kind.available === null && holds(problem, kind, item)));
    const pieces = items.flatMap((item, i) => (isNeedy[i] ? Array.from({ length: Math.min(item.count, MOST_PIECES + 1) }, () => i) : []))
        .sort((a, b) => items[b]!.size - items[a]!.size || a - b);
    if (pieces.length === 0 || pieces.length > MOST_PIECES) return undefined;
    const there = boards.flatMap((kind, board) => Array.from({ length: Math.min(kind.available ?? 0, pieces.length) }, () => new OpenBoard(problem, board)))
        .sort((a, b) => a.capacity - b.capacity);
    if (!new Placing(items, pieces, there, effort).place(0)) return undefined;
    const free = boards.map(kind => kind.available ?? Infinity), layouts = there.filter(board => !board.isEmpty).map(board => board.layout());
    for (const { board } of layouts) free[board]! -= 1;
    return { layouts: gathered(problem, layouts), left: items.map(({ count }, i) => (isNeedy[i] ? 0 : count)), free };
}
/** Of more pieces than this trying every way has no end. */
const MOST_PIECES = 40;
/** Places that are tried. */
const MOST_TRIES = 3000;

function holds({ strips }: CuttingProblem, kind: BoardKind, { size, lanes }: Item): boolean {
    return size <= kind.capacity && lanes.some(lane => (lane === WHOLE ? canCut(kind, WHOLE) : strips[lane - 1]! <= kind.across));
}

class Placing {
    private tries = 0;

    constructor(
        private readonly items: readonly Item[], private readonly pieces: readonly number[], private readonly boards: readonly OpenBoard[],
        private readonly effort: Effort,
    ) {}

    /** Places this piece and all after it; where that cannot be, nothing is otherwise than before. */
    place(next: number): boolean {
        const item = this.pieces[next];
        if (item === undefined) return true;
        const opened = new Set<number>();
        for (const board of this.boards) {
            // of boards that are alike and empty one is tried
            if (board.isEmpty && opened.has(board.kind)) continue;
            if (board.isEmpty) opened.add(board.kind);
            for (const undo of board.ways(item, this.items[item]!)) {
                this.effort.spent += STEPS.made;
                if (++this.tries <= MOST_TRIES && this.place(next + 1)) return true;
                undo();
                if (this.tries > MOST_TRIES) return false;
            }
        }
        return false;
    }
}

interface OpenStrip { readonly lane: number; used: number; readonly own: number[] }

/** A board that is being filled: pieces of its whole width, and sections of strips. */
class OpenBoard {
    readonly capacity: number;
    private readonly whole: number[] = [];
    private wholeUsed = 0;
    private readonly sections: OpenStrip[][] = [];

    constructor(private readonly problem: CuttingProblem, readonly kind: number) {
        this.capacity = problem.boards[kind]!.capacity;
    }

    get isEmpty(): boolean {
        return this.whole.length === 0 && this.sections.length === 0;
    }

    /** Puts the piece into one place after the other where it fits; each time what takes it out again, which has to be called before the next. */
    *ways(item: number, { size, lanes }: Item): Generator<() => void, void> {
        const { strips: widths, boards } = this.problem, { across } = boards[this.kind]!;
        for (const lane of lanes) {
            if (lane === WHOLE) {
                if (!canCut(boards[this.kind]!, WHOLE)) continue;
                this.whole.push(item);
                this.wholeUsed += size;
                const undo = (): void => { this.whole.pop(); this.wholeUsed -= size; };
                if (this.fits()) yield undo;
                else undo();
                continue;
            }
            for (const section of this.sections) {
                for (const strip of section.filter(each => each.lane === lane)) {
                    strip.own.push(item);
                    strip.used += size;
                    const undo = (): void => { strip.own.pop(); strip.used -= size; };
                    if (this.fits()) yield undo;
                    else undo();
                }
                if (section.reduce((sum, each) => sum + widths[each.lane - 1]!, widths[lane - 1]!) > across) continue;
                section.push({ lane, used: size, own: [item] });
                if (this.fits()) yield () => void section.pop();
                else section.pop();
            }
            if (widths[lane - 1]! > across) continue;
            this.sections.push([{ lane, used: size, own: [item] }]);
            if (this.fits()) yield () => void this.sections.pop();
            else this.sections.pop();
        }
    }

    private sizeOf(section: readonly OpenStrip[]): number {
        return Math.max(this.problem.shortestSection ?? 0, ...section.map(({ used }) => used));
    }

    private get isOver(): boolean {
        return this.sections.length === 1 && this.whole.length === 0;
    }

    private fits(): boolean {
        if (this.isOver) return this.sections[0]!.every(({ used }) => used <= this.capacity);
        if (this.sections.length > 0 && this.problem.shortestSection === undefined) return false;
        return this.sections.reduce((sum, section) => sum + this.sizeOf(section), this.wholeUsed) <= this.capacity;
    }

    layout(): Layout {
        const isOver = this.isOver;
        const strips = this.sections.flatMap((section, s) => section.map(({ lane, own }): StripCut => (
            { lane, picks: picksOf(own), ...isOver ? {} : { section: s } })));
        return {
            board: this.kind, times: 1, strips: [...this.whole.length > 0 ? [{ lane: WHOLE, picks: picksOf(this.whole) }] : [], ...strips],
            ...!isOver && this.sections.length > 0 && { sections: this.sections.map(section => this.sizeOf(section)) },
        };
    }
}

function picksOf(own: readonly number[]): Picks {
    const counts = new Map<number, number>();
    for (const item of own) counts.set(item, (counts.get(item) ?? 0) + 1);
    return [...counts].sort(([a], [b]) => a - b);
}
