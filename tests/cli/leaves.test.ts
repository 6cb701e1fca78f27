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

/** The den is 12' 3 1/2" by 10' 2" inside a band of 3/4": coffers of 44" by 56 5/8", lines 7" wide. */
const served = {
    ...house,
    'den.coffer': den.replace('  grid {', `  fixture can-1  light at 4' 2", 2' diameter 5"
  fixture can-2  light at 2', 2' 4" diameter 5" wants coffer-center
  fixture can-3  light at 6' 1 3/4", 5' 1" diameter 3" wants beam-center
  fixture box-1  junction-box at 7' 10", 2' width 4"
  fixture head   sprinkler at 6' 1 3/4", 5' 4" keep-clear 4"
  fixture alarm  smoke-alarm at 10', 8' diameter 5"
  fixture vent   register at 6', 8' width 10"

  grid {`),
};
interface LengthJson { ticks: number; text: string }
interface TaskJson { trade: string; of: string; does: string; to: { east: LengthJson; south: LengthJson } | null; words: string; before: string }

describe('trades', () => {
    const told = async (files: Readonly<Record<string, string>>): Promise<TaskJson[]> => {
        const { out } = await cofferwright(folderWith({ ...files }), ['trades', '--format', 'json']), valid = strictSchema('trades');
        const made = JSON.parse(out) as { rooms: { tasks: TaskJson[] }[] };
        expect(valid(made), JSON.stringify(valid.errors)).toBe(true);
        return made.rooms[0]!.tasks;
    };
    test('who moves what, to where, by which step', async () => {
        const tasks = await told(served), of = (name: string): TaskJson => tasks.find(task => task.of === name)!;
        expect(tasks.map(({ trade, of: name, does }) => [trade, name, does])).toEqual([
            ['electrician', 'can-1', 'moves'], ['electrician', 'can-2', 'moves'], ['electrician', 'can-3', 'wires it through'], ['electrician', 'box-1', 'moves'],
            ['alarm contractor', 'alarm', 'leaves it'], ['sprinkler contractor', 'head', 'moves'], ['HVAC contractor', 'vent', 'leaves it'],
        ]);
        // line 1 stands from 44 3/4" to 51 3/4": clear with 2 1/2" to either side, at 54 1/4" or 42 1/4"; from 50" the east is nearer
        expect([of('can-1').to!.east.text, of('can-1').to!.south.text, of('can-1').words]).toEqual([`4' 6 1/4"`, `2'`, `4 1/4" east`]);
        // the middle of coffer 1: 3/4" + 22", 3/4" + 28 3/8" less a hair
        expect([of('can-2').to!.east.text, of('can-2').before]).toEqual([`1' 10 3/4"`, 'the blocking goes up']);
        expect(of('can-3').before).toBe('the bottoms go up');
    });
    test('nothing that is told to move is in the way there', async () => {
        const tasks = await told(served), at = (ticks: number): string => `${ticks / 16256}"`;
        const moved = tasks.reduce((text, { of, to }) => (to ? text.replace(
            new RegExp(`(fixture ${of} +\\S+ at ).*?(?= (?:diameter|width|keep))`), `$1${at(to.east.ticks)}, ${at(to.south.ticks)}`,
        ) : text), served['den.coffer']);
        expect(moved).not.toBe(served['den.coffer']);
        const after = await told({ ...served, 'den.coffer': moved });
        expect(after.map(({ does }) => does)).not.toContain('moves');
    });
    test('backing where the blocking finds no joist; cautions of the trades that are asked for alone; a page of it', async () => {
        const unbacked = { ...joisted, 'den.coffer': joisted['den.coffer'].replace('first-center 12 1/2"', 'first-center 4"') }, cwd = folderWith(unbacked);
        const { out } = await cofferwright(cwd, ['trades']);
        expect(out.replace(/\s+/g, ' ')).toMatch(/framer what .* line A(, bay \d)? \(backing\)/);
        expect(out).toContain('No joist is notched or cut');
        expect(out).not.toContain('Sprinklers');
        await cofferwright(cwd, ['print', '--page', 'trades', '--out', 'pages']);
        expect(readFileSync(join(cwd, 'pages', 'trades-den.html'), 'utf8')).toContain('Puts backing in');
        const csv = (await cofferwright(folderWith(served), ['trades', '--format', 'csv'])).out.trim().split('\r\n');
        expect(csv.length).toBe(8);
        expect((await cofferwright(folderWith(house), ['trades'])).out).toContain('Nothing is said of what its ceiling holds');
    });
});
