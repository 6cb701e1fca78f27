import fc from 'fast-check';
import type { Profile, Room, Stock } from '../../src/job/model.ts';
import { TICKS_PER_INCH, TICKS_PER_MM, type Ticks } from '../../src/quantity/ticks.ts';
import { jobBuilder, type ProfileWords, type SpacingWords } from './job-builder.ts';

/**
 * Rooms that can be laid out, or nearly: any size, US or metric, with a band or without, mitered or butted, one profile or
 * two, bottoms between, under or let into the sides, full blocking or a box over it, divided in every way the language has.
 * Sizes are whole units of 1/128" or 0.1 mm, so that halves of ticks occur.
 */
interface RandomRoom { readonly room: Room; readonly press: Ticks; readonly [fc.toStringMethod]: () => string }

const between = (min: number, max: number): fc.Arbitrary<number> => fc.integer({ min, max });
const often = <T>(value: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> => fc.option(value, { nil: undefined, freq: 3 });
const direction = fc.constantFrom('north-south' as const, 'east-west' as const);

/** One direction's spacing, in shares of the room so that lines at stated places do not run into each other. */
const spacing = fc.oneof(
    fc.record({ by: fc.constant('number' as const), coffers: between(1, 5) }),
    fc.record({ by: fc.constant('size' as const), least: between(20, 40), play: between(12, 40) }),
    fc.record({ by: fc.constant('lines' as const), shares: fc.array(between(3, 6), { minLength: 1, maxLength: 4 }), off: between(-99, 99), from: fc.constantFrom('north-west' as const, 'south-east' as const) }),
);
type SpacingPlan = typeof spacing extends fc.Arbitrary<infer T> ? T : never;

const plan = fc.record({
    metric: fc.boolean(),
    width: between(96, 288), length: between(96, 288), odd: fc.tuple(between(0, 127), between(0, 127)),
    wide: between(8, 40), narrower: between(-12, 12), lines: fc.subarray(['1', '2', 'A', 'C']),
    side: between(4, 8), otherSide: between(4, 8), sameSides: fc.boolean(),
    gap: between(0, 4), heldDown: between(0, 6), press: fc.constantFrom(0, 0, 1, 3), shortEachEnd: between(0, 3),
    corners: fc.constantFrom('mitered' as const, 'butted' as const), past: often(direction), rabbet: often(fc.constantFrom('lower-back' as const, 'upper-back' as const)),
    band: often(between(4, 8)), trim: often(between(3, 6)),
    through: direction, north: spacing, east: spacing, feature: fc.option(fc.tuple(between(20, 80), between(20, 80)), { nil: undefined, freq: 1 }),
    residue: fc.constantFrom('outer-coffers' as const, 'band' as const, 'spread' as const), fine: fc.boolean(),
    longest: between(8, 20),
    place: fc.constantFrom('between-sides' as const, 'between-sides' as const, 'under-sides' as const, 'in-rabbets' as const),
    overhang: between(0, 6), box: between(0, 12),
});
type Plan = typeof plan extends fc.Arbitrary<infer T> ? T : never;

export const randomRooms: fc.Arbitrary<RandomRoom> = plan.map(roomOf);

function roomOf(p: Plan): RandomRoom {
    const { stock, profile, room, settings, said } = jobBuilder();
    // about an inch and its eighth, and the finest size that is spoken of
    const inch = p.metric ? 25 * TICKS_PER_MM : TICKS_PER_INCH, eighth = p.metric ? 3 * TICKS_PER_MM : TICKS_PER_INCH / 8;
    const fine = p.metric ? TICKS_PER_MM / 10 : TICKS_PER_INCH / 128;
    const lengths = [p.longest * 12 * inch];
    const depth = 7 * inch;
    const press = p.press * fine;

    const detail = (name: string, wide: Ticks, thick: Ticks, place: Plan['place']): Profile => {
        const board = (part: string, thickness: Ticks, width: Ticks): Stock => stock(`${name}-${part}`, { thickness, width, lengths });
        const capped = place === 'under-sides', lapped = place === 'in-rabbets', high = depth - (capped ? 6 * eighth : 0);
        const bottomWide = capped ? wide + 2 * thick + 2 * p.overhang * fine : lapped ? wide + 4 * eighth - p.gap * fine : wide - p.gap * fine;
        const words: ProfileWords = {
            // a box stands on blocking that is narrower by so much; then its spacers say how wide it is
            blocking: { stock: board('blocking', 6 * eighth, wide - p.box * fine), fit: p.box > 0 ? 'bench-box' : 'full-width', screws: { gauge: 8, length: 3 * inch, every: 16 * inch } },
            spacers: { stock: board('spacer', 6 * eighth, wide), height: 3 * inch, every: 24 * inch, fromEnd: 6 * inch },
            sides: {
                stock: board('side', thick, high - p.heldDown * eighth), heldDown: p.heldDown * eighth, corners: lapped ? 'mitered' : p.corners, past: p.past,
                rabbet: lapped ? [2 * eighth, 6 * eighth] : p.rabbet && [2 * eighth, 2 * eighth], edge: lapped ? 'lower-back' : p.rabbet, nails: { gauge: 16, length: 2 * inch, every: 12 * inch },
            },
            cleats: { stock: board('cleat', 6 * eighth, 2 * inch), thickness: 3 * eighth, height: 6 * eighth, shortEachEnd: p.shortEachEnd * eighth },
            bottom: { stock: board('bottom', 6 * eighth, bottomWide), place, ...capped && { overhang: p.overhang * fine }, biscuits: [2, '#10'], press },
            // one trim goes round every coffer, whatever the beams
            trim: p.trim ? { stock: trimStock, nails: { gauge: 18, length: 2 * inch, every: 12 * inch } } : null,
        };
        return profile(name, words);
    };
    const trimStock = stock('strip', { thickness: (p.trim ?? 4) * eighth, width: 2 * inch, lengths });
    const wide = p.wide * eighth + p.odd[0] * fine + 2 * eighth;
    const beams = detail('beam', wide, p.side * eighth, p.place);
    const other = detail('other-beam', Math.max(10 * eighth, wide + p.narrower * eighth), (p.sameSides || p.place === 'in-rabbets' ? p.side : p.otherSide) * eighth, p.place);

    const width = p.width * inch + p.odd[0] * fine, length = p.length * inch + p.odd[1] * fine;
    const feature = p.feature && { x: Math.round(width * p.feature[0] / 100), y: Math.round(length * p.feature[1] / 100) };
    const step = p.metric ? (p.fine ? TICKS_PER_MM / 2 : TICKS_PER_MM) : TICKS_PER_INCH / (p.fine ? 32 : 16);
    return {
        press, [fc.toStringMethod]: () => JSON.stringify(p),
        room: room('attic', {
            job: { ...settings(), cutTo: said(step), show: said(p.metric ? 'millimeters' : 'feet-inches') },
            width, length, north: spacingOf(p.north, width, inch, feature !== undefined), east: spacingOf(p.east, length, inch, feature !== undefined),
            beams, through: p.through, residue: p.residue, centeredOn: feature,
            band: p.band ? { stock: stock('band', { thickness: p.band * eighth, width: 5 * inch, lengths }), belowBeams: eighth } : null,
            lines: Object.fromEntries(p.lines.map(name => [name, { beams: other }])),
        }),
    };
}

function spacingOf(p: SpacingPlan, room: Ticks, inch: Ticks, centered: boolean): SpacingWords {
    if (p.by === 'number') return { coffers: p.coffers };
    if (p.by === 'size') return { size: [p.least * inch, (p.least + p.play) * inch] };
    if (centered) return { coffers: p.shares.length };          // a feature wants a number or a size
    const parts = p.shares.reduce((sum, share) => sum + share, 4);
    let sum = 0;
    return { lines: p.shares.map(share => { sum += share; return Math.round(room * sum / parts) + p.off; }), from: p.from };
}
