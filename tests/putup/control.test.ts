import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { layOut } from '../../src/ceiling/layout.ts';
import type { Ceiling } from '../../src/ceiling/model.ts';
import { readFile } from '../../src/language/read-file.ts';
import { controlOf, type Control } from '../../src/putup/control.ts';
import { firstBayOf } from '../../src/putup/first-bay.ts';
import { putUp } from '../../src/putup/put-up.ts';
import { printMark, type Tape } from '../../src/quantity/print-length.ts';
import { howOf } from '../../src/report/put-up/how.ts';
import { putUpContent } from '../../src/report/put-up/content.ts';
import { TICKS_PER_FOOT, TICKS_PER_INCH } from '../../src/quantity/ticks.ts';
import { takeOffOf } from '../../src/takeoff/take-off.ts';
import { TestWorkspace } from '../support/workspace.ts';

const kind = (name: string): string => readFileSync(new URL(`../../src/language/kinds/${name}.coffer`, import.meta.url), 'utf8');
async function ceilingOf(name: string, from = '', to = ''): Promise<Ceiling> {
    const text = kind(name);
    expect(text).toContain(from);
    const house = await TestWorkspace.open({ 'details.coffer': kind('details'), 'room.coffer': text.replace(from, to) });
    return layOut(readFile(house.document('room.coffer')).rooms[0]!).ceiling!;
}
const tape: Tape = { show: 'feet-inches', step: TICKS_PER_INCH / 32 }, print = (ticks: number): string => printMark(Math.round(ticks), tape);
const four = (control: Control | null): Extract<Control, { kind: 'four' }> => { expect(control?.kind).toBe('four'); return control as Extract<Control, { kind: 'four' }>; };

describe('what the layout is squared by', () => {
    test('the outermost lines of a room, their diagonals by Pythagoras', async () => {
        const control = four(controlOf(await ceilingOf('half-beams'))), { north, south, west, east, falling, rising } = control;
        expect([north - south, west - east, falling - rising].map(Math.abs)).toEqual([0, 0, 0]);
        expect(falling).toBeCloseTo(Math.hypot(north, west), 6);
    });
    test('in an L those between which the tape goes past the corner that juts in', async () => {
        // lines 1 and 2 stand at 6' 1" and 12' 8 7/8", A and B at 4' 6" and 9' 6 7/8": B leaves the room at 12' 6", where the wing ends at 9' 4"
        const control = controlOf(await ceilingOf('ell'));
        expect(control).toMatchObject({ kind: 'three', lines: ['1', 'A'] });
        const { legs: [a, b], between } = control as Extract<Control, { kind: 'three' }>;
        expect([Math.min(a, b) % (3 * TICKS_PER_FOOT), Math.max(a, b) % (4 * TICKS_PER_FOOT), between / Math.hypot(a, b)]).toEqual([0, 0, 1]);
    });
    test('not by two that stand close beside each other, where others are there', async () => {
        const [a, b] = four(controlOf(await ceilingOf('doubled', 'coffers-north  2\n    coffers-east   2', 'coffers-north  3\n    coffers-east   3'))).lines;
        expect([a, b]).toEqual(['1', '2']);
    });
    test('lines that fan out have edges and diagonals of their own, and all are told', async () => {
        const ceiling = await ceilingOf('fanned', 'coffers-east     2', 'coffers-east     3'), control = four(controlOf(ceiling)), { north, south, falling, rising } = control;
        expect(Math.abs(north - south)).toBeGreaterThan(TICKS_PER_INCH / 32);
        const words = howOf(putUpContent(ceiling, takeOffOf(ceiling)), ceiling, tape)[0]!.words;
        for (const length of [north, south, falling, rising]) expect(words).toContain(print(length));
    });
});

test('the slot between doubled lines is no first bay', async () => {
    const ceiling = await ceilingOf('doubled', 'coffers-north  2', 'coffers-north  3'), bay = firstBayOf(ceiling, takeOffOf(ceiling), putUp(ceiling).before)!;
    const { west, east } = ceiling.coffers.find(({ number }) => number === bay.coffer)!;
    expect(east - west).toBeGreaterThan(2 * TICKS_PER_FOOT);
});

test.each([
    ['capped', 'bottoms', /stands out beyond their faces .* nail up into both/, /cleats/],
    ['lapped', 'bottoms', /let into rabbets: start it in both/, /against the cleats/],
    ['half-beams', 'bottoms', /against the cleats/, /let into rabbets/],
    ['half-beams', 'sides', /cleat on the wall hangs level/, /butted/],
    ['butted', 'sides', /Glue the butted corners/, /miter/],
    ['bench-made', 'bottoms', /that of the box as a whole was not/, /let into rabbets/],
    ['solid', 'bottoms', /A solid beam: know its weight/, /let into rabbets/],
    ['panels', 'panel', /seams where beams cover them/, /cleats/],
] as const)('%s: how the %s are done is told of such beams', async (name, of, told, not) => {
    const ceiling = await ceilingOf(name), words = howOf(putUpContent(ceiling, takeOffOf(ceiling)), ceiling, tape).find(each => each.kind === of)!.words;
    expect(words).toMatch(told);
    expect(words).not.toMatch(not);
});
