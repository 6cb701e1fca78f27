import { describe, expect, test } from 'vitest';
import { drawSheets, toSvg } from '../../src/drawing/index.ts';
import { laid, type RoomWishes } from './support/rooms.ts';

/** Drawings as they are; look at the files before you accept a change to them. */
const PICTURES: Readonly<Record<string, RoomWishes>> = {
    'two by two': { width: `9' 4"`, length: `8' 2"`, across: 2, down: 2, fixtures: [{ name: 'lamp-1', kind: 'light', x: `2' 4"`, y: `2' 1"`, diameter: '5"' }], client: 'the Harrows' },
    'butted, bare walls': { width: `10' 1 5/16"`, length: `7' 3"`, across: 2, down: 1, corners: 'butted', band: false, trim: false },
    'metric': { metric: true, width: '2700 mm', length: '2450 mm', across: 1, down: 2, through: 'east-west', covering: false },
};

describe.each(Object.entries(PICTURES))('%s', (name, wishes) => {
    const { ceiling, pieces } = laid(wishes);
    test.each(drawSheets(ceiling, pieces).map(sheet => [sheet.id, sheet] as const))('%s', async (id, sheet) => {
        await expect(toSvg(sheet, { theme: 'light', fonts: 'named', as: 'part of a page' })).toMatchFileSnapshot(`./snapshots/${name.replaceAll(/[ ,]+/g, '-')}-${id}.svg`);
    });
});
