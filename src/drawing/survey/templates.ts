import type { Ceiling } from '../../ceiling/model.ts';
import { endsNamed } from '../../ceiling/shape.ts';
import type { BowedWall } from '../../measure/bowed.ts';
import { wallTemplatesOf } from '../../measure/wall-templates.ts';
import type { ScribeCut } from '../../plane/scribe-cuts.ts';
import { inches, millimeters } from '../../quantity/rational.ts';
import { TICKS_PER_INCH, type Ticks } from '../../quantity/ticks.ts';
import type { Surveyed } from '../../survey/survey.ts';
import { templatesOf } from '../../survey/templates.ts';
import { sideNamed, surveyWords, type SurveyWords } from '../../survey/words.ts';
import { compassOfEnd } from '../../takeoff/ends.ts';
import { group, line, polygon, polyline, rectangle, sheet, text, type Group, type Item, type Point, type Sheet } from '../display-list.ts';
import { drawnFractions } from '../figures.ts';
import { hatch } from '../fill/hatch.ts';
import { PAPERS, POINTS_PER_INCH } from '../paper.ts';

/** Points of the paper for a tick: true size. */
const TRUE = POINTS_PER_INCH / TICKS_PER_INCH;
const MARGIN = 36, HEAD = 58, CAPTION = 30, UNDER = 26, FOOT = 168;

/** What is drawn of a template, whatever it is scribed to. */
interface Scribed extends ScribeCut {
    readonly id: string; readonly piece?: string;
    /** What is scribed, and from which end its places count: `side A-1-north`, `its west end`. */
    readonly name: string; readonly end: string;
    readonly beginsLeft: boolean;
}
/** What the sheets are called by, and how one looks at them. */
interface Looked { readonly id: string; readonly title: string; readonly seen: string; readonly notes: readonly string[] }

/** A length of a template that goes on one row. */
interface Row { readonly template: Scribed; readonly number: number; readonly of: number; readonly from: Ticks; readonly to: Ticks }

/** Templates of the sides that have to be scribed to a ceiling that was surveyed. */
export function drawTemplates(ceiling: Ceiling, surveyed: Surveyed): readonly Sheet[] {
    const scribed = templatesOf(surveyed).map(({ side: { under: { piece } }, ...cut }): Scribed => (
        { ...cut, id: `${piece.id}.${cut.from}`, piece: piece.id, name: sideNamed(piece), end: `its ${compassOfEnd(piece, 'first')} end` }
    ));
    return drawScribed(ceiling, scribed, {
        id: 'scribe', title: 'Scribe templates', notes: BETWEEN_READINGS,
        seen: 'True size. The straight line is the upper edge of the side, seen from the room, face towards you; the hatched wood comes off.',
    });
}

/** Templates of bands and half beams that are scribed to walls that are not straight. */
export function drawWallTemplates(ceiling: Ceiling, walls: readonly BowedWall[]): readonly Sheet[] {
    const scribed = wallTemplatesOf(walls).map(({ bowed: { wall, runs }, ...cut }): Scribed => ({
        ...cut, id: `wall-${wall.name}.${cut.from}`, end: `the ${endsNamed(wall)[0]} end of the wall`,
        name: runs?.kind === 'half-beam' ? `${runs.section.profile.solid ? 'timber' : 'bottom of the half beam'} along wall ${wall.name}` : `band along wall ${wall.name}`,
    }));
    return drawScribed(ceiling, scribed, {
        id: 'scribe-walls', title: 'Scribe templates of the walls', notes: BETWEEN_PLACES,
        seen: 'True size. The straight line is the edge at the wall before it is scribed, seen from below, the wall away from you; the hatched wood comes off.',
    });
}

/**
 * At true size, in rows on letter or A4 paper, with a square on each sheet to measure first: a printer that fits the page to its paper makes every one of
 * them wrong.
 */
function drawScribed({ room }: Ceiling, templates: readonly Scribed[], { id, title, seen, notes }: Looked): readonly Sheet[] {
    const isMetric = room.job.show.value === 'millimeters', paper = PAPERS[isMetric ? 'A4' : 'letter'], words = surveyWords(room.job);
    const run = isMetric ? millimeters(180) : inches(7), pages = pagesOf(templates.flatMap(template => rowsOf(template, run)), paper.height);
    const name = room.title ?? room.name;
    return pages.map((rows, i) => {
        let top = HEAD + MARGIN / 2;
        const drawn = rows.map(row => {
            const at = top;
            top += heightOf(row);
            return drawRow(row, words, paper.width, at);
        });
        return sheet({
            id: `${id}-${i + 1}`, title: `${title}, ${name}, sheet ${i + 1} of ${pages.length}`,
            description: `Templates at true size: ${[...new Set(rows.map(({ template }) => template.name))].join(', ')}.`,
        }, paper, [
            text([MARGIN, MARGIN + 8], `${title}, ${name}`, { size: 13, weight: 600 }),
            text([paper.width - MARGIN, MARGIN + 8], `sheet ${i + 1} of ${pages.length}`, { anchor: 'end' }),
            text([MARGIN, MARGIN + 24], seen, { size: 7.6 }),
            ...drawn, square(isMetric, paper.height, notes),
        ], { pointsPerTick: TRUE, origin: [MARGIN, paper.height - MARGIN] });
    });
}

function rowsOf(template: Scribed, run: Ticks): Row[] {
    const of = Math.max(1, Math.ceil((template.to - template.from) / run));
    return Array.from({ length: of }, (_, i) => {
        const from = template.from + i * run;
        return { template, number: i + 1, of, from, to: Math.min(template.to, from + run) };
    });
}

function heightOf({ template: { deepest } }: Row): number {
    return CAPTION + deepest * TRUE + UNDER;
}

/** As many rows on a sheet as there is room for over the square. */
function pagesOf(rows: readonly Row[], height: number): Row[][] {
    const pages: Row[][] = [];
    let left = 0;
    for (const row of rows) {
        if (heightOf(row) > left || pages.length === 0) {
            pages.push([]);
            left = height - HEAD - FOOT - MARGIN;
        }
        pages.at(-1)!.push(row);
        left -= heightOf(row);
    }
    return pages;
}

function drawRow(row: Row, words: SurveyWords, width: number, top: number): Group {
    const { template: { id, piece, name, end, cut, beginsLeft, deepest }, number, of, from, to } = row, edge = top + CAPTION, long = (to - from) * TRUE;
    const toX = (along: number): number => (beginsLeft ? MARGIN + (along - from) * TRUE : MARGIN + long - (along - from) * TRUE);
    const at = ({ along, depth }: { along: number; depth: number }): Point => [toX(along), edge + depth * TRUE];
    const own = within(cut, from, to), waste = [...own.map(at), ...[...own].reverse().map(({ along }): Point => [toX(along), edge])];
    const foot = edge + deepest * TRUE + 8;
    const caption = `${name}${of > 1 ? `, ${number} of ${of}` : ''}: from ${words.place(from)} to ${words.place(to)} from ${end}, ${words.deep(deepest)} off at the deepest`;
    const bounds = [from, to].flatMap((along): Item[] => [
        line([toX(along), edge - 6], [toX(along), foot], 'hidden'),
        text([toX(along), foot + 8], drawnFractions(words.place(along)), { size: 7, anchor: toX(along) < width / 2 ? 'start' : 'end' }),
    ]);
    return group(`template.${id}.${from}`, { title: caption, ...piece !== undefined && { piece } }, [
        text([MARGIN, top + 14], drawnFractions(caption), { size: 8.4, weight: 600 }),
        ...own.some(({ depth }) => depth > 0) ? hatch(waste, 3.4, false) : [],
        line([toX(from), edge], [toX(to), edge], 'thin'), polyline(own.map(at), 'edge'), ...bounds,
    ]);
}

/** The part of a line between two places. */
function within(cut: ScribeCut['cut'], from: number, to: number): { along: number; depth: number }[] {
    const depthAt = (along: number): number => {
        const next = cut.findIndex(each => each.along >= along), b = cut[next] ?? cut.at(-1)!, a = cut[Math.max(0, next - 1)]!;
        return b.along === a.along ? b.depth : a.depth + (b.depth - a.depth) * (along - a.along) / (b.along - a.along);
    };
    return [{ along: from, depth: depthAt(from) }, ...cut.filter(({ along }) => along > from && along < to), { along: to, depth: depthAt(to) }];
}

const NOTES = ['If it is not, print again at 100 %, and not fitted to the page.', 'Rows of one template are joined at the dashed lines.'];
const BETWEEN_READINGS = ['Leave the line, try the side, plane to it: between three readings', 'the ceiling is taken to be flat. Eyes covered at the plane and overhead.'];
const BETWEEN_PLACES = ['Leave the line, try it on the wall, plane to it: between two places', 'the wall is taken to be straight. Eyes covered at the plane and overhead.'];

/** To be measured before anything is cut out. */
function square(isMetric: boolean, height: number, more: readonly string[]): Group {
    const side = (isMetric ? millimeters(50) : inches(2)) * TRUE, foot = height - MARGIN, size = isMetric ? '50 mm' : '2"';
    return group('square', { title: `A square of ${size}` }, [
        rectangle(MARGIN, foot - side, MARGIN + side, foot, 'thin'),
        polygon([[MARGIN, foot - side], [MARGIN + side, foot]], 'hidden'),
        text([MARGIN + side + 12, foot - side + 12], `Measure this square first: it is ${size} each way.`, { weight: 600 }),
        ...[...NOTES, ...more].map((words, i) => text([MARGIN + side + 12, foot - side + 26 + 14 * i], words)),
    ]);
}
