import { SOUND } from '../../src/pipeline/standing.ts';
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { layOut } from '../../src/ceiling/layout.ts';
import { planBoards } from '../../src/cutting/first-plan.ts';
import type { House } from '../../src/report/house.ts';
import { noPaint } from '../../src/report/look.ts';
import { csvSaw } from '../../src/report/sawing/csv.ts';
import { sawOf } from '../../src/report/sawing/house-saw.ts';
import { humanSaw } from '../../src/report/sawing/human.ts';
import { jsonSaw } from '../../src/report/sawing/json.ts';
import { STAGES } from '../../src/report/sawing/step-words.ts';
import { takeOff } from '../../src/takeoff/take-off.ts';
import { job } from '../cutting/samples.ts';
import { exampleRoom } from '../support/example-room.ts';
import { house, housePlan, strictSchema } from './samples.ts';

const saw = sawOf(housePlan);
const room = exampleRoom();
const parlor: House = { ...house, job: room.job, rooms: [{ room, takeOff: takeOff(layOut(room).ceiling!), standing: SOUND }] };
const wholeRoom = sawOf({ house: parlor, plan: planBoards(parlor.rooms[0]!.takeOff!.pieces, room.job) });

describe('the order at the saw', () => {
    test('for the saw: by setting, then by board', () => {
        expect(humanSaw([saw], noPaint)).toMatchSnapshot();
    });

    test('a whole room: every stage has its heading, no line is wider than the paper, nothing is called safe', () => {
        const printed = humanSaw([wholeRoom], noPaint);
        const stages = STAGES.filter(stage => wholeRoom.order.steps.some(step => stage.has(step)));
        expect(stages.length).toBeGreaterThan(5);
        for (const { title } of stages) expect(printed).toContain(`\n${title.toUpperCase()}\n`);
        expect(printed.split('\n').filter(line => line.length > 100)).toEqual([]);
        expect(printed).not.toMatch(/\bsafe(ly|ty)?\b/i);
        expect(printed).toContain('gauge the first and every 5th; off by 1/64": reset; by 1/32": recut');
    });

    test('every step belongs to one stage', () => {
        for (const step of wholeRoom.order.steps) expect(STAGES.filter(stage => stage.has(step))).toHaveLength(1);
    });

    test('as JSON, as its published schema says', () => {
        const valid = strictSchema('saw');
        for (const houses of [[saw], [wholeRoom], []]) expect(valid(JSON.parse(jsonSaw(houses))), JSON.stringify(valid.errors)).toBe(true);
    });

    // den.side-A-2, long points 50 7/8": the first of its board, half an inch of trim before it, its blank 1/32" over
    test('as JSON: marks, setting and hooks of a piece', () => {
        const { houses: [printed] } = JSON.parse(jsonSaw([
            saw,
        ])) as { houses: { boards: { strips: { pieces: Record<string, unknown>[] }[] }[]; steps: Record<string, unknown>[] }[] };
        const laid = printed!.boards.flatMap(b => b.strips).flatMap(s => s.pieces).find(p => p.piece === 'den.side-A-2');
        expect(laid).toMatchObject({ from: { text: '1/2"' }, to: { text: `4' 3 13/32"` }, back: { text: `4' 2 7/8"` }, measure: { hook: 'long point', along: 'back', edge: 'upper' } });
        expect(printed!.steps.find(s => s.do === 'crosscut' && (s.stop as { text: string }).text === `4' 2 29/32"`)).toMatchObject({ by: 'stop', over: { text: '1/32"' } });
    });

    test('as CSV: a row for every crosscut, in the order of the saw', () => {
        const { data, errors } = Papa.parse<Record<string, string>>(csvSaw([wholeRoom]), { header: true, skipEmptyLines: true });
        expect(errors).toEqual([]);
        expect(data).toHaveLength(parlor.rooms[0]!.takeOff!.pieces.length);
        const stops = data.map(row => Number(row.stop));
        // boards from long to short, and once sections are ripped, their strips from long to short
        expect(stops.filter((stop, i) => i > 0 && stop > stops[i - 1]!).length).toBeLessThanOrEqual(1);
        for (const row of data) expect(Number(row.to) - Number(row.from)).toBeCloseTo(Number(row.stop), 6);
        expect(data.find(row => row.piece === 'parlor.side-1-1-east')).toMatchObject({ hand: 'left', left_end: 'miter 45', right_end: 'square', measure: 'hook the square end, its right; along the upper back edge to the long point' });
    });

    test('a house with nothing to cut says so', () => {
        const empty = sawOf({ house: { ...house, job: job(), rooms: [] }, plan: planBoards([], job()) });
        expect(humanSaw([empty], noPaint)).toContain('There is nothing to cut.');
    });
});
