import type { Derived, Section } from '../../ceiling/model.ts';
import { worstCase } from '../../quantity/tolerance.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import { polygon, rectangle } from '../display-list.ts';
import { hatch } from '../fill/hatch.ts';
import { sizeWithUnit } from '../figures.ts';
import { fitText } from '../text/fit-text.ts';
import { SAMPLE_WIDTH, SIZE, type StripBlock, type StripRow } from '../sheet/strip.ts';
import type { Scale } from '../scale.ts';
import type { SectionContext } from './context.ts';
import { ACROSS_GRAIN, blocking, field, sample, SHEET_MATERIAL, stretch } from './samples.ts';
import type { SectionShape } from './shape.ts';

/** Key, what follows from the parts, notes and cautions of the section's sheet. */
export function sectionStrip(section: Section, shape: SectionShape, context: SectionContext, scale: Scale): readonly StripBlock[] {
    return [
        { id: 'key', heading: 'KEY', rows: keyRows(section, shape, context) },
        { id: 'follows', heading: 'WHAT FOLLOWS FROM THE PARTS', rows: whatFollows(section, shape, context) },
        { id: 'notes', heading: 'NOTES', rows: noteRows(section, shape, context, scale) },
        { id: 'care', heading: 'CARE', rows: careRows(context, shape) },
    ];
}

function keyRows(section: Section, shape: SectionShape, context: SectionContext): readonly StripRow[] {
    const { cleats, sides, otherSide, bottom, trim } = section.profile, nailed = [cleats, sides, otherSide, bottom, trim].some(part => part?.nails);
    return [
        ...shape.sheet.size === 0 ? [] : [SHEET_MATERIAL], ACROSS_GRAIN, ...shape.isSolid ? [] : [shape.blocking.isWrapped ? WRAPPED_KEY : blocking('blocking, running on')],
        ...shape.spacer === null ? [] : [sample('beyond the cut', (left, middle) => [polygon(field(left, middle), 'thin', 'wash')])],
        ...context.crossed || context.bandEdge !== undefined || shape.trim !== null ? [stretch('edge beyond: crossing beam, trim, band', 'beyond')] : [],
        ...nailed ? [sample('nail, in its own size', (left, middle) => [rectangle(left, middle - 1.2, left + SAMPLE_WIDTH, middle + 1.2, 'fine', 'paper')])] : [],
    ];
}

const WRAPPED_KEY = sample('what the beam wraps', (left, middle) => [polygon(field(left, middle), 'thin', 'wash'), ...hatch(field(left, middle), 9, true)]);

function whatFollows(section: Section, shape: SectionShape, context: SectionContext): readonly StripRow[] {
    const f = (ticks: Ticks) => sizeWithUnit(ticks, context.job.show.value);
    const rows: StripRow[] = [];
    const add = (left: string, right: string) => rows.push({ kind: 'pair', left, right });
    const derived = (left: string, length: Derived | undefined) => {
        if (length === undefined) return;
        const off = Math.round(worstCase(length.tolerance));
        add(left, `${f(length.ticks)}${off > 0 ? ` ± ${f(off)}` : ''}`);
    };
    const plain = (left: string, ticks: Ticks) => add(left, f(ticks));
    const { depth, blocking, bottom, cleat, spacer, trim } = shape, boards = [['side', shape.side], ...shape.other ? [['other side', shape.other] as const] : []] as const;
    if (!shape.isSolid) derived('inner width', section.innerWidth);
    derived('outer width', section.outerWidth);
    derived('depth of the beam', section.depth);
    if (shape.isSolid) return rows;
    derived('top of the bottom', section.bottomTop);
    derived('top of the cleat', section.cleatTop);
    derived('room for the spacer', section.spacerRoom);
    if (spacer && cleat) plain('spacer clears cleats', cleat.top - blocking.thickness - spacer.height);
    derived('play of the bottom, in all', section.fit);
    if (!blocking.isWrapped) for (const [name, side] of boards) plain(`${name} laps blocking`, blocking.thickness - side.top);
    else plain('bottom clears what it wraps', bottom.top - blocking.thickness);
    if (trim) for (const [name, side] of boards) plain(`trim laps ${name}`, trim.height - side.top);
    if (bottom.place === 'under-sides') plain('bottom beyond each side', (bottom.width - shape.outerWidth) / 2);
    for (const [name, { rabbet, thickness }] of boards) {
        if (rabbet?.edge !== 'lower' || rabbet.face !== 'back') continue;
        const of = name === 'side' ? '' : `, ${name}`, into = shape.other ? `the ${name}` : 'each side';
        plain(`lip left at the groove${of}`, thickness - rabbet.width.ticks);
        if (bottom.place === 'in-rabbets') plain(`bottom let into ${into}`, rabbet.width.ticks);
        else plain(`bottom bears on ${name}`, Math.min(depth, bottom.top + bottom.thickness) - rabbet.height.ticks - bottom.top - bottom.ease);
    }
    return rows;
}

/** About four lines of the strip. */
const LONGEST_LABEL = 500;

function noteRows(section: Section, shape: SectionShape, context: SectionContext, scale: Scale): readonly StripRow[] {
    const f = (ticks: Ticks) => sizeWithUnit(ticks, context.job.show.value);
    const { blocking, bottom, cleat } = shape;
    const foot = bottom.top + bottom.thickness;
    const stack = cleat
        ? [blocking.thickness, cleat.top - blocking.thickness, cleat.foot - cleat.top, bottom.thickness]
        : [blocking.thickness, bottom.top - blocking.thickness, bottom.thickness];
    const { name, label } = section.profile;
    const notes = [
        // the title block has one line for it, which long arguments do not fit in
        ...(label === name ? [] : [`${fitText(label, LONGEST_LABEL, SIZE, SIZE).text}.`]),
        section.profile.back?.thickness ? `Depths are measured down from the panel under the ceiling, which is ${f(section.profile.back.thickness.value.ticks)} thick.` : 'Depths are measured down from the ceiling.',
        ...shape.isSolid ? [] : [`Down through the middle: ${stack.map(f).join(' + ')} = ${f(foot)}.`],
        ...(scale.ratio === 1 ? ['Lay your own stock on this sheet before you cut: print it at 100 %.'] : []),
        ...(context.covering?.thickness ? [] : ['The job does not say what the ceiling is covered with: find out before choosing screws.']),
        'Use the figures; do not scale.',
    ];
    return notes.map((words, i) => ({ kind: 'note', mark: String(i + 1), words }));
}

const WRAPPED = 'Whether what the beam wraps may be nailed to, closed in or loaded is for a licensed person and the local code to say.';

function careRows(context: SectionContext, shape: SectionShape): readonly StripRow[] {
    return [
        shape.blocking.isWrapped ? { kind: 'note', mark: '!', words: WRAPPED }
            : { kind: 'note', mark: '!', words: 'The beam hangs from its screws. Find the framing; whether it may carry the weight is for a licensed person and the local code to say.' },
        { kind: 'note', mark: '!', words: `Look for wires, pipes and ducts ${context.covering ? 'above the board' : 'in the ceiling'} before driving screws.` },
        { kind: 'note', mark: '!', words: 'Old paint, plaster and texture may hold lead or asbestos: have them tested before you drill or sand.' },
    ];
}
