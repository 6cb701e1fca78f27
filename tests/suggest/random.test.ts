import fc from 'fast-check';
import { expect, test } from 'vitest';
import { layoutOf } from '../../src/pipeline/inspect.ts';
import { lookAt, roomWith } from '../../src/suggest/looked-at.ts';
import { optionsOf } from '../../src/suggest/options.ts';
import { waysOf } from '../../src/suggest/ways.ts';
import { runs } from '../support/full.ts';
import { errorsIn, faultsIn, read, roomOf, suggested, takenOver } from './room-with.ts';

const eighths = (least: number, most: number): fc.Arbitrary<number> => fc.integer({ min: least * 8, max: most * 8 }).map(each => each / 8);
const inch = (length: number): string => `${length}"`;
const share = fc.integer({ min: 5, max: 95 });

/** What the ceiling holds, at shares of the room. */
const thing = fc.record({
    kind: fc.constantFrom('light', 'light', 'register', 'sprinkler', 'smoke-alarm', 'junction-box', 'fan'), x: share, y: share, size: eighths(3, 14),
    clear: fc.option(eighths(1, 12), { freq: 2 }), wants: fc.constantFrom('', '', 'wants coffer-center', 'wants beam-center'), hangs: eighths(4, 14),
});
const joists = fc.record({ running: fc.constantFrom('north-south', 'east-west'), first: eighths(2, 15), every: fc.constantFrom(16, 24), wide: fc.constantFrom('2x8', '2x10') });
const grid = fc.oneof(
    fc.tuple(fc.integer({ min: 1, max: 4 }), fc.integer({ min: 1, max: 4 })).map(([a, b]) => `coffers-north  ${a}\n    coffers-east  ${b}`),
    fc.constant('coffer-size  24" to 60"'),
    fc.tuple(fc.integer({ min: 35, max: 65 }), fc.integer({ min: 2, max: 3 })).map(([at, b]) => `lines-north LINE${at}\n    coffers-east ${b}`),
);
const rooms = fc.record({
    wide: eighths(100, 230), long: eighths(90, 200), things: fc.array(thing, { maxLength: 6 }), joists: fc.option(joists, { freq: 2 }), grid, through: fc.constantFrom('north-south', 'east-west'),
}).map(({ wide, long, things, joists: row, grid: said, through }) => {
    const mark = (length: number): number => Math.round(length * 8) / 8;
    const fixtures = things.map(({ kind, x, y, size, clear, wants, hangs }, i) => `  fixture thing-${i} ${kind} at ${inch(mark(wide * x / 100))}, ${inch(mark(long * y / 100))} width ${inch(size)}${
        clear === null ? '' : ` keep-clear ${inch(clear)}`}${kind === 'fan' ? ` hangs ${inch(hangs)}` : ''} ${wants}`);
    const above = row ? [`  ceiling {\n    height 9'\n    joists ${row.wide} every ${row.every}" running ${row.running} first-center ${inch(row.first)} from ${row.running === 'north-south' ? 'west' : 'north'}\n  }`] : [];
    return roomOf(inch(wide), inch(long), said.replace(/LINE(\d+)/, (_, at: string) => inch(mark(wide * Number(at) / 100))), [...above, ...fixtures].join('\n'), through);
});

test('whatever is offered passes the check of its own text without an error, goes together dry, and is the grid that its words say', async () => {
    let offered = 0, moved = 0, turned = 0;
    await fc.assert(fc.asyncProperty(rooms, async text => {
        const before = await read(text), { offers, tried } = suggested(before);
        expect(tried.clear).toBeLessThanOrEqual(tried.grids);
        expect(offers.length).toBeLessThanOrEqual(tried.lookedAt);
        for (const offer of offers) {
            const after = await takenOver(offer, before);
            expect(errorsIn(after), `${offer.says.join('; ')}\n${text}`).toEqual([]);
            expect(faultsIn(after), text).toBe(0);
            const there = layoutOf(after.file.rooms[0]!).ceiling!, here = layoutOf(offer.room).ceiling!;
            const linesOf = ({ lines }: typeof here): object[] => lines.map(({ name, low, high, through }) => ({ name, low, high, through }));
            expect(linesOf(there)).toEqual(linesOf(here));
            offered++;
            if (offer.across.how !== 'equal' || offer.down.how !== 'equal') moved++;
            if (offer.says.some(words => words.startsWith('through'))) turned++;
        }
    }), { numRuns: runs(120, 3), seed: 17 });
    expect(offered).toBeGreaterThan(runs(15, 5));
    expect(moved).toBeGreaterThan(runs(3, 0));
    expect(turned).toBeGreaterThan(runs(3, 0));
}, 600_000);

/** Walls of other rooms than a rectangle along the compass: an L, a chimney breast, four walls out of square. */
const WALLS = [
    (wide: number, long: number) => `wall a ${wide}"\n  wall b ${long / 2}"\n  wall c ${wide / 2}"\n  wall d ${long / 2}" heading south\n  wall e ${wide / 2}"\n  wall f ${long}"`,
    (wide: number, long: number) => `wall a ${wide / 2 - 24}"\n  wall b 14"\n  wall c 48" heading east\n  wall d 14" heading north\n  wall e ${wide / 2 - 24}" heading east\n  wall f ${long}"\n  wall g ${wide}"\n  wall h ${long}"`,
    (wide: number, long: number) => `wall north ${wide}"\n  wall east ${long}"\n  wall south ${wide + 2}"\n  wall west ${long - 1}"\n  diagonal north-west to south-east measures ${Math.ceil(Math.hypot(wide, long) * 8) / 8}"`,
];
const otherRooms = fc.tuple(rooms, fc.constantFrom(...WALLS)).map(([text, walls]) =>
    text.replace(/wall north +([\d.]+)"\n +wall east +([\d.]+)"/, (_, wide: string, long: string) => walls(2 * Math.round(Number(wide) / 2), 2 * Math.round(Number(long) / 2))));

test.each([
    ['four walls along the compass', rooms, 80, 18], ['other rooms', otherRooms, 60, 19],
] as const)('plain geometry excludes no grid of equal coffers that the whole check would pass: %s', async (_, of, runsIn, seed) => {
    let excluded = 0;
    await fc.assert(fc.asyncProperty(of, async text => {
        const { file } = await read(text), room = file.rooms[0]!, ways = waysOf(room, room.grid!, file);
        if (!ways || room.broken) return;
        const asked = { least: 0, most: Infinity, counts: [], movable: false, step: room.job.cutTo.value };
        const first = (way: typeof ways.across): ReturnType<typeof optionsOf> => optionsOf(way, room.grid!, asked).slice(0, 4);
        for (const a of first(ways.across)) for (const d of first(ways.down)) {
            if (a.blocked.length + d.blocked.length === 0) continue;
            const { wrong } = lookAt(roomWith(room, room.grid!, { across: a, down: d, through: 'north-south' }), room, file);
            expect(wrong.length, `${a.coffers} by ${d.coffers}, ${[...a.blocked, ...d.blocked].join('; ')}\n${text}`).toBeGreaterThan(0);
            excluded++;
        }
    }), { numRuns: runs(runsIn, 4), seed });
    expect(excluded).toBeGreaterThan(runs(10, 3));
}, 600_000);
