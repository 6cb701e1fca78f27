import type { Nails, Profile, Screws, Stock } from '../../job/model.ts';
import type { Given, Source } from '../../provenance/source.ts';
import type { Measure } from '../../quantity/measure.ts';
import { toTicks, type Rational } from '../../quantity/rational.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import { plus, worstCase } from '../../quantity/tolerance.ts';
import * as ast from '../generated/ast.ts';
import { kept } from '../../plain/kept.ts';
import { declaredType } from '../types/declared.ts';
import { factsOf } from '../types/facts.ts';
import { operandOf } from '../types/infer.ts';
import { sourceOf, sourceOfOperand } from '../types/place.ts';
import { LENGTH, NAME } from '../types/type.ts';
import { quoted } from '../types/words.ts';
import { UNNAMED, type Evaluator } from './evaluate.ts';
import { checkCount, checkLength, checkOrder, LONGEST, type Binding } from './limits.ts';
import { toleranceUnused } from './uncounted.ts';
import { isCountedBy } from './counted-by.ts';
import { isUsual, minutesOf, usualOf, warnUnusual } from './usual.ts';
import { conforms, type Known } from './value.ts';

/** Values of a property, or of one of its modifiers, and who works them out. */
export interface Slot {
    readonly declaration: ast.PropertyDecl;
    /** The property that `declaration` is a modifier of. */
    readonly of?: ast.PropertyDecl;
    readonly values: readonly ast.Expr[];
    readonly said: boolean;
    readonly evaluator: Evaluator;
}
/** A value read from a slot, with the expression that says it. */
export interface Found { readonly known: Known; readonly expr: ast.Expr; readonly slot: Slot }

/** The built-in library stays as it is, so its places do too. */
const sourceOfDefault = kept(sourceOf);

/**
 * Typed values with the words that say them, by the names of properties and their modifiers. What is not said has its
 * declared default and `said: false`; what is said and cannot be known is undefined, and its default does not step in.
 */
export abstract class Values {
    /** `kind`: of block, for causes. `owner`: what the values belong to, for the causes of tolerances. */
    protected constructor(readonly evaluator: Evaluator, protected readonly kind: string, readonly owner: string) {}

    /** Undefined where it is not said and has no default, and where it is said and cannot be read. */
    protected abstract slot(name: string, mod?: string): Slot | undefined;

    length(name: string, mod?: string): Given<Ticks> | undefined {
        return this.given(this.found(name, mod), found => this.ticks(found));
    }

    /** A length that keeps its tolerance. `cause` names what pushes it off; not given: the property of its owner. */
    measure(name: string, cause?: string, mod?: string): Given<Measure> | undefined {
        return this.given(this.found(name, mod), found => this.measured(found, found.known, '', cause));
    }

    word<T extends string>(name: string, mod?: string): Given<T> | undefined {
        return this.given(this.found(name, mod), ({ known: { value } }) => value.is === 'word' ? value.word as T : undefined);
    }

    /** A text, or a name that need not be declared. */
    text(name: string, mod?: string): Given<string> | undefined {
        return this.given(this.found(name, mod), ({ known: { value }, expr, slot }) => {
            if (value.is === 'text') return value.text;
            return declaredType(slot.declaration.type) === NAME ? expr.$cstNode?.text : undefined;
        });
    }

    stock(name: string, mod?: string): Given<Stock> | undefined {
        return this.given(this.found(name, mod), ({ known: { value } }) => value.is === 'stock' ? value.stock : undefined);
    }

    profile(name: string): Given<Profile> | undefined {
        return this.given(this.found(name), ({ known: { value } }) => value.is === 'profile' ? value.profile : undefined);
    }

    /** The wall, line or fixture that a name stands for. */
    thing(name: string): Given<ast.Fixture> | undefined {
        return this.given(this.found(name), ({ known: { value } }) => value.is === 'thing' && ast.isFixture(value.node) ? value.node : undefined);
    }

    /** A number as it stands, whole or not. */
    number(name: string): Given<number> | undefined {
        return this.given(this.found(name), ({ known: { value } }) => value.is === 'quantity' ? value.exact.valueOf() : undefined);
    }

    wholeNumber(name: string): Given<number> | undefined {
        return this.given(this.found(name), found => this.count(found));
    }

    /** An exact figure in whole units of money, minutes and ticks, and the currency of the money in it. */
    amount(name: string, mod?: string): Given<{ exact: Rational; currency: string }> | undefined {
        return this.given(this.found(name, mod), found => this.amountOf(found));
    }

    /** The figure of a value; what a job has is nothing or more. */
    amountOf(found: Found): { exact: Rational; currency: string } | undefined {
        const { value } = found.known;
        if (value.is !== 'quantity') return undefined;
        if (value.exact.s >= 0n) {
            if (value.type.currency === '') this.lookOver(found, minutesOf(value.exact, usualOf(factsOf(found.slot.declaration))));
            return { exact: value.exact, currency: value.type.currency };
        }
        this.evaluator.raise({ rule: 'out-of-range', at: sourceOf(found.expr), via: found.known.via, message: `${quoted(this.nameOf(found.slot))} is less than nothing; it has to be 0 or more.` });
        return undefined;
    }

    range(name: string): Given<{ least: Ticks; most: Ticks }> | undefined {
        return this.given(this.found(name), found => {
            const { value } = found.known;
            if (value.is !== 'range') return undefined;
            const least = this.ticks(found, value.first), most = this.ticks(found, value.second);
            return least !== undefined && most !== undefined && checkOrder(least, most, this.binding(found)) ? { least, most } : undefined;
        });
    }

    /** Nails `18 ga x 1 1/4" every 8"`, screws `#8 x 2 1/2" every 16"`. */
    fasteners(name: string): Given<Nails & Screws> | undefined {
        const every = this.length(name, 'every');
        return this.given(this.found(name), found => {
            const { value } = found.known;
            if (value.is !== 'pair' || !every) return undefined;
            const first = value.first.value;
            const gauge = first.is === 'gauge' ? first.gauge : first.is === 'number-size' ? Number(first.text.slice(1)) : undefined;
            const length = this.ticks(found, value.second);
            if (gauge !== undefined) this.lookOver(found, gauge, 'gauge');
            return gauge === undefined || length === undefined ? undefined : { gauge, length, every: every.value };
        });
    }

    /** Both lengths of `1/4" x 3/8"`, each with its own words where the text has them. */
    pair(name: string): Given<{ first: Measure; second: Measure; firstAt: Source; secondAt: Source }> | undefined {
        return this.given(this.found(name), found => {
            const { value } = found.known;
            if (value.is !== 'pair') return undefined;
            const first = this.measured(found, value.first, ', first'), second = this.measured(found, value.second, ', second');
            const operand = operandOf(found.expr);
            const whole = sourceOf(found.expr);
            const sides = operand?.kind === 'operation' && operand.operator === 'x' ? operand : undefined;
            return first && second
                && { first, second, firstAt: sides?.left ? sourceOfOperand(sides.left) : whole, secondAt: sides?.right ? sourceOfOperand(sides.right) : whole };
        });
    }

    given<T>(found: Found | undefined, convert: (found: Found) => T | undefined): Given<T> | undefined {
        const value = found && convert(found);
        if (value === undefined) return undefined;
        const { via } = found!.known;
        const { expr, slot: { said } } = found!;
        const at = said ? sourceOf(expr) : sourceOfDefault(expr);
        return via.length > 0 ? { value, at, said, via } : { value, at, said };
    }

    /** The first value of a property or modifier. */
    found(name: string, mod?: string): Found | undefined {
        const slot = this.slot(name, mod);
        const expr = slot?.values[0];
        return slot && expr && this.valueOf(slot, expr);
    }

    protected valueOf(slot: Slot, expr: ast.Expr): Found | undefined {
        const type = declaredType(slot.declaration.type);
        const known = slot.evaluator.evaluate(expr);
        if (known) return conforms(type, known.value) && this.isCounted(slot, expr, known) ? { known, expr, slot } : undefined;
        // A name that need not be declared: `A` in `from A`, `s-12` in `spoiled s-12`.
        const plain = (type === NAME || type?.is === 'many' && type.of === NAME) && ast.isRef(expr) && !expr.call ? expr.$cstNode?.text : undefined;
        return plain === undefined ? undefined : { known: { value: { is: 'text', text: plain }, via: [] }, expr, slot };
    }

    /** Whether a rate is for each of what its property is reckoned by. */
    private isCounted(slot: Slot, expr: ast.Expr, known: Known): boolean {
        if (known.value.is !== 'quantity' || known.value.per === undefined) return true;
        return isCountedBy(factsOf(slot.declaration).reckonedBy, this.nameOf(slot), expr, known, this.evaluator.raise);
    }

    /** A length of a value, or of one side of it, as whole ticks. */
    ticks(found: Found, known = found.known): Ticks | undefined {
        const { value } = known;
        if (value.is !== 'quantity') return undefined;
        this.checkTolerance(found, known);
        return this.checked(toTicks(value.exact), found);
    }

    private checkTolerance({ expr, slot: { declaration } }: Found, { value }: Known): void {
        if (value.is === 'quantity' && value.tolerance.length > 0 && !factsOf(declaration).keepsTolerance) this.evaluator.raise(toleranceUnused(sourceOf(expr), declaration.name));
    }

    /** Nearly all lengths are as they should be, and many are read at every keystroke. */
    private checked(ticks: Ticks, found: Found): Ticks | undefined {
        const { most = LONGEST } = factsOf(found.slot.declaration);
        const sound = ticks > 0 && ticks <= most ? ticks : checkLength(ticks, this.binding(found));
        if (sound !== undefined) this.lookOver(found, sound);
        return sound;
    }

    /** A whole number from zero up. */
    count(found: Found, known = found.known): number | undefined {
        const count = checkCount(known.value, this.binding(found));
        if (count !== undefined) this.lookOver(found, count, known === found.known ? undefined : 'count');
        return count;
    }

    /** `side` tells the two of a pair apart. */
    private measured(found: Found, known: Known, side: string, named?: string): Measure | undefined {
        if (known.value.is !== 'quantity' || !conforms(LENGTH, known.value)) return undefined;
        const ticks = this.checked(toTicks(known.value.exact), found);
        if (ticks === undefined) return undefined;
        this.checkTolerance(found, known);
        if (known.value.tolerance.length === 0) return { ticks, tolerance: [] };
        const cause = named ?? `${this.owner} ${pathOf(this.kind, found.slot)}${side}`;
        const unnamed = worstCase(known.value.tolerance.filter(t => t.cause.startsWith(UNNAMED)));
        const others = known.value.tolerance.filter(t => !t.cause.startsWith(UNNAMED));
        const { tolerance } = plus({ ticks: 0, tolerance: others }, { ticks: 0, tolerance: unnamed === 0 ? [] : [{ cause, reach: unnamed }] });
        return { ticks, tolerance };
    }

    /** Warns of what is said and hardly any job has. `aspect`: which figure of the value it is, where it is not the one of the property's own kind. */
    protected lookOver(found: Found, value: number, aspect?: 'count' | 'gauge'): void {
        const { declaration, said } = found.slot;
        const usual = said ? usualOf(factsOf(declaration), aspect) : undefined;
        if (usual && !isUsual(usual, value)) warnUnusual(
            usual, value, { name: this.nameOf(found.slot), expr: found.expr, via: found.known.via, raise: this.evaluator.raise },
        );
    }

    /** What the text calls a value, for messages. */
    protected nameOf({ declaration }: Slot): string {
        return declaration.name;
    }

    private binding(found: Found): Binding {
        return {
            facts: factsOf(found.slot.declaration), name: this.nameOf(found.slot), at: () => sourceOf(found.expr), via: found.known.via,
            raise: this.evaluator.raise,
        };
    }
}

/** `Sides.rabbet`, `Sides.nails/every`. */
function pathOf(kind: string, { declaration, of }: Slot): string {
    return of ? `${kind}.${of.name}/${declaration.name}` : `${kind}.${declaration.name}`;
}
