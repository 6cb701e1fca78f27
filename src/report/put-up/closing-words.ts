import type { Ceiling } from '../../ceiling/model.ts';
import { closingTime } from '../../job/rates.ts';
import { Rational } from '../../quantity/rational.ts';
import { closingSaid } from '../../takeoff/closing/said.ts';
import type { Way } from '../../takeoff/closing/ways.ts';
import { grouped } from '../../plain/groups.ts';
import { counted, listed } from '../../plain/words.ts';
import { printMark, type Tape } from '../../quantity/print-length.ts';
import { TICKS_PER_FOOT, type Ticks } from '../../quantity/ticks.ts';
import type { Piece } from '../../takeoff/model.ts';
import { minutesText } from '../estimate/words.ts';
import { nameInRoom } from '../../takeoff/ids.ts';
import type { RoomPutUp } from './content.ts';

/** A scrap that is tried; strain goes with the bow and against the square of the length: see takeoff/closing/bending.ts. */
const SCRAP = 2 * TICKS_PER_FOOT;

/** A way in for a closing piece, in words with its figures. What is approximate says so; none of it says that wood will hold. */
function wayWords(way: Way, { overall }: Piece, tape: Tape): string {
    const size = (ticks: Ticks): string => printMark(ticks, tape);
    const wider = (ticks: Ticks): string => (ticks >= tape.step / 2 ? `, its slot ${size(ticks)} wider` : '');
    const eased = (ticks: Ticks): string => (ticks >= tape.step / 2 ? `, its back edge there eased by ${size(ticks)}` : '');
    switch (way.kind) {
        case 'join-first': return `glue its ${way.pieces} pieces together on the floor, ${size(way.long)} long, and lift them as one`;
        case 'open-slots': return `open its slots to the back: ${counted(way.each, 'slot')} at ${way.ends === 1 ? 'one end' : 'each end'}, ${size(way.long)} long and ${size(way.deep)} deep, which leaves ${size(way.leaves)} under them; it goes straight up over the biscuits`;
        case 'swing': return `the end with the biscuits first, the other ${size(way.hangs)} lower (${degrees(way.angle)}), then swung up${eased(way.binds)}${wider(way.slotWider)}`;
        case 'leave-out': return `leave the biscuits out at ${way.ends === 1 ? 'one end' : 'both ends'}, with a block ${size(way.block)} wide glued to the back of the joint${way.swing ? `, and swing it up: the other end ${size(way.swing.hangs)} lower first${eased(way.swing.binds)}${wider(way.swing.slotWider)}` : ''}`;
        case 'spring': return way.figures
            ? `bow it by one push in the middle, ${size(way.bow)} down, about ${Math.round(way.figures.force)} lb (${counted(way.figures.people, 'person', 'people')}), about ${Math.round(way.figures.ofBreaking * 100)} % of the strain at which ${way.figures.species} breaks on average${wider(way.slotWider)}; try it on a scrap first: of one ${size(SCRAP)} long as much strain is a bow of ${size(Math.round(way.bow * (SCRAP / overall) ** 2))}`
            : `bow it by one push in the middle, ${size(way.bow)} down: what its wood bears is not known`;
        case 'splice': return `splice it on ${listed(way.on.map(line => `line ${line}`), 'or')}, each part put up for itself, the joint backed`;
        case 'knee': return `in two in its middle, pushed straight from ${size(way.hangs)} below (${degrees(way.angle)}); relieve the back of the joint by ${size(way.binds)}, or it binds${wider(way.slotWider)}; glue a block ${size(way.block)} wide behind that joint`;
        case 'kerfs': return way.pattern
            ? `bow it, ${size(way.hangs)} down, with ${counted(way.pattern.count, 'kerf')} across its back, ${size(way.pattern.apart)} apart and ${size(way.pattern.depth)} deep; on a scrap first`
            : 'kerfs across its back do not bow it far enough';
    }
}

/** Closing pieces that get in alike, with the best of the ways in that work. */
interface ClosingTold { readonly names: string; readonly wanted: string; readonly ways: readonly string[]; readonly bends: boolean }

export function closingsTold(closings: RoomPutUp['closings'], tape: Tape): ClosingTold[] {
    const each = closings.map(({ closing: { piece, wanted }, ways }) => {
        const best = ways.filter(({ works }) => works === true).slice(0, MOST_WAYS);
        const bends = best.some(({ kind }) => kind === 'spring' || kind === 'kerfs');
        return { name: nameInRoom(piece), wanted: printMark(wanted, tape), ways: best.map(way => wayWords(way, piece, tape)), bends };
    });
    return [...grouped(each, ({ wanted, ways }) => [wanted, ...ways].join(' ')).values()]
        .map(alike => ({ ...alike[0]!, names: listed(alike.map(({ name }) => name)) }));
}
const MOST_WAYS = 3;

/** What getting them in takes by the rates of the labor; nothing where there is no labor at all. */
export function closingTimeWords(closings: RoomPutUp['closings'], ceiling: Ceiling): string[] {
    const { labor } = ceiling.room.rates, those = closings.filter(({ closing: { onlySplice } }) => !onlySplice);
    if (!labor.at || those.length === 0) return [];
    const times = grouped(those, ({ closing: { piece } }) => closingTime(labor, closingSaid(piece, ceiling)?.value)?.value.toFraction());
    return [...times].map(([minutes, own]) => {
        const which = times.size === 1 ? own.length === 1 ? 'it' : 'them' : listed(own.map(({ closing: { piece } }) => nameInRoom(piece)));
        return minutes === undefined ? `What getting ${which} in takes is not in the hours: \`labor\` says no \`closing\`.`
            : `Getting ${which} in takes ${minutesText(new Rational(minutes))}${own.length > 1 ? ' each' : ''} by the rates; that is in the hours of the steps.`;
    });
}

/** How a closing piece moves on its way in, in a few words. */
export function shortWay(way: Way): string {
    switch (way.kind) {
        case 'join-first': return 'joined on the floor to the rest of its run, and lifted with it';
        case 'open-slots': return 'straight up over the biscuits, its slots opened to the back';
        case 'swing': return 'onto the biscuits at its one end, then the other swung up';
        case 'leave-out': return way.swing ? 'without the biscuits at one end: onto those of the other, then swung up' : 'straight up, without biscuits';
        case 'spring': return 'bowed in its middle, then let straight onto the biscuits';
        case 'splice': return 'in two, each part for itself';
        case 'knee': return 'in two halves, pushed straight in the middle';
        case 'kerfs': return 'bowed, with kerfs across its back';
    }
}

function degrees(angle: number): string {
    return `${angle.toFixed(1)}°`;
}
