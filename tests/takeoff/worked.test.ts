import { readdirSync, readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { layOut } from '../../src/ceiling/layout.ts';
import type { Ceiling, Layout } from '../../src/ceiling/model.ts';
import { dryFit } from '../../src/dryfit/dry-fit.ts';
import type { Fault } from '../../src/dryfit/model.ts';
import { readFile } from '../../src/language/read-file.ts';
import { inspectClosely } from '../../src/pipeline/inspect-closely.ts';
import { inspect } from '../../src/pipeline/inspect.ts';
import { takeOff } from '../../src/takeoff/take-off.ts';
import { workedRooms, type WorkedRoom } from '../arrangement/worked.ts';
import { told } from '../dryfit/told.ts';
import { TestWorkspace } from '../support/workspace.ts';
import { listed, unlike } from './as-worked.ts';

/**
 * The rooms of tests/arrangement/worked.json as jobs, all the way from the text to the cut list: every piece with both edges, what it takes of a
 * board, both ends with their angles, and the hand. The figures there come from an independent model of the same definitions.
 */
const FOLDER = new URL('worked/', import.meta.url), FILES = readdirSync(FOLDER).sort();
const LINES: Readonly<Record<string, string>> = { ash: '1', beech: '2', cedar: '3', elm: 'elm', fir: 'fir', hazel: 'hazel', finch: 'A', heron: 'B', kite: 'C' };
/** Ticks. Lengths are whole ones, and slanted corners are rounded to one. */
const NEAR = 3;

let workspace: TestWorkspace;
beforeAll(async () => { workspace = await TestWorkspace.open(Object.fromEntries(FILES.map(file => [file, readFileSync(new URL(file, FOLDER), 'utf8')]))); });

function laidOut(file: string): { layout: Layout; ceiling: Ceiling; worked: WorkedRoom } {
    const [room] = readFile(workspace.document(file)).rooms, layout = layOut(room!), { ceiling, troubles } = layout;
    expect(troubles).toEqual([]);
    return { layout, ceiling: ceiling!, worked: workedRooms.find(({ name }) => name === room!.title)! };
}

describe.each(FILES)('%s', file => {
    test('piece for piece', () => {
        const { layout, worked } = laidOut(file);
        expect(unlike(listed(layout), worked, nameOf, NEAR)).toEqual([]);
    });

    test('put together it touches where it should, and nothing is in anything else', () => {
        const { ceiling } = laidOut(file), off = takeOff(ceiling), { faults, looked } = dryFit(ceiling, off);
        // where nothing runs along the compass, lengths are on no mark of the tape, and what that opens is told
        const rounded = (fault: Fault): boolean => !ceiling.square && fault.kind === 'misfit' && fault.causes.length === 0 && fault.clashes.every(({ kind }) => kind === 'rounded');
        expect(faults.filter(fault => !rounded(fault)).map(told)).toEqual([]);
        expect(looked.pieces).toBe(off.pieces.length);
    });

    test('nothing is found in it, but joints that the tape cannot close where nothing runs along the compass', () => {
        const read = readFile(workspace.document(file)), found = [...inspect(read).findings, ...inspectClosely(read)];
        const unmeant = found.filter(({ rule, severity, allowed }) => !allowed && (rule !== 'joint-opens' || severity === 'error'));
        expect(unmeant.map(({ rule, message }) => `${rule}: ${message}`)).toEqual([]);
    });

    test('every length is told by terms that add up to it', () => {
        const { ceiling } = laidOut(file);
        for (const { id, back, why } of takeOff(ceiling).pieces) expect(why.terms.reduce((sum, { times, ticks }) => sum + times * ticks, 0), id).toBe(back);
    });
});

const nameOf = (word: string): string => LINES[word] ?? word.replace(/ wall$/, '').replaceAll(' ', '-');
