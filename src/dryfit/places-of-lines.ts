import { stretches } from '../ceiling/bays.ts';
import { sideEnd } from '../ceiling/corners.ts';
import type { Line } from '../ceiling/model.ts';
import { roundTo } from '../quantity/round.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { spliceLetter } from '../takeoff/ids.ts';
import type { TakeOff } from '../takeoff/model.ts';
import { standing, type Frame, type FrameBay } from './frame.ts';
import type { Spot } from './place.ts';
import type { Form } from './stand.ts';

interface Setting { readonly line: Line; readonly frame: Frame; readonly bays: readonly FrameBay[]; readonly takeOff: TakeOff; readonly step: Ticks }

/** The places of everything that belongs to a line. Parts that the text says nothing of, or not enough, have none. */
export function linePlaces(line: Line, frame: Frame, takeOff: TakeOff, step: Ticks): Spot[] {
    const { bays } = frame[line.runs];
    const setting: Setting = { line, frame, bays, takeOff, step };
    return [...blocking(setting), ...bottoms(setting), ...sides(setting), ...cleats(setting), ...spacers(setting)];
}

function blocking(setting: Setting): Spot[] {
    const { line } = setting, { blockingWidth, blockingThickness, profile } = line.section;
    if (!profile.blocking?.stock) return [];
    return lying(setting, 'blocking', other => standing(setting.frame, other).channelHigh, other => standing(setting.frame, other).channelLow, {
        across: blockingWidth.ticks, high: blockingThickness.ticks,
    }, { top: 0 });
}

/** Bottoms go up until they meet the cleats, which are set with a block of the bottom's own stock unless the text says otherwise. */
function bottoms(setting: Setting): Spot[] {
    const { line } = setting, { bottomWidth, bottomThickness, profile } = line.section;
    if (!profile.bottom?.stock) return [];
    const edge = (other: Line, side: 1 | -1): number => standing(setting.frame, other).middle + side * other.section.bottomWidth.ticks / 2;
    return lying(setting, 'bottom', other => edge(other, 1), other => edge(other, -1), {
        across: bottomWidth.ticks, high: bottomThickness.ticks,
    }, { top: profile.cleats ? cleatFoot(line) : line.section.depth.ticks - bottomThickness.ticks }, profile.bottom.press?.value);
}

function cleatFoot({ section: { depth, bottomThickness, profile } }: Line): Ticks {
    return depth.ticks - (profile.cleats?.gauge?.value.ticks ?? bottomThickness.ticks);
}

/** From band to band, or from splice to splice, where the line runs through; else from the edge of one crossing piece to that of the next. */
function lying({ line, frame, bays, step }: Setting, part: 'blocking' | 'bottom', after: (other: Line) => number, before: (other: Line) => number,
    form: Pick<Form, 'across' | 'high'>, down: Spot['seat']['down'], press?: Ticks): Spot[] {
    const across = { middle: standing(frame, line).middle };
    const runs = line.runs;
    if (line.through) {
        // pieces meet at a mark of the tape, counted from the start of the run
        const mark = (place: Ticks): Ticks => place === line.end ? place : line.start + roundTo(place - line.start, step);
        return stretches(line.start, line.splices, line.end).map(([from, to], i, all): Spot => ({
            part, named: { line: line.name, nth: spliceLetter(i, all.length) }, press,
            seat: { runs, middle: (mark(from) + mark(to)) / 2, across, down }, form: { ...form, along: mark(to) - mark(from) },
        }));
    }
    return bays.map((bay): Spot => {
        const from = bay.before ? after(bay.before) : bay.start, to = bay.after ? before(bay.after) : bay.end;
        return { part, named: { line: line.name, bay: bay.number }, press, seat: { runs, middle: (from + to) / 2, across, down }, form: { ...form, along: to - from } };
    });
}

/** One side of a bay: where its back begins and ends, and what its miters leave of the face. */
interface Flank { readonly bay: FrameBay; readonly on: 'north' | 'south' | 'west' | 'east'; readonly back: number; readonly looks: 1 | -1; readonly from: number; readonly to: number; readonly off: Form['off'] }

/**
 * In a miter the cut runs from the corner of the coffer to the corner of the crossing square behind it; a side that runs
 * past another ends square there; every other one ends square at the coffer.
 */
function flanks({ line, frame, bays }: Setting): Flank[] {
    const { channelLow, channelHigh } = standing(frame, line);
    return bays.flatMap(bay => {
        const ends = [bay.before, bay.after].map(other => {
            const end = sideEnd(line, other), thick = other && end !== 'stops' ? other.section.sideThickness.ticks : 0;
            return { reach: thick, off: end === 'mitered' ? thick : 0 };
        }) as [{ reach: number; off: number }, { reach: number; off: number }];
        const shared = { bay, from: bay.start - ends[0].reach, to: bay.end + ends[1].reach, off: [ends[0].off, ends[1].off] as const };
        const [low, high] = line.runs === 'east-west' ? ['north', 'south'] as const : ['west', 'east'] as const;
        return [{ ...shared, on: low, back: channelLow, looks: -1 as const }, { ...shared, on: high, back: channelHigh, looks: 1 as const }];
    });
}

function sides(setting: Setting): Spot[] {
    const { line } = setting, { sideThickness, sideHeight, heldDown, profile } = line.section;
    const rabbet = profile.sides?.rabbet?.value;
    if (!profile.sides?.stock) return [];
    return flanks(setting).map(({ bay, on, back, looks, from, to, off }): Spot => ({
        part: 'side', named: { line: line.name, bay: bay.number, on },
        seat: { runs: line.runs, middle: (from + to) / 2, across: { back, looks }, down: { top: heldDown.value.ticks } },
        form: {
            along: to - from, across: sideThickness.ticks, high: sideHeight.ticks, off,
            ...rabbet && { rabbet: { width: rabbet.width.ticks, height: rabbet.height.ticks, edge: rabbet.edge } },
        },
    }));
}

/** Behind the sides, looking into the channel; as long as the back of its side, less what it is short. */
function cleats(setting: Setting): Spot[] {
    const { line } = setting, { cleatThickness, cleatHeight, profile } = line.section;
    const short = profile.cleats?.shortEachEnd.value;
    if (!profile.cleats?.stock || !cleatThickness || !cleatHeight || short === undefined) return [];
    return flanks(setting).map(({ bay, on, back, looks, from, to }): Spot => ({
        part: 'cleat', named: { line: line.name, bay: bay.number, on },
        seat: { runs: line.runs, middle: (from + to) / 2, across: { back, looks: looks === 1 ? -1 : 1 }, down: { foot: cleatFoot(line) } },
        form: { along: to - from - 2 * short, across: cleatThickness.ticks, high: cleatHeight.ticks },
    }));
}

/** Where along the line each stands is the list's own; they hang under the blocking, in the middle of the channel. */
function spacers({ line, frame, bays, takeOff }: Setting): Spot[] {
    const { spacerThickness, spacerWidth, blockingThickness, innerWidth, profile } = line.section;
    const height = profile.spacers?.height?.value.ticks;
    if (!profile.spacers?.stock || !spacerThickness || !spacerWidth || !height) return [];
    const most = (profile.bottom?.gap.value.most ?? 0) / 2;
    const tight = (spacerWidth.ticks - innerWidth.ticks) / 2;
    return takeOff.pieces.filter(piece => piece.part === 'spacer' && piece.line === line.name).flatMap((piece): Spot[] => {
        const bay = bays[(piece.bay ?? 0) - 1];
        if (!bay) return [];
        const [low, high] = line.runs === 'east-west' ? [piece.box.west, piece.box.east] : [piece.box.north, piece.box.south];
        return [{
            part: 'spacer', named: { line: line.name, bay: bay.number, nth: Number(piece.id.split('-').at(-1)) }, give: tight <= most ? tight : 0,
            seat: { runs: line.runs, middle: (low + high) / 2 + bay.shifted, across: { middle: standing(frame, line).middle }, down: { top: blockingThickness.ticks } },
            form: { along: spacerThickness.ticks, across: spacerWidth.ticks, high: height },
        }];
    });
}
