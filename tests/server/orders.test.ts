import { expect, test } from 'vitest';
import type { RoomOnPage } from '../../src/pages/page.ts';
import { putUpOf } from '../../src/putup/put-up.ts';
import { Orders } from '../../src/server/panes/orders.ts';
import { den, house } from '../cli/house.ts';
import { roomOnPage, serve } from '../panes/support/content.ts';

const room = async (note: string): Promise<RoomOnPage> => roomOnPage(await serve({ ...house, 'den.coffer': `${den}\n// ${note}\n` }), 'den.coffer');
const breath = (ms = 0): Promise<void> => new Promise(resolve => { setTimeout(resolve, ms); });

test('a part at a time, and told once it is there; then it is kept', async () => {
    const one = await room('a part at a time');
    let told = 0, breaths = 0;
    const orders = new Orders({ now: false }, () => { told++; });
    expect(orders.of(one)).toBe('looking');
    while (told === 0 && breaths < 1000) { await breath(); breaths++; }
    const known = orders.of(one);
    expect(known).toMatchObject({ putUp: putUpOf(one.ceiling) });
    expect(orders.of(one)).toBe(known);
    expect(breaths).toBeGreaterThanOrEqual(3);
    await breath(5);
    expect(told).toBe(1);
});

test('still while somebody types; forgotten where nobody looks any more', async () => {
    const one = await room('still'), typing = { now: true };
    let told = 0;
    const orders = new Orders(typing, () => { told++; });
    orders.of(one);
    await breath(20);
    expect(told).toBe(0);
    orders.stop();
    typing.now = false;
    await breath(20);
    expect([told, orders.of(one)]).toEqual([0, 'looking']);
    orders.stop();
});

test('what fails is told once, and not tried again and again', async () => {
    const { layout, file, takeOff, findings, standing, house: rooms, alternates, ceiling } = await room('what fails');
    const one: RoomOnPage = { layout, file, takeOff, findings, standing, house: rooms, alternates, ceiling: { ...ceiling, lines: undefined as never } };
    let told = 0;
    const orders = new Orders({ now: false }, () => { told++; });
    orders.of(one);
    for (let i = 0; told === 0 && i < 1000; i++) await breath();
    expect([told, orders.of(one)]).toEqual([1, undefined]);
});
