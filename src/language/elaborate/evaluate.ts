import { AstUtils, type AstNode } from 'langium';
import { BOARD_FOOT } from '../../data/board-measure.ts';
import type { Profile, Stock } from '../../job/model.ts';
import { whyNoDate } from '../../quantity/calendar.ts';
import { Rational, toTicks } from '../../quantity/rational.ts';
import { TICKS_PER_FOOT, TICKS_PER_INCH, TICKS_PER_MM } from '../../quantity/ticks.ts';
import * as ast from '../generated/ast.ts';
import type { Operand, Operation } from '../operators.ts';
import { parameterOf } from '../scope/expected.ts';
import { isBroken } from '../types/broken.ts';
import { declaredType } from '../types/declared.ts';
import { operandOf } from '../types/infer.ts';
import { leafOf, sourceOf, sourceOfOperand, uriOf } from '../types/place.ts';
import { LENGTH, rate, TIME, type Type } from '../types/type.ts';
import { compared, computed, MOST_CAUSES, negated, tolerated } from './arithmetic.ts';
import type { Word } from './block.ts';
import { readLiteral } from './literals.ts';
import type { Progress } from './progress.ts';
import type { Raise } from './raised.ts';
import { both, conforms, known, number, type Known } from './value.ts';

/** Arguments of a profile by parameter. An argument that is there and unknown stays unknown; its default does not step in. */
export type Arguments = ReadonlyMap<ast.Param, Known | undefined>;

/** What expressions use that is said elsewhere, in whichever file. */
export interface Elsewhere {
    readonly progress: Progress;
    /** A `let` of a file. */
    fileValue(declaration: ast.Let): Known | undefined;
    stock(declaration: ast.Stock): Stock | undefined;
    /** The profile that a name with its arguments stands for. */
    profile(ref: ast.Ref, declaration: ast.Profile, given: Arguments, raise: Raise): Profile | undefined;
    /** A profile with something in it said otherwise where it is used. */
    changedProfile(profile: Profile, changes: readonly Word[], raise: Raise): Profile;
}

/**
 * Works out expressions, exactly, within one declaration: a stock, a room, one instance of a profile with its arguments.
 * Whatever touches something unknown is unknown. What is wrong with a value rather than its type is raised here, once.
 */
export class Evaluator {
    /** Within `labor`, once its `day` is read. */
    minutesOfDay?: Rational;

    /** @param values where what is worked out is kept */
    constructor(
        private readonly elsewhere: Elsewhere, readonly raise: Raise, given: Arguments = new Map(),
        private readonly values: Map<ast.Param | ast.Let, Known | undefined> = new Map(),
    ) {
        for (const [parameter, value] of given) this.values.set(parameter, value);
    }

    /** Also binds the parameters of a profile that this one is `like`. */
    give(given: Arguments): void {
        for (const [parameter, value] of given) this.values.set(parameter, value);
    }

    evaluate(expr: ast.Expr | undefined): Known | undefined {
        const operand = operandOf(expr);
        return operand && this.operand(operand);
    }

    /** The value of an expression where a type is declared: of that type, and a length as a whole number of ticks. */
    bound(expr: ast.Expr | undefined, type: Type | undefined): Known | undefined {
        const found = this.evaluate(expr);
        if (!found || !conforms(type, found.value)) return undefined;
        if (type !== LENGTH || found.value.is !== 'quantity' || found.value.exact.d === 1n) return found;
        return known(number(new Rational(toTicks(found.value.exact)), LENGTH, found.value.tolerance), found.via);
    }

    operand(operand: Operand): Known | undefined {
        if (operand.kind === 'operation' && !(operand.left && operand.right)) return undefined;
        return this.elsewhere.progress.deeper(() => operand.kind === 'leaf' ? this.leaf(operand.expr) : this.operation(operand), () => {
            this.raise({ rule: 'out-of-range', at: sourceOfOperand(operand), message: 'This depends on too many other values to be worked out.' });
        });
    }

    private leaf(expr: ast.Expr): Known | undefined {
        switch (expr.$type) {
            case 'Ref': return this.named(expr as ast.Ref);
            case 'Group': return this.evaluate((expr as ast.Group).value);
            case 'Neg': return this.signed(expr as ast.Neg);
            case 'Rate': return this.rate(expr as ast.Rate);
            case 'MemberOf': return memberOf(this.evaluate((expr as ast.MemberOf).of), (expr as ast.MemberOf).member?.ref);
            default: return this.literal(expr);
        }
    }

    private literal(expr: ast.Expr): Known | undefined {
        const read = readLiteral(expr);
        if (read === 'over-zero') this.raise({ rule: 'divided-by-zero', at: sourceOf(expr), message: 'This fraction divides by zero.' });
        else if (read === 'too-many-digits') this.raise({ rule: 'out-of-range', at: sourceOf(expr), message: 'This figure has more digits than any job needs.' });
        else if (read === 'no-such-date') this.raise({ rule: 'no-such-date', at: sourceOf(expr), message: `There is no such day: ${whyNoDate(expr.$cstNode?.text ?? '')}.` });
        else if (read && 'days' in read) {
            const day = this.day(expr);
            return day && known(number(read.days.mul(day), TIME));
        }
        return typeof read === 'object' ? read : undefined;
    }

    /** Working minutes of a day; where nobody says how many, that is raised. */
    private day(expr: ast.Expr): Rational | undefined {
        if (!this.minutesOfDay) this.raise({ rule: 'wrong-unit', at: sourceOf(expr), message: 'How many hours is a day? Only inside `labor` does a day have a length, set by its `day`: write hours here.' });
        return this.minutesOfDay;
    }

    private signed(expr: ast.Neg): Known | undefined {
        const inner = this.evaluate(expr.operand);
        const value = inner && (expr.op === '-' ? negated(inner.value) : inner.value);
        return inner && value && known(value, inner.via);
    }

    private rate(expr: ast.Rate): Known | undefined {
        const unit = expr.unit?.ref;
        const inner = this.evaluate(expr.value);
        const size = unit && (unit.name === 'day' ? this.day(expr) : UNITS[unit.name]);
        if (!inner || inner.value.is !== 'quantity' || !size) return undefined;
        const quantity = unit.type?.ref?.name;
        const type = rate(inner.value.type, quantity);
        return type && known(number(inner.value.exact.div(size), type, undefined, quantity === 'Count' ? unit.name : undefined), inner.via);
    }

    private operation(operation: Operation): Known | undefined {
        const left = this.operand(operation.left!);
        const right = this.operand(operation.right!);
        if (!left || !right) return undefined;
        const via = both(left.via, right.via);
        const { operator } = operation;
        switch (operator) {
            case 'x': return known({ is: 'pair', first: left, second: right }, via);
            case 'to': return known({ is: 'range', first: left, second: right }, via);
            case '±': {
                const node = leafOf(operation);
                const { start } = operation.operatorRange;
                const value = tolerated(left.value, right.value, `${UNNAMED}${uriOf(node)}:${start.line}:${start.character}`);
                return value && known(value, via);
            }
            case '<': case '<=': case '>': case '>=': {
                const holds = compared(operator, left.value, right.value);
                return holds === undefined ? undefined : known({ is: 'comparison', holds, left: left.value, operator, right: right.value }, via);
            }
            default: return this.arithmetic(operation, left, right, via);
        }
    }

    private arithmetic(operation: Operation, left: Known, right: Known, via: Known['via']): Known | undefined {
        const value = computed(operation.operator, left.value, right.value);
        if (typeof value === 'object') return known(value, via);
        if (value === 'divided-by-zero') this.raise({ rule: 'divided-by-zero', at: sourceOfOperand(operation.right!), message: 'This is zero, and nothing can be divided by it.', via: right.via });
        else if (value === 'too-many-causes') this.raise({ rule: 'out-of-range', at: sourceOfOperand(operation), message: `This adds up more than ${MOST_CAUSES} tolerances, each with its own ±. Give one ± for the whole.`, via });
        else if (value === 'too-large') this.raise({ rule: 'out-of-range', at: sourceOfOperand(operation), message: 'This works out to a figure that no job has.', via });
        return undefined;
    }

    private named(ref: ast.Ref): Known | undefined {
        const target = ref.target?.ref;
        if (ast.isParam(target)) return this.parameter(target);
        if (ast.isLet(target)) return ast.isFile(target.$container) ? this.elsewhere.fileValue(target) : this.value(target);
        if (ast.isStock(target)) {
            const stock = this.elsewhere.stock(target);
            return stock && known({ is: 'stock', stock });
        }
        if (ast.isProfile(target)) {
            const profile = this.elsewhere.profile(ref, target, this.argumentsOf(ref), this.raise);
            return profile && known({ is: 'profile', profile });
        }
        if (ast.isWordDecl(target)) return known({ is: 'word', word: target.name, list: target.$container });
        if (ast.isFixture(target) || ast.isRoom(target)) return known({ is: 'thing', node: target });
        return undefined;
    }

    /** A profile with something in it said otherwise by lines that go on into it. */
    changed(profile: Profile, changes: readonly Word[]): Profile {
        return this.elsewhere.changedProfile(profile, changes, this.raise);
    }

    /** What stands in the parentheses behind a profile's name. The argument itself is the innermost thing its value came through. */
    argumentsOf(ref: ast.Ref): Arguments {
        const given = new Map<ast.Param, Known | undefined>();
        for (const argument of ref.args ?? []) {
            const parameter = parameterOf(argument);
            if (!parameter || given.has(parameter)) continue;
            const found = this.bound(argument.value, declaredType(parameter.type));
            given.set(parameter, found && known(found.value, [sourceOf(argument.value), ...found.via]));
        }
        return given;
    }

    parameter(parameter: ast.Param): Known | undefined {
        return this.once(parameter, () => isBroken(parameter) ? undefined : this.bound(parameter.default, declaredType(parameter.type)));
    }

    /** A `let` of the block, or of a file where this evaluator works for the file. */
    value(declaration: ast.Let): Known | undefined {
        return this.once(declaration, () => isBroken(declaration) ? undefined : this.bound(declaration.value, declaredType(declaration.type)));
    }

    private once<T extends ast.Param | ast.Let>(node: T, make: () => Known | undefined): Known | undefined {
        if (!this.values.has(node)) this.values.set(node, this.elsewhere.progress.guarded(node, this.raise, make));
        return this.values.get(node);
    }
}

/** `poplar.width`: what a stock says. */
function memberOf(of: Known | undefined, property: ast.PropertyDecl | undefined): Known | undefined {
    if (of?.value.is !== 'stock' || !property) return undefined;
    const { stock } = of.value;
    const size = property.name === 'width' ? stock.width : property.name === 'thickness' ? stock.thickness : undefined;
    return size && known(number(new Rational(size.value.ticks), LENGTH, size.value.tolerance), of.via);
}

/** Causes of a tolerance that is written where a length is: they are given the name of what the length is bound to. */
export const UNNAMED = '± at ';

/** What one of each unit is; a day, which has as many hours as the crew works, is not among them. */
const UNITS: Readonly<Record<string, Rational | undefined>> = {
    in: new Rational(TICKS_PER_INCH), ft: new Rational(TICKS_PER_FOOT),
    mm: new Rational(TICKS_PER_MM), cm: new Rational(10 * TICKS_PER_MM), m: new Rational(1000 * TICKS_PER_MM),
    min: new Rational(1), h: new Rational(60),
    joint: new Rational(1), board: new Rational(1), coffer: new Rational(1), crossing: new Rational(1), 'set-up': new Rational(1), piece: new Rational(1),
    tube: new Rational(1), sheet: new Rational(1),
    'board-ft': BOARD_FOOT, 'sq-ft': new Rational(TICKS_PER_FOOT).pow(2)!, 'sq-m': new Rational(1000 * TICKS_PER_MM).pow(2)!,
    // one US fluid ounce is 1/128 of a gallon of 231 cubic inches (NIST Handbook 44, appendix C)
    'fl-oz': new Rational(TICKS_PER_INCH).pow(3)!.mul(231).div(128), L: new Rational(100 * TICKS_PER_MM).pow(3)!,
};

/** The document that a node stands in, where it has one. */
export function documentOf(node: AstNode): ReturnType<typeof AstUtils.getDocument> | undefined {
    return AstUtils.findRootNode(node).$document;
}
