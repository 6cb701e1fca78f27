import type { Ceiling } from '../../src/ceiling/model.ts';
import { dryFitOf } from '../../src/pipeline/inspect-closely.ts';
import type { PutUp, Step } from '../../src/putup/model.ts';
import { waitsOf } from '../../src/putup/steps-of-pieces.ts';
import { takeOffOf } from '../../src/takeoff/take-off.ts';
import { HAIR, SHRUNK, wayOf } from './replayed.ts';
import { inEachOther, standing } from './swept.ts';

const NOWHERE = { uri: 'file:///den.coffer', range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } } };

/** The same room put up by so many crews. */
export function withCrews(ceiling: Ceiling, crews: number): Ceiling {
    const { room } = ceiling, said = room.putUp ?? { at: NOWHERE, up: [], orders: [], waits: [] };
    return { ...ceiling, room: { ...room, putUp: { ...said, crews: { value: crews, at: NOWHERE, said: true } } } };
}

/** Which pieces each piece would run into on its way if they were up: by meshes. */
export function meetsOnItsWay(ceiling: Ceiling, { steps }: PutUp): (id: string, other: string) => boolean {
    const solids = new Map(dryFitOf(ceiling).solids.map(solid => [solid.piece.id, solid]));
    const meshes = new Map([...solids].map(([id, solid]) => [id, standing(solid, SHRUNK)]));
    const ways = new Map(steps.flatMap(({ placings }) => placings.map(({ piece, path }) => [piece.id, wayOf(solids.get(piece.id)!, path!)] as const)));
    const known = new Map<string, boolean>();
    return (id, other) => {
        const key = `${id} ${other}`, own = known.get(key) ?? inEachOther(ways.get(id)!, meshes.get(other)!) >= HAIR;
        known.set(key, own);
        return own;
    };
}

/** Of each step all that it waits for, directly or through others. */
export function allWaits(order: Pick<PutUp, 'steps' | 'before' | 'inTurn'>): ReadonlyMap<number, ReadonlySet<number>> {
    const waits = waitsOf(order), all = new Map<number, Set<number>>();
    for (const { number } of order.steps) all.set(number, new Set([...waits.get(number)!].flatMap(first => [first, ...all.get(first)!])));
    return all;
}

/** Pieces with a joint with biscuits to this one. */
export function partnersIn(ceiling: Ceiling): ReadonlyMap<string, ReadonlySet<string>> {
    const found = new Map<string, Set<string>>();
    for (const { biscuits, pieces: [a, b] } of takeOffOf(ceiling).joints) {
        if (biscuits) for (const [one, other] of [[a, b], [b, a]] as const) found.set(one, (found.get(one) ?? new Set()).add(other));
    }
    return found;
}

interface Tried {
    /** Ways on which all can be put up, piece by piece; and states of the ceiling on these ways. */
    readonly ways: bigint; readonly states: number;
    /** `piece` among what is up: what it runs into, or lacks, or other biscuits than it was tried with. */
    readonly wrong: readonly string[];
}

/**
 * Every order in which crews can put up the pieces, one after the other: those of a step in their order, a step after all that it waits for. Each state
 * that can be come to is looked at once, and in it every piece that can be next.
 */
export function everyInterleaving(ceiling: Ceiling, order: PutUp, most: number): Tried | undefined {
    const { steps, before } = order, waits = waitsOf(order), meets = meetsOnItsWay(ceiling, order), partners = partnersIn(ceiling);
    const inOrder = steps.flatMap(({ placings }) => placings.map(({ piece }) => piece.id)), at = new Map(inOrder.map((id, i) => [id, i]));
    const needs = new Map<string, string[]>();
    for (const { first, then } of before) if (at.has(first) && at.has(then)) needs.set(then, [...needs.get(then) ?? [], first]);
    const wrong = new Set<string>();
    const look = (id: string, up: ReadonlySet<string>): void => {
        for (const other of up) if (meets(id, other)) wrong.add(`${id} runs into ${other}`);
        for (const first of needs.get(id) ?? []) if (!up.has(first)) wrong.add(`${id} without ${first}`);
        for (const other of partners.get(id) ?? []) if (up.has(other) !== at.get(other)! < at.get(id)!) wrong.add(`${id} and ${other} the other way round`);
    };
    // a state: how many pieces of every step are up
    const none = steps.map(() => 0);
    let row = new Map<string, { readonly done: readonly number[]; readonly ways: bigint }>([[none.join(), { done: none, ways: 1n }]]), states = 0;
    for (let i = 0; i < inOrder.length; i++) {
        const next = new Map<string, { done: readonly number[]; ways: bigint }>();
        for (const { done, ways } of row.values()) {
            if (++states > most) return undefined;
            const up = new Set(steps.flatMap(({ placings }, s) => placings.slice(0, done[s]).map(({ piece }) => piece.id)));
            const isWhole = (number: number): boolean => done[number - 1] === steps[number - 1]!.placings.length;
            steps.forEach(({ number, placings }: Step, s) => {
                const placing = placings[done[s]!];
                if (!placing || ![...waits.get(number)!].every(isWhole)) return;
                look(placing.piece.id, up);
                const then = done.with(s, done[s]! + 1), key = then.join();
                next.set(key, { done: then, ways: ways + (next.get(key)?.ways ?? 0n) });
            });
        }
        row = next;
    }
    return { ways: [...row.values()][0]!.ways, states, wrong: [...wrong] };
}
