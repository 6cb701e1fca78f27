import { channelHigh, channelLow, type Bay } from '../ceiling/bays.ts';
import { miterDegrees, sideEnd, sideReach } from '../ceiling/corners.ts';
import type { Line } from '../ceiling/model.ts';
import type { Rabbet, Side } from '../job/model.ts';
import { term, type WhyTerm } from '../provenance/why.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { handOf } from './hands.ts';
import type { EndCut, Piece } from './model.ts';
import { pieceOf, SQUARE } from './piece.ts';
import { cofferTerm, sideTerm } from './runs.ts';
import { boxOf, cofferBeside, sidesOf, type Setting } from './setting.ts';
import type { Work } from './work.ts';

/** One side of a line along one bay, and the cleat on its back: what they share. */
interface Flank {
    readonly line: Line; readonly bay: Bay; readonly on: Side; readonly coffer: number; readonly where: string;
    /** How far the back reaches past the coffer at each end, and how much of that shows because the end is square. */
    readonly reach: readonly [Ticks, Ticks]; readonly square: readonly [Ticks, Ticks];
    readonly ends: readonly [EndCut, EndCut];
    /** Terms of the back. */
    readonly why: readonly WhyTerm[];
}

function flanksOf(line: Line, setting: Setting): Flank[] {
    return setting.bays[line.runs].flatMap(bay => sidesOf(line.runs).map((on): Flank => {
        const crossing = [bay.before, bay.after] as const;
        const reach = crossing.map(other => sideReach(line, other)) as [Ticks, Ticks];
        const square = crossing.map((other, i) => sideEnd(line, other) === 'past' ? reach[i]! : 0) as [Ticks, Ticks];
        const ends = crossing.map((other): EndCut => other && sideEnd(line, other) === 'mitered' ? { cut: 'miter', degrees: miterDegrees(line, other) } : SQUARE);
        const met = crossing.filter((other, i) => other && reach[i]! > 0) as Line[];
        return {
            line, bay, on, reach, square, ends: ends as [EndCut, EndCut], coffer: cofferBeside(setting.ceiling, line, bay, on),
            where: `line ${line.name}, bay ${bay.number}, ${on} side`, why: [cofferTerm(setting, line.runs, bay.end - bay.start), ...met.map(sideTerm)],
        };
    }));
}

/**
 * Sides: the face is the coffer, the back longer by the other side's thickness at every mitered end. Where a side runs
 * past another it is as long at the face as at the back.
 */
export function sidesOfLine(line: Line, setting: Setting): Piece[] {
    const { section } = line, sides = section.profile.sides;
    if (!sides) return [];
    const thickness = section.sideThickness.ticks;
    return flanksOf(line, setting).flatMap(({ bay, on, coffer, where, reach, square, ends, why }) => pieceOf({
        part: 'side', line: line.name, bay: bay.number, coffer, on, stock: sides.stock, where, why, ends,
        face: bay.end - bay.start + square[0] + square[1], back: bay.end - bay.start + reach[0] + reach[1],
        cutFace: bay.cutCoffer + square[0] + square[1], cutBack: bay.cutCoffer + reach[0] + reach[1],
        hand: sides.rabbet ? handOf(on, ends, sides.rabbet.value.edge) : null,
        width: section.sideHeight.ticks, thickness, work: [sides.rabbet && rabbetWork(sides.rabbet.value)], fence: sides.ripWith?.value, source: sides.at,
        box: boxOf(line.runs, [bay.start - reach[0], bay.end + reach[1]], acrossLine(line, on, thickness), [section.heldDown.value.ticks, section.depth.ticks]),
    }, setting));
}

/** Cleats: as the back of their side, less what they are short at each end; on its back, over the bottom. */
export function cleatsOfLine(line: Line, setting: Setting): Piece[] {
    const { section } = line, { cleatThickness, cleatHeight, cleatTop } = section, cleats = section.profile.cleats;
    if (!cleats || !cleatThickness || !cleatHeight || !cleatTop) return [];
    const short = cleats.shortEachEnd.value;
    return flanksOf(line, setting).flatMap(({ bay, on, coffer, where, reach, why }) => pieceOf({
        part: 'cleat', line: line.name, bay: bay.number, coffer, on, stock: cleats.stock, where,
        back: bay.end - bay.start + reach[0] + reach[1] - 2 * short, cutBack: bay.cutCoffer + reach[0] + reach[1] - 2 * short,
        why: [...why, term('short at the end', -2, short, cleats.shortEachEnd.at)],
        width: cleatHeight.ticks, thickness: cleatThickness.ticks, source: cleats.at,
        box: boxOf(line.runs, [bay.start - reach[0] + short, bay.end + reach[1] - short],
            besideSide(line, on, cleatThickness.ticks), [cleatTop.ticks, section.bottomTop.ticks]),
    }, setting));
}

/** The side stands on the outer face of the line, the cleat in the channel behind it. */
function acrossLine(line: Line, on: Side, thickness: Ticks): [Ticks, Ticks] {
    return on === 'north' || on === 'west' ? [line.low, line.low + thickness] : [line.high - thickness, line.high];
}
function besideSide(line: Line, on: Side, thickness: Ticks): [Ticks, Ticks] {
    return on === 'north' || on === 'west' ? [channelLow(line), channelLow(line) + thickness] : [channelHigh(line) - thickness, channelHigh(line)];
}

function rabbetWork({ width, height, edge }: Rabbet): Work {
    return { kind: 'rabbet', width: width.ticks, height: height.ticks, edge };
}
