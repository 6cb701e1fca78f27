import { tapeOf } from '../../job/tape.ts';
import type { Derived, HalfBeam, Section } from '../../ceiling/model.ts';
import { allSectionsOf, drawAnyPaneSection, type AnySection } from '../../drawing/section/all-sections.ts';
import { wallsNamed } from '../../drawing/section/wall-section.ts';
import type { Group } from '../../drawing/display-list.ts';
import { placesText } from '../../drawing/meetings/kinds.ts';
import { drawPaneMeeting, shownMeetings } from '../../drawing/meetings/sheets.ts';
import { dryFitOf } from '../../pipeline/inspect-closely.ts';
import { eachInSteps, type Steps } from '../../plain/steps.ts';
import { capitalized } from '../../plain/words.ts';
import { toPaneSvg } from '../../drawing/svg/svg.ts';
import { drawTolerance } from '../../drawing/tolerance/figure.ts';
import { drawRunStrip } from '../../drawing/tolerance/run-strip.ts';
import { linesNamed, sizesOf } from '../../rules/support/words.ts';
import type { Show } from '../../quantity/print-length.ts';
import { worstCase } from '../../quantity/tolerance.ts';
import type { JobSettings } from '../../job/model.ts';
import { blockOf } from '../../job/parts-of.ts';
import type { Source } from '../../provenance/source.ts';
import { PARTS, type Part, type Piece } from '../../takeoff/model.ts';
import type { PageContent, RoomOnPage, Wishes } from '../page.ts';
import { Sources } from '../shared/sources.ts';
import { whyWords, type WhyWords } from '../shared/why.ts';
import { t } from '../shared/words.ts';
import { runCases } from './runs.ts';
import { fitCase, spacerCase, type ToleranceCase } from './tolerances.ts';

export interface SectionContent extends PageContent {
    readonly title: string;
    readonly show: Show;
    readonly sections: readonly SectionShown[];
    /** How lines, and what runs along walls, meet: each way once. */
    readonly meetings: readonly { readonly title: string; readonly where: string; readonly svg: string; readonly words: readonly string[] }[];
    /** What rounding, press and the saw do along the runs of the room. */
    readonly runs: readonly { readonly title: string; readonly svg: string; readonly cases: readonly CaseShown[] }[];
}
export interface SectionShown {
    /** The same as long as the section is the same one of the room: for what its reader has chosen. */
    readonly key: string;
    readonly label: string;
    readonly lines: string;
    /** Ids of the pieces that are built so. */
    readonly pieces: readonly string[];
    readonly svg: string;
    /** Parts in words, where the picture has no room for them. */
    readonly notes: readonly { readonly name: string; readonly words: string; readonly at?: number; readonly keys: readonly string[] }[];
    readonly lengths: readonly LengthShown[];
    readonly cases: readonly CaseShown[];
    /** Nothing is said that could be off. */
    readonly isExact: boolean;
}
interface LengthShown { readonly name: string; readonly figure: string; readonly off: string; readonly why: WhyWords }
export interface CaseShown {
    readonly id: string; readonly title: string; readonly svg: string; readonly times: number;
    readonly verdict: string; readonly isWrong: boolean; readonly reasons: readonly { readonly words: string; readonly at?: number }[];
}

/** CSS pixels a point of the drawing takes, as in the plan. */
const PIXELS_PER_POINT = 1.42;
const SIZE_UNSAID = { width: 900, height: 680 };
/** From this width on, in pixels, the figures stand beside the section: see style.ts. */
const SIDE_BY_SIDE = 1000;
const PADDING = 24;

export function* sectionInSteps(room: RoomOnPage, wishes: Wishes): Steps<SectionContent> {
    const { ceiling, layout } = room, sources = new Sources();
    const width = wishes.width ?? SIZE_UNSAID.width, height = wishes.height ?? SIZE_UNSAID.height;
    const wide = width >= SIDE_BY_SIDE;
    const points = (pixels: number) => pixels / PIXELS_PER_POINT;
    const sizes: Sizes = {
        section: {
            width: points((wide ? width * 0.56 : width) - PADDING),
            height: points(wide ? Math.max(360, height - 130) : Math.min(Math.max(320, height * 0.72), width * 0.95)),
        },
        figure: points(wide ? width * 0.44 - PADDING - 16 : Math.min(760, width - PADDING)),
    };
    const sections = yield* eachInSteps(allSectionsOf(ceiling), 1, each => shown(each, room, sizes, sources));
    const meetings = yield* meetingsShown(room, points(Math.min(MEETING, width - PADDING)));
    return {
        title: layout.room.title ?? layout.room.name, show: ceiling.room.job.show.value, sections, meetings,
        runs: runCases(ceiling).map(({ strip, cases }) => ({
            title: strip.title, svg: toPaneSvg(drawRunStrip(strip, sizes.figure)),
            cases: cases.map(each => caseShown(each, sizes.figure, ceiling.room.job, sources)),
        })),
        sources: sources.list,
    };
}

/** Width of one, in pixels; the style makes none narrower, so that no letters are smaller than they are drawn. */
const MEETING = 380;

function* meetingsShown({ ceiling, takeOff }: RoomOnPage, width: number): Steps<SectionContent['meetings']> {
    const all = shownMeetings(ceiling, takeOff);
    yield;
    const solids = all.length === 0 ? [] : dryFitOf(ceiling).solids;
    yield;
    return yield* eachInSteps(all, 1, (each, i) => ({
        title: each.meeting.title, where: `${capitalized(placesText(each.meeting))}. ${each.looking}.`, words: each.words.map(words => words.replaceAll('\u2044', '/')),
        svg: toPaneSvg(drawPaneMeeting(each, `meeting-${i + 1}`, ceiling, takeOff.pieces, solids, width)),
    }));
}

interface Sizes { readonly section: { readonly width: number; readonly height: number }; readonly figure: number }

/** A section is the same one as long as it is of the same lines or walls. */
export function keyOf(each: AnySection): string {
    return each.of === 'lines' ? each.lines.lines.map(line => line.name).join(' ') : `along ${each.along.walls.join(' ')}`;
}

function shown(each: AnySection, { ceiling, takeOff }: RoomOnPage, sizes: Sizes, sources: Sources): SectionShown {
    const { job } = ceiling.room, names = namesIn(each), section = each.of === 'lines' ? each.lines.section : undefined;
    const keysOf = (part: Part): readonly string[] => takeOff.pieces.filter(piece => piece.part === part && (part === 'trim' || names.has(piece))).map(({ id }) => id);
    const drawn = drawAnyPaneSection(ceiling, each, sizes.section), placeOf = (part: Part): Source | undefined => placeIn(each, part);
    const svg = toPaneSvg({ ...drawn, id: `section-${keyOf(each).split(' ')[0]}` }, group => attributesOf(group, placeOf, keysOf, sources));
    return {
        key: keyOf(each), ...namesOf(each), pieces: PARTS.flatMap(part => (part === 'band' && section ? [] : keysOf(part))), svg,
        notes: drawn.notes.map(({ id, name, words }) => {
            const part = PART_OF_NOTE[id], at = part && placeOf(part);
            // on a page, unlike in a drawing, fractions are written as they are typed
            return { name, words: words.join('; ').replaceAll('\u2044', '/'), ...at && { at: sources.number(at) }, keys: part ? keysOf(part) : [] };
        }),
        lengths: section ? lengthsOf(section, job, sources) : [],
        cases: section ? [fitCase(section, job), spacerCase(section, job)].flatMap(one => one ? [caseShown(one, sizes.figure, job, sources)] : []) : [],
        isExact: section !== undefined && [section.fit, section.depth, section.spacerRoom].every(length => !length || length.tolerance.length === 0),
    };
}

function namesOf(each: AnySection): { readonly label: string; readonly lines: string } {
    if (each.of === 'lines') return { label: each.lines.section.profile.label, lines: linesNamed(each.lines.lines.map(line => line.name)) };
    return { label: each.along.own.kind === 'band' ? t('Band') : t('Half beam'), lines: wallsNamed(each.along) };
}

/** Whether a piece belongs to what the section is of. */
function namesIn(each: AnySection): { has(piece: Piece): boolean } {
    if (each.of === 'lines') {
        const names = new Set(each.lines.lines.map(line => line.name));
        return { has: ({ line }) => line !== null && names.has(line) };
    }
    const walls = new Set(each.along.walls);
    return { has: ({ line, on }) => line === null && on !== null && walls.has(on) };
}

const PART_OF_NOTE: Readonly<Record<string, Part>> = { blocking: 'blocking', spacer: 'spacer', cleats: 'cleat', trim: 'trim', side: 'side', rabbet: 'side', bottom: 'bottom', molding: 'molding', timber: 'timber', band: 'band', 'wall-cleat': 'cleat' };

function placeIn(each: AnySection, part: Part): Source | undefined {
    if (each.of === 'walls' && each.along.own.kind === 'band') return part === 'band' ? each.along.own.perimeter.at : undefined;
    return blockOf((each.of === 'lines' ? each.lines : each.along.own as HalfBeam).section.profile, part)?.at;
}

/** A part is a button that leads to its words, and is lit while the cursor stands in them. */
function attributesOf(
    { part, title, items }: Group, placeOf: (part: Part) => Source | undefined, keysOf: (part: Part) => readonly string[], sources: Sources,
): Readonly<Record<string, string>> {
    const at = part && placeOf(part);
    if (!part || !at || title === undefined || items.length === 0) return {};
    return { 'class': 'part', 'data-keys': keysOf(part).join(' '), 'data-at': String(sources.number(at)), role: 'button', tabindex: '0', 'aria-label': title };
}

function lengthsOf(section: Section, job: JobSettings, sources: Sources): readonly LengthShown[] {
    const f = sizesOf(job);
    const row = (name: string, length: Derived | undefined): readonly LengthShown[] => {
        if (!length) return [];
        const off = worstCase(length.tolerance);
        return [{ name, figure: f(length.ticks), off: off > 0 ? `± ${f.fine(off)}` : '', why: whyWords(length.why, length.ticks, tapeOf(job), sources) }];
    };
    return [
        ...row(t('Width between the sides'), section.innerWidth), ...row(t('Width of the beam'), section.outerWidth), ...row(t('Depth of the beam'), section.depth),
        ...row(t('Top of the bottom'), section.bottomTop), ...row(t('Top of the cleat'), section.cleatTop), ...row(t('Room for the spacer'), section.spacerRoom), ...row(t('Play of the bottom, in all'), section.fit),
    ];
}

function caseShown({ figure, verdict, isWrong, reasons }: ToleranceCase, width: number, job: JobSettings, sources: Sources): CaseShown {
    const drawn = drawTolerance(figure, width, job.show.value);
    return {
        id: figure.id, title: figure.title, svg: toPaneSvg(drawn), times: drawn.times, verdict, isWrong,
        reasons: reasons.map(({ words, at }) => ({ words, ...at && { at: sources.number(at) } })),
    };
}
