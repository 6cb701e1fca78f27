import fc from 'fast-check';
import { layOut } from '../../src/ceiling/layout.ts';
import type { Ceiling } from '../../src/ceiling/model.ts';
import type { LineSpec, Profile, Room } from '../../src/job/model.ts';
import { inches, millimeters } from '../../src/quantity/rational.ts';
import { exactly } from '../../src/quantity/tolerance.ts';
import type { Ticks } from '../../src/quantity/ticks.ts';
import type { TakeOff } from '../../src/takeoff/model.ts';
import { takeOff } from '../../src/takeoff/take-off.ts';
import { randomRooms } from '../support/random-rooms.ts';

/** A random ceiling with its cut list. */
export interface Built { readonly ceiling: Ceiling; readonly off: TakeOff; readonly [fc.toStringMethod]: () => string }

const direction = fc.constantFrom('north' as const, 'west' as const);
const edge = fc.record({ edge: fc.constantFrom('lower' as const, 'upper' as const), face: fc.constantFrom('back' as const, 'front' as const) });

/** What is said otherwise of a random room, so that everything that the language can say comes up. */
const variation = fc.record({
    without: fc.subarray(['cleats', 'spacers', 'trim', 'bottom', 'rabbet']),
    edge, wide: fc.integer({ min: 1, max: 4 }), high: fc.integer({ min: 1, max: 5 }),
    gauge: fc.option(fc.constant(0)), plain: fc.boolean(),
    heldDown: fc.subarray(['1', '2', 'B']),
    splices: fc.uniqueArray(fc.record({ at: fc.integer({ min: 1, max: 6 }), off: fc.integer({ min: -3, max: 3 }), from: direction }), { maxLength: 3, selector: ({ at, from }) => from === 'north' ? at : 7 - at }),
    fineness: fc.constantFrom(0, 1, 2), spacersWider: fc.constantFrom(0, 0, 1, 2),
});
type Variation = typeof variation extends fc.Arbitrary<infer T> ? T : never;

/** Ceilings of every kind that the language can say and the program computes. A room that cannot be laid out gives none. */
export const ceilings: fc.Arbitrary<Built | undefined> = built();

/** The same, cut to this step of the tape. */
export const cutTo = (step: Ticks): fc.Arbitrary<Built | undefined> => built(step);

function built(step?: Ticks): fc.Arbitrary<Built | undefined> {
    return fc.tuple(randomRooms, variation).map(([random, v]) => {
        const made = varied(random.room, v);
        const room = step === undefined ? made : { ...made, job: { ...made.job, cutTo: { ...made.job.cutTo, value: step } } };
        const { ceiling } = layOut(room);
        return ceiling && { ceiling, off: takeOff(ceiling), [fc.toStringMethod]: () => `${random[fc.toStringMethod]()} ${JSON.stringify(v)}` };
    });
}

/** Steps of the tape that are as fine as boards are thick: a coarser one opens corners, and that is told. */
const STEPS = { 'feet-inches': ['1/64', '1/32', '1/16'].map(inches), 'millimeters': ['0.5', '1', '1'].map(millimeters) };

function varied(room: Room, v: Variation): Room {
    if (v.plain || !room.grid?.beams) return room;
    const kept = new Map<Profile, Profile>();
    const other = (profile: Profile): Profile => {
        let mine = kept.get(profile);
        if (!mine) kept.set(profile, mine = variedProfile(profile, v));
        return mine;
    };
    const { grid } = room, at = grid.at, said = <T>(value: T) => ({ value, at, said: true });
    const withOther = (line: LineSpec): LineSpec => ({ ...line, beams: line.beams && { ...line.beams, value: other(line.beams.value) } });
    const lines = new Map(room.lines.map(line => [line.name, withOther(line)]));
    const own = (name: string): LineSpec => lines.get(name) ?? { name, at, splices: [] };
    // held down further by a line's own word: with sides that are narrower by as much, so that it stays as deep
    for (const name of v.heldDown) {
        const beams = own(name).beams?.value ?? other(room.grid.beams.value), by = inches('1/2');
        const sides = beams.sides!, width = (sides.rip?.value ?? sides.stock!.value.width!.value).ticks;
        lines.set(name, { ...own(name), heldDown: said(exactly(sides.heldDown.value.ticks + by)), beams: said({ ...beams, key: `${beams.key} ${name}`, sides: { ...sides, rip: said(exactly(width - by)) } }) });
    }
    const through = grid.through?.value === 'north-south' ? '1' : 'A', wall = grid.through?.value === 'north-south' ? room.walls[1]!.length! : room.walls[0]!.length!;
    const ends = grid.through?.value === 'north-south' ? ['north', 'south'] as const : ['west', 'east'] as const;
    if (v.splices.length > 0) {
        lines.set(through, { ...own(through), splices: v.splices.map(({ at: sevenths, off, from }) => ({ ...said(Math.floor(wall.value.ticks * (sevenths / 7 + off / 100))), from: ends[from === 'north' ? 0 : 1] })) });
    }
    return {
        ...room, job: { ...room.job, cutTo: { ...room.job.cutTo, value: STEPS[room.job.show.value][v.fineness]! } }, lines: [...lines.values()],
        grid: { ...grid, beams: { ...grid.beams!, value: other(grid.beams!.value) } },
    };
}

function variedProfile(profile: Profile, { without, edge, wide, high, gauge, spacersWider }: Variation): Profile {
    const rabbet = profile.sides!.rabbet, sixteenth = inches('1/16');
    const isBox = profile.blocking!.fit.value === 'bench-box', lapped = profile.bottom!.place.value === 'in-rabbets';
    return {
        ...profile,
        cleats: without.includes('cleats') || !profile.cleats ? undefined
            : { ...profile.cleats, ...gauge !== null && { gauge: { ...profile.bottom!.stock!.value.thickness!, said: true } } },
        // wider than the blocking within the gap that a bottom may have: they push the sides out by plan
        spacers: without.includes('spacers') && !isBox || !profile.spacers ? undefined
            : { ...profile.spacers, ...spacersWider > 0 && !isBox && { rip: { ...profile.spacers.stock!.value.width!, value: exactly(profile.blocking!.stock!.value.width!.value.ticks + spacersWider * inches('1/128')) } } },
        trim: without.includes('trim') ? undefined : profile.trim,
        // without a bottom a section has no fit, so nothing is laid out: it keeps one
        sides: {
            ...profile.sides!,
            // one that a bottom is let into is as it has to be
            rabbet: lapped ? rabbet : without.includes('rabbet') || !rabbet ? undefined
                : { ...rabbet, value: { ...rabbet.value, ...edge, width: exactly(wide * sixteenth), height: exactly(high * sixteenth) } },
        },
    };
}
