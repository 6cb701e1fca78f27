import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { planBoards } from '../../src/cutting/first-plan.ts';
import { inches, millimeters } from '../../src/quantity/rational.ts';
import { csvBoards } from '../../src/report/boards/csv.ts';
import { humanBoards } from '../../src/report/boards/human.ts';
import { jsonBoards } from '../../src/report/boards/json.ts';
import { csvCutList } from '../../src/report/cut-list/csv.ts';
import { batchesOf } from '../../src/report/cut-list/group.ts';
import { humanCutList } from '../../src/report/cut-list/human.ts';
import { jsonCutList } from '../../src/report/cut-list/json.ts';
import { cleanLine } from '../../src/text/clean-text.ts';
import { printCsv } from '../../src/text/csv.ts';
import { noPaint } from '../../src/report/look.ts';
import { given, job, piece, stock } from '../cutting/samples.ts';
import { files, house, housePlan, pieces, settings, strictSchema } from './samples.ts';
import { runs } from '../support/full.ts';

describe('the cut list', () => {
    test('for the saw', () => {
        expect(humanCutList([house], noPaint)).toMatchSnapshot();
    });

    test('batches hold every piece once, and hands are told apart', () => {
        const batches = batchesOf(pieces).flatMap(s => s.parts).flatMap(p => p.batches);
        expect(batches.flatMap(b => b.pieces.map(p => p.id)).sort()).toEqual(pieces.map(p => p.id).sort());
        const sides = batches.filter(b => b.sample.part === 'side');
        expect(sides.map(b => [b.pieces.length, b.sample.hand])).toEqual([[2, null], [1, 'left'], [1, 'right']]);
    });

    test('the order of the pieces changes nothing', () => {
        fc.assert(fc.property(fc.shuffledSubarray([...pieces], { minLength: pieces.length }), shuffled => {
            expect(batchesOf(shuffled)).toEqual(batchesOf(pieces));
        }), { seed: 3, numRuns: runs(50) });
    });

    test('as JSON, as its published schema says', () => {
        const valid = strictSchema('cut-list');
        const printed = JSON.parse(jsonCutList([house], files)) as { pieces: Record<string, unknown>[]; rooms: Record<string, unknown>[] };
        expect(valid(printed), JSON.stringify(valid.errors)).toBe(true);
        expect(printed.rooms.map(r => [r.name, r.laidOut, r.errors])).toEqual([['den', true, 0], ['attic', false, 2]]);
        expect(printed.pieces[0]).toMatchObject({
            id: 'den.bottom-A-1', room: 'den', part: 'bottom', line: 'A', stock: 'pine-1x6', hand: null,
            face: { ticks: 827024, cut: 827024, text: `4' 2 7/8"` }, ends: [{ cut: 'square' }, { cut: 'square' }],
            why: `coffer 4' 1 3/8" + 2 x side 3/4" = 4' 2 7/8"`, source: { file: 'file:///sample.coffer', line: 1, column: 1 },
        });
        expect(printed.pieces[0]!.terms).toMatchObject([{ what: 'coffer', times: 1, source: { file: 'den.coffer', line: 4, column: 5 } }, { source: null }]);
    });

    test('exact and cut lengths stand side by side', () => {
        const third = piece('a', stock(), inches(50) + 85, { cutFace: inches(50), cutBack: inches(50) });
        const { pieces: [printed] } = JSON.parse(
            jsonCutList([{ ...house, rooms: [{ ...house.rooms[0]!, takeOff: { ...house.rooms[0]!.takeOff!, pieces: [third] } }] }], files)
        ) as { pieces: { back: object }[] };
        expect(printed!.back).toEqual({ ticks: inches(50) + 85, cut: inches(50), text: `4' 2"` });
    });

    test('as CSV: RFC 4180, numbers as numbers, quotes doubled', () => {
        const csv = csvCutList([house], files);
        expect(csv.endsWith('\r\n')).toBe(true);
        expect(csv.replaceAll('\r\n', '').includes('\n')).toBe(false);
        expect(csv.split('\r\n')[1]).toBe(`den.bottom-A-1,den,bottom,A,1,,,pine-1x6,in,50.875,50.875,50.875,"4' 2 7/8""","4' 2 7/8""","4' 2 7/8""",square,square,square,square,0,0,,no,5.5,0.75,no,,"line A, bay 1","coffer 4' 1 3/8"" + 2 x side 3/4"" = 4' 2 7/8""",no,file:///sample.coffer,1,1,,,ok`);
        const read = Papa.parse<Record<string, string>>(csv, { header: true, skipEmptyLines: true });
        expect(read.errors).toEqual([]);
        expect(read.data.map(row => [row.id, row.standing!.split(' | ')[0]])).toEqual([
            ...pieces.map(p => [p.id, 'ok']),
            // a room without a piece has a row that says why
            ['', 'Not to be built from as it stands: attic.coffer:3:6: Four coffers do not close. [grid-doesnt-close]'],
        ]);
    });

    test('in millimeters where the job shows millimeters', () => {
        const metric = { ...house, job: job({ show: given('millimeters' as const), cutTo: given(millimeters('0.5')) }) };
        const read = Papa.parse<Record<string, string>>(csvCutList([metric], files), { header: true, skipEmptyLines: true });
        expect(read.data[0]).toMatchObject({ unit: 'mm', back: '1292.225' });
        expect(humanCutList([metric], noPaint)).not.toContain('"\n');
    });
});

describe('CSV that cannot inject formulas', () => {
    const roundTrip = (cell: string): string => Papa.parse<string[]>(printCsv(['x', 'y'], [[cell, 1]])).data[1]![0]!;

    test.each(['=1+1', '@SUM(A1)', '+cmd', '-2+3', '=cmd|\'/c calc\'!A0', '\t=1', '\r=1', '\n=1', ' =1', '\u00a0=1', '\u200b=1', '＝1', '−1'])('%j gets an apostrophe', cell => {
        expect(roundTrip(cell)).toBe(`'${cleanLine(cell)}`);
    });

    test.each(['pine', '4\' 2 7/8"', '"quoted"', 'a,b', 'x = 1', ''])('%j stays as it is', cell => {
        expect(roundTrip(cell)).toBe(cell);
    });

    test('a cell is one line, whatever is in it: somebody looks at the table on a terminal', () => {
        expect(roundTrip('two\r\nlines \u001b[2J\u202eend')).toBe('two lines [2Jend');
    });

    test('negative numbers stay numbers', () => {
        expect(printCsv(['x'], [[-0.03125]])).toBe('x\r\n-0.03125\r\n');
    });

    test('any table reads back, each cell on its line as it was or behind an apostrophe, none a formula', () => {
        fc.assert(fc.property(fc.array(fc.tuple(fc.string({ unit: 'binary' }), fc.string(), fc.integer()), { minLength: 1, maxLength: 8 }), rows => {
            const csv = printCsv(['a', 'b', 'c'], rows);
            const read = Papa.parse<string[]>(csv, { newline: '\r\n' });
            expect(read.data.slice(1, rows.length + 1).map(row => row.length)).toEqual(rows.map(() => 3));
            rows.forEach((row, i) => row.forEach((cell, j) => {
                const back = read.data[i + 1]![j]!;
                expect([cleanLine(String(cell)), `'${cleanLine(String(cell))}`]).toContain(back);
                if (typeof cell === 'string') expect(/^[=+\-@\t\r]/.test(back)).toBe(false);
            }));
        }), { seed: 5, numRuns: runs(500) });
    });

    test('a byte order mark only where the letters need one', () => {
        expect(printCsv(['a'], [['plain']]).startsWith('\ufeff')).toBe(false);
        expect(printCsv(['a'], [['Salón']]).startsWith('\ufeff')).toBe(true);
    });
});

describe('boards to buy', () => {
    test('for the yard and the saw', () => {
        expect(humanBoards([housePlan], noPaint, files)).toMatchSnapshot();
    });

    test('as JSON, as its published schema says; what is missing is said', () => {
        const valid = strictSchema('boards');
        const printed = JSON.parse(jsonBoards([housePlan], files)) as { houses: Record<string, unknown>[] };
        expect(valid(printed), JSON.stringify(valid.errors)).toBe(true);
        expect(printed.houses[0]).toMatchObject({
            job: 'Plum Street 4', complete: false,
            unpriced: [{ stock: 'fir-1x8', count: 1, length: { text: "16'" } }, { stock: 'fir-1x8', count: 1, length: { text: "8'" } }], unplaced: [{ piece: 'den.bottom-A-long', stock: 'pine-1x6' }],
        });
    });

    test('as JSON: kerf, trim and boards are what they are, and no offcut is longer than it is', () => {
        const coarse = job({ show: given('millimeters' as const), cutTo: given(millimeters('0.5')), kerf: given(millimeters('3.2')), endTrim: given(millimeters('30.3')) });
        const long = piece('hall.bottom-1', stock({ feet: [8] }), millimeters('1000'), { room: 'hall' });
        const plan = { house: { ...house, job: coarse, rooms: [] }, plan: planBoards([long], coarse) };
        const { houses: [printed] } = JSON.parse(jsonBoards([plan], files)) as { houses: { kerf: object; endTrim: object; stocks: { boards: object[] }[] }[] };
        expect(printed).toMatchObject({ kerf: { text: '3.2 mm' }, endTrim: { text: '30.3 mm' } });
        // 8' = 2438.4 mm, less 30.3, 1000 and 3.2 mm, leaves 1404.9 mm
        expect(printed!.stocks[0]!.boards).toMatchObject([{ length: { text: '2438.4 mm' }, cut: { text: '3.2 mm' }, strips: [{ offcut: { ticks: millimeters('1404.9'), text: '1404.5 mm' } }] }]);
    });

    test('pieces of one length that no board holds share a line', () => {
        const short = stock({ name: 'strip-1x2', feet: [4] });
        const trims = [1, 2, 3].map(i => piece(`hall.trim-${i}-east`, short, inches(50), { part: 'trim', room: 'hall' }));
        const printed = humanBoards([{ house, plan: planBoards(trims, settings) }], noPaint, files);
        expect(printed.match(/no board for .*/g)).toEqual([expect.stringMatching(/^no board for hall\.trim-1-east and 2 more \(trim, hall\): it is 4' 2",/)]);
    });

    test('as CSV: what has no price has no cost, and a piece without a board has its row', () => {
        const { data } = Papa.parse<Record<string, string>>(csvBoards([housePlan]), { header: true, skipEmptyLines: true });
        expect(data.map(row => [row.stock, row.from, row.count, row.cost, row.note!.split(':')[0]])).toEqual([
            ['fir-1x8', 'buy', '1', '', 'no price said'], ['fir-1x8', 'buy', '1', '', 'no price said'], ['pine-1x6', 'buy', '1', '25.20', ''], ['pine-1x6', 'buy', '1', '16.80', ''],
            ['pine-1x6', 'no board', '1', '', 'den.bottom-A-long'],
            ['fir-1x8', 'left', '1', '', ''], ['fir-1x8', 'left', '1', '', ''], ['pine-1x6', 'left', '1', '', ''], ['pine-1x6', 'left', '1', '', ''],
            ['pine-1x6', 'left', '1', '', 'a strip 2 7/8" wide'],
        ]);
    });

    test('a house with nothing to buy says so', () => {
        const empty = { house: { ...house, job: job(), rooms: [] }, plan: planBoards([], job()) };
        expect(humanBoards([empty], noPaint, files)).toContain('nothing to buy');
    });
});
