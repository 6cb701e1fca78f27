import { describe, expect, test } from 'vitest';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { strictSchema } from '../report/samples.ts';
import { folderWith } from './folder.ts';
import { box, den, house, yard } from './house.ts';
import { cofferwright } from './world.ts';

/** The den under joists of which nobody says the wood; its boards are poplar. */
const joisted = {
    ...house, 'yard.coffer': yard.replaceAll('\n  size ', '\n  species  yellow-poplar\n  size '),
    'box.coffer': box.replace('blocking { stock pine-1x6 }', 'blocking { stock pine-1x6; screws #8 x 3" every 16" }'),
    'den.coffer': den.replace('  grid {', `  ceiling {
    height    8' 6"
    covering  gypsum thickness 5/8"
    joists    2x10 every 16" running east-west first-center 12 1/2" from north
  }

  grid {`),
};

describe('joists', () => {
    test('which joists each line finds, screws, thread in wood, weight: 0', async () => {
        const { code, out } = await cofferwright(folderWith(joisted), ['joists']);
        expect(out).toMatch(/^WHAT HOLDS IT {2}Plum Street 4\n/);
        expect(out).toContain('7 joists 2x10 running east-west, 1\' 4" apart, at 1\' 0 1/2"');
        expect(out).toMatch(/line 1 +crosses 7 joists +14 of #8 x 3" +1 5\/8" +[\d.]+ lb +[\d.]+ lb +[\d.]+ lb +not known/);
        expect(out.replace(/\s+/g, ' ')).toContain('it is no design');
        expect(out).not.toMatch(/\bis safe\b/);
        expect(code).toBe(0);
    });
    test('JSON as its schema says; CSV with a row for each joist that a piece finds', async () => {
        const cwd = folderWith({ ...joisted, 'den.coffer': joisted['den.coffer'].replace('from north', 'from north of hem-fir') });
        const { out } = await cofferwright(cwd, ['joists', '--format', 'json']), valid = strictSchema('joists');
        const told = JSON.parse(out) as { rooms: { beams: { line: string; withdrawal: { perInch: number } | null; pieces: { finds: unknown[] }[] }[] }[] };
        expect(valid(told), JSON.stringify(valid.errors)).toBe(true);
        const beams = told.rooms[0]!.beams;
        expect(beams.map(({ line }) => line)).toEqual(['1', '2', 'A']);
        // #8 in G 0.43: 86.4 lb an inch, by the NDS's equation
        expect(beams[0]!.withdrawal!.perInch).toBeCloseTo(86.4, 1);
        const csv = (await cofferwright(cwd, ['joists', '--format', 'csv'])).out.trim().split('\r\n');
        expect(csv.length - 1).toBe(beams.flatMap(({ pieces }) => pieces.flatMap(({ finds }) => finds)).length);
    });
    test('a page of it; a room that says no joists says so, and where the first one is missing, that', async () => {
        const cwd = folderWith(joisted);
        expect((await cofferwright(cwd, ['print', '--page', 'joists', '--out', 'pages'])).code).toBe(0);
        const page = readFileSync(join(cwd, 'pages', 'joists-den.html'), 'utf8');
        expect(page).toContain('crosses 7 joists');
        expect((await cofferwright(folderWith(house), ['joists'])).out).toContain('Nothing is said of its joists');
        const unplaced = folderWith({ ...joisted, 'den.coffer': joisted['den.coffer'].replace(' first-center 12 1/2" from north', '') });
        expect((await cofferwright(unplaced, ['joists'])).out).toContain('It is not known where the joists are');
    });
});
