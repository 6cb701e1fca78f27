import { cutOff } from '../../sawing/cut-off.ts';
import type { SawOrder } from '../../sawing/model.ts';
import { isTurned } from '../../takeoff/ends.ts';
import { circle, line, polygon, rectangle, text, type Item } from '../display-list.ts';
import { figure, figureWithUnit } from '../figures.ts';
import { hatch } from '../fill/hatch.ts';
import { SAMPLE_WIDTH, SYMBOL_WIDTH, type StripBlock, type StripRow } from '../sheet/strip.ts';

/** Key, how to read, the stops, and cautions beside the boards. */
export function boardsStrip(order: SawOrder): readonly StripBlock[] {
    return [
        { id: 'key', heading: 'KEY', rows: keyRows(order) },
        { id: 'notes', heading: 'NOTES', rows: notes(order).map((words, i): StripRow => ({ kind: 'note', mark: String(i + 1), words })) },
        { id: 'stops', heading: 'STOPS, LONG TO SHORT', more: '… the rest: see the saw order.', rows: stopRows(order) },
        { id: 'care', heading: 'CARE', rows: careRows() },
    ];
}

function keyRows({ boards }: SawOrder): readonly StripRow[] {
    const strips = boards.flatMap(b => b.strips);
    const pieces = strips.flatMap(s => s.pieces).map(p => p.piece);
    const sample = (words: string, draw: (left: number, middle: number) => readonly Item[]): StripRow => ({ kind: 'sample', words, draw });
    const block = (left: number, middle: number) => [left, middle - 5, left + SAMPLE_WIDTH, middle + 5] as const;
    return [
        sample('fence', (left, middle) => [rectangle(left, middle - 1.7, left + SAMPLE_WIDTH, middle + 1.7, 'fine', 'tint')]),
        ...pieces.some(p => p.ends.some(isTurned)) ? [
            sample('short point, underneath', (left, middle) => [line([left + SAMPLE_WIDTH / 2, middle - 5], [left + SAMPLE_WIDTH / 2, middle + 5], 'hidden')]),
            sample('miters from the near edge: back above, face below', (left, middle) => [polygon([[left, middle - 2.7], [left + SAMPLE_WIDTH, middle - 2.7], [left + SAMPLE_WIDTH - 4, middle + 2.7], [left + 4, middle + 2.7]], 'thin', 'wash')]),
        ] : [],
        sample('cut off: end trim, waste', (left, middle) => [rectangle(...block(left, middle), 'fine', 'tint')]),
        ...strips.some(s => s.offcut > 0 && !s.kept) ? [sample('offcut too short to keep', (left, middle) => {
            const [l, t, r, f] = block(left, middle);
            return [rectangle(l, t, r, f, 'thin', 'wash'), ...hatch([[l, t], [r, t], [r, f], [l, f]], 5, true)];
        })] : [],
        { kind: 'symbol', words: 'cut mark on the tape', draw: (left, middle) => [polygon([[left + SYMBOL_WIDTH / 2, middle - 3], [left + SYMBOL_WIDTH / 2 + 2.4, middle + 3], [left + SYMBOL_WIDTH / 2 - 2.4, middle + 3]], null, 'ink')] },
        { kind: 'symbol', words: 'number of the stop', draw: (left, middle) => [circle([left + SYMBOL_WIDTH / 2, middle], 5.6, 'thin'), text([left + SYMBOL_WIDTH / 2, middle + 2.5], '7', { size: 6.8, weight: 600, anchor: 'middle' })] },
    ];
}

function notes(order: SawOrder): readonly string[] {
    const { job, boards, steps } = order;
    const show = job.show.value;
    const pieces = boards.flatMap(b => b.strips).flatMap(s => s.pieces).map(p => p.piece);
    const mitered = pieces.some(p => p.ends.some(isTurned));
    const isOnce = steps.some(step => step.do === 'miter' && cutOff(step).length > 0);
    const over = Math.max(0, ...steps.map(s => (s.do === 'crosscut' ? s.over : 0)));
    return [
        'Cut by the stops: each serves all boards. Readings are for laying out and for checking.',
        `The tape is hooked on the left end. Kerf ${figureWithUnit(job.kerf.value, show)}, right of every mark.`,
        ...mitered ? [
            'Mitered boards lie back up, groove edge at the fence: a left has its miter on the left.',
            ...isOnce ? [`What is mitered alike at both ends is cut straight to its miters, behind all that is cut square.`] : [],
            `Blanks are cut square${over > 0 ? `, ${figureWithUnit(over, show)} over the long points` : ''}; miters come later. Lengths are between the long points.`,
        ] : [],
        'Lengths to scale, widths and miters not.',
    ];
}

function stopRows({ steps, job }: SawOrder): readonly StripRow[] {
    return steps.flatMap(step => cutOff(step).map(({ number, stop, takes }): StripRow => ({
        kind: 'pair', left: `${number} · ${figure(stop, job.show.value)}${step.do === 'miter' ? ` at ${step.degrees}°` : step.do === 'crosscut' && step.by === 'tape' ? ' by tape' : ''}`,
        right: String(takes.reduce((sum, take) => sum + take.pieces.length, 0)),
    })));
}

function careRows(): readonly StripRow[] {
    return [
        'The makers’ manuals and local rules come first.',
        'Both ends of a long board held up, hands clear of the blade; nothing caught between stop and fence.',
        'Narrow rips: splitter and push stick. Dust collected.',
    ].map((words): StripRow => ({ kind: 'note', mark: '!', words }));
}
