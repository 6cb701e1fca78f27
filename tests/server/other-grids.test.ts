import { expect, test } from 'vitest';
import type { RoomOnPage } from '../../src/pages/page.ts';
import { OtherGrids } from '../../src/server/panes/other-grids.ts';
import { suggestionsFor } from '../../src/suggest/suggestions.ts';
import { house } from '../cli/house.ts';
import { roomOnPage, serve } from '../panes/support/content.ts';

const den = async (): Promise<RoomOnPage> => roomOnPage(await serve(house), 'den.coffer');
const breath = (ms = 0): Promise<void> => new Promise(resolve => { setTimeout(resolve, ms); });

test('a step at a time, and then those that are found all at once; the same room is looked at once', async () => {
    const room = await den();
    let told = 0;
    const grids = new OtherGrids({ now: false }, () => { told++; });
    expect(grids.of(room)).toBe('looking');
    let breaths = 0;
    while (told === 0 && breaths < 1000) { await breath(); breaths++; }
    const known = grids.of(room), says = (all: typeof known): unknown => (all === 'looking' ? all : all.offers.map(offer => offer.says));
    expect(says(known)).toEqual(says(suggestionsFor(room.layout.room, room.file, room.standing)));
    expect(breaths).toBeGreaterThan(5);
    expect(grids.of(room)).toBe(known);
    await breath(5);
    expect(told).toBe(1);
});

test('still while somebody types; forgotten where nobody looks any more', async () => {
    const room = await den(), typing = { now: true };
    let told = 0;
    const grids = new OtherGrids(typing, () => { told++; });
    grids.of(room);
    await breath(20);
    expect(told).toBe(0);
    grids.stop();
    typing.now = false;
    await breath(20);
    expect(told).toBe(0);
    expect(grids.of(room)).toBe('looking');
    grids.stop();
});
