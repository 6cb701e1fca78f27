import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { planBoards } from '../../src/cutting/first-plan.ts';
import { itemsExtent, textExtent, within } from '../../src/drawing/extent.ts';
import type { Sheet } from '../../src/drawing/display-list.ts';
import { drawBoard, drawBoardSheets, drawLabels, toSvg } from '../../src/drawing/index.ts';
import { layOut } from '../../src/ceiling/layout.ts';
import { cutAlike } from '../../src/takeoff/cut-alike.ts';
import { inches } from '../../src/quantity/rational.ts';
import { sawOrder } from '../../src/sawing/index.ts';
import type { SawOrder } from '../../src/sawing/model.ts';
import { takeOff } from '../../src/takeoff/take-off.ts';
import type { EndCut, Piece } from '../../src/takeoff/model.ts';
import { given, job, piece, stock } from '../cutting/samples.ts';
import { randomRooms } from '../support/random-rooms.ts';
import { outside, touching } from './support/checks.ts';
import { laid, ROOMS } from './support/rooms.ts';
import { groupOf, groups, texts } from './support/walk.ts';
import { all, readXml } from './support/xml.ts';
import { runs, some } from '../support/full.ts';

const MITER: EndCut = { cut: 'miter', degrees: 45 };
const SQUARE: EndCut = { cut: 'square' };
const words = { job: 'Plum Street 4', rooms: 'Parlor' };

function orderOf(pieces: readonly Piece[], settings = job()): SawOrder {
    return sawOrder(planBoards(pieces, settings), settings);
}
function said({ items }: { readonly items: Sheet['items'] }): string[] {
    return texts(items).map(run => run.text);
}

describe('a board', () => {
    const pine = stock({ feet: [8] });

    // 8' board, half an inch of trim, pieces of 30" and 20", kerf 1/8": marks at 1/2", 30 1/2" and 50 5/8"
    test('has its cut marks in readings of the tape, feet first', () => {
        const order = orderOf([piece('sample.side-1', pine, inches(30)), piece('sample.side-2', pine, inches(20))]);
        const sheet = drawBoard(order, order.boards[0]!, 'b', 802);
        const readings = said(groupOf(sheet, 'tape.pine-1x6 #1.1'));
        expect(readings).toEqual(['1⁄2"', `2' 6 1⁄2"`, `4' 2 5⁄8"`]);
        // 780 points lie over 96": 8.125 points an inch from x = 10
        const x = (index: number) => texts(groupOf(sheet, 'tape.pine-1x6 #1.1').items)[index]!.at[0];
        expect([x(0), x(1), x(2)].map(at => Math.round((at - 10) / 8.125 * 1000) / 1000)).toEqual([0.5, 30.5, 50.625]);
    });

    test('shows the miter of a left at its left, of a right at its right', () => {
        const fir = stock({ name: 'fir-1x8', width: inches('7 1/4'), feet: [8] });
        const side = (hand: 'left' | 'right'): Piece => piece(`sample.side-${hand}`, fir, inches(40), { part: 'side', on: 'south', hand, face: inches('39 1/4'), cutFace: inches('39 1/4'), ends: hand === 'left' ? [MITER, SQUARE] : [SQUARE, MITER] });
        for (const hand of ['left', 'right'] as const) {
            const order = orderOf([side(hand)]);
            const sheet = drawBoard(order, order.boards[0]!, 'b');
            const own = groupOf(sheet, 'piece.fir-1x8 #1.1.1').items;
            const hidden = own.flatMap(item => (item.kind === 'line' && item.pen === 'hidden' ? [item.from[0]] : []));
            const { left, right } = itemsExtent(own.filter(item => item.kind === 'polyline'));
            expect(hidden).toHaveLength(1);
            const inset = hand === 'left' ? hidden[0]! - left : right - hidden[0]!;
            // as far in as the board is thick: 3/4" of 96" over 878 points
            expect(inset).toBeCloseTo(0.75 * 878 / 96, 6);
        }
    });

    test('an offcut is promised no longer than it is', () => {
        const fine = job({ cutTo: given(inches('1/16')) });
        const order = orderOf([piece('sample.a', pine, inches('63 31/32'))], fine);
        // 96 - 1 - 63 31/32 - 1/8 = 30 29/32", a sixteenth down: 30 7/8"
        expect(said(drawBoard(order, order.boards[0]!, 'b'))).toContain(`keep 2' 6 7⁄8"`);
    });
});

function checkSheets(order: SawOrder): void {
    const sheets = drawBoardSheets(order, words);
    const drawn = sheets.flatMap(sheet => groups(sheet.items)).flatMap(group => (group.id.startsWith('piece.') ? [group.piece!] : []));
    expect(drawn.sort()).toEqual(order.boards.flatMap(b => b.strips).flatMap(s => s.pieces).map(p => p.piece.id).sort());
    for (const sheet of sheets) {
        expect(touching(sheet)).toEqual([]);
        expect(outside(sheet)).toEqual([]);
        const ids = all(readXml(toSvg(sheet, { fonts: 'named' }))).flatMap(element => element.attributes['id'] ?? []);
        expect(new Set(ids).size).toBe(ids.length);
    }
}

describe('sheets of boards', () => {
    test('any room: every piece once, nothing on anything else, all inside the border', () => {
        let drawn = 0;
        fc.assert(fc.property(randomRooms, ({ room }) => {
            const { ceiling } = layOut(room);
            if (!ceiling) return;
            drawn++;
            checkSheets(orderOf(takeOff(ceiling).pieces, room.job));
        }), { seed: 23, numRuns: runs(30, 2) });
        expect(drawn).toBeGreaterThan(runs(10, 1));
    });

    test('a board of more strips than a sheet holds goes on on the next', () => {
        const wide = stock({ name: 'sheet', width: inches(48), feet: [8] });
        const strips = Array.from({ length: 50 }, (_, i) => piece(`sample.cleat-${i}`, wide, inches(80) - i * inches('1/2'), { part: 'cleat', width: inches('3/4'), ripped: true, work: [{ kind: 'rip', width: inches('3/4'), thickness: inches('3/4') }] }));
        const order = orderOf(strips);
        expect(order.boards).toHaveLength(1);
        expect(drawBoardSheets(order, words).length).toBeGreaterThan(1);
        checkSheets(order);
    });

    test.each(some(['three by two', 'metric', 'hostile', 'many small'], 2))('%s: the same bytes every time, and XML', name => {
        const { ceiling, pieces } = laid(ROOMS[name]!);
        const draw = () => drawBoardSheets(orderOf(pieces.pieces, ceiling.room.job), { ...words, job: ceiling.room.job.title!.value, rooms: ceiling.room.title! }).map(sheet => toSvg(sheet, { fonts: 'named' }));
        const once = draw();
        expect(draw()).toEqual(once);
        for (const svg of once) expect(all(readXml(svg)).map(element => element.name)).not.toContain('script');
    });
});

describe('labels', () => {
    test('any room: one for every piece, one for all spacers cut alike, in the order of the saw, each within its own field', () => {
        fc.assert(fc.property(randomRooms, ({ room }) => {
            const { ceiling } = layOut(room);
            if (!ceiling) return;
            const order = orderOf(takeOff(ceiling).pieces, room.job);
            const sheets = drawLabels(order, 'Plum Street 4');
            const cut = order.steps.flatMap(s => (s.do === 'crosscut' ? s.takes.flatMap(t => t.pieces) : [])).map(p => p.piece);
            const labels = sheets.flatMap(s => groups(s.items));
            expect(labels.map(g => g.piece).filter(id => !id!.includes('.spacer-'))).toEqual(cut.filter(({ part }) => part !== 'spacer').map(({ id }) => id));
            const spacers = cut.filter(({ part }) => part === 'spacer'), sizes = new Set(spacers.map(spacer => `${spacer.stock.key} ${cutAlike(spacer)}`));
            const bundles = labels.filter(g => g.piece!.includes('.spacer-'));
            expect(bundles.length).toBe(sizes.size);
            expect(bundles.map(({ title }) => Number(/^(\d+) spacers, /.exec(title!)?.[1] ?? 1)).reduce((a, b) => a + b, 0)).toBe(spacers.length);
            for (const sheet of sheets) {
                expect(touching(sheet)).toEqual([]);
                const { width, height } = sheet.paper;
                for (const [i, label] of groups(sheet.items).entries()) {
                    const own = { width: (width - 72) / 3, height: (height - 72) / 8 };
                    const left = 36 + (i % 3) * own.width, top = 36 + Math.floor(i / 3) * own.height;
                    const room = { left, top, right: left + own.width, foot: top + own.height };
                    for (const run of texts(label.items)) expect(within(textExtent(run), room)).toBe(true);
                }
            }
        }), { seed: 24, numRuns: runs(25) });
    });

    test('say mark, lengths, hand, board and stop', () => {
        const fir = stock({ name: 'fir-1x8', width: inches('7 1/4'), feet: [8] });
        const order = orderOf([piece('sample.side-B-3-north', fir, inches('40 1/2'), {
            part: 'side', on: 'north', hand: 'left', face: inches('39 3/4'), cutFace: inches('39 3/4'), ends: [SQUARE, MITER], where: 'line B, bay 3, north side',
        })]);
        expect(said(drawLabels(order, 'Plum Street 4')[0]!)).toEqual(['SIDE', 'fir-1x8 #1 · stop 1', 'B-3-north', `3' 4 1⁄2"`, `face 3' 3 3⁄4"`, 'left', 'sample: line B, bay 3, north side', 'Plum Street 4']);
    });

    test('say of what lies and leans at its ends every edge that is shorter than what it takes of a board', () => {
        const fir = stock({ name: 'fir-1x6', width: inches('5 1/2'), feet: [8] });
        const of = (edges: Partial<Piece>): string[] =>
            said(drawLabels(orderOf([piece('sample.bottom-2', fir, inches(50), { part: 'bottom', cutOverall: inches(50), ends: [SQUARE, { cut: 'angled', degrees: -1.3 }], ...edges })]), 'Plum Street 4')[0]!);
        // longer at the east: all of it is that edge, and the other is short
        expect(of({ cutFace: inches(50), cutBack: inches('49 7/8') })[4]).toBe(`edge 4' 1 7⁄8"`);
        // leaning the same way at both ends it takes more than either edge
        expect(of({ cutFace: inches('49 3/4'), cutBack: inches('49 7/8') })[4]).toBe(`edge 4' 1 3⁄4", edge 4' 1 7⁄8"`);
        expect(of({ cutFace: inches(50), cutBack: inches(50) }).some(words => words.includes('edge'))).toBe(false);
    });

    test('a bundle says how many, and what lines they are for', () => {
        const pine = stock({ name: 'pine-1x6', width: inches('5 1/2'), feet: [8] });
        const spacers = ['A-1-1', 'A-1-2', '2-1-1', '10-1-1'].map(name => piece(`sample.spacer-${name}`, pine, inches(5), { part: 'spacer', line: name.split('-')[0]! }));
        const taller = piece('sample.spacer-B-1-1', pine, inches(6), { part: 'spacer', line: 'B', where: 'line B, bay 1, spacer 1' });
        const labels = groups(drawLabels(orderOf([...spacers, taller]), 'Plum Street 4')[0]!.items);
        expect(labels.map(({ items }) => texts(items).map(run => run.text))).toEqual([
            ['SPACER', 'pine-1x6 #1 · stop 1', 'B-1-1', '6"', 'sample: line B, bay 1, spacer 1', 'Plum Street 4'],
            ['SPACERS', 'pine-1x6 #1 · stop 2', '4 alike', '5"', 'sample: lines 2, 10, A', 'Plum Street 4'],
        ]);
    });

    test('on A4 where the job shows millimeters', () => {
        const order = orderOf([piece('a', stock(), inches(40))], job({ show: given('millimeters' as const) }));
        expect(drawLabels(order, 'x').map(s => s.paper.name)).toEqual(['A4']);
    });
});
