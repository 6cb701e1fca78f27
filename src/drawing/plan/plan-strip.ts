import { cutSizeOf } from '../../ceiling/coffer-size.ts';
import { aroundWords } from '../../ceiling/around-words.ts';
import { joistsOf } from '../../ceiling/joists.ts';
import type { Ceiling } from '../../ceiling/model.ts';
import { dimensionsOf, isAsked, type Dimension } from '../../measure/dimensions.ts';
import { knownWords } from '../../job/status.ts';
import { grouped } from '../../plain/groups.ts';
import { capitalized } from '../../plain/words.ts';
import type { Show } from '../../quantity/print-length.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import type { Part, TakeOff } from '../../takeoff/model.ts';
import { surveyedOf } from '../../survey/survey.ts';
import { surveyNotes } from '../../survey/told.ts';
import { line, type Item } from '../display-list.ts';
import { countedFigures, figure, figureWithUnit, sizeWithUnit } from '../figures.ts';
import type { SectionOfLines } from '../section/context.ts';
import { inTwoColumns, SAMPLE_WIDTH, SYMBOL_WIDTH, type StripBlock, type StripRow } from '../sheet/strip.ts';
import type { PenName } from '../pens.ts';
import { symbol, type PlacedFixture } from './fixtures.ts';
import { runsAskew } from './line-ends.ts';
import { isRectangular } from './labels.ts';
import { stroke } from './marks.ts';
import { isRectangle } from './wall-dimensions.ts';

/** Key, notes, counts, fixtures and cautions of the plan's sheet. */
export function planStrip(
    ceiling: Ceiling, takeOff: TakeOff, sections: readonly (SectionOfLines & { readonly sheet: string })[], fixtures: readonly PlacedFixture[],
    { hidden, bows, forClient, alone }: { readonly hidden: boolean; readonly bows: number | undefined; readonly forClient: boolean; readonly alone: boolean },
): readonly StripBlock[] {
    const show = ceiling.room.job.show.value;
    return [
        { id: 'key', heading: 'KEY', rows: keyRows(ceiling, takeOff, fixtures, { hidden, bows, forClient }) },
        { id: 'notes', heading: 'NOTES', rows: numbered(noteWords(ceiling, takeOff, sections, { bows, forClient, alone })) },
        ...forClient ? [] : [{ id: 'pieces', heading: 'PIECES', rows: countRows(takeOff) }],
        { id: 'fixtures', heading: 'FIXTURES, FROM THE NORTH-WEST CORNER', more: '… and more: see the job.', rows: fixtures.map(({ fixture, x, y }) => ({ kind: 'pair', left: fixture.name, right: `${figure(x, show)} east, ${figure(y, show)} south` })) },
        { id: 'care', heading: 'CARE', rows: careRows(fixtures) },
    ];
}

function keyRows(
    ceiling: Ceiling, takeOff: TakeOff, fixtures: readonly PlacedFixture[],
    { hidden, bows, forClient }: { readonly hidden: boolean; readonly bows: number | undefined; readonly forClient: boolean },
): readonly StripRow[] {
    const has = (part: Part) => takeOff.pieces.some(piece => piece.part === part);
    const stretch = (pen: PenName, words: string): StripRow => ({ kind: 'sample', words, draw: (left, middle) => [line([left, middle], [left + SAMPLE_WIDTH, middle], pen)] });
    const middleOf = (draw: (x: number, y: number) => readonly Item[], words: string): StripRow => ({ kind: 'symbol', words, draw: (left, y) => draw(left + SYMBOL_WIDTH / 2, y) });
    const seams = [...grouped(takeOff.pieces.filter(({ part }) => part === 'panel'), ({ coffer }) => coffer).values()].some(own => own.length > 1);
    const spliced = ceiling.lines.some(each => each.splices.length > 0 || each.sideSplices !== undefined) || Object.values(ceiling.around).some(own => own !== null && (own.splices.length > 0 || own.kind === 'half-beam' && own.sideSplices !== undefined));
    return [
        stretch('cut', 'wall, inner face'),
        ...(!forClient && bows !== undefined && bows > 1 ? [stretch('nail', `wall as found, its bow ${bows} times as deep`)] : []),
        ...(has('side') ? [stretch('edge', 'face of a side, the coffer’s edge')] : []),
        ...(has('bottom') || has('band') ? [stretch('thin', [has('bottom') ? 'edge of a bottom' : '', has('band') ? 'band' : '', 'joint'].filter(Boolean).join(', '))] : []),
        ...(has('trim') || seams ? [stretch('fine', [has('trim') ? 'ceiling trim, miter' : '', seams ? 'seam of panels' : ''].filter(Boolean).join(', '))] : []),
        ...(hidden && (has('spacer') || has('cleat')) ? [stretch('hidden', 'hidden: spacer, cleat')] : []),
        ...(!forClient && joistsOf(ceiling) ? [stretch('hidden', 'joist, over the ceiling')] : []),
        ...(ceiling.lines.length > 0 ? [stretch('center', 'center of a beam')] : []),
        ...inTwoColumns([
            ...(spliced ? [middleOf((x, y) => stroke([x, y]), 'splice')] : []),
            ...[...new Set(fixtures.map(({ fixture }) => fixture.kind))].map(kind => middleOf((x, y) => symbol(kind, [x, y], 4.2), kind.replace('-', ' '))),
        ]),
    ];
}

function numbered(notes: readonly string[]): readonly StripRow[] {
    return notes.map((words, i) => ({ kind: 'note', mark: String(i + 1), words }));
}

function noteWords(
    ceiling: Ceiling, takeOff: TakeOff, sections: readonly (SectionOfLines & { readonly sheet: string })[],
    { bows, forClient, alone }: { readonly bows: number | undefined; readonly forClient: boolean; readonly alone: boolean },
): readonly string[] {
    const show = ceiling.room.job.show.value, f = (ticks: Ticks) => sizeWithUnit(ticks, show);
    const { room, band, around, across, down } = ceiling, hasHalfBeam = Object.values(around).some(own => own?.kind === 'half-beam');
    const through = throughWords(ceiling);
    const cutBetween = takeOff.pieces.filter(piece => piece.part === 'bottom' && ceiling.lines.some(each => each.name === piece.line && !each.through));
    const lengths = countedFigures(cutBetween.map(piece => piece.cutBack), show);
    return [
        coffersNote(ceiling, show),
        ...sections.map(({ section, lines, sheet }) =>
            `${sections.length === 1 ? 'Beams' : `Line${lines.length === 1 ? '' : 's'} ${lines.map(each => each.name).join(', ')}:`} ${f(section.outerWidth!.ticks)} wide, ${f(section.depth!.ticks)} deep${alone ? '' : `; section on ${sheet}`}.`),
        ...hasHalfBeam ? aroundWords(around, f).map(words => `${capitalized(words)}.`) : [band ? `Band ${f(band.thickness.ticks)} thick; its lower edge ${bandWords(band.lowerEdge.ticks - (sections[0]?.section.depth?.ticks ?? band.lowerEdge.ticks), f)}.` : ceiling.lines.length > 0 ? 'No band: beams end at the walls.' : 'No band, no beams.'],
        ...floorNote(ceiling, show),
        ...(through && !forClient ? [`Bottoms run through ${through}${lengths.length === 0 ? '.' : `; cut between: ${few(lengths).join(', ')}.`}`] : []),
        ...cornerNote(ceiling),
        ...[across, down].filter(run => run.residue.ticks !== 0).map(run => `Rounding leaves ${f(Math.abs(run.residue.ticks))} ${run.residue.ticks < 0 ? 'too little' : 'over'} along the ${run.along === 'east-west' ? 'north' : 'west'} wall: ${RESIDUE[run.residue.place]}.`),
        ...diagonalNotes(ceiling, show), ...measuredNotes(ceiling), ...forClient ? [] : bowNotes(ceiling, show, bows),
        ...forClient ? [] : surveyedNotes(ceiling, takeOff),
        [standNote(ceiling), rowsNote(ceiling, show), room.job.show.value === 'millimeters' ? 'Millimeters. ' : '', 'Use the figures; do not scale.'].join(''),
    ];
}

/** From where the figures of the lines count. */
function standNote(ceiling: Ceiling): string {
    const askew = ceiling.lines.filter(runsAskew), along = askew.length < ceiling.lines.length;
    return [
        along ? isRectangle(ceiling) ? 'Lines are placed by their centers, from the west and the north wall. ' : 'Lines along the compass are placed by their centers, from the westernmost and the northernmost point of the walls. ' : '',
        askew.length > 0 ? `${along ? 'Those that run askew' : 'Lines'} are placed by their centers, along the wall at which they begin. ` : '',
        isRectangle(ceiling) ? '' : 'Lengths of walls stand beside them. ',
    ].join('');
}

/** What a row of figures along the plan comes to, where no wall beside it is as long. */
function rowsNote(ceiling: Ceiling, show: Show): string {
    const isAskew = ceiling.walls.some(({ from, to }) => from.x !== to.x && from.y !== to.y);
    if (!isAskew || ceiling.lines.every(runsAskew)) return '';
    const [wide, long] = [ceiling.width, ceiling.length].map(ticks => figureWithUnit(ticks, show));
    return `Rows of figures run square from the westernmost to the easternmost point, ${wide}, and from the northernmost to the southernmost, ${long}; they do not add up to a wall that runs askew. `;
}

/** From corner to corner, as the tape says. */
function diagonalNotes({ room: { diagonals } }: Ceiling, show: Show): readonly string[] {
    return diagonals.length === 0 ? [] : [`Measured from corner to corner: ${diagonals.map(({ from, to, ticks }) => `${from} to ${to} ${figureWithUnit(ticks, show)}`).join(', ')}.`];
}

/** The direction that runs through; what the text says of one crossing or another, and deeper lines, come on top. */
function throughWords({ room, lines, crossings }: Ceiling): string | undefined {
    const runs = room.grid?.through?.value;
    if (!runs || lines.length === 0) return undefined;
    const said = room.crossings.flatMap(({ name, through }) => (through ? [`line ${through.value} at ${name}`] : [])), dying = crossings.some(({ flush }) => !flush);
    const own = lines.filter(line => line.runs === runs), where = own.some(runsAskew) ? `in ${few(own.map(({ name }) => name), 'more lines', 9).join(', ')}` : runs;
    return [where, ...said.length > 0 ? [` (${few(said, 'more crossings', 6).join(', ')})`] : [], ...dying ? [', and in deeper lines'] : []].join('');
}

const RESIDUE = { 'outer-coffers': 'in the outer coffers', band: 'at the band', spread: 'spread over the coffers' } as const;

function coffersNote(ceiling: Ceiling, show: Show): string {
    const cut = ceiling.coffers.map(coffer => cutSizeOf(ceiling, coffer)), [widths, lengths] = [cut.map(({ width }) => width), cut.map(({ length }) => length)];
    const sizes = new Set(cut.map(({ width, length }) => `${width} ${length}`)).size;
    const range = (cut: readonly Ticks[]) => (Math.min(...cut) === Math.max(...cut) ? figureWithUnit(cut[0]!, show) : `${figureWithUnit(Math.min(...cut), show)} to ${figureWithUnit(Math.max(...cut), show)}`);
    const words = `${range(widths)} × ${range(lengths)}`;
    if (!ceiling.coffers.every(isRectangular)) return `${ceiling.coffers.length === 1 ? 'One coffer' : `${ceiling.coffers.length} coffers`}; where one is not a rectangle, the figures are those of the box around it.`;
    if (ceiling.coffers.length === 1) return `One coffer, ${words}.`;
    return sizes === 1 ? `${ceiling.coffers.length} coffers, all ${words}.` : `${ceiling.coffers.length} coffers, ${words}.`;
}

/** How much head room the beams leave. */
function floorNote({ room: { height }, lines, band, beams }: Ceiling, show: Show): readonly string[] {
    const lowest = Math.max(band?.lowerEdge.ticks ?? 0, ...lines.map(({ section }) => section.depth?.ticks ?? 0));
    return height && lowest > 0 ? [`${figureWithUnit(height.value, show)} from the floor to the ceiling, ${figureWithUnit(height.value - lowest - (beams?.profile.back?.thickness?.value.ticks ?? 0), show)} to the lowest edge.`] : [];
}

/** How the walls and the diagonals are known, when and by whom, where the room says it. */
function measuredNotes({ room }: Ceiling): readonly string[] {
    const asked = isAsked(room), all = dimensionsOf(room).filter(({ kind, known, by }) => (kind === 'wall' || kind === 'diagonal') && (asked || kind === 'wall' && (known === 'measured' || by !== undefined)));
    const wordsOf = (dimension: Dimension): string => (!asked && dimension.known === 'unsaid' ? `measured by ${dimension.by}` : knownWords(dimension));
    return [...grouped(all, wordsOf)].map(([words, own]) => {
        const [walls, diagonals] = (['wall', 'diagonal'] as const).map(of => own.filter(({ kind }) => kind === of).map(({ name }) => name)) as [string[], string[]];
        const named = [...walls.length > 0 ? [`the ${walls.join(', ')} wall${walls.length === 1 ? '' : 's'}`] : [], ...diagonals.map(name => (name === '' ? 'no diagonal, so the room is taken to be square' : `the diagonal from ${name}`))];
        return `${capitalized(KNOWN_AS[words] ?? words)}: ${named.join(', ')}.`;
    });
}
const KNOWN_AS: Readonly<Record<string, string>> = { 'assumed': 'not measured', 'not said': 'not said how they are known' };

/**
 * Walls that are not straight or not plumb: how far they stand in or back, and where, from their west or north ends. Pieces are drawn as they are listed, to
 * the strings; `bows`: how many times deeper than they are the bows are drawn, dashed.
 */
function bowNotes({ room: { bows = {} }, walls }: Ceiling, show: Show, times: number | undefined): readonly string[] {
    const f = (ticks: Ticks): string => figureWithUnit(Math.abs(ticks), show), way = (ticks: Ticks): string => (ticks > 0 ? 'into the room' : 'back');
    const told = walls.flatMap(({ name }) => {
        const { readings = [], lean } = bows[name] ?? {};
        const read = readings.map(({ value, place, from }) => `${f(value)} ${way(value)} at ${f(place)}${from ? ` from ${from}` : ''}`);
        const all = [...read.length > 0 ? [few(read, 'more places', 6).join(', ')] : [], ...lean ? [`${f(lean.value)} ${way(lean.value)} under the ceiling`] : []];
        return all.length > 0 ? [`The ${name} wall as found: ${all.join('; ')}.`] : [];
    });
    if (told.length === 0) return [];
    const deeper = times !== undefined && times > 1 ? `; dashed: its bow ${times} times as deep, not in files at true size` : '';
    return [...told, `The heavy line is the face of a wall as found${deeper}. Pieces stand as listed, to a string from corner to corner.`];
}

/** How level the ceiling is, and how the sides hang for it. */
function surveyedNotes(ceiling: Ceiling, takeOff: TakeOff): readonly string[] {
    const surveyed = surveyedOf(ceiling, takeOff);
    return surveyed ? surveyNotes(surveyed, ceiling.room.job) : [];
}

function bandWords(below: Ticks, f: (ticks: Ticks) => string): string {
    return below === 0 ? 'flush with the beams' : `${f(Math.abs(below))} ${below > 0 ? 'below' : 'above'} the beams`;
}

function cornerNote(ceiling: Ceiling): readonly string[] {
    if (ceiling.crossings.length === 0) return [];
    const sides = ceiling.lines[0]!.section.profile.sides;
    if (sides?.corners.value !== 'butted') return ['Sides are mitered in the corners of the coffers.'];
    return [`Sides are butted; those running ${sides.past?.value ?? ceiling.room.grid.through.value} run past.`];
}

/** The first of a long list, and how many more there are. */
function few(words: readonly string[], rest = 'more lengths in the cut list', most = 4): readonly string[] {
    return words.length <= most ? words : [...words.slice(0, most - 1), `${words.length - most + 1} ${rest}`];
}

const COUNTED: readonly (readonly [Part, string])[] = [
    ['panel', 'panels'], ['blocking', 'blocking'], ['spacer', 'spacers'], ['side', 'sides'], ['cleat', 'cleats'], ['bottom', 'bottoms'], ['timber', 'timbers'], ['molding', 'moldings'], ['trim', 'ceiling trim'], ['band', 'band'],
];

function countRows(takeOff: TakeOff): readonly StripRow[] {
    const counts = COUNTED.map(([part, words]) => [words, takeOff.pieces.filter(piece => piece.part === part).length] as const)
        .filter(([, count]) => count > 0);
    if (counts.length === 0) return [];
    return [
        ...inTwoColumns(counts.map(([left, count]): StripRow => ({ kind: 'pair', left, right: String(count) }))),
        { kind: 'pair', left: 'in all', right: String(takeOff.pieces.length), total: true },
    ];
}

function careRows(fixtures: readonly PlacedFixture[]): readonly StripRow[] {
    const live = fixtures.length > 0 ? 'Wiring, boxes, sprinklers, alarms and registers' : 'Wiring, boxes, sprinklers and alarms';
    return [
        { kind: 'note', mark: '!', words: 'Overhead work: steady footing, eye protection, nobody below.' },
        { kind: 'note', mark: '!', words: 'Dust of old paint, plaster and texture may hold lead or asbestos: have them tested first.' },
        { kind: 'note', mark: '!', words: `${live} stay reachable and clear as local codes say; licensed people move them.` },
    ];
}
