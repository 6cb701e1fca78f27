import { describe, expect, test } from 'vitest';
import { planBoards } from '../../src/cutting/first-plan.ts';
import { blankLength } from '../../src/cutting/blank.ts';
import { inches } from '../../src/quantity/rational.ts';
import { printInches } from '../../src/quantity/print-length.ts';
import { sawOrder } from '../../src/sawing/index.ts';
import type { Step } from '../../src/sawing/model.ts';
import { stepWords } from '../../src/report/sawing/step-words.ts';
import type { Piece } from '../../src/takeoff/model.ts';
import type { Work } from '../../src/takeoff/work.ts';
import { job, piece, stock } from '../cutting/samples.ts';

/** What ways in of closing pieces want at the saw, worked out by hand. */
const pine = stock({ feet: [8] });
const slots: Work = { kind: 'slots', count: 2, size: '#10', places: 2, where: 'in the west and the east end' };
const kerfs: Work = { kind: 'kerfs', count: 14, apart: inches('2 1/2'), depth: inches('9/16'), hangs: inches('1 1/8') };
const halve: Work = { kind: 'halve', relieved: inches('1/32') };
const bottom = (id: string, ...work: Work[]): Piece => piece(id, pine, inches(48), { part: 'bottom', line: 'A', width: inches('5 1/2'), work });

function order(...pieces: Piece[]) {
    return sawOrder(planBoards(pieces, job()), job());
}
function of<Kind extends Step['do']>(kind: Kind, pieces: readonly Piece[]): Extract<Step, { do: Kind }>[] {
    return order(...pieces).steps.filter((step): step is Extract<Step, { do: Kind }> => step.do === kind);
}

describe('slots', () => {
    const opened = { long: inches('2 13/32'), deep: inches('15/32'), leaves: inches('9/32') };
    test('that are opened to the back, and those that are wider towards it, are named in their step', () => {
        const [step] = of('slots', [bottom('a', { ...slots, opened }), bottom('b', { ...slots, opened }), bottom('c', { ...slots, wider: inches('1/32') }), bottom('d', slots)]);
        expect(step!.count).toBe(16);
        expect(step!.opened.map(one => [printInches(one.deep), printInches(one.leaves), one.pieces.map(({ id }) => id)])).toEqual([['15/32"', '9/32"', ['a', 'b']]]);
        expect(step!.wider.map(one => [printInches(one.by), one.pieces.map(({ id }) => id)])).toEqual([['1/32"', ['c']]]);
    });
});

describe('kerfs', () => {
    test('of one pattern are a step, with a trial in the same board that is bent as much', () => {
        const pieces = [bottom('a', kerfs, slots), bottom('b', kerfs, slots)], all = order(...pieces);
        expect(of('kerfs', pieces).map(step => [step.count, printInches(step.apart), printInches(step.depth), step.pieces.length])).toEqual([[14, '2 1/2"', '9/16"', 2]]);
        // 1 1/8" on 48" is a quarter of that on 24": 9/32"
        const blocks = all.steps.flatMap(step => (step.do === 'blocks' ? step.blocks : [])).filter(({ kind }) => kind === 'bend trial');
        expect(blocks.map(({ count, length, stock: { name }, for: use }) => [count, printInches(length), name, use])).toEqual([
            [1, '24"', pine.name, 'the kerfs, 2 1/2" apart and 9/16" deep: bent until its middle hangs 9/32"'],
        ]);
        expect(stepWords(of('kerfs', pieces)[0]!, all).lines[0]).toContain('from its middle out to both sides, the first two 2 1/2" apart across it');
        expect(all.cautions.some(({ at }) => at === 'kerfs')).toBe(true);
    });
});

describe('what is cut in two', () => {
    test('has a blank that is longer by the cut, to be cut at half of its length from either end, once its slots are in', () => {
        const a = bottom('a', slots, halve), { steps } = order(a);
        // a kerf of 1/8"
        expect(printInches(blankLength(a, job()))).toBe('48 1/8"');
        expect(steps.flatMap(step => (step.do === 'crosscut' ? [printInches(step.stop)] : []))).toEqual(['48 1/8"']);
        expect(steps.flatMap(step => (step.do === 'halve' ? [printInches(step.stop), printInches(step.relieved)] : []))).toEqual(['24"', '1/32"']);
        expect(steps.findIndex(step => step.do === 'slots')).toBeLessThan(steps.findIndex(step => step.do === 'halve'));
    });
    test('blocks for the backs of joints come out of what is left, those of one width together', () => {
        const block = (end: 'east' | 'middle', width: string): Work => ({ kind: 'block', end, width: inches(width) });
        const [step] = of('blocks', [bottom('a', block('middle', '4')), bottom('b', block('east', '4')), bottom('c', block('east', '2 1/4'))]);
        expect(step!.blocks.map(({ kind, count, length, for: use }) => [kind, count, printInches(length), use])).toEqual([
            ['joint block', 2, '6"', 'the backs of joints, ripped to 4"'], ['joint block', 1, '6"', 'the backs of joints, ripped to 2 1/4"'],
        ]);
    });
});
