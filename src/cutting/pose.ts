import type { JobSettings, Stock } from '../job/model.ts';
import { gcd } from '../quantity/gcd.ts';
import { inches, Rational } from '../quantity/rational.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Piece } from '../takeoff/model.ts';
import { comparePieces } from '../takeoff/piece-order.ts';
import type { Blank } from './blank.ts';
import { kindsOf, type Kind, type Kinds } from './kinds.ts';
import type { BoardPlan } from './model.ts';
import type { Offer } from './offers.ts';
import { WHOLE, type CuttingProblem } from './solve/problem.ts';

interface Saw {
    /** What one cut takes along the board: boards are crosscut square, and mitered afterwards. */
    readonly cut: Ticks;
    /** What is cut off both ends of a board together. */
    readonly endTrim: Ticks;
}

/** What is to be cut from one stock, as a problem in whole numbers with the way back from it. */
export interface Posed {
    readonly stock: Stock;
    readonly saw: Saw;
    readonly kinds: Kinds;
    readonly problem: CuttingProblem;
    /** By item: the pieces that are alike, in the order they are taken. */
    readonly pieces: readonly (readonly Piece[])[];
    /** By lane: the width it is ripped to; lane 0 is not ripped. */
    readonly widths: readonly (Ticks | undefined)[];
    /** What one unit of length in the problem is. */
    readonly lengthUnit: Ticks;
    /** What one unit of cost in the problem is: in the currency's major unit, or in ticks. */
    readonly costUnit: Rational;
    /** False where lengths or costs had to be rounded to become whole numbers: then a bound on the problem says nothing of the job. */
    readonly exact: boolean;
}

/** @param withSections whether sections may be cut off a board and ripped by themselves; else boards are ripped over their whole length only */
export function pose(
    stock: Stock, blanks: readonly Blank[], offers: readonly Offer[], job: JobSettings, before: readonly BoardPlan[], withSections: boolean,
): Posed {
    const saw: Saw = { cut: job.kerf.value, endTrim: job.endTrim.value };
    const longest = blanks.reduce((most, b) => Math.max(most, b.length), 0) + saw.endTrim;
    const kinds = kindsOf(stock, job, offers, longest, before);
    const boardWidth = stock.width?.value.ticks;
    const widths = boardWidth === undefined ? [] : stripWidths(blanks, boardWidth, kinds.all, job.kerf.value);
    const items = itemsOf(blanks, widths);
    const usable = kinds.all.map(({ length, crosswise, keeps }) => (crosswise ? boardWidth! : length) - saw.endTrim + (keeps === undefined ? saw.cut : -keeps));
    const lengths = gridOf(items.map(item => item.length + saw.cut), usable);
    const across = gridOf(
        widths.map(width => width + job.kerf.value),
        kinds.all.map(({ length, width, crosswise }) => (crosswise ? length : width ?? boardWidth ?? 0) + job.kerf.value),
    );
    const costs = costsOf(kinds);
    const shortestSection = widths.length > 0 && withSections ? Math.ceil((SHORTEST_RIPPED + saw.cut) / lengths.unit) : undefined;
    return {
        stock, saw, kinds, lengthUnit: lengths.unit, costUnit: costs.unit,
        problem: {
            items: items.map((item, i) => ({ size: lengths.sizes[i]!, count: item.pieces.length, lanes: item.lanes })),
            boards: kinds.all.map(({ available, crosswise, width, keeps }, k) => ({
                capacity: lengths.capacities[k]!, cost: costs.whole[k]!, available: available ?? null,
                // what is left has the whole width only where no more than a section is ripped
                across: keeps !== undefined && !(lengths.capacities[k]! >= (shortestSection ?? Infinity)) ? 0 : across.capacities[k]!,
                ...(crosswise || width !== undefined ? { ripOnly: true } : {}),
            })),
            strips: across.sizes, ...shortestSection !== undefined && { shortestSection },
        },
        pieces: items.map(item => item.pieces),
        widths: [undefined, ...widths],
        exact: lengths.exact && costs.exact && (widths.length === 0 || across.exact),
    };
}

/**
 * Widths that are ripped first, the widest first: two or more come out of the board's width, or one with another beside it, or the
 * sheet may be turned, or there are strips that it comes out of.
 */
function stripWidths(blanks: readonly Blank[], boardWidth: Ticks, kinds: readonly Kind[], kerf: Ticks): Ticks[] {
    const turns = kinds.some(kind => kind.crosswise), widest = Math.max(0, ...kinds.map(({ width = 0 }) => width));
    const several = new Set(blanks.filter(b => b.abreast > 1).map(b => b.width));
    const narrowest = Math.min(...several);
    const fitsBeside = (width: Ticks): boolean => (turns ? width < boardWidth : width + kerf + narrowest <= boardWidth || width <= widest);
    const beside = new Set(blanks.filter(b => b.abreast === 1 && fitsBeside(b.width)).map(b => b.width));
    return [...new Set([...several, ...beside])].sort((a, b) => b - a);
}

interface PosedItem { readonly length: Ticks; readonly lanes: readonly number[]; readonly pieces: Piece[] }

/** Pieces of one length and width together, the longest first. */
function itemsOf(blanks: readonly Blank[], widths: readonly Ticks[]): PosedItem[] {
    const items = new Map<string, PosedItem>();
    for (const blank of blanks) {
        const { length, width } = blank;
        const lane = widths.indexOf(width) + 1;
        const key = `${length} ${lane}`;
        const item = items.get(key);
        if (item) item.pieces.push(blank.piece);
        else items.set(key, { length, lanes: lanesOf(blank, lane), pieces: [blank.piece] });
    }
    for (const { pieces } of items.values()) pieces.sort(comparePieces);
    return [...items.values()].sort((a, b) => b.length - a.length || comparePieces(a.pieces[0]!, b.pieces[0]!));
}

/** What fills most of the board's width may be cut off first and ripped then, however short; all else comes out of a section or a board that is ripped. */
function lanesOf({ length, abreast }: Blank, lane: number): number[] {
    if (lane === WHOLE) return [WHOLE];
    return abreast === 1 && length < SHORTEST_RIPPED ? [WHOLE, lane] : [lane];
}
/** Shorter pieces are not fed through a table saw along their length. Common practice, no source. */
export const SHORTEST_RIPPED = inches(12);

/**
 * Sizes and capacities in the largest unit that all sizes are whole in; capacities lose nothing by being rounded down to it. Where
 * that is too fine, sizes are rounded up to a coarser one.
 */
function gridOf(sizes: readonly Ticks[], capacities: readonly Ticks[]): { sizes: number[]; capacities: number[]; unit: Ticks; exact: boolean } {
    const common = sizes.reduce((a, b) => gcd(a, b), 0) || 1;
    const unit = Math.max(1, ...capacities) / common > FINEST ? Math.ceil(Math.max(...capacities) / FINEST) : common;
    return {
        sizes: sizes.map(size => Math.ceil(size / unit)), capacities: capacities.map(capacity => Math.max(0, Math.floor(capacity / unit))),
        unit, exact: unit === common,
    };
}
const FINEST = 65_536;

/** Costs as whole numbers without a common divisor, and what one of them is. */
function costsOf({ all }: Kinds): { whole: number[]; unit: Rational; exact: boolean } {
    const costs = all.map(kind => kind.cost);
    const parts = costs.reduce((common, cost) => common * cost.d / gcd(common, cost.d), 1n);
    const exact = parts <= MOST_PARTS;
    const denominator = exact ? parts : MOST_PARTS;
    const numbers = costs.map(cost => cost.n * denominator / cost.d);
    const common = numbers.reduce((a, b) => gcd(a, b), 0n) || 1n;
    return { whole: numbers.map(n => Number(n / common)), unit: new Rational(common, denominator), exact };
}
const MOST_PARTS = 1_000_000n;
