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
    test('what finds no joist tells of no thread in one, and has its screws in backing', async () => {
        const files = { ...joisted, 'den.coffer': joisted['den.coffer'].replace('first-center 12 1/2"', 'first-center 4"') };
        const { out } = await cofferwright(folderWith(files), ['joists']);
        expect(out).toMatch(/line A +finds no joist +\d+ of #8 x 3", into backing +none in a joist +[\d.]+ lb +[\d.]+ lb *\n/);
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

/** Poplar of 5 1/2" and 7 1/4", which goes up at 8%, in rooms of 25% and 60%. */
const seasoned = { ...joisted, 'job.coffer': house['job.coffer'].replace('  cut-to  1/16"\n', `  cut-to  1/16"
  seasons {
    driest      25% at 68
    dampest     60% at 75
    goes-up-at  8%
  }
`) };
interface SmallJson { ticks: number; text: string }
interface SeasonsJson { rooms: {
    moisture: { driest: number; dampest: number; start: number; startAtMost: number } | null;
    beams: {
        lines: string[]; play: { built: SmallJson; driest: SmallJson } | null; butt: { lines: string[]; driest: SmallJson } | null;
        corner: { driest: SmallJson; dampest: SmallJson };
    }[];
}[] }

describe('seasons', () => {
    test('moisture over the year, what joints do, and words for the owner', async () => {
        const { code, out } = await cofferwright(folderWith(seasoned), ['seasons']), words = out.replace(/\s+/g, ' ');
        expect(code).toBe(0);
        expect(words).toContain('Driest 25% at 68 °F: wood comes to 5.4%. Dampest 60% at 75 °F: 10.9%.');
        // 6 x 0.00289 x (10.87 - 5.38) = 0.095", and 3/32" is 0.094"
        expect(words).toMatch(/Yellow poplar, 6" wide: ~3\/32" from the driest to the dampest season/);
        expect(words).toContain('for the owner, after one winter');
        expect(words).toContain('most of all where beams cross');
        expect(words).not.toMatch(/\bis safe\b/);
    });
    test('JSON as its schema says, by the handbook\'s own coefficients', async () => {
        const cwd = folderWith(seasoned), valid = strictSchema('seasons');
        const told = JSON.parse((await cofferwright(cwd, ['seasons', '--format', 'json'])).out) as SeasonsJson;
        expect(valid(told), JSON.stringify(valid.errors)).toBe(true);
        const [{ moisture, beams: [beam] }] = told.rooms as [SeasonsJson['rooms'][number]];
        expect([moisture!.driest, moisture!.dampest, moisture!.start]).toEqual([5.38, 10.87, 8]);
        // 1/32" = 5.5 x 0.00289 x (M - 5.38) / 2
        expect(moisture!.startAtMost).toBeCloseTo(5.38 + 2 * (1 / 32) / (5.5 * 0.00289), 1);
        expect(beam!.play!.driest.ticks).toBe(beam!.play!.built.ticks);
        expect(beam!.butt!.lines).toEqual(['1', '2']);
        expect(beam!.butt!.driest.ticks / 16256).toBeCloseTo(5.5 * 0.00289 * (8 - 5.38) / 2, 3);
        expect(beam!.corner.driest.ticks).toBeGreaterThan(0);
        expect(beam!.corner.dampest.ticks).toBeLessThan(0);
        const csv = (await cofferwright(cwd, ['seasons', '--format', 'csv'])).out.trim().split('\r\n');
        expect(csv).toHaveLength(4);
    });
    test('Celsius where lengths are in millimeters; a page; nothing where nothing is said', async () => {
        const metric = { ...seasoned, 'job.coffer': seasoned['job.coffer'].replace('cut-to  1/16"', 'cut-to  1 mm\n  show millimeters').replace('25% at 68', '25% at 20').replace('60% at 75', '60%') };
        const cwd = folderWith(metric), { out } = await cofferwright(cwd, ['seasons']);
        expect(out.replace(/\s+/g, ' ')).toContain('Driest 25% at 20 °C: wood comes to 5.4%. Dampest 60% at 21 °C');
        await cofferwright(cwd, ['print', '--page', 'seasons', '--out', 'pages']);
        expect(readFileSync(join(cwd, 'pages', 'seasons-den.html'), 'utf8')).toContain('fine lines may show in the paint');
        expect((await cofferwright(folderWith(house), ['seasons'])).out).toContain('Nothing is said of its seasons');
    });
});

describe('put-up', () => {
    test('the steps, what does not go straight up, the first bay and what is measured there, how it is done: 0', async () => {
        const jointed = box.replace('bottom { stock pine-1x6 }', 'bottom { stock pine-1x6; biscuits 2 x #10 }'), three = den.replace('coffers-east   2', 'coffers-east   3');
        const { code, out } = await cofferwright(folderWith({ ...house, 'box.coffer': jointed, 'den.coffer': three }), ['put-up']);
        expect(out).toMatch(/^PUTTING IT UP {2}Plum Street 4\n/);
        expect(out).toMatch(/ \d +blocking, line 1 +1 piece +2/);
        expect(out).toContain('not timed: its labor says no times');
        expect(out).toMatch(/bottom-A-1 +up 3\/8" to the west, then pushed onto the biscuits/);
        expect(out).toMatch(/bottom-A-2 +a closing piece straight up over the biscuits, its slots opened to the back/);
        expect(out).toMatch(/edge of the coffer +north side +\d/);
        expect(out.replace(/\s+/g, ' ')).toMatch(/the centers of lines 1 and 2 are .* apart, those of A and B .*, and from crossing to crossing both diagonals measure/);
        expect(out).not.toMatch(/\bis safe\b/);
        expect(code).toBe(0);
    });
    test('JSON as its schema says, with every piece once; CSV with a row for each; a page', async () => {
        const cwd = folderWith(house), { out } = await cofferwright(cwd, ['put-up', '--format', 'json']), valid = strictSchema('put-up');
        const told = JSON.parse(out) as { rooms: { steps: { pieces: { id: string; way: string }[] }[]; stuck: string[] }[] };
        expect(valid(told), JSON.stringify(valid.errors)).toBe(true);
        const ids = told.rooms[0]!.steps.flatMap(({ pieces }) => pieces.map(({ id }) => id));
        const list = JSON.parse((await cofferwright(cwd, ['cut-list', '--format', 'json'])).out) as { pieces: { id: string }[] };
        expect([...ids].sort()).toEqual(list.pieces.map(({ id }) => id).sort());
        expect(told.rooms[0]!.stuck).toEqual([]);
        expect((await cofferwright(cwd, ['put-up', '--format', 'csv'])).out.trim().split('\r\n').length - 1).toBe(ids.length);
        expect((await cofferwright(cwd, ['print', '--page', 'put-up', '--out', 'pages'])).code).toBe(0);
        expect(readFileSync(join(cwd, 'pages', 'put-up-den.html'), 'utf8')).toContain('first bay, dry, coffer');
    });
});
