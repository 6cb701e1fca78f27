import { describe, expect, test } from 'vitest';
import { askTogether, keyOfAsked } from '../../src/cutting/ask-together.ts';
import { lookCloser } from '../../src/cutting/look-closer.ts';
import { questionsOf, type Answer, type Asked } from '../../src/cutting/questions.ts';
import { inches } from '../../src/quantity/rational.ts';
import type { Piece } from '../../src/takeoff/model.ts';
import { job, piece, stock } from './samples.ts';
import { solver } from './solve/problems.ts';

const poplar = stock({ feet: [8, 10, 12], perFoot: '2' }), pine = stock({ name: 'pine-1x4', feet: [8, 12], perFoot: '1' });
const cut = (of: typeof pine, name: string, ...lengths: number[]): Piece[] => lengths.map((length, i) => piece(`${name}-${i}`, of, inches(length)));
const asJob = [...cut(poplar, 'a', 50, 41, 33, 62, 70), ...cut(pine, 'b', 30, 30, 47)];
/** Of the job but for one stock. */
const asAlternate = [...asJob.slice(0, 5), ...cut(pine, 'c', 30, 44)];

function answered(asked: readonly Asked[], steps = 1e6): Map<number, Answer> {
    return new Map([...lookCloser(asked, solver, steps)].map(({ index, answer }) => [index, answer]));
}

describe('a job and alternates', () => {
    const lists = [asJob, asAlternate, asJob].map(pieces => questionsOf(pieces, job()).asked);

    test('a stock that is the same in several is asked about once; one that is other in an alternate is beside the job', () => {
        const { asked, answersOf } = askTogether(lists, new Map());
        expect(asked.map(({ isBeside }) => isBeside)).toEqual([undefined, undefined, true]);
        const found = answered(asked);
        expect([0, 1, 2].map(list => [...answersOf(list, found)])).toEqual(lists.map(list => [...answered(list)].sort(([a], [b]) => a - b)));
        expect(answersOf(1, found).get(1)).toBe(answersOf(0, found).get(1));
        expect(answersOf(1, found).get(0)).not.toBe(answersOf(0, found).get(0));
    });

    test('what was answered before is not asked again; what is not answered yet is not told', () => {
        const [known] = answered(lists[0]!).entries(), before = new Map([[keyOfAsked(lists[0]![known![0]]!), known![1]]]);
        const { asked, answersOf } = askTogether(lists, before);
        expect(asked.length).toBe(2);
        expect([...answersOf(2, new Map())]).toEqual([known]);
    });

    test('the question about whole boards still points to that about sections, where that is asked too', () => {
        const [problem] = lists[0]!.map(each => each.problem), layouts: Asked['layouts'] = [];
        const whole = { problem: { ...problem!, strips: [7] }, layouts, withSections: 0 };
        const sections = { problem: { ...whole.problem, shortestSection: 9 }, layouts };
        const other = { problem: { ...sections.problem, shortestSection: 8 }, layouts };
        expect(askTogether([[sections, whole], [other, whole]], new Map()).asked.map(each => each.withSections)).toEqual([undefined, 0, undefined]);
        expect(askTogether([[other], [sections, whole]], new Map()).asked.map(each => each.withSections)).toEqual([undefined, undefined, 1]);
        const before = new Map([[keyOfAsked(sections), { layouts, bound: 0 }]]);
        expect(askTogether([[sections, whole]], before).asked.map(each => each.withSections)).toEqual([undefined]);
    });

    test('alternates come after the job and take none of its steps', () => {
        const { asked } = askTogether(lists, new Map()), alone = lists[0]!;
        const job = [...lookCloser(asked, solver, 3000)].filter(({ index }) => index < 2);
        expect(job).toEqual([...lookCloser(alone, solver, 3000)]);
        const order = [...lookCloser([...alone.map((each): Asked => ({ ...each, isBeside: true })), alone[0]!], solver, 1e6)].filter(({ isLast }) => isLast);
        expect(order.map(({ index }) => index)[0]).toBe(2);
    });
});
