import { tapeOf } from '../../job/tape.ts';
import type { Derived, Section } from '../../ceiling/model.ts';
import { contextIn, sectionsOf, type SectionOfLines } from '../../drawing/section/context.ts';
import type { Group } from '../../drawing/display-list.ts';
import { drawPaneSection } from '../../drawing/section/pane-section.ts';
import { toPaneSvg } from '../../drawing/svg/svg.ts';
import { drawTolerance } from '../../drawing/tolerance/figure.ts';
import { drawRunStrip } from '../../drawing/tolerance/run-strip.ts';
import { linesNamed, sizesOf } from '../../rules/support/words.ts';
import type { Show } from '../../quantity/print-length.ts';
import { worstCase } from '../../quantity/tolerance.ts';
import type { JobSettings, Profile } from '../../job/model.ts';
import type { Source } from '../../provenance/source.ts';
import { PARTS, type Part } from '../../takeoff/model.ts';
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
export interface LengthShown { readonly name: string; readonly figure: string; readonly off: string; readonly why: WhyWords }
export interface CaseShown {
    readonly id: string; readonly title: string; readonly svg: string; readonly times: number;
    readonly verdict: string; readonly isWrong: boolean; readonly reasons: readonly { readonly words: string; readonly at?: number }[];
}

/** CSS pixels a point of the drawing takes, as in the plan. */
const PIXELS_PER_POINT = 1.2;
const SIZE_UNSAID = { width: 900, height: 680 };
/** From this width on, in pixels, the figures stand beside the section: see style.ts. */
export const SIDE_BY_SIDE = 1000;
const PADDING = 24;

export function sectionContent(room: RoomOnPage, wishes: Wishes): SectionContent {
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
    return {
        title: layout.room.title ?? layout.room.name, show: ceiling.room.job.show.value,
        sections: sectionsOf(ceiling).map(each => shown(each, room, sizes, sources)),
        runs: runCases(ceiling).map(({ strip, cases }) => ({
            title: strip.title, svg: toPaneSvg(drawRunStrip(strip, sizes.figure), { attributesOf: () => ({}) }),
            cases: cases.map(each => caseShown(each, sizes.figure, ceiling.room.job, sources)),
        })),
        sources: sources.list,
    };
}

interface Sizes { readonly section: { readonly width: number; readonly height: number }; readonly figure: number }

function shown(each: SectionOfLines, { ceiling, takeOff }: RoomOnPage, sizes: Sizes, sources: Sources): SectionShown {
    const { section, lines } = each, { job } = ceiling.room, { profile } = section;
    const names = new Set(lines.map(line => line.name));
    const keysOf = (part: Part): readonly string[] => takeOff.pieces.filter(piece => piece.part === part && (part === 'trim' || piece.line !== null && names.has(piece.line))).map(({ id }) => id);
    const drawn = drawPaneSection(section, contextIn(ceiling, each, {}), sizes.section);
    const key = lines.map(line => line.name).join(' ');
    const svg = toPaneSvg({ ...drawn, id: `section-${lines[0]?.name ?? ''}` }, { attributesOf: group => attributesOf(group, profile, keysOf, sources) });
    return {
        key, label: profile.label, lines: linesNamed(lines.map(line => line.name)), pieces: PARTS.filter(part => part !== 'band').flatMap(keysOf), svg,
        notes: drawn.notes.map(({ id, name, words }) => {
            const part = PART_OF_NOTE[id], at = part && placeOf(profile, part);
            // on a page, unlike in a drawing, fractions are written as they are typed
            return { name, words: words.join('; ').replaceAll('\u2044', '/'), ...at && { at: sources.number(at) }, keys: part ? keysOf(part) : [] };
        }),
        lengths: lengthsOf(section, job, sources),
        cases: [fitCase(section, job), spacerCase(section, job)].flatMap(one => one ? [caseShown(one, sizes.figure, job, sources)] : []),
        isExact: [section.fit, section.depth, section.spacerRoom].every(length => !length || length.tolerance.length === 0),
    };
}

const PART_OF_NOTE: Readonly<Record<string, Part>> = { blocking: 'blocking', spacer: 'spacer', cleats: 'cleat', trim: 'trim', side: 'side', rabbet: 'side', bottom: 'bottom' };

function placeOf(profile: Profile, part: Part): Source | undefined {
    const { blocking, spacers, sides, cleats, bottom, trim } = profile;
    return { blocking, spacer: spacers, side: sides, cleat: cleats, bottom, trim, band: undefined }[part]?.at;
}

/** A part is a button that leads to its words, and is lit while the cursor stands in them. */
function attributesOf(
    { part, title, items }: Group, profile: Profile, keysOf: (part: Part) => readonly string[], sources: Sources,
): Readonly<Record<string, string>> {
    const at = part && placeOf(profile, part);
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
        id: figure.id, title: figure.title, svg: toPaneSvg(drawn, { attributesOf: () => ({}) }), times: drawn.times, verdict, isWrong,
        reasons: reasons.map(({ words, at }) => ({ words, ...at && { at: sources.number(at) } })),
    };
}
