import { tapeOf } from '../../job/tape.ts';
import type { JobSettings } from '../../job/model.ts';
import { citation } from '../../data/published.ts';
import { WITHDRAWAL } from '../../data/fasteners.ts';
import { counted, listed } from '../../plain/words.ts';
import { printLength, printMark, type Show } from '../../quantity/print-length.ts';
import { TICKS_PER_INCH, type Ticks } from '../../quantity/ticks.ts';
import { OFF_EDGE } from '../../takeoff/holding.ts';
import { titleOf, type House, type RoomPieces } from '../house.ts';
import type { Leaf, LeafSection } from '../leaf.ts';
import type { BeamHolding, RoomHolding } from './content.ts';

/** What holds the beams of a house, room by room. */
export function joistsLeaf(house: House, holdingOf: (room: RoomPieces) => RoomHolding | undefined): Leaf {
    const rooms = house.rooms.map(room => ({ room, holding: holdingOf(room) })), { job } = house, known = rooms.some(({ holding }) => holding);
    return {
        title: 'WHAT HOLDS IT', of: titleOf(job), house,
        sections: rooms.map(({ room, holding }) => sectionOf(room, holding, job)),
        notes: known ? [
            `A screw stays ${printLength(OFF_EDGE, job.show.value)} off the edges of joist and board: common practice, no source. Weights: dressed boards at 12% moisture content, Wood Handbook FPL-GTR-282 (2021), Table 5-3b; without fasteners, glue, paint and what is hung there later.`,
            `Published withdrawal value of a wood screw in side grain: ${citation(WITHDRAWAL)}, W = 2850 G² D in pounds for each inch of thread, times the thread in wood (two thirds of a screw's length at most: Appendix L, from memory), times 0.9 for a load that stays (Table 2.3.2). It is told beside the weight as information: it is no design, and says nothing of what the joists, the covering or the fasteners here can carry.`,
        ] : [],
        cautions: known ? [
            'Before a screw goes in, know what the ceiling hides: wiring, pipes, ducts, gas, sprinklers. Work overhead on a platform; nobody below.',
            'What joists may carry besides what they carry now is for the code official and a licensed engineer to say, the more so under a roof, under a bath, and where joists were cut or notched.',
        ] : [],
    };
}

function sectionOf({ room }: RoomPieces, holding: RoomHolding | undefined, job: JobSettings): LeafSection {
    const heading = `room ${room.name}`;
    if (!holding) return { heading, words: [room.joists ? 'It is not known where the joists are: their line does not say where the first one is, or how wide they are.' : 'Nothing is said of its joists: `joists` in its `ceiling`.'] };
    const { joists: { said, runs, all }, beams } = holding, show = job.show.value, odd = said.found.filter(({ how }) => how !== 'missing').length, missing = said.found.length - odd;
    const found = [...odd > 0 ? [`${odd} of them as found`] : [], ...missing > 0 ? [`${missing} missing`] : []];
    return {
        heading,
        words: [`${counted(all.length, 'joist')} ${said.size} running ${runs}, ${printLength(said.every.value, show)} apart${found.length > 0 ? ` (${found.join(', ')})` : ''}, at ${listed(all.map(({ center }) => printMark(Math.round(center), tapeOf(job))))} from the ${runs === 'north-south' ? 'west' : 'north'}.`],
        table: {
            head: ['beam', 'finds', 'screws', 'thread in wood', 'hangs there', show === 'millimeters' ? 'a meter' : 'a foot', 'a screw', 'published for a screw'],
            rows: beams.map(beam => rowOf(beam, job)), figures: [2, 3, 4, 5, 6, 7],
        },
        after: [...new Set(beams.flatMap(({ unknown }) => unknown))].map(stock => `No weight is known of stock ${stock}: its line says no species, or one that no table has.`),
    };
}

function rowOf(beam: BeamHolding, job: JobSettings): string[] {
    const show = job.show.value, or = (text: string | null | undefined): string => text ?? 'not known';
    const { screws, thread, pounds, poundsPerFoot, poundsPerScrew, withdrawal } = beam;
    return [
        nameOf(beam), findsWords(beam), screwWords(beam, show), screws === 0 ? 'none in a joist' : or(thread === null ? null : threadWords(thread, job)),
        or(pounds === null ? null : weight(pounds, show)), or(poundsPerFoot === null ? null : weight(poundsPerFoot * (show === 'millimeters' ? FEET_A_METER : 1), show)),
        screws === 0 ? '' : or(poundsPerScrew === null ? null : weight(poundsPerScrew, show)), screws === 0 ? '' : or(withdrawal && force(withdrawal.ofScrew, show)),
    ];
}

/** `12 of #8 x 2 1/2"`; `6 of #8 x 2 1/2", 4 more into backing`. */
function screwWords({ screws, screw, intoBacking }: BeamHolding, show: Show): string {
    if (screws === null) return 'not said';
    const kind = `of #${screw!.gauge} x ${printLength(screw!.length, show)}`;
    if (!intoBacking) return `${screws} ${kind}`;
    return screws === 0 ? `${intoBacking} ${kind}, into backing` : `${screws} ${kind}, ${intoBacking} more into backing`;
}

function nameOf({ of, isLine }: Pick<BeamHolding, 'of' | 'isLine'>): string {
    return isLine ? `line ${of}` : `half beam, ${of} wall`;
}

/** `crosses 7 joists in 3 pieces`; `runs along 1 joist`. */
function findsWords({ pieces }: BeamHolding): string {
    const finds = pieces.flatMap(piece => piece.finds), none = pieces.filter(piece => piece.finds.length === 0).length;
    const found = (isAlong: boolean): number => new Set(finds.filter(find => find.along === isAlong).map(({ joist }) => joist.center)).size;
    const along = found(true), across = found(false);
    const words = [...across > 0 ? [`crosses ${counted(across, 'joist')}`] : [], ...along > 0 ? [`runs along ${counted(along, 'joist')}`] : []];
    const lost = none === 0 ? [] : [none === pieces.length ? 'finds no joist' : `${counted(none, 'piece')} of ${pieces.length} finds none`];
    return [...words, ...lost].join('; ');
}

function threadWords(thread: Ticks, job: JobSettings): string {
    return thread <= 0 ? 'none' : printMark(thread, { show: job.show.value, step: Math.min(job.cutTo.value, TICKS_PER_INCH / 16) });
}

const FEET_A_METER = 1 / 0.3048;
function weight(pounds: number, show: Show): string {
    return show === 'millimeters' ? `${(pounds * 0.45359237).toFixed(1)} kg` : `${pounds.toFixed(1)} lb`;
}
function force(pounds: number, show: Show): string {
    return show === 'millimeters' ? `${(pounds * 4.4482216).toFixed(0)} N` : `${pounds.toFixed(0)} lb`;
}
