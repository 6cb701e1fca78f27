import fc from 'fast-check';
import { beforeAll, expect, test } from 'vitest';
import { layOut } from '../../src/ceiling/layout.ts';
import type { Ceiling } from '../../src/ceiling/model.ts';
import { dryFitOf } from '../../src/pipeline/inspect-closely.ts';
import { closingPieces } from '../../src/putup/closing/pieces.ts';
import { putUp } from '../../src/putup/put-up.ts';
import { takeOffOf } from '../../src/takeoff/take-off.ts';
import { ceilings } from '../dryfit/ceilings.ts';
import { exampleRoom } from '../support/example-room.ts';
import { runs } from '../support/full.ts';
import { CeilingHouse } from '../takeoff/look-at-ceiling.ts';
import { randomCeilings } from '../takeoff/random-ceilings.ts';
import { DEEP, HAIR, replayed, SHRUNK } from './replayed.ts';
import { inEachOther, ready, standing, swept } from './swept.ts';

beforeAll(ready);

test('the example goes up', () => {
    expect(replayed(layOut(exampleRoom()).ceiling!)).toBe(takeOffOf(layOut(exampleRoom()).ceiling!).pieces.length);
});

test.each(['biscuits-left-out', 'sprung', 'kneed', 'kerfed'] as const)('the example goes up with its closing pieces %s', closing => {
    const made = layOut(exampleRoom()).ceiling!, of = made.beams!.profile.bottom!, said = { value: closing, at: of.at, said: true };
    const lines = made.lines.map(line => ({ ...line, section: { ...line.section, profile: { ...line.section.profile, bottom: { ...of, closing: said } } } }));
    const ceiling = { ...made, lines };
    const shapes = new Set(putUp(ceiling).steps.flatMap(({ placings }) => placings.flatMap(({ path }) => path!.moves.map(({ from }) => from.shape))));
    expect([...shapes].sort()).toEqual([{ 'biscuits-left-out': 'leaning', sprung: 'bowed', kneed: 'kneed', kerfed: 'arched' }[closing], 'straight'].sort());
    expect(replayed(ceiling)).toBe(takeOffOf(made).pieces.length);
});

test('random ceilings of every kind go up as they are said to', async () => {
    const house = await CeilingHouse.open();
    let built = 0;
    await fc.assert(fc.asyncProperty(randomCeilings, async made => {
        const { ceiling } = await house.look(made);
        if (!ceiling) return;
        built += replayed(ceiling) > 0 ? 1 : 0;
    }), { seed: 181, numRuns: runs(300, 8) });
    expect(built).toBeGreaterThan(runs(300, 8) / 4);
});

test('rooms with biscuits, splices and presses too', () => {
    let built = 0, aside = 0;
    fc.assert(fc.property(ceilings, all => {
        if (!all) return;
        built++;
        replayed(all.ceiling);
        aside += putUp(all.ceiling).steps.flatMap(({ placings }) => placings).filter(({ path }) => path!.aside.x !== 0 || path!.aside.y !== 0).length;
    }), { seed: 182, numRuns: runs(60, 4) });
    expect(built).toBeGreaterThan(1);
    expect(aside).toBeGreaterThan(0);
});

/** What each piece would run into if it were lifted straight up when another one is up: by meshes. */
function blockers(ceiling: Ceiling): ReadonlyMap<string, ReadonlySet<string>> {
    const { solids } = dryFitOf(ceiling), meshes = solids.map(solid => ({ id: solid.piece.id, is: standing(solid, SHRUNK) }));
    return new Map(meshes.map(({ id, is }) => {
        const way = swept(is, [0, 0, DEEP], [0, 0, 0]);
        return [id, new Set(meshes.filter(other => other.id !== id && inEachOther(way, other.is) > HAIR).map(other => other.id))] as const;
    }));
}

test('of all orders of a small ceiling just those go that have everything up before what hangs under it', () => {
    const { ceiling } = layOut(exampleRoom({ width: `6' 4"`, length: `5' 2"`, north: { coffers: 2 }, east: { coffers: 1 }, band: null }, { spacers: null, trim: null }));
    const blocked = blockers(ceiling!), ids = [...blocked.keys()], waits = putUp(ceiling!).before.filter(({ why }) => why === 'in-the-way' || why === 'carries');
    expect(ids.length).toBe(6);
    let goes = 0, holds = 0;
    for (const order of permutations(ids)) {
        const at = new Map(order.map((id, i) => [id, i]));
        const isFree = order.every((id, i) => order.slice(0, i).every(other => !blocked.get(id)!.has(other)));
        const isInOrder = waits.every(({ first, then }) => !blocked.get(first)!.has(then) || at.get(first)! < at.get(then)!);
        expect(isFree).toBe(isInOrder);
        if (isFree) goes++;
        if (putUp(ceiling!).before.every(({ first, then }) => at.get(first)! < at.get(then)!)) holds++;
    }
    // blocking before the cleats, these before the bottom, 2 of 24 orders, and the sides whenever: 720 / 12. With what holds each there is less to choose:
    // blocking first, the bottom last, between them two sides with a cleat after each
    expect([goes, holds]).toEqual([60, 6]);
});

test('what hangs in the way of what is the same by meshes', async () => {
    const house = await CeilingHouse.open();
    let pairs = 0;
    await fc.assert(fc.asyncProperty(randomCeilings, async made => {
        const { ceiling } = await house.look(made);
        if (!ceiling || takeOffOf(ceiling).pieces.length > 120) return;
        const { before } = putUp(ceiling), known = new Set(before.map(({ first, then }) => `${first} ${then}`));
        for (const [id, others] of blockers(ceiling)) for (const other of others) {
            pairs++;
            expect(known.has(`${id} ${other}`), `${id} before ${other}`).toBe(true);
        }
    }), { seed: 183, numRuns: runs(200, 12) });
    expect(pairs).toBeGreaterThan(runs(200, 12));
});

function permutations<Thing>(things: readonly Thing[]): Thing[][] {
    return things.length === 0 ? [[]] : things.flatMap((first, i) => permutations(things.toSpliced(i, 1)).map(rest => [first, ...rest]));
}

test('what cannot get past its biscuits on the solids is what the rule of free play calls closing', () => {
    let closing = 0, spliced = 0;
    fc.assert(fc.property(ceilings, all => {
        if (!all) return;
        const { ceiling } = all, order = putUp(ceiling);
        const over = order.steps.flatMap(({ placings }) => placings.filter(({ path }) => path!.over && path!.by?.kind !== 'join-first').map(({ piece }) => piece.id));
        // a run that only its splices close can be joined first, and is where there is room for all of it
        const byRule = closingPieces(ceiling, order), ids = byRule.map(({ piece }) => piece.id);
        const surely = byRule.filter(({ onlySplice }) => !onlySplice).map(({ piece }) => piece.id);
        closing += surely.length;
        spliced += byRule.filter(({ run }) => run.length > 1).length;
        expect(over.filter(id => !ids.includes(id))).toEqual([]);
        expect(surely.filter(id => !over.includes(id))).toEqual([]);
    }), { seed: 184, numRuns: runs(200, 30) });
    expect([closing > 20, spliced > 0]).toEqual([true, true]);
});
