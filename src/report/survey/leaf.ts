import type { JobSettings } from '../../job/model.ts';
import { tapeOf } from '../../job/tape.ts';
import { counted } from '../../plain/words.ts';
import { printLength } from '../../quantity/print-length.ts';
import { LEAST_LAP } from '../../survey/sides.ts';
import { shortenedSpacers } from '../../survey/spacers.ts';
import type { Surveyed, SurveyedSide } from '../../survey/survey.ts';
import { levelWords, planeRows, surveyNotes } from '../../survey/told.ts';
import { shortenedWords, sideNamed, surveyWords, type SurveyWords } from '../../survey/words.ts';
import { titleOf, type House, type RoomPieces } from '../house.ts';
import type { Leaf, LeafSection } from '../leaf.ts';
import type { RoomSurvey } from './content.ts';

/** What the surveyed ceiling leaves of every side of a house, room by room. */
export function surveyLeaf(house: House, surveyOf: (room: RoomPieces) => RoomSurvey | undefined): Leaf {
    const rooms = house.rooms.map(room => ({ room, survey: surveyOf(room) })), { job } = house, known = rooms.some(({ survey }) => survey);
    return {
        title: 'UNDER THE CEILING', of: titleOf(job), house,
        sections: rooms.map(({ room, survey }) => sectionOf(room, survey, job)),
        notes: known ? [
            `Between three readings the ceiling is taken to be flat, beyond them nothing is known. A gap is what is left between side and ceiling; less than nothing is scribed. Depths to the nearest ${job.show.value === 'millimeters' ? '0.5 mm' : '1/64"'}, places along a side from its west or north end. Trim and blocking lap ${printLength(LEAST_LAP, job.show.value)} at least: common practice, no source.`,
        ] : [],
        cautions: known ? [
            'Work overhead on a platform, eyes covered. Before a shim or a screw goes in, know what the ceiling hides: wiring, pipes, gas. Texture and plaster of old houses may hold asbestos: have it looked at before anybody scrapes or sands it.',
        ] : [],
    };
}

function sectionOf({ room }: RoomPieces, survey: RoomSurvey | undefined, job: JobSettings): LeafSection {
    const heading = `room ${room.name}`;
    if (!survey) return { heading, words: ['Nothing is said of how level its ceiling is: `survey` in the room.'] };
    const { surveyed, leftOut, planes, level } = survey, words = surveyWords(job);
    return {
        heading, words: [...surveyNotes(surveyed, job), ...levelWords(level, job)],
        table: {
            head: ['side', 'gap', 'trim laps', 'scribe', 'laps blocking', 'shim over the blocking', 'not known'],
            rows: surveyed.sides.map(side => rowOf(side, words)), figures: [],
        },
        after: [
            ...spacerWords(surveyed, job), ...leftOut,
            ...planes.length > 1 ? [`By the best plane of each slope: ${planeRows(planes, job).map(({ plane, takes }) => `${plane}: ${takes}`).join('; ')}.`] : [],
        ],
    };
}

function rowOf({ under: { piece, length }, gap, trimLap, blockingLap, scribes, shims, unknown }: SurveyedSide, words: SurveyWords): string[] {
    const { deep, over, place } = words, short = (lap: number): string => (lap < LEAST_LAP ? ', too little' : '');
    const at = (along: number): string => `at ${place(along)}`;
    return [
        sideNamed(piece).replace('side ', ''),
        gap ? (deep(gap.least.ticks) === deep(gap.most.ticks) ? deep(gap.least.ticks) : `${deep(gap.least.ticks)} ${at(gap.least.along)} to ${deep(gap.most.ticks)} ${at(gap.most.along)}`) : '',
        trimLap ? `${deep(trimLap.ticks)} ${at(trimLap.along)}${short(trimLap.ticks)}` : '',
        scribes.map(each => `${deep(each.deepest.ticks)} ${at(each.deepest.along)}, ${over(each, length)}`).join('; '),
        blockingLap ? `${deep(blockingLap.ticks)} ${at(blockingLap.along)}${short(blockingLap.ticks)}` : '',
        shims.map(each => `${deep(each.deepest.ticks)}, ${over(each, length)}`).join('; '),
        unknown.map(each => over(each, length)).join('; '),
    ];
}

/** Spacers that have to be cut shorter than the rest, those that come to one length together. */
function spacerWords(surveyed: Surveyed, job: JobSettings): string[] {
    const to = shortenedSpacers(surveyed.spacers, job.cutTo.value), count = to.flatMap(({ spacers }) => spacers).length;
    return count === 0 ? [] : [`Cut ${counted(count, 'spacer')} shorter than the rest, where the ceiling hangs low: ${shortenedWords(to, tapeOf(job)).join('; ')}.`];
}
