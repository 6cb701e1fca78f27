import type { Given, Source } from '../provenance/source.ts';
import { printLength } from '../quantity/print-length.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { centeredSizes } from './centered.ts';
import { freeOf, MOST_LINES, wallOf, type Divided, type Division, type Feature } from './division.ts';
import type { Trouble } from './model.ts';

/**
 * Places the lines of one run, or says why it cannot be done. Undefined without a trouble: not enough is known.
 *
 * - By number: n lines make n + 1 equal coffers of (run - widths of the lines)/(n + 1). The *faces* stand at
 *   start + round(i (run - widths)/(n + 1)) + the widths before, so everything adds up to the run and no error piles up.
 * - By size: of the numbers whose coffers are within the range, the one whose coffers come nearest to its middle; the
 *   fewer coffers where two are as near.
 * - By lines: where they are said to be; a center on half a tick is taken half a tick to the west or north.
 * - With a feature: centered.ts.
 */
export function divide(run: Division, troubles: Trouble[]): Divided | undefined {
    switch (run.spacing.by) {
        case 'number': return byNumber(run, run.spacing.coffers, troubles);
        case 'size': return bySize(run, run.spacing.size, troubles);
        case 'lines': return byLines(run, run.spacing.centers, run.spacing.from.value, troubles);
    }
}

function byNumber(run: Division, coffers: Given<number>, troubles: Trouble[]): Divided | undefined {
    const n = coffers.value, at = coffers.at;
    if (!Number.isInteger(n) || n < 1) return fail(troubles, { kind: 'bad-count', value: n, at, what: `coffers along the ${wallOf(run)} wall` });
    if (n > MOST_LINES + 1) return fail(troubles, { kind: 'too-many-coffers', within: 'one direction', count: n, most: MOST_LINES + 1, at });
    const widths = widthsOf(run, n - 1);
    if (!widths) return undefined;
    if (freeOf(run, widths) < n) return fail(troubles, doesntClose(run, widths, at));
    if (run.byCenters) return byCenters(run, widths);
    return placed(run, widths, sizesFor(run, widths, troubles));
}

/** Centers in equal parts of the whole. */
function byCenters({ room, start, end, toCenter }: Division, widths: readonly Ticks[]): Divided {
    const n = widths.length + 1, lows = widths.map((_, i) => Math.round((i + 1) * room / n - toCenter(i)));
    const faces = [start, ...lows.flatMap((low, i) => [low, low + widths[i]!]), end];
    return { lows, widths, sizes: Array.from({ length: n }, (_, i) => faces[2 * i + 1]! - faces[2 * i]!) };
}

/** Equal sizes, or those that center a coffer on the feature. */
function sizesFor(run: Division, widths: readonly Ticks[], troubles: Trouble[]): readonly number[] | undefined {
    if (run.feature) return centeredSizes(run, widths, run.feature, troubles);
    return equalSizes(run, widths);
}
function equalSizes(run: Division, widths: readonly Ticks[]): number[] {
    const n = widths.length + 1;
    return new Array<number>(n).fill(freeOf(run, widths) / n);
}

function bySize(run: Division, size: Given<{ readonly least: Ticks; readonly most: Ticks }>, troubles: Trouble[]): Divided | undefined {
    const at = size.at;
    const least = Math.min(size.value.least, size.value.most), most = Math.max(size.value.least, size.value.most);
    if (!(least > 0)) return fail(troubles, { kind: 'not-positive', what: 'the size of the coffers', ticks: least, at });
    let best: { widths: readonly Ticks[]; sizes: readonly number[]; off: number } | undefined;
    let tooBig: { coffers: number; size: Ticks } | undefined, tooSmall: typeof tooBig;
    let unknown = false;
    for (let n = 1; n <= MOST_LINES + 1; n++) {
        const widths = widthsOf(run, n - 1);
        unknown ||= !widths;
        if (!widths || freeOf(run, widths) < n) break;
        const quiet: Trouble[] = [];
        const sizes = sizesFor(run, widths, quiet);
        const smallest = Math.min(...sizes ?? equalSizes(run, widths)), biggest = Math.max(...sizes ?? equalSizes(run, widths));
        if (biggest > most) tooBig = { coffers: n, size: Math.round(biggest) };
        else if (smallest < least) tooSmall ??= { coffers: n, size: Math.round(smallest) };
        else if (sizes) {
            const off = Math.abs(freeOf(run, widths) / n - (least + most) / 2);
            if (!best || off < best.off) best = { widths, sizes, off };
        }
        if (biggest < least) break;
    }
    if (best) return placed(run, best.widths, best.sizes);
    if (unknown) return undefined;
    if (tooBig?.coffers === MOST_LINES + 1) {
        const one = run.width(0) ?? 0;
        return fail(troubles, { kind: 'too-many-coffers', within: 'one direction', count: Math.ceil((run.end - run.start + one) / (most + one)), most: MOST_LINES + 1, at });
    }
    const nearest = [tooBig, tooSmall].filter(near => near !== undefined).sort((a, b) => a.coffers - b.coffers);
    return fail(troubles, { kind: 'no-coffer-size-fits', along: run.along, at, nearest });
}

function byLines(run: Division, centers: readonly Given<Ticks>[], from: string, troubles: Trouble[]): Divided | undefined {
    if (centers.length > MOST_LINES) return fail(troubles, { kind: 'too-many-coffers', within: 'one direction', count: centers.length + 1, most: MOST_LINES + 1, at: centers[MOST_LINES]!.at });
    const fromStart = from.includes(run.along === 'east-west' ? 'west' : 'north');
    const lines = centers.map(center => ({ position: fromStart ? center.value : run.room - center.value, at: center.at }))
        .sort((a, b) => a.position - b.position);
    const widths = widthsOf(run, lines.length);
    if (!widths) return undefined;
    const before = troubles.length;
    const sizes: number[] = [];
    let low = run.start;
    lines.forEach(({ position, at }, i) => {
        const toCenter = run.toCenter(i), size = position - toCenter - low;
        sizes.push(size);
        low = position - toCenter + widths[i]!;
        if (size >= 1) return;
        if (i === 0) troubles.push(pastTheEnd(run, run.toCenter(i), i, 0, run.start, position, at));
        else troubles.push({ kind: 'lines-overlap', lines: [run.name(i - 1), run.name(i)], by: Math.round(-size), at });
    });
    sizes.push(run.end - low);
    // without a line all of the run is left, which is more than nothing
    const last = lines.length - 1;
    if (run.end - low < 1) {
        troubles.push(pastTheEnd(run, widths[last]! - run.toCenter(last), last, 1, run.room - run.end, run.room - lines[last]!.position, lines[last]!.at));
    }
    if (troubles.length > before) return undefined;
    const lows = lines.map(({ position }, i) => Math.floor(position - run.toCenter(i)));
    const divided = { lows, widths, sizes };
    if (run.feature) checkCentered(divided, run, run.feature, troubles);
    return divided;
}

/** Lines at stated places stay there; where no coffer is then centered on the feature, the two contradict each other. */
function checkCentered({ lows, widths }: Divided, run: Division, { position, by }: Feature, troubles: Trouble[]): void {
    const faces = [run.start, ...lows.flatMap((low, i) => [low, low + widths[i]!]), run.end];
    for (let i = 0; i < faces.length; i += 2) if (Math.abs(faces[i]! + faces[i + 1]! - 2 * position) <= 2) return;
    troubles.push({
        kind: 'not-supported', what: `a coffer centered on ${by.value.name} between lines at stated places`,
        because: 'lines at stated places stay there, and none of their coffers has its middle at it', instead: 'either one: the lines, or the feature with a number or size of coffers', at: by.at,
    });
}

/** A line's center wants what it reaches to its face and the band from the wall, and does not have it. */
function pastTheEnd(run: Division, reach: number, index: number, end: 0 | 1, band: Ticks, has: Ticks, at: Source): Trouble {
    const half = Math.ceil(reach), isHalf = 2 * run.toCenter(index) === run.width(index);
    const parts = `${isHalf ? `half of the line ${run.name(index)} beam` : `from the center to the face of line ${run.name(index)}`} ${printLength(half, run.show)}${band > 0 ? ` + ${run.ends[end]} ${printLength(band, run.show)}` : ''}`;
    return { kind: 'grid-doesnt-close', along: run.along, wanted: half + band, has, at, parts };
}

function doesntClose(run: Division, widths: readonly Ticks[], at: Source): Trouble {
    const counts = new Map<Ticks, number>();
    for (const width of widths) counts.set(width, (counts.get(width) ?? 0) + 1);
    const beams = [...counts].map(([width, count]) => `${count} x beam ${printLength(width, run.show)}`);
    const reach = [run.start, run.room - run.end], alike = reach[0] === reach[1] && run.ends[0] === run.ends[1];
    const band = reach.flatMap((each, i) => each > 0 && !(alike && i === 1) ? [`${alike ? '2 x ' : ''}${run.ends[i]} ${printLength(each, run.show)}`] : []);
    const wanted = run.room - freeOf(run, widths);
    return { kind: 'grid-doesnt-close', along: run.along, wanted, has: run.room, at, parts: [...beams, ...band].join(' + '), fits: mostThatFit(run, widths.length) };
}

/** The most coffers, fewer than there are lines, that are at least three times as wide as a beam: common practice, no source. */
function mostThatFit(run: Division, lines: number): { coffers: number; size: Ticks } | undefined {
    for (let n = lines; n > 1; n--) {
        const widths = widthsOf(run, n - 1);
        const size = widths && Math.round(freeOf(run, widths) / n);
        if (size !== undefined && size >= 3 * Math.max(...widths!)) return { coffers: n, size };
    }
    return undefined;
}

/** Faces from sizes that are all equal, or all whole. */
function placed(run: Division, widths: readonly Ticks[], sizes: readonly number[] | undefined): Divided | undefined {
    if (!sizes) return undefined;
    const free = freeOf(run, widths);
    const equal = sizes.every(size => size === sizes[0]);
    let coffers = 0, before = run.start;
    const lows = widths.map((width, i) => {
        coffers += sizes[i]!;
        before += width;
        return (equal ? Math.round((i + 1) * free / sizes.length) : coffers) + before - width;
    });
    return { lows, widths, sizes };
}

function widthsOf(run: Division, lines: number): Ticks[] | undefined {
    const widths: Ticks[] = [];
    for (let i = 0; i < lines; i++) {
        const width = run.width(i);
        if (width === undefined) return undefined;
        widths.push(width);
    }
    return widths;
}

function fail(troubles: Trouble[], trouble: Trouble): undefined {
    troubles.push(trouble);
    return undefined;
}
