import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { layOut } from '../../src/ceiling/layout.ts';
import type { Ceiling } from '../../src/ceiling/model.ts';
import { calendarOf } from '../../src/putup/calendar.ts';
import { inTurnOf } from '../../src/putup/in-turn.ts';
import { putUp } from '../../src/putup/put-up.ts';
import { Rational } from '../../src/quantity/rational.ts';
import { takeOffOf } from '../../src/takeoff/take-off.ts';
import { ceilings } from '../dryfit/ceilings.ts';
import { exampleRoom } from '../support/example-room.ts';
import { runs } from '../support/full.ts';
import { layoutsOf } from '../support/layouts-of.ts';
import { CeilingHouse } from '../takeoff/look-at-ceiling.ts';
import { randomCeilings } from '../takeoff/random-ceilings.ts';
import { allWaits, everyInterleaving, meetsOnItsWay, partnersIn, withCrews } from './interleaved.ts';
import { ready } from './swept.ts';

beforeAll(ready);

/** A small ceiling in which pieces are pushed onto biscuits, spliced, and put up round lips. */
function small(profile: string, { order = '', across = 2, down = 1, lengths = `12'`, splices = '' } = {}): string {
    return `edition 1

stock board-6 { thickness 3/4"; width 5 1/2"; lengths ${lengths} }
stock wide { thickness 3/4"; width 11 1/4"; lengths ${lengths} }
stock strip { thickness 3/4"; width 3/4"; lengths 8' }
profile box { blocking { stock board-6 }; sides { stock board-6 }; ${profile} }
room den {
  wall north 8' 4"
  wall east 9' 2"
  grid {
    coffers-north ${across}
    coffers-east ${down}
    beams box
    through north-south
    ${splices}
  }
  ${order === '' ? '' : `put-up { order ${order} }`}
}
`;
}
async function ceilingOf(text: string): Promise<Ceiling> {
    return withCrews((await layoutsOf(text))[0]!.ceiling!, 2);
}
const BISCUITS = 'bottom { stock board-6; biscuits 2 x #10 }', AT_CROSSINGS = { down: 2, lengths: `6', 8'`, splices: 'splices on-crossings' };
const SPLICED = small(BISCUITS, AT_CROSSINGS);
/** Of the run that is spliced one piece has a day of its own. */
const PARTED = small(BISCUITS, { ...AT_CROSSINGS, order: 'bottom-1-b on-day 3' });
const CAPPED = 'bottom { stock wide; place under-sides overhang 1/2" }; trim { stock strip }';

/** States of a small ceiling that are gone through. */
const MOST = 60_000;

describe('two crews beside each other: every order of the pieces that what they wait for allows', () => {
    test.each([
        ['two beams', small(BISCUITS, { across: 3 })],
        ['a crossing with biscuits', small(BISCUITS, { down: 2 })],
        ['the same, spliced there', SPLICED],
        ['the same, one of the spliced on a day of its own', PARTED],
        ['trim above lips that hang under it', small(CAPPED)],
        ['trim that is put up round lips, after them', small(CAPPED, { order: 'trim after bottoms' })],
    ])('%s', async (_, text) => {
        const ceiling = await ceilingOf(text), tried = everyInterleaving(ceiling, putUp(ceiling), MOST);
        expect(tried?.wrong).toEqual([]);
        expect(tried!.ways).toBeGreaterThan(1n);
    });
    test('the example\'s smallest', () => {
        const ceiling = withCrews(layOut(exampleRoom({ width: `6' 4"`, length: `5' 2"`, north: { coffers: 2 }, east: { coffers: 1 }, band: null })).ceiling!, 2);
        expect(everyInterleaving(ceiling, putUp(ceiling), MOST)?.wrong).toEqual([]);
    });
    test('what is kept in turn is enough, and needed: where nothing waits for what hangs in its way, holds it, or has its biscuits', async () => {
        const ceiling = await ceilingOf(PARTED), order = putUp(ceiling), before = order.before.filter(({ why }) => why === 'runs-through' || why === 'ends-at');
        const loose = { ...order, before, inTurn: [] }, meets = meetsOnItsWay(ceiling, order);
        const ids = order.steps.flatMap(({ placings }) => placings.map(({ piece }) => piece.id));
        const wrong = everyInterleaving(ceiling, loose, MOST)!.wrong;
        expect(wrong.some(words => words.includes('runs into'))).toBe(true);
        expect(wrong.some(words => words.includes('the other way round'))).toBe(true);
        const blocks = new Map(ids.map((id, i) => [id, ids.slice(i + 1).filter(other => meets(id, other))]));
        const inTurn = inTurnOf({ steps: order.steps, before }, blocks, takeOffOf(ceiling).joints);
        expect(everyInterleaving(ceiling, { ...order, before, inTurn }, MOST)!.wrong).toEqual([]);
    });
});

/** Of every two steps that may be done in either order, and so at once: no piece of one is in the way of one of the other. Gives how many pairs. */
function pairsTried(ceiling: Ceiling): number {
    const order = putUp(ceiling), { steps } = order, waits = allWaits(order), meets = meetsOnItsWay(ceiling, order), partners = partnersIn(ceiling);
    let pairs = 0;
    steps.forEach((one, i) => {
        for (const other of steps.slice(i + 1)) {
            if (waits.get(other.number)!.has(one.number)) continue;
            pairs++;
            for (const { piece: { id: a } } of one.placings) for (const { piece: { id: b } } of other.placings) {
                expect(meets(a, b) || meets(b, a), `${a} and ${b}`).toBe(false);
                expect(partners.get(a)?.has(b) ?? false, `${a} and ${b}`).toBe(false);
            }
        }
    });
    return pairs;
}

describe('steps that may be done at once are in each other\'s way nowhere, by meshes', () => {
    test('in random ceilings of every kind', async () => {
        const house = await CeilingHouse.open();
        let pairs = 0;
        await fc.assert(fc.asyncProperty(randomCeilings, async made => {
            const { ceiling } = await house.look(made);
            if (ceiling) pairs += pairsTried(withCrews(ceiling, 2));
        }), { seed: 184, numRuns: runs(200, 6) });
        expect(pairs).toBeGreaterThan(0);
    });
    test('with biscuits, splices and presses too', () => {
        let pairs = 0;
        fc.assert(fc.property(ceilings, all => { if (all) pairs += pairsTried(withCrews(all.ceiling, 3)); }), { seed: 185, numRuns: runs(60, 3) });
        expect(pairs).toBeGreaterThan(0);
    });
});

describe('the days of several crews', () => {
    test('keep what is needed, what is in turn, and the first bay: nothing but blocking and spacers goes up before that is up', () => {
        const minutes = fc.array(fc.integer({ min: 0, max: 240 }), { minLength: 1, maxLength: 9 });
        fc.assert(fc.property(ceilings, fc.integer({ min: 2, max: 4 }), minutes, (all, crews, some) => {
            if (!all) return;
            const order = putUp(withCrews(all.ceiling, crews)), waits = allWaits(order), none = new Rational(0);
            const times = new Map(order.steps.map(({ number }) => [number, new Rational(some[number % some.length]!)]));
            const hours = { layout: none, finish: none, steps: times, crew: { people: 4, day: new Rational(480) } };
            const { shifts } = calendarOf(order, hours, crews);
            expect(shifts.size).toBe(order.steps.length);
            for (const { number } of order.steps) for (const first of waits.get(number)!)
                expect(shifts.get(number)!.from.compare(shifts.get(first)!.to)).toBeGreaterThanOrEqual(0);
            const bay = order.steps.find(({ kind }) => kind === 'first-bay');
            if (bay) for (const { number, kind } of order.steps) {
                if (['panel', 'blocking', 'spacers', 'first-bay'].includes(kind)) continue;
                expect(shifts.get(number)!.from.compare(shifts.get(bay.number)!.to)).toBeGreaterThanOrEqual(0);
            }
            for (let crew = 1; crew <= crews; crew++) {
                const own = [...shifts.values()].filter(shift => shift.crew === crew).sort((a, b) => a.from.compare(b.from) || a.to.compare(b.to));
                own.slice(1).forEach(({ from }, i) => { expect(from.compare(own[i]!.to)).toBeGreaterThanOrEqual(0); });
            }
        }), { seed: 186, numRuns: runs(200, 8) });
    });
});
