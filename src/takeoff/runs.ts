import { bottomHigh, bottomLow, channelHigh, channelLow, stretches, type Bay } from '../ceiling/bays.ts';
import type { Line, Splice } from '../ceiling/model.ts';
import type { Direction } from '../job/model.ts';
import { term, type WhyTerm } from '../provenance/why.ts';
import { roundTo } from '../quantity/round.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { spliceLetter } from './ids.ts';
import type { Setting } from './setting.ts';

/** Where one piece of a line's bottom or blocking begins and ends along the line, and why. */
export interface Stretch {
    readonly from: Ticks; readonly to: Ticks;
    /** Its length with the coffer at the size it is cut to; the play beside a bottom counts half, be it an odd tick or not. */
    readonly cut: number;
    readonly why: readonly WhyTerm[];
    readonly bay: Bay | null;
    readonly letter: string | null;
}

/** A coffer's size along one direction, at the words that say how the coffers come about. */
export function cofferTerm({ ceiling: { across, down, room } }: Setting, along: Direction, coffer: Ticks): WhyTerm {
    const { spacing } = along === 'east-west' ? across : down;
    const at = spacing.by === 'number' ? spacing.coffers.at : spacing.by === 'size' ? spacing.size.at : room.grid?.at;
    return term('coffer', 1, coffer, at);
}

export function sideTerm(line: Line): WhyTerm {
    return line.section.sideThickness.why.terms[0]!;
}

/** Through lines run from band to band, or from splice to splice; the others from crossing to crossing. */
export function stretchesOf(setting: Setting, line: Line, part: 'bottom' | 'blocking'): Stretch[] {
    if (line.through) return throughStretches(setting, line);
    return setting.bays[line.runs].map(bay => cutBetween(setting, line, bay, part));
}

/**
 * From the edge of the piece that runs through before it to the edge of the one after it: coffer + a side at each
 * crossing, and for a bottom half of the play beside the bottom that it meets. At the band or wall: to its face.
 */
function cutBetween(setting: Setting, line: Line, bay: Bay, part: 'bottom' | 'blocking'): Stretch {
    const [high, low] = part === 'bottom' ? [bottomHigh, bottomLow] : [channelHigh, channelLow];
    const from = bay.before ? high(bay.before) : bay.start, to = bay.after ? low(bay.after) : bay.end;
    const why = [cofferTerm(setting, line.runs, bay.end - bay.start)];
    let cut = bay.cutCoffer;
    const ends: [Line | null, Ticks][] = [[bay.before, bay.start - from], [bay.after, to - bay.end]];
    for (const [other, reach] of ends) {
        if (!other) continue;
        const side = other.section.sideThickness.ticks;
        why.push(sideTerm(other), term(`gap beside the bottom of line ${other.name}`, 1, reach - side));
        cut += side + (part === 'bottom' ? other.section.fit.ticks / 2 : 0);
    }
    return { from, to, cut, why, bay, letter: null };
}

function throughStretches(setting: Setting, line: Line): Stretch[] {
    return spliced(line.start, line.splices, line.end, roomTerm(setting, line.runs), bandTerm(setting, 1), setting.step);
}

/** The room from wall to wall, at the words of a wall that says so. */
export function roomTerm({ ceiling: { room: { walls }, width, length } }: Setting, along: Direction): WhyTerm {
    return along === 'east-west' ? term('room', 1, width, (walls.north ?? walls.south)?.at) : term('room', 1, length, (walls.east ?? walls.west)?.at);
}

export function bandTerm({ ceiling: { band } }: Setting, times: number): WhyTerm {
    const thickness = band?.thickness;
    return term('band', times, thickness?.ticks ?? 0, thickness?.why.terms[0]?.at);
}

/**
 * The pieces of a run from `start` to `end`: in whole it is `room` less `band` at each end. A splice that is said where the
 * tape has no mark is cut at the next mark from the start, for both pieces, so that the run is no shorter or longer for it.
 */
export function spliced(start: Ticks, splices: readonly Splice[], end: Ticks, room: WhyTerm, band: WhyTerm, step: Ticks): Stretch[] {
    const mark = (place: Ticks): Ticks => place === end ? end : start + roundTo(place - start, step);
    const less = (t: WhyTerm): WhyTerm => term(t.what, -t.times, t.ticks, t.at);
    const at = ({ at, place, said }: Splice): WhyTerm => term(`splice ${place}`, 1, at, said);
    return stretches(start, splices, end).map(([from, to], i, all) => {
        const first = i === 0 ? band : at(splices[i - 1]!);
        const last = i === all.length - 1 ? [room, less(band)] : [at(splices[i]!)];
        return { from, to, cut: mark(to) - mark(from), why: [...last, less(first)], bay: null, letter: spliceLetter(i, all.length) };
    });
}
