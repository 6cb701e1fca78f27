import { describe, expect, test } from 'vitest';
import { drawSheets, type Sheet } from '../../src/drawing/index.ts';
import { MARGIN } from '../../src/drawing/sheet/frame.ts';
import { linesThroughWords, outside, touching } from './support/checks.ts';
import { groups, texts } from './support/walk.ts';
import { drawn, laid, ROOMS } from './support/rooms.ts';

describe.each(Object.entries(ROOMS))('%s', (_name, wishes) => {
    const { pieces } = laid(wishes), sheets = drawn(wishes);

    test('every piece is drawn once on the plan, with the words it comes from', () => {
        const drawn = groups(sheets[0]!.items).filter(group => group.piece !== undefined);
        expect(drawn.flatMap(group => group.piece ?? []).sort()).toEqual(pieces.pieces.map(piece => piece.id).sort());
        for (const group of drawn) {
            expect(group.title).toBeTruthy();
            expect(group.source).toMatch(/^parlor\.coffer:\d+:\d+$/);
        }
    });

    test.each(sheets.map(sheet => [sheet.id, sheet] as const))('%s: no two texts touch', (_id, sheet) => {
        expect(touching(sheet)).toEqual([]);
    });

    test.each(sheets.map(sheet => [sheet.id, sheet] as const))('%s: no leader and no line of a dimension runs through a figure or words', (_id, sheet) => {
        expect(linesThroughWords(sheet)).toEqual([]);
    });

    test.each(sheets.map(sheet => [sheet.id, sheet] as const))('%s: everything stands within the border', (_id, sheet) => {
        expect(outside(sheet)).toEqual([]);
    });

    test('ids are unique on each sheet', () => {
        for (const sheet of sheets) {
            const ids = groups(sheet.items).map(group => group.id);
            expect(ids.filter((id, i) => ids.indexOf(id) !== i)).toEqual([]);
        }
    });

    test('sheets are numbered on and say how many they are', () => {
        expect(sheets.map(sheet => sheet.id)).toEqual(sheets.map((_, i) => `C-${i + 1}`));
        for (const sheet of sheets) expect(texts(sheet.items).map(run => run.text)).toContain(`of ${sheets.length}`);
    });
});

test('sections of a room are drawn once each', () => {
    // the plan, its beams, its band, how they meet
    expect(drawn(ROOMS['three by two']!)).toHaveLength(4);
    const sheets = drawn(ROOMS['two sections']!);
    expect(sheets.map(sheet => sheet.title)).toEqual([
        'Reflected ceiling plan, Parlor, Quince Lane 4', 'Section through a box beam, plain-box, Parlor, Quince Lane 4', 'Section through a box beam, fine-box, Parlor, Quince Lane 4',
        'Section through the band, north, east, south and west walls, Parlor, Quince Lane 4', 'How beams meet, Parlor, Quince Lane 4', 'How beams meet, Parlor, Quince Lane 4',
    ]);
    expect(groups(sheets[0]!.items).flatMap(group => (group.id.startsWith('mark.') ? [group.title] : []))).toEqual(['Section 2 on sheet C-2', 'Section 3 on sheet C-3']);
    expect(drawn(ROOMS['one coffer, nothing round it']!)).toHaveLength(1);
});

test('the checks themselves see a text on another, and one across the border', () => {
    const sheet = drawn(ROOMS['three by two']!)[0]!;
    const first = texts(sheet.items)[0]!;
    const twice: Sheet = { ...sheet, items: [...sheet.items, { ...first, at: [first.at[0] + 2, first.at[1]] }] };
    expect(touching(twice)).toEqual([`${first.text} | ${first.text}`]);
    expect(outside({ ...sheet, items: [{ ...first, at: [MARGIN - 1, 100] }] })).toHaveLength(1);
});

test('a strip too full for a long list cuts the list, says so, and keeps the cautions', () => {
    const fixtures = Array.from({ length: 60 }, (_, i) => ({ name: `can-${i + 1}`, kind: 'light', x: `${10 + 2 * i}"`, y: `${8 + 2 * i}"`, diameter: '4"' }));
    const { ceiling, pieces } = laid({ fixtures });
    const words = texts(drawSheets(ceiling, pieces)[0]!.items).map(run => run.text);
    const listed = words.filter(each => / east, .* south$/.test(each));
    expect(listed.length).toBeGreaterThan(3);
    expect(listed.length).toBeLessThan(60);
    expect(words).toContain('… and more: see the job.');
    expect(words.join(' ')).toMatch(/lead or asbestos.*local codes/);
});

test('the cautions of the section defer to those who may say', () => {
    const words = texts(drawn(ROOMS['three by two']!)[1]!.items).map(run => run.text).join(' ');
    expect(words).toMatch(/licensed person and the local code/);
    expect(words).toMatch(/wires, pipes and ducts/);
});
