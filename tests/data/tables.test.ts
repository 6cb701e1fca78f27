import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { biscuitOf, BISCUIT_SIZES, CUTTER_RADIUS, slotDepth, slotLength } from '../../src/data/biscuits.ts';
import { boardFeet } from '../../src/data/board-measure.ts';
import { CURRENCIES } from '../../src/data/currencies.ts';
import { dressedSize } from '../../src/data/dressed-sizes.ts';
import { finishNail, PERMANENT_LOAD, screwShank, screwWithdrawal } from '../../src/data/fasteners.ts';
import { equilibrium, humidityFor } from '../../src/data/moisture.ts';
import { MOVEMENT, movementOf } from '../../src/data/movement.ts';
import { citation } from '../../src/data/published.ts';
import { JOIST_GRAVITY, poundsPerCubicFoot, STRENGTH } from '../../src/data/species.ts';
import { CofferTerminals } from '../../src/language/generated/ast.ts';
import { printAmount } from '../../src/quantity/money.ts';
import { inches, millimeters, Rational } from '../../src/quantity/rational.ts';
import { TICKS_PER_FOOT, TICKS_PER_INCH, TICKS_PER_MM } from '../../src/quantity/ticks.ts';
import { checksOf, publishedValues, type PublishedValue } from './published.ts';

const MONEY = new RegExp(`^(?:${CofferTerminals.MONEY.source})$`);

/** Within the tolerance stated with the figure. */
function expectNear(actual: number | undefined, value: PublishedValue): void {
    expect(actual).toBeDefined();
    expect(Math.abs(actual! - value.expected), `${actual} against ${value.expected}`).toBeLessThanOrEqual(value.tolerance + 1e-9);
}

const input = (value: PublishedValue, name: string): number => Number(value.inputs![name]);

describe('dressed sizes', () => {
    const one = new Rational(1);

    test.each(checksOf('dressed-sizes', /^lumber\.board\.1x\d+\.width/))('%s: %s', (_id, _source, value) => {
        const size = dressedSize(one, new Rational(input(value, 'nominal_width')))!;
        expectNear(size.width / (value.unit === 'mm' ? TICKS_PER_MM : TICKS_PER_INCH), value);
    });

    test.each(checksOf('dressed-sizes', /^lumber\.board\.(1|5_4|6_4)\.thickness$/))('%s: %s', (_id, _source, value) => {
        const size = dressedSize(new Rational(input(value, 'nominal')), new Rational(6))!;
        expectNear(size.thickness / TICKS_PER_INCH, value);
        expect(size.published.mark === 'from memory').toBe(value.mark === 'from memory');
    });

    test.each(checksOf('dressed-sizes', /^lumber\.dim\.width\.\d+\.dry/))('%s: %s', (_id, _source, value) => {
        expectNear(dressedSize(new Rational(2), new Rational(input(value, 'nominal')))!.width / TICKS_PER_INCH, value);
    });

    test.each(checksOf('dressed-sizes', /^lumber\.dim\.thick\..*\.dry/))('%s: %s', (_id, _source, value) => {
        expectNear(dressedSize(new Rational(input(value, 'nominal')), new Rational(6))!.thickness / TICKS_PER_INCH, value);
    });

    test('a size that no table has is not made up', () => {
        expect(dressedSize(one, new Rational(7))).toBeUndefined();
        expect(dressedSize(new Rational('3/4'), new Rational(6))).toBeUndefined();
        expect(dressedSize(new Rational(0), new Rational(0))).toBeUndefined();
    });
});

describe('board measure', () => {
    test.each(checksOf('board-measure', /^bf\./))('%s: %s', (_id, _source, value) => {
        const length = input(value, 'L') * TICKS_PER_FOOT;
        expectNear(boardFeet(new Rational(input(value, 'T')), new Rational(input(value, 'W')), length).valueOf(), value);
    });
});

describe('currencies', () => {
    test.each(Object.entries(CURRENCIES))('%s', (code, { name }) => {
        // as Unicode CLDR has them, which comes with Node; ISO calls the pound by its metal
        expect(Intl.supportedValuesOf('currency')).toContain(code);
        expect(name).toBe(code === 'GBP' ? 'Pound Sterling' : new Intl.DisplayNames('en', { type: 'currency' }).of(code));
        const digits = new Intl.NumberFormat('en', { style: 'currency', currency: code }).resolvedOptions().maximumFractionDigits!;
        expect(printAmount(new Rational(5))).toBe((5).toFixed(digits));
    });

    test('those that prices can be written in', () => {
        for (const code of Intl.supportedValuesOf('currency')) expect(MONEY.test(`5 ${code}`), code).toBe(Object.hasOwn(CURRENCIES, code));
    });
});

describe('species', () => {
    const column = { g12: 'gravity', mor12: 'rupture', moe12: 'elasticity' } as const;

    test.each(checksOf('species', /^species\.[a-z-]+\.[a-z0-9]+$/))('%s: %s', (id, _source, value) => {
        const row = STRENGTH[value.species!]!;
        expectNear(row[column[id.split('.').at(-1) as keyof typeof column]], value);
        expect(citation(row)).toContain('Table 5-3b');
    });

    test.each(checksOf('species', /^species\..*\.(kpa|mpa)$/))('%s in metric: %s', (id, _source, value) => {
        const row = STRENGTH[value.species!]!;
        const psi = id.includes('.mor12.') ? row.rupture : row.elasticity * 1e6;
        expectNear(psi * 6.894757293168361 / (value.unit === 'kPa' ? 1 : 1000), value);
    });

    test('every wood the language knows has its figures, and no figure is without its word', () => {
        const vocabulary = readFileSync(new URL('../../src/language/builtin/builtin.coffer', import.meta.url), 'utf8');
        const words = /words Species \{([^}]*)\}/.exec(vocabulary)![1]!.split(',').map(word => word.trim()).filter(word => word !== 'mdf');
        expect(Object.keys(STRENGTH).sort()).toEqual([...words].sort());
        expect(Object.keys(MOVEMENT).sort()).toEqual([...words].sort());
    });
});

describe('movement', () => {
    test.each(checksOf('movement', /^move\.[a-z-]+\.c[rt]$/))('%s: %s', (id, _source, value) => {
        const row = MOVEMENT[value.species!]!;
        expectNear(id.endsWith('.cr') ? row.radial : row.tangential, value);
        expect(row.mark).toBe(value.mark);
    });

    test.each(checksOf('movement', /^move\.ex\./))('%s: %s', (_id, _source, value) => {
        const from = value.inputs!.M_I === undefined ? 0 : input(value, 'M_I');
        const to = value.inputs!.M_F === undefined ? input(value, 'dM') : input(value, 'M_F');
        expectNear(movementOf(input(value, 'D_I'), Number(value.inputs!.C_T ?? value.inputs!.C), from, to), value);
    });

    test.each(checksOf('moisture', /^emc\.(table42|si)/))('%s: %s', (id, _source, value) => {
        const degrees = input(value, 'T');
        expectNear(equilibrium(id.includes('table42') ? (degrees - 32) / 1.8 : degrees, input(value, 'RH') / 100), value);
    });

    test('the humidity for a moisture is that of which the equation makes it', () => {
        for (const celsius of [-1, 10, 21, 35]) {
            for (const percent of [4, 8, 12, 20]) expect(equilibrium(celsius, humidityFor(percent, celsius))).toBeCloseTo(percent, 6);
        }
    });

    test('coefficient and shrinkage of one species obey the handbook\'s own closure C = S / (3000 - 20 S)', () => {
        // The oaks' coefficients are of commercial groups; redcedar starts to shrink at 22 % (S / (2200 - 12 S)).
        const single = publishedValues('movement', /^shrink\.[a-z-]+\.[RT]$/).filter(({ species }) => !['red-oak', 'white-oak', 'western-redcedar'].includes(species!));
        expect(single.length).toBeGreaterThan(10);
        for (const { id, species, expected: s } of single) {
            const coefficient = MOVEMENT[species!]![id.endsWith('.R') ? 'radial' : 'tangential'];
            expect(Math.abs(s / (3000 - 20 * s) - coefficient), id).toBeLessThan(1.05e-5);
        }
    });
});

describe('fasteners', () => {
    test.each(checksOf('fasteners', /^fast\.screw\.d\./))('%s: %s', (_id, _source, value) => {
        expectNear(screwShank(input(value, 'gauge'))!.ticks / TICKS_PER_MM, value);
    });

    test.each(checksOf('fasteners', /^fast\.finish_nail\./))('%s: %s', (_id, _source, value) => {
        const nail = finishNail(input(value, 'gauge'))!;
        expectNear(nail.ticks / TICKS_PER_MM, value);
        expect(nail.mark).toBe(value.mark);
    });

    test('a gauge or number outside the tables is not made up', () => {
        expect(finishNail(17)).toBeUndefined();
        expect(screwShank(13)).toBeUndefined();
        expect(screwShank(Number.NaN)).toBeUndefined();
    });

    test.each(checksOf('fasteners', /^fast\.(nds|etb)\.screw/))('%s: %s', (_id, _source, value) => {
        expectNear(screwWithdrawal(input(value, 'G'), input(value, 'D') * TICKS_PER_INCH), value);
    });

    test.each(checksOf('fasteners', /^fast\.nds\.CD\.permanent/))('%s: %s', (_id, _source, value) => { expectNear(PERMANENT_LOAD, value); });

    test.each(checksOf('fasteners', /^fast\.nds\.G\./))('%s: %s', (id, _source, value) => {
        expectNear(JOIST_GRAVITY[id.split('.')[3]!.replace(/-\((.*)\)$/, '-$1')]!.gravity, value);
    });

    test('every wood of joists that can be said has its figure', () => {
        const vocabulary = readFileSync(new URL('../../src/language/builtin/builtin.coffer', import.meta.url), 'utf8');
        const words = /words JoistWood \{([^}]*)\}/.exec(vocabulary)![1]!.split(',').map(word => word.trim());
        expect(Object.keys(JOIST_GRAVITY).sort()).toEqual([...words].sort());
    });

    test('a board of yellow-poplar, 3/4" x 5 1/2", weighs 0.841 lb a foot (evaluated from the Wood Handbook\'s density, 29.4 lb a cubic foot)', () => {
        expect(poundsPerCubicFoot('yellow-poplar')).toBeCloseTo(29.4, 1);
        expect(poundsPerCubicFoot('yellow-poplar')! * 0.75 * 5.5 / 144).toBeCloseTo(0.841, 3);
        expect(poundsPerCubicFoot('toString')).toBeUndefined();
    });
});

describe('biscuits', () => {
    const sizeOf = (id: string) => biscuitOf(`#${id.split('.')[1]}`)!;

    test.each(checksOf('biscuits', /^biscuit\.\d+\.(length|width)$/))('%s: %s', (id, _source, value) => {
        expectNear(sizeOf(id)[id.split('.')[2] as 'length' | 'width'] / TICKS_PER_MM, value);
    });

    test.each(checksOf('biscuits', /^biscuit\.\d+\.slotdepth$/))('%s: %s', (id, _source, value) => {
        expectNear(slotDepth(sizeOf(id)) / TICKS_PER_MM, value);
    });

    test.each(checksOf('biscuits', /^biscuit\.\d+\.slotlength$/))('%s: %s', (id, _source, value) => {
        expect(2 * CUTTER_RADIUS / TICKS_PER_MM).toBe(value.inputs!.cutter);
        expectNear(slotLength(sizeOf(id)) / TICKS_PER_MM, value);
    });

    test('a slot is longer than its biscuit, and not deeper than the cutter reaches', () => {
        for (const size of BISCUIT_SIZES) {
            expect(slotLength(biscuitOf(size)!)).toBeGreaterThan(biscuitOf(size)!.length);
            expect(slotDepth(biscuitOf(size)!)).toBeLessThan(CUTTER_RADIUS);
        }
        expect(biscuitOf('#30')).toBeUndefined();
        expect(biscuitOf('constructor')).toBeUndefined();
    });

    test('two #20 in 5 1/2" leave less than the usual 3/16" three times over, two #10 leave more', () => {
        const left = (size: string) => (inches('5 1/2') - 2 * slotLength(biscuitOf(size)!)) / 3;
        expect(left('#20')).toBeLessThan(inches('3/16'));
        expect(left('#10')).toBeGreaterThan(inches('3/16'));
        expect(millimeters(1)).toBe(TICKS_PER_MM);
    });
});
