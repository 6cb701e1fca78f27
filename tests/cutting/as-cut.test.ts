import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { asRecorded, creditOf, fits, piecesAsCut, recordOf, usableFor } from '../../src/cutting/as-cut.ts';
import { intoTexts } from '../../src/cutting/cut-line.ts';
import { readFile } from '../../src/language/read-file.ts';
import { inspect } from '../../src/pipeline/inspect.ts';
import { restToCut } from '../../src/cutting/rest.ts';
import { nameInRoom } from '../../src/takeoff/ids.ts';
import type { Piece } from '../../src/takeoff/model.ts';
import { takeOffOf } from '../../src/takeoff/take-off.ts';
import { TestWorkspace } from '../support/workspace.ts';

interface Grid { readonly north: number; readonly east: number; readonly inches: number; readonly corners: 'mitered' | 'butted'; readonly metric: boolean }

/** A den with a grid, and what is measured in it. */
function den({ north, east, inches, corners, metric }: Grid, measured: string): string {
    return `edition 1
job "Den" { ${metric ? 'show millimeters' : 'show feet-inches'} }
stock elm-1x4 { size 1x4; lengths 8', 16' }
stock elm-1x6 { size 1x6; lengths 8', 16' }
profile box {
  blocking { stock elm-1x4 }
  sides { stock elm-1x6; rabbet 1/4" x 1/4" on lower-back; corners ${corners}${corners === 'butted' ? ' past north-south' : ''} }
  bottom { stock elm-1x4 }
}
room den {
  wall north ${inches}"
  wall east 110 3/8"
  grid {
    coffers-north ${north}
    coffers-east ${east}
    beams box
    through north-south
  }
  measured {
${measured}
  }
}
`;
}

async function roomOf(text: string) {
    const workspace = await TestWorkspace.open({ 'den.coffer': text });
    const { findings, layouts } = inspect(readFile(workspace.document('den.coffer')));
    const [layout] = layouts;
    return { layout: layout!, findings, pieces: layout?.ceiling ? takeOffOf(layout.ceiling).pieces : [] };
}

const grids: fc.Arbitrary<Grid> = fc.record({
    north: fc.integer({ min: 2, max: 4 }), east: fc.integer({ min: 2, max: 3 }), inches: fc.integer({ min: 140, max: 150 }),
    corners: fc.constantFrom('mitered', 'mitered', 'butted'), metric: fc.boolean(),
});

describe('a change after cutting', () => {
    test('whatever is cut and changed: what counts as cut fits, and what does not is told and wanted again', async () => {
        let credited = 0, told = 0;
        await fc.assert(fc.asyncProperty(grids, grids, fc.boolean(), fc.array(
            fc.nat(999), { minLength: 1, maxLength: 6 },
        ), async (drawn, other, isSame, picks) => {
            const changed = isSame ? { ...drawn, corners: other.corners } : { ...other, metric: drawn.metric };
            const before = await roomOf(den(drawn, ''));
            const cut = [...new Set(picks.map(pick => before.pieces[pick % before.pieces.length]!))];
            const show = before.layout.room.job.show.value;
            const lines = cut.map(piece => `    cut 16' of ${piece.stock.name} ${intoTexts([{ name: nameInRoom(piece), asCut: recordOf(piece) }], show)!.join(' ')}`).join('\n');

            const written = await roomOf(den(drawn, lines));
            expect(written.findings.filter(f => f.severity !== 'hint' && !before.findings.some(b => b.rule === f.rule))).toEqual([]);
            expect(wanted(written)).toEqual(wanted(before).filter(name => cut.every(piece => nameInRoom(piece) !== name)));

            const after = await roomOf(den(changed, lines));
            const errors = after.findings.filter(f => f.rule === 'cut-no-longer-fits');
            for (const piece of cut) {
                const now = after.pieces.find(each => nameInRoom(each) === nameInRoom(piece));
                if (!now) continue;
                const isAsItWas = sameWood(piece, now);
                expect(wanted(after).includes(nameInRoom(now)), nameInRoom(now)).toBe(!isAsItWas);
                expect(errors.some(f => f.message.startsWith(`${nameInRoom(now)} was cut `)), nameInRoom(now)).toBe(!isAsItWas);
                if (isAsItWas) credited++; else told++;
            }
            expect(errors.length).toBe(cut.filter(piece => after.pieces.some(each => nameInRoom(each) === nameInRoom(piece) && !sameWood(piece, each))).length);
        }), { seed: 41, numRuns: 12 });
        expect([credited > 5, told > 5]).toEqual([true, true]);
    });

    function wanted({ layout, pieces }: Awaited<ReturnType<typeof roomOf>>): string[] {
        return restToCut([{ room: layout.room, pieces }]).pieces(layout.room).map(nameInRoom);
    }

    /** Told apart without what is tested: the longest of both lengths, what is at the ends, and on which hand. */
    function sameWood(a: Piece, b: Piece): boolean {
        const ends = (piece: Piece): string => piece.ends.map(end => JSON.stringify(end)).sort().join();
        return a.cutOverall === b.cutOverall && ends(a) === ends(b) && (a.hand === b.hand || !a.hand || !b.hand);
    }
});

describe('what a piece is good for', () => {
    test('a mitered one loses its thickness at every miter where its ends have to be other ones', async () => {
        const { pieces } = await roomOf(den({ north: 3, east: 2, inches: 154, corners: 'mitered', metric: false }, ''));
        const left = pieces.find(piece => piece.hand === 'left')!, right = pieces.find(piece => piece.hand === 'right')!;
        expect(usableFor(left, recordOf(left))).toBe(left.cutOverall);
        expect(usableFor(right, recordOf(left))).toBe(left.cutOverall - left.thickness);
        expect([fits(left, recordOf(left)), fits(right, { ...recordOf(right), hand: 'left' })]).toEqual([true, false]);
    });

    test('a board shows what came out of it at the length it was cut, and what is left is reckoned by that', async () => {
        const { layout, pieces } = await roomOf(den({ north: 3, east: 2, inches: 154, corners: 'mitered', metric: false }, `    cut 16' of elm-1x4 into bottom-A-1 at 60" into bottom-Z-9 at 30"`));
        const [board] = layout.room.cutBoards;
        expect(piecesAsCut(board!, pieces).map(each => each.cutOverall)).toEqual([60 * 16256]);
        const boards = restToCut([{ room: layout.room, pieces }]);
        const [own] = [...boards.cut(layout.room).values()].flat();
        const { kerf, endTrim } = layout.room.job;
        expect(own!.strips[0]!.offcut).toBe(16 * 12 * 16256 - endTrim.value - 90 * 16256 - 2 * kerf.value);
    });

    test('with other ends than it was cut with it has those of the record, and is as long on the side that its long points were on', async () => {
        const { pieces } = await roomOf(den({ north: 3, east: 2, inches: 154, corners: 'mitered', metric: false }, '')), side = pieces.find(piece => piece.hand === 'left')!;
        const record = { length: 40 * 16256, miters: [45, 45], hand: null } as const, short = 40 * 16256 - 2 * side.thickness;
        expect(side.cutBack).toBeGreaterThan(side.cutFace);
        const turned = { ...side, cutBack: side.cutFace, cutFace: side.cutBack };
        expect([side, turned, { ...side, cutFace: side.cutBack }].map(piece => {
            const { cutBack, cutFace, cutOverall, ends } = asRecorded(piece, record);
            return [cutBack, cutFace, cutOverall, ends.map(({ cut }) => cut)];
        })).toEqual([
            [40 * 16256, short, 40 * 16256, ['miter', 'miter']], [short, 40 * 16256, 40 * 16256, ['miter', 'miter']], [40 * 16256, short, 40 * 16256, ['miter', 'miter']],
        ]);
    });

    test('a spoiled piece is first of all the one that does not fit', async () => {
        const grid = { north: 3, east: 2, inches: 154, corners: 'mitered', metric: false } as const;
        const counts = async (...lines: string[]): Promise<[number, number]> => {
            const { layout, pieces } = await roomOf(den(grid, lines.map(line => `    ${line}`).join('\n')));
            const credit = creditOf(layout.room, pieces);
            return [credit.wanted('bottom-A-2'), credit.misfits.length];
        };
        const right = `cut 8' of elm-1x4 into bottom-A-2 at 49 1/2"`, wrong = `cut 8' of elm-1x4 into bottom-A-2 at 49"`, spoiled = 'spoiled bottom-A-2';
        expect(await counts(right)).toEqual([0, 0]);
        expect(await counts(wrong)).toEqual([1, 1]);
        expect(await counts(wrong, spoiled)).toEqual([1, 0]);
        expect(await counts(wrong, right)).toEqual([0, 1]);
        expect(await counts(wrong, right, spoiled)).toEqual([0, 0]);
        expect(await counts(wrong, right, spoiled, spoiled)).toEqual([1, 0]);
        expect(await counts(`cut 8' of elm-1x4 into bottom-A-2`)).toEqual([0, 0]);
    });
});
