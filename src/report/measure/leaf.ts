import type { JobSettings } from '../../job/model.ts';
import { tapeOf } from '../../job/tape.ts';
import { dimensionFigure, dimensionName, offWords } from '../../measure/known-words.ts';
import { knownWords } from '../../job/status.ts';
import { slipWords } from '../../measure/slips.ts';
import type { Stop } from '../../measure/walk.ts';
import { counted, listed } from '../../plain/words.ts';
import { printLength, printMark } from '../../quantity/print-length.ts';
import { titleOf, type House, type RoomPieces } from '../house.ts';
import type { Leaf, LeafSection } from '../leaf.ts';
import type { RoomMeasures } from './content.ts';

/** What is still to measure in the rooms of a house, in the order in which one walks round each. */
export function measureLeaf(house: House, measuresOf: (room: RoomPieces) => RoomMeasures | undefined): Leaf {
    const { job } = house, rooms = house.rooms.map(room => ({ room, measures: measuresOf(room) }));
    return {
        title: 'STILL TO MEASURE', of: titleOf(job), house,
        sections: rooms.flatMap(({ room, measures }) => (measures ? [sectionOf(room, measures, job), ...misreadSection(room, measures, job)] : [])),
        notes: ['Along the walls clockwise from the first one, then the diagonals and the height, then under the ceiling in rows from the north. Write each as it is found, `as measured on` the day `by` whom, and `as verified` once a second reading says the same. Measure after the drywall is up. Common practice, no source.'],
        cautions: [],
    };
}

function sectionOf({ room }: RoomPieces, { stops, least, isAsked, unsaid }: RoomMeasures, job: JobSettings): LeafSection {
    const open = stops.filter(({ todo }) => todo !== 'nothing'), done = stops.filter(({ todo }) => todo === 'nothing');
    return {
        heading: `room ${room.name}`,
        words: [
            open.length === 0 ? `All ${counted(done.length, 'dimension')} of it ${done.length === 1 ? 'is' : 'are'} ${least === 'verified' ? 'verified' : `${least} or better`}.`
                : `${counted(open.length, 'dimension')} of ${stops.length} ${open.length === 1 ? 'is' : 'are'} not ${least === 'verified' ? 'verified' : `${least} yet`}.`,
            ...isAsked || open.length === 0 ? [] : ['Nothing in this room says how its dimensions are known (`as drawn`, `as measured` and so on), so lists do not ask for it.'],
        ],
        table: open.length === 0 ? undefined : {
            head: ['', 'what', 'as it stands', 'known', 'to do', 'where'],
            rows: open.map((stop, i) => {
                const { dimension: one } = stop;
                return [String(i + 1), dimensionName(one), dimensionFigure(one, job), knownWords(one), todoWords(stop), whereWords(stop, job)];
            }),
            figures: [0],
        },
        after: [
            ...done.length > 0 && open.length > 0 ? [`Known well enough: ${listed(done.map(({ dimension }) => `${[dimensionName(dimension), dimensionFigure(dimension, job)].filter(Boolean).join(', ')} (${knownWords(dimension)})`))}.`] : [],
            ...unsaid.map(words => `Not said: ${words}`),
        ],
    };
}

/** Which single reading would explain that the tape does not close. */
function misreadSection({ room }: RoomPieces, { suspects: open, offSquare }: RoomMeasures, job: JobSettings): LeafSection[] {
    const suspects = open.length > 0 ? open : offSquare;
    if (suspects.length === 0) return [];
    const print = (ticks: number): string => printMark(ticks, tapeOf(job));
    return [{
        heading: `room ${room.name}: ${open.length > 0 ? 'the tape does not close' : 'square but for one reading'}`,
        words: [open.length > 0 ? 'One wrong reading would explain it. The likeliest first: usual slips, then those that would have to be off least. Measure that one again first.'
            : 'Measure it again, and the other diagonal too: the room may really be so.'],
        table: {
            head: ['', 'reading', 'reads', 'would have to be', 'off by', 'how it may have come about'],
            rows: suspects.map((one, i) => [String(i + 1), one.name, printLength(one.reads, job.show.value), print(one.should), offWords(one, print), one.slip ? slipWords(one.slip) : '']),
            figures: [0],
        },
    }];
}

function todoWords({ todo, dimension: { known, kind } }: Stop): string {
    if (todo === 'verify') return 'measure a second time';
    return known === 'assumed' && kind === 'diagonal' ? 'measure one, better both' : 'measure';
}

function whereWords({ wall, along, dimension: { fixture, like } }: Stop, job: JobSettings): string {
    const print = (ticks: number): string => printMark(Math.round(ticks), tapeOf(job));
    if (wall !== undefined) return along ? `${print(along)} along wall ${wall}` : `at wall ${wall}`;
    if (like !== undefined) return `taken as long as wall ${like}`;
    return fixture?.x === undefined || fixture.y === undefined ? '' : `${print(fixture.x)} east, ${print(fixture.y)} south`;
}
