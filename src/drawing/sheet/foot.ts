import { circle, group, line, polygon, rectangle, text, type Group, type Point } from '../display-list.ts';
import { fitText, wrapText } from '../text/fit-text.ts';
import type { Show } from '../../quantity/print-length.ts';
import { TICKS_PER_FOOT, TICKS_PER_INCH, TICKS_PER_MM } from '../../quantity/ticks.ts';
import { drawnFractions } from '../figures.ts';

/** Height kept for what stands under a drawing: its title, scale bar and north arrow. */
export const FOOT_HEIGHT = 40;
/** Of that, what lies below the middle of the title's ring. */
export const FOOT_UNDER = 22;

/** Number of the drawing in a ring, its name on a line, and how to read it below. */
export function viewTitle([x, y]: Point, number: string, name: string, reading: string, width: number): Group {
    const radius = 13;
    const left = x + 2 * radius + 8;
    const heading = fitText(name, width - 2 * radius - 8, 13, 8, 600);
    const below = readingLines(reading, width - 2 * radius - 8);
    return group('view-title', {}, [
        circle([x + radius, y], radius, 'edge'),
        text([x + radius, y + 4.4], number, { size: 13, weight: 600, anchor: 'middle' }),
        line([x + 2 * radius, y], [x + width, y], 'edge'),
        text([left, y - 4.5], heading.text, { size: heading.size, weight: 600 }),
        ...below.map(({ words, size, down }) => text([left, y + down], words, { size })),
    ]);
}

/** In one line where it has room, at most a little smaller; else in two. */
function readingLines(reading: string, width: number): readonly { readonly words: string; readonly size: number; readonly down: number }[] {
    const one = fitText(reading, width, 8.4, 7);
    if (!one.text.endsWith('…')) return [{ words: one.text, size: one.size, down: 11 }];
    const size = [7.8, 7.2].find(each => wrapText(reading, width, each).length <= 2) ?? 6.6, [first, ...rest] = wrapText(reading, width, size);
    const second = fitText(rest.join(' '), width, size, size);
    return [{ words: first!, size, down: 9.5 }, { words: second.text, size, down: 18.5 }];
}

/** A bar of real lengths; it stays true where the sheet is printed smaller. Empty where the drawing has no scale. */
export function scaleBar([right, y]: Point, pointsPerTick: number, kind: 'plan' | 'section', show: Show, longest: number, least = 0): Group {
    const { unit, name, totals } = BARS[show][kind];
    const fitting = totals.filter(total => total * unit * pointsPerTick <= longest);
    const total = fitting.at(-1) ?? totals[0]!;
    const steps = [0, total / 4, total / 2, total];
    const size = Math.max(7.2, least), words = text([right, y + 5.5], name, { size, anchor: 'end' });
    const left = right - 10 - 3.2 / 7.2 * size * name.length - total * unit * pointsPerTick;
    const at = (step: number) => left + step * unit * pointsPerTick;
    return group('scale-bar', { title: `Scale bar, ${total} ${name}` }, [
        ...steps.slice(1).map((step, i) => rectangle(at(steps[i]!), y, at(step), y + 5, 'thin', i % 2 === 0 ? 'ink' : 'paper')),
        ...steps.map(step => text([at(step), y + 7.6 + 0.9 * size], decimalOrFraction(step), { size, anchor: 'middle' })),
        words,
    ]);
}

interface Bar { readonly unit: number; readonly name: string; readonly totals: readonly number[] }
const BARS: Readonly<Record<Show, Readonly<Record<'plan' | 'section', Bar>>>> = {
    'feet-inches': {
        plan: { unit: TICKS_PER_FOOT, name: 'feet', totals: [1, 2, 4, 8, 16, 32, 64] },
        section: { unit: TICKS_PER_INCH, name: 'inches', totals: [1, 2, 4, 8, 16] },
    },
    millimeters: {
        plan: { unit: 1000 * TICKS_PER_MM, name: 'meters', totals: [0.4, 1, 2, 4, 8, 20] },
        section: { unit: TICKS_PER_MM, name: 'mm', totals: [20, 40, 80, 100, 200, 400] },
    },
};

function decimalOrFraction(value: number): string {
    const named: Readonly<Record<number, string>> = { 0.25: '1/4', 0.5: '1/2' };
    return drawnFractions(named[value] ?? String(value));
}

export function northArrow([x, y]: Point): Group {
    const radius = 14;
    const tip: Point = [x, y - radius];
    const notch: Point = [x, y + radius * 0.42];
    return group('north', { title: 'North is up' }, [
        circle([x, y], radius, 'edge'),
        polygon([tip, [x + radius * 0.62, y + radius * 0.78], notch], 'thin'),
        polygon([tip, [x - radius * 0.62, y + radius * 0.78], notch], 'thin', 'ink'),
        text([x, y - radius - 5], 'N', { size: 10, weight: 600, anchor: 'middle' }),
    ]);
}
