import type { JobSettings } from '../../job/model.ts';
import { PASSES } from '../../cutting/at-bench.ts';
import type { BoardAtBench } from '../../measure/bench.ts';
import { piecesWords, recutWords, spoilsWords } from '../../measure/bench-words.ts';
import { LOOK, readingsToTell, SCRAP, type Drift } from '../../measure/drift.ts';
import { sizesOf, type Sizes } from '../../rules/support/words.ts';
import { titleOf, type House, type RoomPieces } from '../house.ts';
import type { Leaf, LeafSection } from '../leaf.ts';
import type { RoomBench } from './content.ts';

/** Measured boards of a house, and the logs of its gauges, room by room. */
export function benchLeaf(house: House, benchOf: (room: RoomPieces) => RoomBench | undefined): Leaf {
    const { job } = house, size = sizesOf(job), rooms = house.rooms.map(room => ({ room, bench: benchOf(room) }));
    const known = rooms.some(({ bench }) => bench && (bench.boards.length > 0 || bench.drifts.length > 0));
    return {
        title: 'AT THE BENCH', of: titleOf(job), house,
        sections: rooms.flatMap(({ room, bench }) => sectionsOf(room, bench, job)),
        notes: known ? [
            `A board does where it is wide and long enough and within ${size.fine(PASSES)} of its stock's thickness; in what nobody sees within twice that. A cutter ${size.fine(LOOK)} off is looked at, ${size.fine(SCRAP)} off its board is scrap. Common practice, no source.`,
            'What is spoiled counts as still to be cut in every plan of boards. What it is cut from again is what a plan at once for the rest of its room does not need: boards on hand, what is left of those that are cut, offcuts that the plan leaves; then a board on hand that it would need for something else.',
            'A trend is told where chance alone would make as clear a one in no more than one of twenty such logs (Kendall\'s rank test); its rate is the middle of the slopes between all pairs of readings (Theil and Sen).',
        ] : [],
        cautions: known ? ['Unplug the router before the collet is touched, and the saw before the fence or the blade.'] : [],
    };
}

function sectionsOf({ room: { name } }: RoomPieces, bench: RoomBench | undefined, job: JobSettings): LeafSection[] {
    const heading = `room ${name}`, size = sizesOf(job);
    if (!bench || bench.boards.length === 0 && bench.drifts.length === 0) return [{ heading, words: ['Nothing was measured at the bench for it: `board` and `gauge` in `measured`.'] }];
    return [
        ...bench.boards.length === 0 ? [] : [{
            heading, words: [],
            table: { head: ['board', 'stock', 'off by', 'will not do', 'will still do for', 'one behind the other, out of its length'], rows: bench.boards.map(one => boardRow(one, size)), figures: [] },
            after: bench.boards.flatMap(({ board, recut }) => (recut.length > 0 ? [`Cut again, since board ${board.name} is off: ${recutWords(recut, job)}.`] : [])),
        }],
        ...bench.drifts.length === 0 ? [] : [{
            heading: `${heading}: gauges`, words: [],
            table: { head: ['what', 'meant', 'readings', 'goes', 'look at it', 'scrap'], rows: bench.drifts.map(one => driftRow(one, size)), figures: [] },
        }],
    ];
}

function boardRow(one: BoardAtBench, size: Sizes): string[] {
    const { board: { name, stock }, off, mayGo, takes } = one;
    const offs = (['width', 'thickness', 'rabbet'] as const).flatMap(what => (off[what] === undefined || off[what] === 0 ? [] : [`${what} ${size.fine(Math.abs(off[what]))} ${off[what] < 0 ? 'under' : 'over'}`]));
    return [name, stock.value.name, offs.length > 0 ? offs.join(', ') : 'nothing', spoilsWords(one), mayGo.length === 0 ? 'nothing that is still to be cut' : piecesWords(mayGo), takes.length === 0 ? '' : piecesWords(takes)];
}

function driftRow({ log, creeps, slope, untilLook, untilScrap }: Drift, size: Sizes): string[] {
    const when = (boards: number | undefined): string => (boards === undefined ? '' : boards === 0 ? 'now' : `after ${boards} more`), many = readingsToTell(slope);
    return [
        log.of ?? 'a cut', size.fine(log.meant.value), log.readings.map(reading => size.fine(reading)).join(', '),
        creeps ? `${size.fine(many * Math.abs(slope))} ${slope > 0 ? 'more' : 'less'} ${many === 1 ? 'a reading' : `in ${many} readings`}` : 'no trend', when(untilLook), when(untilScrap),
    ];
}
