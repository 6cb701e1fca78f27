import { describe, expect, test } from 'vitest';
import { placeChanges } from '../../src/changes/places.ts';
import { house } from '../cli/house.ts';
import { compareTexts } from '../support/compare-texts.ts';

const byLines = (lines: string, more: (text: string) => string = text => text) => ({
    ...house, 'den.coffer': more(house['den.coffer'].replace('coffers-north  3', `lines-north  ${lines}`).replace('    residue        outer-coffers\n', '')),
});
async function placesOf(before: Record<string, string>, after: Record<string, string>) {
    const { houses: [change] } = await compareTexts(before, after), [room] = change!.rooms;
    return { ...placeChanges(room!, change!.pieces), change: change!, now: room!.after!.takeOff!.pieces };
}
const linesOf = (list: readonly { readonly line: string | null }[]): string[] => [...new Set(list.map(({ line }) => line ?? ''))].sort();

describe('what stands where nothing like it stood', () => {
    test('nothing in a room that is as it was, whatever it is called', async () => {
        const { come, left } = await placesOf(house, { ...house, 'den.coffer': house['den.coffer'].replace('room den', 'room study') });
        expect([come, left]).toEqual([[], []]);
    });

    test('a line before the others: they are called otherwise and stay, it alone is new, and what it cuts in two is from the old', async () => {
        const { come, left, change } = await placesOf(byLines(`6', 9'`), byLines(`3', 6', 9'`));
        const through = come.filter(({ piece }) => piece.part === 'bottom' && /\d/.test(piece.line ?? ''));
        expect(through.map(({ how, piece }) => [how, piece.line])).toEqual([['new', '1']]);
        // by names alone the last one would be the new one
        expect(change.pieces.fresh.filter(({ part, line }) => part === 'bottom' && /\d/.test(line ?? '')).map(({ line }) => line)).toEqual(['3']);
        expect(linesOf(left.map(({ solid }) => solid.piece)).every(line => !['1', '2'].includes(line))).toBe(true);
    });

    test('a line that moves stands elsewhere, and is told where it stood; one that goes stands nowhere', async () => {
        const moved = await placesOf(byLines(`3', 6', 9'`), byLines(`3', 6', 9' 6"`));
        const line = (list: { how: string; line: string | null; part: string }[]) => list.filter(({ part, line: name }) => part === 'bottom' && name === '3');
        expect(line(moved.come.map(({ how, piece: { line: name, part } }) => ({ how, line: name, part })))).toMatchObject([{ how: 'elsewhere' }]);
        expect(line(moved.left.map(({ how, solid: { piece: { line: name, part } } }) => ({ how, line: name, part })))).toMatchObject([{ how: 'elsewhere' }]);
        // what crosses it is one piece then, and the longer ones can be cut from it
        const gone = await placesOf(byLines(`3', 6', 9'`), byLines(`3', 9'`));
        expect(gone.left.filter(({ solid: { piece } }) => piece.part === 'bottom' && piece.line === '2').map(({ how }) => how)).toEqual(['from']);
    });

    test('what has come and what stays are all that stands there, each once', async () => {
        for (const lines of [`2', 5', 8', 11'`, `6'`, `6' 1", 9'`]) {
            const { come, left, now, change } = await placesOf(byLines(`6', 9'`), byLines(lines));
            const before = change.rooms[0]!.before!.takeOff!.pieces;
            expect(new Set(come.map(({ piece }) => piece.id)).size).toBe(come.length);
            expect(now.length - come.length).toBe(before.length - left.length);
            const count = (list: readonly { how: string }[], how: string): number => list.filter(one => one.how === how).length;
            expect(count(come, 'elsewhere')).toBe(count(left, 'elsewhere'));
            expect([count(come, 'from'), count(left, 'from')]).toEqual([change.pieces.from.length, change.pieces.from.length]);
            expect([count(come, 'new'), count(left, 'new')]).toEqual([change.pieces.fresh.length, change.pieces.gone.length]);
        }
    });
});
