import type { Ceiling } from '../../ceiling/model.ts';
import { solidsOf } from '../../dryfit/solids.ts';
import type { Solid } from '../../dryfit/model.ts';
import { capitalized } from '../../plain/words.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import type { TakeOff } from '../../takeoff/model.ts';
import { group, line, polygon, rectangle, sheet, text, type Group, type Sheet } from '../display-list.ts';
import type { Extent } from '../extent.ts';
import { sizeWithUnit } from '../figures.ts';
import { paneGround, paperFor, PAPERS } from '../paper.ts';
import { largestThatFits, pointsPerTick, sectionScales } from '../scale.ts';
import { ACROSS_GRAIN, blocking, field, sample, stretch, WALL } from '../section/samples.ts';
import { scaleBar } from '../sheet/foot.ts';
import { frame } from '../sheet/frame.ts';
import { SAMPLE_WIDTH, strip, type StripBlock } from '../sheet/strip.ts';
import { titleBlock } from '../sheet/title-block.ts';
import type { SheetOptions } from '../sheet-options.ts';
import { fitText, wrapText } from '../text/fit-text.ts';
import { meetingsOf, placesText, type Meeting } from './kinds.ts';
import { cutPicture, planPicture, windowOf, type Window } from './picture.ts';
import { meetingWords } from './words.ts';

/** One way that things meet, ready to be drawn. */
interface ShownMeeting { readonly meeting: Meeting; readonly window: Window; readonly words: readonly string[]; readonly looking: string }

/** Every way that lines, and what runs along walls, meet in a ceiling, with what is said of it. */
export function shownMeetings(ceiling: Ceiling, { pieces }: TakeOff): readonly ShownMeeting[] {
    const f = (ticks: Ticks) => sizeWithUnit(ticks, ceiling.room.job.show.value);
    return meetingsOf(ceiling).map(meeting => {
        const window = windowOf(meeting);
        return { meeting, window, words: meetingWords(meeting, ceiling, pieces, f), looking: `${planeWords(meeting)}, looking ${lookingTo(window)}` };
    });
}

function planeWords({ kind, cut }: Meeting): string {
    return kind === 'corner' ? `Section before wall ${cut}` : `Section along line ${cut}`;
}

const COMPASS = ['north', 'north-east', 'east', 'south-east', 'south', 'south-west', 'west', 'north-west'];

/** One looks to the left of the way that the plane runs; x to the east, y to the south. */
function lookingTo({ way: { x, y } }: Window): string {
    const clockwiseFromNorth = (Math.atan2(y, x) * 180 / Math.PI + 360) % 360;
    return COMPASS[Math.round(clockwiseFromNorth / 45) % 8]!;
}

const ON_A_SHEET = 4, PAD = 14, BETWEEN = 16, HEADING = 30, STEP = 10.6, SIZE = 8.4, UNDER = 12;

/** As many sheets as it takes, four meetings on each: on the left the meeting on the plan, on the right a section through it. */
export function drawMeetings(ceiling: Ceiling, takeOff: TakeOff, options: readonly SheetOptions[]): readonly Sheet[] {
    const all = shownMeetings(ceiling, takeOff), solids = solidsOf(ceiling, takeOff);
    return options.map((each, i) => meetingsSheet(ceiling, takeOff, solids, all.slice(i * ON_A_SHEET, (i + 1) * ON_A_SHEET), i * ON_A_SHEET, each));
}

/** How many sheets there will be. */
export function meetingSheets(ceiling: Ceiling): number {
    return Math.ceil(meetingsOf(ceiling).length / ON_A_SHEET);
}

function meetingsSheet(ceiling: Ceiling, { pieces }: TakeOff, solids: readonly Solid[], shown: readonly ShownMeeting[], before: number,
    options: SheetOptions): Sheet {
    const { room } = ceiling, show = room.job.show.value, paper = options.paper === undefined ? paperFor(show) : PAPERS[options.paper],
        id = options.sheet ?? 'C-3';
    const framed = (scale: string) => frame(paper, titleBlock(room.job, {
        unnamed: 'Coffered ceiling', room: room.title ?? room.name, drawing: ['How beams meet'], scale, sheet: id, of: options.of,
    }));
    const { area } = framed(''), width = (area.right - area.left) / 2, height = (area.foot - area.top - 34) / 2;
    const wide = (width - 2 * PAD - BETWEEN) / 2, largest = Math.max(...shown.map(({ window }) => 2 * window.half)),
        deepest = Math.max(...shown.map(({ window }) => window.deep));
    const words = Math.max(...shown.map(each => linesOf(each, width - 2 * PAD).flat().length)) * STEP, high = height - HEADING - UNDER - words - 14;
    const scale = largestThatFits(sectionScales(show), k => largest * k <= Math.min(wide, high) && deepest * k + 10 <= high), k = pointsPerTick(scale);
    const whole = framed(scale.label);
    const title = ['How beams meet', room.title ?? room.name, room.job.title?.value].filter(Boolean).join(', ');
    const cells = shown.map((each, i) => {
        const left = area.left + (i % 2) * width, top = area.top + Math.floor(i / 2) * height;
        return cell(each, before + i + 1, ceiling, pieces, solids, { left: left + PAD, top: top + 10, right: left + width - PAD, foot: top + height }, k);
    });
    return sheet({ id, title, description: `${shown.map(({ meeting }) => `${meeting.title}: ${placesText(meeting)}.`).join(' ')}` }, paper, [
        ...cells, ...scale.label === 'not to scale' ? [] : [scaleBar([area.right - 20, area.foot - 26], k, 'section', show, 200)],
        strip(blocks(), whole.strip), whole.group,
    ], { pointsPerTick: k, origin: [area.left, area.foot] });
}

function cell(shown: ShownMeeting, number: number, ceiling: Ceiling, pieces: TakeOff['pieces'], solids: readonly Solid[], { left, top, right }: Extent,
    k: number): Group {
    const { meeting, window } = shown, side = 2 * window.half * k, heading = fitText(meeting.title, right - left - 26, 11.5, 7, 600), from = top + HEADING;
    const plan: Extent = { left, top: from, right: left + side, foot: from + side },
        cut: Extent = { left: plan.right + BETWEEN, top: from, right: plan.right + BETWEEN + side, foot: from + Math.max(side, window.deep * k + 10) };
    const under = Math.max(plan.foot, from + window.deep * k + 10) + UNDER;
    const [places, told] = linesOf(shown, right - left);
    return group(`meeting.${number}`, { title: meeting.title }, [
        text([left, top + 12], String(number), { size: 13, weight: 600 }), text([left + 20, top + 12], heading.text, { size: heading.size, weight: 600 }),
        line([left, top + 18], [right, top + 18], 'thin'),
        planPicture(`meeting.${number}.plan`, meeting, window, ceiling, pieces, plan),
        cutPicture(`meeting.${number}.cut`, meeting, window, ceiling, solids, cut),
        ...places.map((words, i) => text([left, under + i * STEP], words, { size: SIZE, weight: 600 })),
        ...told.map((words, i) => text([left, under + (places.length + i) * STEP], words, { size: SIZE })),
    ]);
}

/** Where it is, then what is said of it, as lines of this width. */
function linesOf({ meeting, words, looking }: ShownMeeting, width: number): readonly [readonly string[], readonly string[]] {
    return [wrapText(`${capitalized(placesText(meeting))}. ${looking}.`, width, SIZE, 600), wrapText(words.join(' '), width, SIZE)];
}

/** One meeting alone, on a ground of this width in points. */
export function drawPaneMeeting({ meeting, window }: ShownMeeting, id: string, ceiling: Ceiling, pieces: TakeOff['pieces'], solids: readonly Solid[],
    width: number): Sheet {
    const side = (width - 2 * 4 - BETWEEN) / 2, k = side / (2 * window.half), high = Math.max(side, window.deep * k + 10),
        plan: Extent = { left: 4, top: 4, right: 4 + side, foot: 4 + side };
    return sheet({ id, title: meeting.title, description: placesText(meeting) }, paneGround(width, high + 8), [
        planPicture('plan', meeting, window, ceiling, pieces, plan),
        cutPicture('cut', meeting, window, ceiling, solids, { left: plan.right + BETWEEN, top: 4, right: width - 4, foot: 4 + high }),
    ]);
}

function blocks(): readonly StripBlock[] {
    return [
        { id: 'key', heading: 'KEY', rows: [
            stretch('on the plan: edge of a side, of a bottom', 'edge'), stretch('blocking and cleats above the bottoms', 'hidden'), ACROSS_GRAIN,
            sample('wood cut along the grain',
                (left, middle) => [polygon(field(left, middle), 'edge'),
                ...[-2, 2].map(off => line([left, middle + off], [left + SAMPLE_WIDTH, middle + off], 'grain'))]),
            blocking('blocking, cut across'),
            sample('beyond the cut', (left, middle) => [rectangle(left, middle - 6, left + SAMPLE_WIDTH, middle + 6, 'beyond', 'wash')]), WALL,
        ] },
        { id: 'notes', heading: 'NOTES', rows: [
            'Each way of meeting is drawn once, at the first place named.', 'On the left as on the plan, north up; on the right the section.',
            'Angles are those of the saw, from square.', 'Drawn from the pieces of the cut list, in their places.', 'Use the figures; do not scale.',
        ].map((words, i) => ({ kind: 'note', mark: String(i + 1), words })) },
    ];
}
