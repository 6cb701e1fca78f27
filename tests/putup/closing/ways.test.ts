import { expect, it } from 'vitest';
import { closingPieces } from '../../../src/putup/closing/pieces.ts';
import { waysIn, type Way } from '../../../src/takeoff/closing/ways.ts';
import { TICKS_PER_INCH } from '../../../src/quantity/ticks.ts';
import { roomText } from './room.ts';
import { layoutsOf } from '../../support/layouts-of.ts';

const POPLAR = 'species yellow-poplar; ';
const text = (words: Parameters<typeof roomText>[0] = {}): string => roomText({ species: POPLAR, biscuits: '1 x #20', ...words });
async function waysOf(words: string, which = 0): Promise<Way[]> {
    const ceiling = (await layoutsOf(words))[0]!.ceiling!;
    return waysIn(closingPieces(ceiling)[which]!, ceiling);
}
const inches = (ticks: number | null): number => ticks! / TICKS_PER_INCH;
const kinds = (ways: readonly Way[]): string[] => ways.map(({ kind, works }) => `${kind}${works === null ? '?' : works ? '' : ' no'}`);

it('50 7/8" of poplar: slots opened before biscuits left out and a knee; it cannot be sprung', async () => {
    const ways = await waysOf(text());
    expect(kinds(ways)).toEqual(['open-slots', 'leave-out', 'leave-out', 'knee', 'spring no', 'kerfs no']);
    const [open, one, both, knee, spring] = ways;
    // half the thickness and half of 4 mm deep, as long as the slot at the face of the wood, 2.59"
    expect(open).toMatchObject({ ends: 2, each: 1 });
    expect(inches((open as { deep: number }).deep)).toBeCloseTo(0.375 + 2 / 25.4, 3);
    expect(inches((open as { long: number }).long)).toBeCloseTo(2.59, 2);
    expect(one).toMatchObject({ ends: 1 });
    // between cleats of 3/4"
    expect(inches((one as { block: number }).block)).toBe(4);
    expect(both).toMatchObject({ ends: 2 });
    expect(inches((knee as { binds: number }).binds)).toBeCloseTo(2 * 0.75 ** 2 / 50.875, 3);
    const { figures } = spring as { figures: { ofBreaking: number; force: number; people: number; least: number; species: string } };
    expect(figures).toMatchObject({ species: 'yellow-poplar', people: 14 });
    expect(figures.ofBreaking).toBeCloseTo(1.29, 2);
    expect(figures.force).toBeCloseTo(530, 0);
    expect(inches(figures.least)).toBeCloseTo(95.6, 0);
});

it('wood that nobody names, or that has no published strength, is not said to bend', async () => {
    for (const species of ['', 'species mdf; ']) {
        const spring = (await waysOf(text({ species }))).find(({ kind }) => kind === 'spring')!;
        expect(spring).toMatchObject({ works: null, figures: null });
    }
});

it('what one pair of hands springs is sprung before slots are opened', async () => {
    const [first] = await waysOf(text({ north: `38'`, coffers: 3, biscuits: '1 x #0' }));
    expect(first).toMatchObject({ kind: 'spring', works: true, figures: { people: 1 } });
});

it('a bottom that closes and runs through a crossing may be spliced there', async () => {
    const ceiling = (await layoutsOf(text({ more: '  crossing A2 { through A }\n' })))[0]!.ceiling!;
    const long = closingPieces(ceiling).find(({ piece }) => piece.overall > 80 * TICKS_PER_INCH)!;
    expect(waysIn(long, ceiling).find(({ kind }) => kind === 'splice')).toMatchObject({ works: true, on: ['2'] });
    // one that runs from north to south, too: line 2 from the band through A to B
    const turned = (await layoutsOf(text({ through: 'east-west', more: '  crossing A2 { through 2 }\n' })))[0]!.ceiling!;
    const upright = closingPieces(turned, { band: 'first' }).find(({ piece }) => piece.line === '2' && piece.overall > 80 * TICKS_PER_INCH)!;
    expect(waysIn(upright, turned).find(({ kind }) => kind === 'splice')).toMatchObject({ works: true, on: ['A'] });
});

it('biscuits at one end only: swung', async () => {
    const ceiling = (await layoutsOf(text()))[0]!.ceiling!;
    const single = closingPieces(ceiling, { band: 'first' }).find(({ ends }) => ends.some(({ sticksOut }) => sticksOut === 0))!;
    expect(kinds(waysIn(single, ceiling)).slice(0, 2)).toEqual(['open-slots', 'swing']);
});
