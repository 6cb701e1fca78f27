import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import type { CutListJson } from '../../src/report/cut-list/shape.ts';
import type { SurveyJson, SurveySideJson } from '../../src/report/survey/shape.ts';
import { TICKS_PER_INCH } from '../../src/quantity/ticks.ts';
import { strictSchema } from '../report/samples.ts';
import { folderWith } from './folder.ts';
import { den, house, VALLEY } from './house.ts';
import { cofferwright } from './world.ts';

const under = (survey: string, more: readonly (readonly [string, string])[] = []): Record<string, string> =>
    ({ ...house, 'den.coffer': more.reduce((text, [from, to]) => text.replace(from, to), den.replace('  grid {', () => survey)) });
const ceiling = (x: number): number => 15 + Math.abs(x - 73.75) / 73.75;
const inInches = ({ ticks }: { readonly ticks: number }): number => ticks / TICKS_PER_INCH;

const inOrder = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

async function told(files: Record<string, string>): Promise<SurveyJson> {
    const { out } = await cofferwright(folderWith(files), ['survey', '--format', 'json']), json = JSON.parse(out) as SurveyJson, valid = strictSchema('survey');
    expect(valid(json), JSON.stringify(valid.errors)).toBe(true);
    return json;
}

describe('survey', () => {
    test('spacers that a low ceiling leaves too little room stand at their line of the cut list with what they are cut to; the fix leaves none', async () => {
        const hall = readFileSync(join('tests', 'rules', 'hump-eats-spacer-room.coffer'), 'utf8').replaceAll(/[»«]/g, '');
        const { out } = await cofferwright(folderWith({ 'hall.coffer': hall }), ['cut-list']), line = out.replaceAll(/\s+/g, ' ');
        expect(line).toContain('hump: 6 spacers for line 1, 6 spacers for line 2, 9 spacers for line A; of these shorter, where the ceiling hangs low: A-2-2 to 3 9/32"; A-2-1 and A-2-3 to 3 11/32";');
        expect(line).toContain('just-goes: 6 spacers for line 1, 6 spacers for line 2, 9 spacers for line A ');
        const all = await cofferwright(folderWith({ 'hall.coffer': hall.replace('3 7/16"', '3 9/32"') }), ['check']);
        expect(all.out).not.toContain('hump-eats-spacer-room');
    });

    test('and in the JSON, the CSV, on paper and on the labels, which are bundled by it', async () => {
        const text = readFileSync(join('tests', 'rules', 'hump-eats-spacer-room.coffer'), 'utf8').replaceAll(/[»«]/g, '');
        const cwd = folderWith({ 'hall.coffer': text.replaceAll(/(\{ size 1x\d) \}/g, '$1; lengths 8\', 12\', 16\' }') });
        const json = JSON.parse((await cofferwright(cwd, ['cut-list', '--room', 'hump', '--format', 'json'])).out) as CutListJson, valid = strictSchema('cut-list');
        expect(valid(json), JSON.stringify(valid.errors)).toBe(true);
        const low = json.pieces.flatMap(({ id, lowerTo }) => (lowerTo ? [`${id.replace(/^.*spacer-/, '')} ${lowerTo.text}`] : [])).sort(inOrder);
        expect(low).toEqual([
            '1-1-3 3 3/8"', '1-2-1 3 3/8"', '2-1-3 3 3/8"', '2-2-1 3 3/8"', 'A-1-3 3 13/32"', 'A-2-1 3 11/32"', 'A-2-2 3 9/32"', 'A-2-3 3 11/32"', 'A-3-1 3 13/32"',
        ]);
        const csv = (await cofferwright(cwd, ['cut-list', '--room', 'hump', '--format', 'csv'])).out;
        const { data } = Papa.parse<Record<string, string>>(csv, { header: true, skipEmptyLines: true });
        expect(data.filter(({ lower_to: to }) => to !== '').map(({ id, lower_to_text: to }) => `${id!.replace(/^.*spacer-/, '')} ${to}`).sort(inOrder)).toEqual(low);
        expect(data.find(({ id }) => id!.endsWith('spacer-A-2-2'))!.lower_to).toBe('3.28125');
        await cofferwright(cwd, ['print', '--room', 'hump', '--page', 'cut-list', '--out', 'pages']);
        expect(readFileSync(join(cwd, 'pages', 'cut-list-hump.html'), 'utf8')).toMatch(/A-2-2 \(to .{0,40}3 9.32.{0,20}, where the ceiling hangs low\)/);
        await cofferwright(cwd, ['labels', '--room', 'hump', '--out', 'labels']);
        const labels = readdirSync(join(cwd, 'labels')).map(file => readFileSync(join(cwd, 'labels', file), 'utf8')).join('').replaceAll('\u2044', '/');
        const high = [...labels.matchAll(/>(3 \d+\/\d+)(?:"|&quot;|&#34;) high: low ceiling</g)].map(([, words]) => words!);
        expect([...new Set(high)].sort(inOrder)).toEqual(['3 11/32', '3 13/32', '3 3/8', '3 9/32']);
    });

    test('every side under a ceiling of a known shape: gap, scribe, lap, shim', async () => {
        const { rooms: [room] } = await told(under(VALLEY)), list = (await cofferwright(folderWith(under(VALLEY)), ['cut-list', '--format', 'json'])).out;
        const { pieces } = JSON.parse(list) as { pieces: { id: string; part: string }[] };
        expect(room!.sides.map(({ id }) => id).sort()).toEqual(pieces.filter(({ part }) => part === 'side').map(({ id }) => id).sort());
        // held down 1/4" from 15 1/2": the side's upper edge is at 15 1/4"; across 73 3/4" the ceiling changes by 1"
        const ofLineA = room!.sides.filter(({ line, on }) => line === 'A' && on === 'north');
        expect(ofLineA).toHaveLength(3);
        let from = 0;
        for (const side of ofLineA) {
            const begin = from + (from === 0 ? 0.75 : 0), long = inInches(side.length);
            // lines 1 and 2 stand 7" wide between coffers that are alike; faces of sides are as long as the coffer
            const at = (along: { ticks: number }): number => begin + inInches(along);
            for (const { along, is } of side.profile) expect(inInches(is)).toBeCloseTo(ceiling(at(along)) - 15.25, 3);
            const lowest = Math.min(Math.max(73.75, begin), begin + long);
            expect(inInches(side.gap!.least.is)).toBeCloseTo(Math.min(...[begin, lowest, begin + long].map(x => ceiling(x) - 15.25)), 3);
            from = begin + long + 7;
        }
        const [west, middle] = ofLineA as [SurveySideJson, SurveySideJson];
        // the middle one has the valley in it: scribed 1/4" at the deepest where the ceiling is under 15 1/4", 18 7/16" to either side of the middle
        expect(middle.scribes).toHaveLength(1);
        const [{ deepest, from: scribedFrom, to }] = middle.scribes as [SurveySideJson['scribes'][number]];
        expect([inInches(deepest.is), begin(ofLineA) + inInches(scribedFrom), begin(ofLineA) + inInches(to)]).toEqual([
            expect.closeTo(0.25, 3), expect.closeTo(73.75 - 18.4375, 2), expect.closeTo(73.75 + 18.4375, 2),
        ]);
        // blocking of 3/4" laps 3/8" where the gap is 3/8": further west it is shimmed by what the gap is more
        const beyond = 73.75 - 73.75 * 0.625, atWall = ceiling(0.75) - 15.25 - 0.375;
        expect(west.shims).toHaveLength(1);
        expect([west.shims[0]!.from, west.shims[0]!.to].map(inInches)).toEqual([0, expect.closeTo(beyond - 0.75, 2)]);
        expect(inInches(west.shims[0]!.deepest.is)).toBeCloseTo(atWall, 3);
        expect(inInches(west.blocking!.laps.is)).toBeCloseTo(0.375 - atWall, 3);
        expect(west.trim).toBeNull();
    });

    test('in words, with spacers that are cut shorter, and what is not looked at', async () => {
        const { out, code } = await cofferwright(folderWith(under(VALLEY)), ['survey']);
        expect(out).toMatch(/^UNDER THE CEILING {2}Plum Street 4\n/);
        const row = (name: string): string => new RegExp(`^  ${name} .*$`, 'm').exec(out)?.[0].replace(/\s{2,}/g, ' | ') ?? '';
        expect(row('A-2-north')).toMatch(/A-2-north \| -1\/4" at 1' 10" to .* \| 1\/4" at 1' 10", from 3 1\/2" to 3' 4 1\/2" \|/);
        expect(row('A-1-north')).toMatch(/too little \| [\d/]+", from 0" to 2' 3"/);
        expect(out.replace(/\s+/g, ' ')).toContain('The band is not looked at here.');
        expect(out.replace(/\s+/g, ' ')).toMatch(/Cut \d+ spacers shorter than the rest, where the ceiling hangs low: .*A-2-\d.* to 4 \d+\/16"/);
        // sides that have to be scribed that much are no error by themselves; shims are
        expect(code).toBe(1);
    });

    test('where nothing is known that is said, and no figure stands for it', async () => {
        const half = VALLEY.replaceAll(/ {4}point {2}12' 3 1\/2".*\n/g, ''), { rooms: [room] } = await told(under(half));
        const east = room!.sides.find(({ id }) => id.endsWith('A-3-north'))!;
        expect(east).toMatchObject({ gap: null, scribes: [], shims: [], profile: [], blocking: null });
        expect(east.unknown).toMatchObject([{ from: { ticks: 0 }, to: { ticks: east.length.ticks } }]);
        expect((await cofferwright(folderWith(under(half)), ['survey'])).out).toMatch(/A-3-north +over its whole length/);
    });

    test('half beams are looked at as lines are; timbers are named', async () => {
        const half = under(VALLEY, [['kind   band\n      stock  pine-1x8', 'kind half-beam; width 3"; beams box']]), { rooms: [room] } = await told(half);
        const ofWalls = room!.sides.filter(({ line }) => line === null);
        expect(new Set(ofWalls.map(({ on }) => on))).toEqual(new Set(['north', 'east', 'south', 'west']));
        expect(ofWalls.every(({ gap }) => gap !== null)).toBe(true);
        expect(room!.survey!.leftOut).toEqual([]);
        const timbers = { ...under(VALLEY, [['beams          box', 'beams          timber'], ['from "box.coffer" use box\n', 'stock fir { width 5 1/2"; thickness 5 1/2"; lengths 12\', 16\' }\nprofile timber { solid { stock fir } }\n']]) };
        expect((await told(timbers)).rooms[0]!.survey!.leftOut[0]).toBe('Lines 1, 2 and A are solid timbers and not looked at here: scribe them to the ceiling in place.');
    });

    test('CSV has a row for each figure, a page is printed, and a room that nobody surveyed says so', async () => {
        const cwd = folderWith(under(VALLEY)), { rooms: [room] } = await told(under(VALLEY));
        const rows = (await cofferwright(cwd, ['survey', '--format', 'csv'])).out.trim().split('\r\n');
        expect(rows[0]).toBe('room,piece,beam,unit,what,figure,at,from,to,standing');
        const count = (what: string): number => rows.filter(line => line.includes(`,in,${what},`)).length;
        expect(count('gap-least')).toBe(room!.sides.length);
        expect(count('scribe')).toBe(room!.sides.flatMap(({ scribes }) => scribes).length);
        expect(count('shim')).toBe(room!.sides.flatMap(({ shims }) => shims).length);
        expect(count('spacer-at-most')).toBe(room!.spacers.length);
        await cofferwright(cwd, ['print', '--page', 'survey', '--out', 'pages']);
        expect(readFileSync(join(cwd, 'pages', 'survey-den.html'), 'utf8')).toMatch(/A-2-north[^]*<div class="drawing"><svg /);
        expect((await cofferwright(folderWith(house), ['survey'])).out).toContain('Nothing is said of how level its ceiling is');
    });
});

describe('survey --templates', () => {
    test('draws every side that is scribed at true size, on sheets and in one file to print; nothing is drawn where none is', async () => {
        const cwd = folderWith(under(VALLEY)), { code, out } = await cofferwright(cwd, ['survey', '--templates', '--out', 'scribed']);
        expect(code).toBe(1);
        const files = readdirSync(join(cwd, 'scribed')).filter(name => name.startsWith('scribe-'));
        expect(files).toEqual(expect.arrayContaining(['scribe-den-1.svg', 'scribe-den.html', 'scribe-den.pdf']));
        expect(out).toContain('scribed/scribe-den.html');
        const [svg, html] = ['scribe-den-1.svg', 'scribe-den.html'].map(name => readFileSync(join(cwd, 'scribed', name), 'utf8')) as [string, string];
        // PDF: a page for each sheet, letter paper, so that a point is 1/72" whatever prints it
        const pdf = readFileSync(join(cwd, 'scribed', 'scribe-den.pdf'), 'latin1');
        expect(pdf.match(/\/MediaBox \[0 0 612 792\]/g)?.length).toBe(files.filter(name => name.endsWith('.svg')).length);
        // a browser prints it as wide as the paper is
        expect(html).toContain('@page{size:210mm 297mm'.replace('210mm 297mm', '8.5in 11in'));
        expect(svg).toMatch(/width="8\.5in" height="11in"/);
        expect(html).toContain('Measure this square first');
        // what is wrong with the room stands on its sheets
        expect(svg).toContain('Nothing to nail to');
        const none = folderWith(under(VALLEY.replace('level at 15 1/2"', 'level at 15"')));
        expect((await cofferwright(none, ['survey', '--templates', 'scribed'])).err).toContain('No side has to be scribed');
        expect(existsSync(join(none, 'scribed', 'scribe-den.html'))).toBe(false);
    });
});

/** Where the middle side begins. */
function begin([first]: readonly SurveySideJson[]): number {
    return 0.75 + inInches(first!.length) + 7;
}
