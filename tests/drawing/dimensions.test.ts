import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { placeFigures } from '../../src/drawing/dimensions/place-figures.ts';
import { layString } from '../../src/drawing/dimensions/dimension-string.ts';
import { drawSheets } from '../../src/drawing/index.ts';
import { textWidth } from '../../src/drawing/text/measure-text.ts';
import { readLength } from '../../src/quantity/read-length.ts';
import { Rational, toTicks } from '../../src/quantity/rational.ts';
import type { Ticks } from '../../src/quantity/ticks.ts';
import { groups, texts } from './support/walk.ts';
import { drawn, laid, ROOMS } from './support/rooms.ts';
import { runs } from '../support/full.ts';

/** A figure of a string, or a sum of them (`50 × 1' + 49 × 7"`), in ticks. */
function valueOf(figure: string, metric: boolean): Ticks {
    const terms = figure.replaceAll('− ', '+ −').split(' + ');
    return terms.reduce((sum, term) => {
        const [, sign, times, length] = /^(−?)(?:(\d+) × )?(.*)$/u.exec(term)!;
        const read = readLength(length!.replaceAll('\u2044', '/').replace("'-", "' ") + (metric ? ' mm' : '')) ?? new Rational(NaN);
        return sum + (sign === '−' ? -1 : 1) * Number(times ?? 1) * toTicks(read);
    }, 0);
}

describe('the figures of every string across a plan add up to the room', () => {
    const rooms = Object.entries(ROOMS).filter(([, wishes]) => !wishes.title);
    test.each(rooms)('%s', (_name, wishes) => {
        const { ceiling } = laid(wishes);
        const strings = groups(drawn(wishes)[0]!.items).filter(group => group.id.startsWith('dimensions.'));
        expect(strings.length).toBeGreaterThanOrEqual(2);
        for (const string of strings) {
            const figures = texts(string.items).map(run => run.text);
            const whole = string.id.startsWith('dimensions.across') ? ceiling.width : ceiling.length;
            const sum = figures.reduce((total, figure) => total + valueOf(figure.replace('~', ''), wishes.metric === true), 0);
            // a figure marked `~` is the nearest 1/128" or 0.1 mm: off by half of that at most
            const slack = figures.filter(figure => figure.includes('~')).length * 64;
            expect(Math.abs(sum - whole), `${string.id}: ${figures.join(', ')}`).toBeLessThanOrEqual(slack);
        }
    });
});

test('the smallest worked string: two coffers, a beam, a band', () => {
    const { ceiling, pieces } = laid({ width: `10' 0"`, length: `8' 0"`, across: 2, down: 1 });
    const parts = groups(drawSheets(ceiling, pieces)[0]!.items).find(group => group.id === 'dimensions.across.parts')!;
    // 120" - 2 x 3/4" band - 7" beam leaves two coffers of 55 3/4"
    expect(texts(parts.items).map(run => run.text).sort()).toEqual(['3\u20444"', '3\u20444"', `4' 7 3\u20444"`, `4' 7 3\u20444"`, '7"'].sort());
});

const stretches = fc.array(fc.record({ length: fc.double({ min: 0.2, max: 80, noNaN: true }), figure: fc.constantFrom('7"', '3\u20444"', `4' 1 3\u20448"`, `12' 11 31\u204432"`, '1668.5', '') }), { minLength: 1, maxLength: 24 });

test('figures of one string never touch, and no leader runs through a figure', () => {
    fc.assert(fc.property(stretches, fc.constantFrom(6, 8.6, 12), (parts, size) => {
        const stops = parts.reduce<number[]>((all, part) => [...all, all.at(-1)! + part.length], [0]);
        const placed = placeFigures(stops, parts.map(part => part.figure), size).map(p => {
            const width = textWidth(p.text, size);
            const from = p.anchor === 'start' ? p.at : p.anchor === 'middle' ? p.at - width / 2 : p.at - width;
            return { ...p, from, to: from + width };
        });
        expect(placed.map(p => p.text).sort()).toEqual(parts.map(part => part.figure).filter(figure => figure !== '').sort());
        placed.forEach((a, i) => placed.slice(i + 1).forEach(b => {
            if (a.row === b.row) expect(a.to <= b.from || b.to <= a.from).toBe(true);
        }));
        for (const flag of placed) {
            if (flag.leader === null) continue;
            for (const other of placed) if (other !== flag && other.row > 0
                && other.row < flag.row) expect(flag.leader > other.from && flag.leader < other.to).toBe(false);
        }
    }), { seed: 7, numRuns: runs(400) });
});

test('a string read upward is laid from the foot up', () => {
    const laidString = layString({ id: 'x', title: 'x', stops: [0, 2, 100], figures: ['3\u20444"', `4'`] }, 'left', 8);
    const outside = laidString.placed.find(p => p.text === '3\u20444"')!;
    // the short stretch is the upper one: its figure stands above the upper end, which is the last in reading order
    expect(outside.anchor).toBe('start');
    expect(outside.at).toBeGreaterThan(0);
    expect(laidString.after).toBeGreaterThan(textWidth('3\u20444"', 8));
    expect(laidString.before).toBe(0);
});
