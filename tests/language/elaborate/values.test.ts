import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Profile, Stock } from '../../../src/job/model.ts';
import { readFile } from '../../../src/language/read-file.ts';
import type { Given } from '../../../src/provenance/source.ts';
import { inches, millimeters, Rational } from '../../../src/quantity/rational.ts';
import { TICKS_PER_FOOT } from '../../../src/quantity/ticks.ts';
import { readMarked } from '../../support/marked.ts';
import { TestWorkspace } from '../../support/workspace.ts';

const texts = Object.fromEntries(readMarked(readFileSync(new URL('house.coffer', import.meta.url), 'utf8')).map(file => [file.path, file.text]));
const workspace = await TestWorkspace.open(texts);
const content = (path: string) => readFile(workspace.document(path));
const stock = (name: string): Stock => content('yard.coffer').stocks.find(one => one.name === name)!;
const profile = (name: string): Profile => content('details/box.coffer').profiles.find(one => one.name === name)!;
const den = content('house/den.coffer').rooms[0]!;
const words = (given: Given<unknown> | undefined) => given && workspace.words(given.at);
const feet = (n: number) => n * TICKS_PER_FOOT;

test('nothing is wrong in the house that these tests read', () => {
    for (const path of Object.keys(texts)) expect(content(path).findings).toEqual([]);
});

describe('stocks', () => {
    test('the dressed size of the nominal one, at the words that say it, and not said', () => {
        const { width, thickness, size } = stock('strip');
        expect([width!.value.ticks, thickness!.value.ticks]).toEqual([inches('1 1/2'), inches('3/4')]);
        expect(width).toMatchObject({ said: false, value: { tolerance: [] } });
        expect(words(width)).toBe('1x2');
        expect(size!.value).toMatchObject({ text: '1x2' });
    });
    test('a width of its own with what it may be off, caused by the stock', () => {
        const { width, key, rippedWith } = stock('poplar-1x6');
        expect(width).toMatchObject({ said: true, value: { ticks: inches('5 1/2'), tolerance: [{ cause: `stock:${key}`, reach: inches('1/64') }] } });
        expect(rippedWith!.value).toBe('fence A');
    });
    test('a value of the file', () => {
        expect(stock('poplar-1x8').thickness).toMatchObject({ said: true, value: { ticks: inches('11/16') } });
        expect(stock('poplar-1x8').width!.value.ticks).toBe(inches('7 1/4'));
    });
    test('prices exact, lengths from all lines, what is on hand', () => {
        const { prices, lengths, onHand, species, title } = stock('poplar-1x6');
        expect(prices.map(one => [one.perTick.toFraction(), one.currency, one.for?.value])).toEqual([
            [new Rational('27.60').div(feet(8)).toFraction(), 'USD', feet(8)], [new Rational('3.50').div(feet(1)).toFraction(), 'USD', undefined],
        ]);
        expect(lengths.map(one => one.value)).toEqual([feet(8), feet(12), feet(16)]);
        expect(onHand.map(one => one.value)).toEqual([{ count: 2, length: inches(62) }, { count: 1, length: inches(112) }]);
        expect([species!.value, title]).toEqual(['yellow-poplar', 'Primed poplar']);
    });
});

test('where a job shows millimeters, its own defaults are whole figures in them, and what is said stays', async () => {
    const workspace = await TestWorkspace.open({ 'den.coffer': 'edition 1\njob "Quay" { show millimeters; kerf 1/8" }\nroom den { wall north 5 m; wall east 4 m }\n' });
    const { cutTo, kerf, endTrim, paintFilm } = readFile(workspace.document('den.coffer')).rooms[0]!.job;
    expect([cutTo, endTrim].map(({ value, said }) => [value, said])).toEqual([[millimeters('0.5'), false], [millimeters(25), false]]);
    expect([kerf.value, kerf.said]).toEqual([inches('1/8'), true]);
    expect(paintFilm.value).toEqual({ least: millimeters('0.1'), most: millimeters('0.15') });
});

test.each([
    ['1x6', '6 USD per board-ft', '24'], ['5/4x6', '6 USD per board-ft', '30'], ['1/2x6', '6 USD per board-ft', '24'], ['1x6', '3 USD per ft', '24'],
])('eight feet of %s at %s cost %s', async (size, price, cost) => {
    const workspace = await TestWorkspace.open({ 'yard.coffer': `edition 1\nstock a { size ${size}; width 5 1/2"; thickness 3/4"; price ${price} }\n` });
    const { stocks, findings } = readFile(workspace.document('yard.coffer'));
    expect([findings, stocks[0]!.prices[0]!.perTick.mul(feet(8)).toFraction()]).toEqual([[], cost]);
});

describe('what is bought, how, and what has been cut', () => {
    const yard = `edition 1
job "Quay" { shortest-offcut 18" worth 25% }
stock mdf { sheet 49" x 97" grain none; thickness 3/4"; price 58 USD per sheet; supplier "Tern & Daughters"; lead-days 3; comes primed; on-hand 1 x 8' worth 40 USD }
stock fir { size 1x6; lengths 8', 12'; price 2 USD per ft; price 20.40 USD per board for 12'; on-hand 2 x 62", 1 x 7' }
room den {
  wall north 10'; wall east 8'
  measured {
    spoiled  bottom-2, side-A-1-north
    spoiled  bottom-2
    cut      16' of fir into bottom-2, side-A-1-north left 31", 12"
    cut      8' of fir
  }
}
`;
    const read = async () => readFile((await TestWorkspace.open({ 'house.coffer': yard })).document('house.coffer'));
    test('a sheet has its own width, length and price', async () => {
        const { stocks: [mdf], findings } = await read();
        expect(findings).toEqual([]);
        expect(mdf).toMatchObject({
            sheet: { value: { width: inches(49), length: inches(97), grain: 'none' } }, width: { value: { ticks: inches(49) }, said: false }, lengths: [{ value: inches(97) }],
            supplier: { value: 'Tern & Daughters' }, leadDays: { value: 3 }, comes: { value: 'primed' },
        });
        expect(mdf!.prices.map(price => price.perTick.mul(price.for!.value).toFraction())).toEqual(['58']);
        expect(mdf!.onHand.map(({ value: { count, length, worth } }) => [count, length, worth!.amount.toFraction(), worth!.currency])).toEqual([[1, feet(8), '40', 'USD']]);
    });
    test('a board has the price of its length, what is on hand costs nothing where nobody says', async () => {
        const { stocks: [, fir], job } = await read();
        expect(fir!.prices.map(price => [price.for?.value, price.perTick.mul(feet(12)).toFraction()])).toEqual([[undefined, '24'], [feet(12), '102/5']]);
        expect(fir!.onHand.map(({ value }) => value)).toEqual([{ count: 2, length: inches(62) }, { count: 1, length: feet(7) }]);
        expect([job.shortestOffcut.value, job.offcutWorth!.value.toFraction()]).toEqual([inches(18), '1/4']);
    });
    test('what is cut and what is spoiled, each name as often as it is said', async () => {
        const { rooms: [den] } = await read();
        expect(den!.spoiled.map(({ value }) => value)).toEqual(['bottom-2', 'side-A-1-north', 'bottom-2']);
        expect(den!.cutBoards.map(
            ({ length, stock, into, left }) => [length.value, stock.value.name, into.map(({ value }) => value), left?.map(({ value }) => value)]
        )).toEqual([
            [feet(16), 'fir', ['bottom-2', 'side-A-1-north'], [inches(31), inches(12)]], [feet(8), 'fir', [], undefined],
        ]);
    });
});

describe('profiles', () => {
    test('every part with its values', () => {
        const { blocking, spacers, sides, cleats, bottom, trim, isDefault, label } = profile('box');
        expect([isDefault, label]).toEqual([true, 'box']);
        expect(blocking).toMatchObject({ fit: { value: 'full-width', said: false }, screws: { value: { gauge: 8, length: inches('2 1/2'), every: inches(16) } } });
        expect(spacers).toMatchObject({ every: { value: feet(2), said: true }, fromEnd: { value: inches(6), said: false } });
        expect(sides).toMatchObject({
            stock: { value: { name: 'poplar-1x8' } }, corners: { value: 'butted' }, past: { value: 'north-south' },
            rabbet: { value: { edge: 'lower', face: 'back', width: { ticks: inches('1/4') }, height: { ticks: inches('3/8') } } }, nails: { value: { gauge: 16 } },
        });
        expect(cleats).toMatchObject({ stock: { value: { name: 'strip' } }, thickness: { value: { ticks: inches('3/4') } }, gauge: { said: true }, shortEachEnd: { value: inches('1/4'), said: false } });
        expect(bottom).toMatchObject({ place: { value: 'between-sides' }, gap: { value: { least: 0, most: inches('1/32') } }, biscuits: { value: { count: 2, size: '#10' } }, press: { value: inches('1/64') } });
        expect(trim).toMatchObject({ corners: { value: 'mitered', said: false }, rip: undefined });
    });
    test('parts stand at their word, and know their braces', () => {
        const { sides, blocking } = profile('box');
        expect(words({ value: 0, at: sides!.at, said: true })).toBe('sides');
        expect(words({ value: 0, at: blocking!.body!, said: true })).toMatch(/^\{ stock wide; .* \}$/);
        expect(workspace.words(sides!.rabbet!.value.widthAt)).toBe('groove');
        expect(workspace.words(sides!.rabbet!.value.heightAt)).toBe('3/8"');
    });
    test('defaults stand in the built-in library', () => {
        const { fit } = profile('box').blocking!;
        expect(fit.at.uri).toMatch(/^builtin:/);
    });
    test('the same object for a stock wherever it is used', () => {
        expect(profile('box').blocking!.stock!.value).toBe(stock('poplar-1x6'));
        expect(den.grid!.beams!.value.sides!.stock!.value).toBe(stock('poplar-1x8'));
    });
    test('a variant says only what differs, and its arguments reach what it is like', () => {
        const fine = profile('fine');
        expect(fine.sides!.rabbet!.value.width.ticks).toBe(inches('1/8'));
        expect(fine.sides!.rabbet!.via!.map(source => workspace.words(source))).toEqual(['g']);
        expect(fine.spacers!.every.value).toBe(inches(20));
        expect(fine.sides).toMatchObject({ corners: { value: 'mitered' }, heldDown: { value: { ticks: inches('5/16') } } });
        expect(fine.trim!.rip!.value.ticks).toBe(inches('1 1/4'));
        expect(fine.trim!.body).toBeUndefined();
        expect(fine.variesFrom).toBe(profile('box'));
        expect(profile('finest').variesFrom).toBe(fine);
        expect(profile('finest').sides!.rabbet!.value.width.ticks).toBe(inches('1/16'));
        expect(profile('finest').sides!.rabbet!.via!.map(source => workspace.words(source))).toEqual(['g', '1/16"']);
        expect(profile('finest').cleats!.gauge!.value.ticks).toBe(inches('11/16'));
        expect(profile('box').cleats!.gauge!.value.ticks).toBe(inches('3/4'));
    });
    test('a parameter without a default makes no default instance', () => {
        expect(profile('open-box')).toBeUndefined();
        const [, , lineA] = den.lines;
        expect(lineA!.beams!.value).toMatchObject({ isDefault: false, label: 'open-box(wide: poplar-1x6)', blocking: { stock: { value: { name: 'poplar-1x6' } } } });
        expect(lineA!.beams!.value.defaultKey).toBeUndefined();
    });
    test('what it requires, with both sides worked out', () => {
        expect(profile('box').requires).toMatchObject([{ holds: true, text: 'groove + reveal <= 3/8"', message: 'leave half of the side', left: '5/16"', operator: '<=', right: '3/8"', via: [] }]);
        const [ofDen] = den.grid!.beams!.value.requires;
        expect(ofDen).toMatchObject({ holds: true, left: '1/4"' });
        expect(ofDen!.via.map(source => workspace.words(source))).toEqual(['3/16"']);
    });
});

describe('tolerances', () => {
    test('are caused by the fence where one is named, by the stock where its width is taken, and else by what they are said of', () => {
        const { blocking, spacers, sides } = profile('box');
        expect(blocking!.rip!.value).toEqual({ ticks: inches('5 3/8'), tolerance: [{ cause: `stock:${stock('poplar-1x6').key}`, reach: inches('1/64') }] });
        expect(blocking!.ripWith!.value).toBe('fence B');
        const key = (name: string) => `file:///house/details/box.coffer#box ${name}`;
        expect(spacers!.height!.value.tolerance).toEqual([{ cause: key('Spacers.height'), reach: inches('1/32') }]);
        expect(sides!.heldDown.value.tolerance).toEqual([{ cause: key('Sides.held-down'), reach: inches('1/64') }]);
    });
});

describe('rooms', () => {
    test('arguments, lines, spacing and the places they come from', () => {
        const grid = den.grid!;
        expect(grid.beams!.value).toMatchObject({ label: 'box(groove: 3/16")', isDefault: false, defaultKey: profile('box').key });
        expect(grid.beams!.value.variesFrom).toBe(profile('box'));
        expect(words(grid.beams)).toBe('box(groove: 3/16", every: module / 2)');
        expect(grid.beams!.value.sides!.rabbet!.via!.map(source => workspace.words(source))).toEqual(['3/16"']);
        expect(grid.beams!.value.spacers!.every).toMatchObject({ value: feet(2) });
        expect(grid.north).toMatchObject({ by: 'lines', from: { value: 'north-east', said: true } });
        expect(grid.north?.by === 'lines' && grid.north.centers.map(one => one.value)).toEqual([feet(4), feet(8), inches('150 1/3')]);
        expect(grid.east).toMatchObject({ by: 'size', size: { value: { least: inches(40), most: inches(54) } } });
        expect(grid).toMatchObject({ through: { value: 'east-west' }, residue: { value: 'outer-coffers', said: false }, splices: { value: 'on-crossings', said: false } });
        expect(grid.around.west).toMatchObject({ kind: { value: 'band' }, rip: { value: { ticks: inches(5) } }, belowBeams: { value: { ticks: inches('-1/4') } } });
    });
    test('a third of an inch is rounded once, half away from zero', () => {
        expect(inches('150 1/3')).toBe(Math.round(150 * 16256 + 16256 / 3));
    });
    test('what was measured overrules what was drawn; a wall that is not said is as long as the one across', () => {
        expect(den.walls[0]!.length).toMatchObject({ value: { ticks: inches('220 1/8'), tolerance: [] } });
        expect(words(den.walls[0]!.length)).toBe('18\' 4 1/8"');
        expect(den.walls[2]!.length!.value).toBe(den.walls[0]!.length!.value);
        expect(den.walls[3]!.length!.value.ticks).toBe(feet(15) + inches(2));
        expect(den.height!.value).toBe(feet(9));
        expect(den.covering).toMatchObject({ kind: { value: 'gypsum' }, thickness: { value: inches('5/8') } });
        expect(den.measuredBoards).toMatchObject([{ name: 'b3', stock: { value: { name: 'poplar-1x6' } }, rabbet: { value: inches('5/16') } }]);
    });
    test('fixtures from the north-west corner, wherever they were measured from', () => {
        const [lamp, fan] = den.fixtures;
        expect(lamp).toMatchObject({ name: 'lamp', kind: 'light', x: inches('220 1/8') - inches(27), y: inches(25), diameter: { value: inches(6) }, wants: { value: 'anywhere', said: false } });
        expect(fan).toMatchObject({ x: feet(1), y: feet(15) + inches(2) - feet(2) });
        expect(den.grid!.centeredOn!.value).toBe(lamp);
    });
    test('lines with beams, held-down and splices of their own', () => {
        const [b, two] = den.lines;
        expect(b).toMatchObject({ name: 'B', heldDown: { value: { ticks: inches('1/2') } } });
        expect(b!.beams!.value).toBe(profile('fine'));
        expect(b!.splices.map(one => [one.value, one.from])).toEqual([[inches(110), 'north'], [feet(3), undefined]]);
        expect(two!.beams!.value.label).toBe('fine(g: 3/32")');
    });
    test('the settings of the nearest job, and the built-in ones where none is said', () => {
        expect(den.job).toMatchObject({
            title: { value: 'Quarry Road 3' }, client: { value: 'the Ferreiras' }, cutTo: { value: inches('1/16'), said: true }, kerf: { value: inches('1/8'), said: false },
            longestBoard: { value: feet(14) }, show: { value: 'feet-inches' }, currency: { value: 'USD', said: false }, paintFilm: { value: { least: 0, most: inches('0.005') } },
        });
        expect(content('yard.coffer').job).toMatchObject({ title: undefined, cutTo: { value: inches('1/32'), said: false } });
        expect(content('yard.coffer').job.at).toBeUndefined();
        expect(den.broken).toBe(false);
    });
});

describe('what stays the same object', () => {
    test('shared things while their files stay as they are; a default whether or not its arguments are written out', async () => {
        const before = { box: profile('box'), poplar: stock('poplar-1x6'), beams: den.grid!.beams!.value };
        await workspace.edit({ 'house/den.coffer': `${texts['house/den.coffer']}\n// a remark\nroom attic { grid { beams box(groove: 1/4", wide: poplar-1x6) } }\n` });
        const [after, attic] = content('house/den.coffer').rooms;
        expect(profile('box')).toBe(before.box);
        expect(stock('poplar-1x6')).toBe(before.poplar);
        expect(after!.grid!.beams!.value).toBe(before.beams);
        expect(attic!.grid!.beams!.value).toBe(before.box);
        expect(content('house/den.coffer')).toBe(content('house/den.coffer'));
    });
    test('and not when a file they reach has changed', async () => {
        const before = profile('box');
        await workspace.edit({ 'yard.coffer': texts['yard.coffer']!.replace('11/16"', '5/8"') });
        expect(profile('box')).not.toBe(before);
        expect(profile('box').sides!.stock!.value.thickness!.value.ticks).toBe(inches('5/8'));
        expect(content('house/den.coffer').rooms[0]!.grid!.around.north!.stock!.value).toBe(stock('poplar-1x8'));
    });
});
