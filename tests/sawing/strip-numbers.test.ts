import { expect, test } from 'vitest';
import { planBoards } from '../../src/cutting/first-plan.ts';
import { drawLabels } from '../../src/drawing/index.ts';
import { inches } from '../../src/quantity/rational.ts';
import { humanBoards } from '../../src/report/boards/human.ts';
import { jsonBoards } from '../../src/report/boards/json.ts';
import { noPaint } from '../../src/report/look.ts';
import { sawOf } from '../../src/report/sawing/house-saw.ts';
import { humanSaw } from '../../src/report/sawing/human.ts';
import { jsonSaw } from '../../src/report/sawing/json.ts';
import { job, piece, stock } from '../cutting/samples.ts';
import { files, house } from '../report/samples.ts';
import { groups, texts } from '../drawing/support/walk.ts';

// A board with a full piece and a section: the strip that a list, a label and another program name is the same one.
test('a strip has one number on every list, label and in JSON', () => {
    const pine = stock({ feet: [16], perFoot: '2' });
    const pieces = [
        piece('den.bottom', pine, inches(100)),
        ...[1, 2, 3].map(i => piece(`den.cleat-${i}`, pine, inches(70 + i), { part: 'cleat', width: inches('3/4'), ripped: true, room: 'den' })),
        ...[4, 5].map(i => piece(`den.cleat-${i}`, pine, inches(25 + i), { part: 'cleat', width: inches('1 1/2'), ripped: true, room: 'den' })),
    ];
    const settings = job(), own = { ...house, job: settings };
    const plan = { house: own, plan: planBoards(pieces, settings) };
    const saw = sawOf(plan);
    const [board] = saw.order.boards;
    expect(board!.strips.map(strip => strip.rippedTo !== undefined)).toEqual([false, true, true, true, true]);
    const ripped = board!.strips.filter(strip => strip.rippedTo !== undefined);
    const expected = new Map(ripped.flatMap((strip, i) => strip.pieces.map(laid => [laid.piece.id, i + 1] as const)));
    expect([...expected.keys()].sort()).toEqual(pieces.filter(p => p.part === 'cleat').map(p => p.id).sort());

    const numbersIn = (printed: { strips: { number: number; pieces: { piece: string }[] }[] }[]): Map<string, number> =>
        new Map(printed.flatMap(one => one.strips.flatMap(strip => strip.pieces.map(p => [p.piece, strip.number] as const))));
    const bySaw = numbersIn((JSON.parse(jsonSaw([saw])) as { houses: { boards: never[] }[] }).houses[0]!.boards);
    const byBoards = numbersIn((JSON.parse(jsonBoards([plan], files)) as { houses: { stocks: { boards: never[] }[] }[] }).houses[0]!.stocks[0]!.boards);
    const flat = (text: string): string => text.replace(/\s+/g, ' ');
    const sawList = flat(humanSaw([saw], noPaint)), boardList = flat(humanBoards([plan], noPaint, files));
    const labels = drawLabels(saw.order, 'Plum Street 4').flatMap(sheet => groups(sheet.items))
        .flatMap(label => texts(label.items).flatMap(run => /, (strip \d+) /.exec(run.text)?.[1] ?? []).map(strip => `${label.piece ?? ''} ${strip}`));
    for (const [id, number] of expected) {
        expect(bySaw.get(id)).toBe(number);
        expect(byBoards.get(id)).toBe(number);
        const name = id.slice('den.'.length);
        expect(sawList).toMatch(new RegExp(`strip ${number} \\([^:]*: ((?!strip)[^:])*${name} to`));
        expect(boardList).toMatch(new RegExp(`strip ${number}: ((?!strip).)*${name}`));
        expect(labels.filter(words => words.startsWith(`${id} `))).toEqual([`${id} strip ${number}`]);
    }
    // what is cut in the whole width comes behind all of them
    expect([bySaw.get('den.bottom'), byBoards.get('den.bottom')]).toEqual([5, 5]);
});
