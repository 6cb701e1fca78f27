import { expect, test } from 'vitest';
import { sectionOf } from '../../src/ceiling/section.ts';
import type { Group, Item } from '../../src/drawing/display-list.ts';
import { drawSmallSection } from '../../src/drawing/index.ts';
import type { Stock } from '../../src/job/model.ts';
import { jobBuilder } from '../support/job-builder.ts';

const b = jobBuilder();
const mdf = b.stock('mdf', { thickness: '3/4"', width: '49"', species: 'mdf' });
const poplar = b.stock('poplar', { thickness: '3/4"', width: '7 1/4"', species: 'yellow-poplar' });
/** A sheet that says nothing of its species. */
const sheet = (grain: 'lengthwise' | 'none'): Stock => {
    const stock = b.stock(`sheet-${grain}`, { thickness: '3/4"', width: '48"' });
    return { ...stock, sheet: { value: { width: 48, length: 96, grain }, at: b.at(), said: true } };
};

const groups = (items: readonly Item[]): Group[] => items.flatMap(item => item.kind === 'group' ? [item, ...groups(item.items)] : []);

/** Which parts of a small section are filled with growth rings, and which with the lines of sheet material. */
function fills(sides: Stock, cleats: Stock, bottom: Stock, trim: Stock): Record<string, string> {
    const profile = b.profile('box', {
        blocking: { stock: poplar, rip: '5 1/2"' }, sides: { stock: sides, rip: '7 1/4"' }, cleats: { stock: cleats, thickness: '3/4"', height: '3/4"' },
        bottom: { stock: bottom, rip: '5 1/2"' }, trim: { stock: trim, rip: '1 1/2"' },
    });
    const drawn = groups(drawSmallSection(sectionOf(profile), 'feet-inches')!.items);
    return Object.fromEntries(['side.left', 'side.right', 'cleat.left', 'bottom', 'trim.right'].map(id => {
        const pens = drawn.find(one => one.id === id)!.items.flatMap(item => 'pen' in item && item.pen ? [item.pen] : []);
        return [id, ['grain', 'hatch'].filter(pen => pens.includes(pen as typeof pens[number])).join(' ')];
    }));
}

test('in a section MDF has lines of sheet material, and wood has growth rings, part by part', () => {
    expect(fills(mdf, poplar, mdf, poplar)).toEqual({ 'side.left': 'hatch', 'side.right': 'hatch', 'cleat.left': 'grain', 'bottom': 'hatch', 'trim.right': 'grain' });
    expect(fills(poplar, mdf, poplar, mdf)).toEqual({ 'side.left': 'grain', 'side.right': 'grain', 'cleat.left': 'hatch', 'bottom': 'grain', 'trim.right': 'hatch' });
});

test('a sheet without grain is drawn as MDF is, one with grain as wood', () => {
    expect(fills(sheet('none'), poplar, sheet('lengthwise'), poplar)).toMatchObject({ 'side.left': 'hatch', 'bottom': 'grain' });
});
