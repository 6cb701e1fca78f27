import { expect, test } from 'vitest';
import { trialsIn, tryRoom } from '../../src/server/trials.ts';
import { RULES } from '../../src/rules/index.ts';
import { uriOf } from '../support/workspace.ts';
import { HOUSE, openHouse } from './features/house.ts';

const uri = uriOf('rooms/den.coffer').toString();
const told = (tried: ReturnType<typeof tryRoom>): string[] => tried!.found.map(({ rule, severity, uri: file }) => `${severity} ${rule} ${file.slice(file.lastIndexOf('/') + 1)}`);

test('every room of the house is there to be tried, by every rule', async () => {
    const { shared } = await openHouse({ 'rooms/two.coffer': `edition 1\nroom a "Ante" { wall north 8' }\nroom b { wall north 8' }\n` });
    const { rules, rooms } = trialsIn(shared);
    expect(rooms.map(({ room, title, range }) => `${room} ${title} ${range.start.line}`)).toEqual(['den Den 5', 'a Ante 1', 'b b 2']);
    expect(rules.map(({ name }) => name)).toEqual(RULES.map(({ name }) => name));
    expect(rules.filter(({ dryFit }) => dryFit).map(({ name }) => name)).toContain('pieces-overlap');
    expect(rules.filter(({ dryFit }) => dryFit).map(({ name }) => name)).not.toContain('spacer-hits-cleat');
});

test('a room is told of what stands in it and in what it is made from, and not of its neighbors', async () => {
    const house = await openHouse({
        'details/box.coffer': HOUSE['details/box.coffer']!.replace('height 4"', 'height 6"'),
        'rooms/den.coffer': `${HOUSE['rooms/den.coffer']!}room other { wall north nothing }\n`,
    });
    const den = tryRoom(house.shared, { uri, room: 'den' });
    expect(den!.known).toBe(true);
    expect(told(den)).toContain('error spacer-hits-cleat box.coffer');
    expect(told(den).filter(line => line.includes('unknown-name'))).toEqual(['error unknown-name den.coffer']);
    expect(tryRoom(house.shared, { uri, room: 'other' })!.known).toBe(false);
    expect(tryRoom(house.shared, { uri, room: 'gone' })).toBeNull();
});

test('what a comment allows does not fail a room', async () => {
    const textWith = (comment: string): string =>
        HOUSE['details/box.coffer']!.replace('sides { stock deep }', `sides { stock deep; held-down 3/4" }${comment}`);
    const house = await openHouse({ 'details/box.coffer': textWith('') });
    const missing = (): string[] => told(tryRoom(house.shared, { uri, room: 'den' })).filter(line => line.includes('side-misses-blocking'));
    expect(missing()).toEqual(['error side-misses-blocking box.coffer']);
    await house.edit({ 'details/box.coffer': textWith('   // allow side-misses-blocking: the blocking is furred down here') });
    expect(missing()).toEqual([]);
});
