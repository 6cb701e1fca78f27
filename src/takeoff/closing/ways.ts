import { biscuitOf, slotLength } from '../../data/biscuits.ts';
import { STRENGTH } from '../../data/species.ts';
import type { Ceiling } from '../../ceiling/model.ts';
import { TICKS_PER_INCH, type Ticks } from '../../quantity/ticks.ts';
import { carrierOf } from '../carrier.ts';
import { bowed, kerfed, kneed, leastToSpring, MOST_OF_BREAKING, swung } from './bending.ts';
import type { BottomEnd } from './bottoms.ts';
import type { Closing } from './pieces.ts';

/**
 * A way in for a closing piece. Lengths in ticks, rounded to whole ones; angles in degrees, forces in pounds. `works`: null where nobody can say, since the
 * wood is not said or has no published strength. None of it says that wood will hold: that is found on a scrap of the same board.
 */
export type Way = JoinFirst | OpenSlots | Swing | LeaveOut | Spring | Splice | Knee | Kerfs;
interface OneWay<Kind extends string> { readonly kind: Kind; readonly works: boolean | null }
/** The run is glued together on the floor, and goes up in one. */
interface JoinFirst extends OneWay<'join-first'> { readonly long: Ticks; readonly pieces: number }
/** Slots in its own ends, opened to its back, so that it goes straight up over the biscuits: so deep from the back, with so much left under them. */
interface OpenSlots extends OneWay<'open-slots'> {
    readonly ends: number; readonly each: number;
    readonly long: Ticks; readonly deep: Ticks; readonly leaves: Ticks;
}
/** Biscuits are at one end only: that end first, the other swung up, hanging so low at first. */
interface Swing extends OneWay<'swing'> { readonly angle: number; readonly hangs: Ticks; readonly binds: Ticks; readonly slotWider: Ticks }
/**
 * No biscuits at one end, where a block glued to the back of what runs through holds the joint, and the piece swung up; or at both.
 * `block`: as wide as the cleats leave room.
 */
interface LeaveOut extends OneWay<'leave-out'> { readonly ends: 1 | 2; readonly block: Ticks; readonly swing?: Omit<Swing, keyof OneWay<string>> }
/** Bowed by one push in the middle. `ofBreaking`: of the strain at which such wood breaks on average; `least`: the shortest that may be sprung. */
export interface Spring extends OneWay<'spring'> {
    readonly bow: Ticks; readonly slotWider: Ticks;
    readonly figures: { readonly ofBreaking: number; readonly force: number; readonly people: number; readonly least: Ticks; readonly species: string } | null;
}
/** In two on a crossing that it runs through, each part put up for itself, the joint backed. */
interface Splice extends OneWay<'splice'> { readonly on: readonly string[] }
/** In two in its middle, pushed straight, with a block of that width glued to the back of the joint there. */
interface Knee extends OneWay<'knee'> { readonly angle: number; readonly hangs: Ticks; readonly binds: Ticks; readonly slotWider: Ticks; readonly block: Ticks }
/** Bowed with kerfs across its back. */
interface Kerfs extends OneWay<'kerfs'> {
    readonly hangs: Ticks;
    /** Of its ends while it is bowed. */
    readonly angle: number; readonly slotWider: Ticks;
    readonly pattern: { readonly count: number; readonly apart: Ticks; readonly depth: Ticks; readonly web: Ticks; readonly kerf: Ticks } | null;
}

/** What one person holds up or pushes overhead, in pounds. Common practice, no source. */
const A_PERSON = 40;
/** More people than this find no room at one piece. Common practice, no source. */
const MOST_PEOPLE = 2;

/**
 * The ways in for one closing piece, the best first: what works before what nobody can say and what does not; then by how little it costs the joint.
 * To turn a crossing is a matter of the whole room: see best-through.ts. Figures for ends that are not square are taken as if they were.
 */
export function waysIn(closing: Closing, ceiling: Ceiling): Way[] {
    const { piece, run, ends, biscuits, onlySplice } = closing, biscuit = biscuits && biscuitOf(biscuits.size);
    if (!biscuit) return [];
    const withBiscuits = ends.filter(({ sticksOut }) => sticksOut > 0), out = Math.max(...ends.map(({ sticksOut }) => sticksOut));
    const swing = swingOf(piece, out, biscuit.thickness), depth = (piece.thickness + biscuit.thickness) / 2;
    const ways: Way[] = [
        ...run.length > 1 ? [{ kind: 'join-first' as const, works: onlySplice, long: run.reduce((sum, bottom) => sum + bottom.piece.overall, 0), pieces: run.length }] : [],
        {
            kind: 'open-slots', works: piece.thickness - depth >= LEAST_UNDER, ends: withBiscuits.length, each: biscuits.count,
            long: slotLength(biscuit), deep: Math.round(depth), leaves: Math.round(piece.thickness - depth),
        },
        ...withBiscuits.length === 1 ? [{ kind: 'swing' as const, works: true, ...swing }] : [],
        ...withBiscuits.length === 2 ? [{ kind: 'leave-out' as const, works: true, ends: 1 as const, block: blockOf(closing, ceiling), swing }] : [],
        { kind: 'leave-out', works: true, ends: withBiscuits.length === 2 ? 2 : 1, block: blockOf(closing, ceiling) },
        springOf(closing, biscuit.thickness), ...spliceOf(closing, ceiling), kneeOf(closing, biscuit.thickness, ceiling),
        kerfsOf(closing, biscuit.thickness, ceiling),
    ];
    return ways.map((way, i) => ({ way, i })).sort((a, b) => rankOf(a.way) - rankOf(b.way) || a.i - b.i).map(({ way }) => way);
}
/** Wood under an opened slot, at the face that shows. Common practice, no source. */
const LEAST_UNDER = TICKS_PER_INCH * 3 / 16;

const ORDER: readonly Way['kind'][] = ['join-first', 'open-slots', 'swing', 'leave-out', 'spring', 'splice', 'knee', 'kerfs'];
function rankOf(way: Way): number {
    // what one pair of hands springs goes up like any other
    if (way.kind === 'spring' && way.works && way.figures!.people === 1) return 0.5;
    return ORDER.indexOf(way.kind) + (way.works === true ? 0 : way.works === null ? ORDER.length : 2 * ORDER.length);
}

function swingOf({ overall: length, thickness }: Closing['piece'], sticksOut: Ticks, biscuit: Ticks): Omit<Swing, keyof OneWay<string>> {
    const { angle, hangs, binds, slotWider } = swung({ length, thickness }, { sticksOut, biscuit });
    return { angle, hangs: Math.round(hangs), binds: Math.round(binds), slotWider: Math.round(slotWider) };
}

function springOf({ piece, wanted, ends }: Closing, biscuit: Ticks): Spring {
    const board = { length: inches(piece.overall), thickness: inches(piece.thickness), width: inches(piece.width) };
    const by = { shorter: inches(wanted), sticksOut: inches(outOf(ends)), biscuit: inches(biscuit) }, species = piece.stock.species?.value;
    const strength = strengthOf(species);
    const bow = bowed(board, strength ?? ANY, by), shape = { kind: 'spring' as const, bow: ticks(bow.bow), slotWider: ticks(bow.slotWider) };
    if (!strength) return { ...shape, works: null, figures: null };
    const people = Math.max(1, Math.ceil(bow.force / A_PERSON)), { ofBreaking, force } = bow;
    const figures = { ofBreaking, force, people, least: ticks(leastToSpring(board, strength, by)), species: species! };
    return { ...shape, works: ofBreaking <= MOST_OF_BREAKING && people <= MOST_PEOPLE, figures };
}
/** Of wood whose strength is published. */
export function strengthOf(species: string | undefined): (typeof STRENGTH)[string] | undefined {
    return species !== undefined && Object.hasOwn(STRENGTH, species) ? STRENGTH[species] : undefined;
}
/** The shape of a bow does not depend on the wood. */
const ANY = { rupture: 1, elasticity: 1 };

function kneeOf(closing: Closing, biscuit: Ticks, ceiling: Ceiling): Knee {
    const { piece, wanted, ends } = closing;
    // both halves are pushed straight alike, also where there is a biscuit at one end only
    const by = { shorter: inches(Math.max(wanted, 2 * outOf(ends))), sticksOut: inches(outOf(ends)), biscuit: inches(biscuit) };
    const { angle, hangs, binds, slotWider } = kneed({ length: inches(piece.overall), thickness: inches(piece.thickness) }, by);
    return { kind: 'knee', works: true, angle, hangs: ticks(hangs), binds: ticks(binds), slotWider: ticks(slotWider), block: blockOf(closing, ceiling) };
}

function kerfsOf({ piece, wanted, ends }: Closing, biscuit: Ticks, { room: { job } }: Ceiling): Kerfs {
    const strength = strengthOf(piece.stock.species?.value);
    const by = { shorter: inches(wanted), sticksOut: inches(outOf(ends)), biscuit: inches(biscuit) }, kerf = Math.max(1, job.kerf.value);
    const board = { length: inches(piece.overall), thickness: inches(piece.thickness) };
    const { count, apart, depth, web, room, ...arc } = kerfed(board, strength ?? ANY, by, inches(kerf));
    const shape = { kind: 'kerfs' as const, hangs: ticks(arc.hangs), angle: arc.endAngle, slotWider: ticks(arc.slotWider) };
    if (!strength) return { ...shape, works: null, pattern: null };
    return { ...shape, works: room, pattern: { count, apart: ticks(apart), depth: ticks(depth), web: ticks(web), kerf } };
}

/** Crossings that it runs through, by their other lines, with no splice on them yet. */
function spliceOf({ piece, run }: Closing, { lines }: Ceiling): Splice[] {
    const line = lines.find(({ name }) => name === piece.line);
    if (!line || run.length > 1) return [];
    const { box } = piece, [from, to] = line.runs === 'east-west' ? [box.west, box.east] : [box.north, box.south];
    const on = line.passes.filter(({ relation, stem, cuts, at }) => relation === 'flush' && stem === null && !cuts && at > from && at < to).map(({ of }) => of);
    return on.length > 0 ? [{ kind: 'splice', works: true, on }] : [];
}

/** A block lies in its channel between the cleats. */
function blockOf({ piece }: Closing, ceiling: Ceiling): Ticks {
    const own = carrierOf(piece, ceiling), inner = 'kind' in own ? own.width : own.section.innerWidth;
    return inner.ticks - 2 * (own.section.cleatThickness?.ticks ?? 0);
}

function outOf(ends: readonly BottomEnd[]): Ticks {
    return Math.max(...ends.map(({ sticksOut }) => sticksOut));
}
function inches(length: Ticks): number {
    return length / TICKS_PER_INCH;
}
function ticks(length: number): Ticks {
    return Math.round(length * TICKS_PER_INCH);
}
