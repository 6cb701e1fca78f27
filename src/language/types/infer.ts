import * as ast from '../generated/ast.ts';
import { treeOf, type Leaf, type Operand, type Operation } from '../operators.ts';
import { isPlainName, parameterOf } from '../scope/expected.ts';
import type { Vocabulary } from '../scope/vocabulary.ts';
import { checkArguments } from './arguments.ts';
import { declaredType, typeOfWords } from './declared.ts';
import { sourceOf, sourceOfOperand } from './place.ts';
import { replacingAny, type Report } from './report.ts';
import { checkDash, checkInches } from './slips-in-lengths.ts';
import { suggestions, type UsualUnits, type Wont } from './suggest.ts';
import {
    ANGLE, atom, combine, CONDITION, COUNT, DATE, fits, GAUGE, isPlainNumber, LENGTH, mixed, NAME, NUMBER, NUMBER_SIZE, pair, PERCENT,
    quantity, rate, sameDimensions, SIZE, TEXT, TIME, type Type,
} from './type.ts';
import { inWords, quoted, wantedInWords } from './words.ts';
import { capitalized, listed } from '../../plain/words.ts';
import { replacing } from '../../findings/finding.ts';

/** Types of `let`s that are known, and how deep in expressions we are, through all the `let`s followed. */
interface Seen { readonly lets: Map<ast.Let, Type | undefined>; depth: number; following: number }
/** Deeper than this, or through more `let`s, a type is unknown: the stack has an end. Evaluation says so. */
const DEEPEST = 1500;
const MOST_LETS = 200;

/** A place where a value is wanted: the type that is wanted there, what wants it, for messages, and whether it is as large as a room or a board. */
interface Place { readonly want: Type | undefined; readonly what: string; readonly isLarge?: boolean }

/**
 * Types of expressions. What is wanted goes down, so that each side of `18 ga x 1 1/4"` is held against its own type;
 * what is found comes up. Whatever touches something unknown is unknown, and unknown is silent: its cause has been
 * reported where it lies.
 */
export class Inference {
    constructor(
        private readonly vocabulary: Vocabulary, private readonly report: Report, private readonly wont: Wont = { isMetric: false, currency: 'USD' },
        private readonly seen: Seen = { lets: new Map(), depth: 0, following: 0 },
    ) {}

    /** Infers an expression and holds it against what is wanted. */
    check(expr: ast.Expr | undefined, place: Place): Type | undefined {
        const operand = operandOf(expr);
        return operand && this.checkOperand(operand, place);
    }

    private checkOperand(operand: Operand, place: Place): Type | undefined {
        const want = place.want?.is === 'many' ? place.want.of : place.want;
        const inner = opened(operand);
        if ((want?.is === 'pair' || want?.is === 'range') && inner.kind === 'operation' && inner.operator === (want.is === 'pair' ? 'x' : 'to')) {
            const first = inner.left && this.checkOperand(inner.left, { ...place, want: want.first });
            const second = inner.right && this.checkOperand(inner.right, { ...place, want: want.second });
            return pair(first, second, want.is);
        }
        if (want === NAME && inner.kind === 'leaf' && ast.isRef(inner.expr) && isPlainName(inner.expr, this.vocabulary)) return NAME;
        const got = this.operandType(inner, want);
        if (!fits(want, got)) this.wrongType(inner, place, want, got);
        else if (want?.is === 'quantity' && want.flavor === 'ratio') this.checkShare(inner, place);
        return got;
    }

    private usualUnits(isLarge = false): UsualUnits {
        if (this.wont.isMetric) return isLarge ? [' m', ' mm'] : [' mm'];
        return isLarge ? ["'", '"'] : ['"'];
    }

    private wrongType(operand: Operand, { what, isLarge }: Place, want: Type | undefined, got: Type | undefined): void {
        if (mixed(want, got)) return this.report({ rule: 'mixed-currency', at: sourceOfOperand(operand), message: `${what} is in another currency: it takes ${inWords(want)}, and this is ${inWords(got)}.` });
        const repairs = suggestions(want, got, operand, this.usualUnits(isLarge), this.wont.currency);
        this.report({
            rule: 'wrong-type', at: sourceOfOperand(operand), message: `${what} needs ${wantedInWords(want)}; ${subject(operand)} ${isBare(want, got) ? 'has no unit' : `is ${unmarked(operand) ? 'a number with a fraction' : inWords(got)}`}.${offered(repairs)}`,
            fixes: replacingAny(sourceOfOperand(operand), repairs),
        });
    }

    /** 15 where 15% is meant. */
    private checkShare(operand: Operand, { what }: Place): void {
        if (operand.kind !== 'leaf' || !ast.isNumberLit(operand.expr) || !(Number(operand.expr.text) > 1)) return;
        const { text } = operand.expr;
        this.report({
            rule: 'wrong-type', at: sourceOfOperand(operand), message: `${what} needs a percentage; ${text} is ${text} times the whole. Did you mean ${text}%?`,
            fixes: [replacing(sourceOfOperand(operand), `${text}%`)],
        });
    }

    /** The type of an expression, with what is wrong inside it reported. */
    infer(expr: ast.Expr | undefined, want?: Type): Type | undefined {
        const operand = operandOf(expr);
        return operand && this.operandType(opened(operand), want);
    }

    private operandType(operand: Operand, want: Type | undefined): Type | undefined {
        if (this.seen.depth >= DEEPEST) return undefined;
        this.seen.depth++;
        const type = operand.kind === 'operation' ? this.operationType(operand, want) : this.leafType(operand.expr, want);
        this.seen.depth--;
        return type;
    }

    private leafType(expr: ast.Expr, want: Type | undefined): Type | undefined {
        switch (expr.$type) {
            case 'LengthLit': checkInches(expr as ast.LengthLit, this.report); return LENGTH;
            case 'TimeLit': return TIME;
            case 'AngleLit': return ANGLE;
            case 'PercentLit': return PERCENT;
            case 'GaugeLit': return GAUGE;
            case 'NumberSizeLit': return NUMBER_SIZE;
            case 'SizeLit': return SIZE;
            case 'DateLit': return DATE;
            case 'TextLit': return TEXT;
            case 'NumberLit': return /^\d+$/.test((expr as ast.NumberLit).text ?? '') ? COUNT : NUMBER;
            case 'MoneyLit': return quantity({ money: 1 }, currencyOf((expr as ast.MoneyLit).text));
            case 'UnmarkedLit': return this.unmarked(expr as ast.UnmarkedLit, want);
            case 'Neg': return this.negated(expr as ast.Neg, want);
            case 'Group': return this.infer((expr as ast.Group).value, want);
            case 'Rate': return rate(this.infer((expr as ast.Rate).value), (expr as ast.Rate).unit?.ref?.type?.ref?.name);
            case 'MemberOf': {
                this.infer((expr as ast.MemberOf).of);
                const member = (expr as ast.MemberOf).member?.ref;
                return declaredType(member?.type);
            }
            case 'Ref': return this.named(expr as ast.Ref);
            default: return undefined;
        }
    }

    private unmarked(expr: ast.UnmarkedLit, want: Type | undefined): Type | undefined {
        if (want && !fits(want, LENGTH)) return LENGTH;
        const at = sourceOf(expr), marked = `${expr.text}"`;
        this.report({ rule: 'mark-missing', at, message: `${expr.text} of what? If it is inches, put the mark after it: ${marked}`, fixes: [replacing(at, marked)] });
        return LENGTH;
    }

    private negated(expr: ast.Neg, want: Type | undefined): Type | undefined {
        const type = this.infer(expr.operand, want);
        if (!type || type.is === 'quantity') return type === COUNT ? NUMBER : type;
        this.report({ rule: 'cannot-multiply', at: sourceOf(expr), message: `A sign stands before a quantity; this is ${inWords(type)}.` });
        return undefined;
    }

    private named(ref: ast.Ref): Type | undefined {
        const target = ref.target?.ref;
        checkArguments(ref, this.report);
        for (const argument of ref.args ?? []) {
            const parameter = parameterOf(argument);
            this.check(argument.value, { want: declaredType(parameter?.type), what: quoted(parameter?.name) });
        }
        if (ast.isParam(target)) return declaredType(target.type);
        if (ast.isLet(target)) return this.letType(target);
        if (ast.isWordDecl(target)) return typeOfWords(target.$container);
        if (ast.isFixture(target)) return atom(KIND_OF_FIXTURE[target.kind] ?? 'Fixture');
        if (ast.isStock(target) || ast.isProfile(target) || ast.isRoom(target)) return atom(target.$type);
        return undefined;
    }

    /** What a `let` holds; unknown while it is being found out, should it depend on itself. */
    letType(declaration: ast.Let): Type | undefined {
        if (declaration.type) return declaredType(declaration.type);
        if (!this.seen.lets.has(declaration)) {
            this.seen.lets.set(declaration, undefined);
            const inner = new Inference(this.vocabulary, () => { /* reported where it stands */ }, this.wont, this.seen);
            if (this.seen.following >= MOST_LETS) return undefined;
            this.seen.following++;
            this.seen.lets.set(declaration, inner.infer(declaration.value));
            this.seen.following--;
        }
        return this.seen.lets.get(declaration);
    }

    private operationType(operation: Operation, want: Type | undefined): Type | undefined {
        const { operator } = operation;
        const both = operator === '+' || operator === '-' || operator === '±' ? want : undefined;
        const left = this.side(operation.left, both), right = this.side(operation.right, both);
        checkDash(operation, this.report);
        switch (operator) {
            case 'x': return pair(left, right);
            case 'to': return this.alike(operation, left, right) ? pair(left, right, 'range') : undefined;
            case '*': case '/': return this.product(operation, left, right, operator === '*' ? 1 : -1);
            case '+': case '-': case '±': return this.sum(operation, left, right);
            default: return this.alike(operation, left, right) ? CONDITION : undefined;
        }
    }

    private side(operand: Operand | undefined, want: Type | undefined): Type | undefined {
        return operand && this.operandType(opened(operand), want);
    }

    private product(operation: Operation, left: Type | undefined, right: Type | undefined, sign: 1 | -1): Type | undefined {
        if (!left || !right) return undefined;
        if (mixed(left, right)) return this.currencies(operation, left, right);
        const odd = left.is !== 'quantity' ? left : right.is !== 'quantity' ? right : undefined;
        if (!odd) return combine(left, right, sign);
        const at = odd === left ? operation.left! : operation.right!;
        this.report({ rule: 'cannot-multiply', at: sourceOfOperand(at), message: `${sign === 1 ? 'Only quantities can be multiplied' : 'Only quantities can be divided'}; ${subject(at)} is ${inWords(odd)}.` });
        return undefined;
    }

    private sum(operation: Operation, left: Type | undefined, right: Type | undefined): Type | undefined {
        if (!left || !right) return undefined;
        if (mixed(left, right)) return this.currencies(operation, left, right);
        if (left.is === 'quantity' && right.is === 'quantity' && sameDimensions(left, right)) {
            if (operation.operator === '±') return left;
            if (left === right) return left;
            return quantity(left.dimensions, left.currency || right.currency);
        }
        const repair = this.otherSide(operation, left, right);
        const a = inWords(left), b = inWords(right);
        const message = operation.operator === '±' ? `${capitalized(b)} cannot be the tolerance of ${a}.` : operation.operator === '+' ? `${capitalized(a)} and ${b} cannot be added.` : `${capitalized(b)} cannot be subtracted from ${a}.`;
        this.report({ rule: 'cannot-add', at: sourceOfOperand(repair?.operand ?? operation), message: message + (repair ? ` Did you mean ${repair.text}?` : ''), fixes: repair ? [replacing(sourceOfOperand(repair.operand), repair.text)] : [] });
        return undefined;
    }

    /** Whether two things can be compared, or can be the ends of a range. */
    private alike(operation: Operation, left: Type | undefined, right: Type | undefined): boolean {
        if (!left || !right) return false;
        if (mixed(left, right)) { this.currencies(operation, left, right); return false; }
        const range = operation.operator === 'to';
        if (sameDimensions(left, right) && (range || left.is === 'quantity')) return true;
        const repair = this.otherSide(operation, left, right);
        const message = range ? `A range goes from one thing to another of its kind; this goes from ${inWords(left)} to ${inWords(right)}.` : `${capitalized(inWords(left))} cannot be compared with ${inWords(right)}.`;
        this.report({ rule: 'cannot-compare', at: sourceOfOperand(repair?.operand ?? operation), message: message + (repair ? ` Did you mean ${repair.text}?` : ''), fixes: repair ? [replacing(sourceOfOperand(repair.operand), repair.text)] : [] });
        return false;
    }

    /** Where one side is a bare figure, what it would be in the other's unit. */
    private otherSide({ left, right }: Operation, a: Type, b: Type): { operand: Operand, text: string } | undefined {
        const onRight = right && isPlainNumber(b) ? suggestions(a, b, right, this.usualUnits(), this.wont.currency)[0] : undefined;
        if (onRight) return { operand: right!, text: onRight };
        const onLeft = left && isPlainNumber(a) ? suggestions(b, a, left, this.usualUnits(), this.wont.currency)[0] : undefined;
        return onLeft ? { operand: left!, text: onLeft } : undefined;
    }

    private currencies(operation: Operation, left: Type, right: Type): undefined {
        this.report({ rule: 'mixed-currency', at: sourceOfOperand(operation), message: `Two currencies meet here, ${inWords(left)} and ${inWords(right)}, and no exchange rate is known.` });
        return undefined;
    }
}

const KIND_OF_FIXTURE: Readonly<Record<string, string>> = { wall: 'Wall', board: 'Board', line: 'BeamLine', crossing: 'Crossing' };

/** An expression as an operand: a chain by its operators. Undefined where the line is only half typed. */
export function operandOf(expr: ast.Expr | undefined): Operand | undefined {
    if (!expr) return undefined;
    return expr.$type === 'Chain' ? treeOf(expr as ast.Chain) : new Single(expr);
}

/** Where it stands is worked out only when somebody asks. */
class Single implements Leaf {
    readonly kind = 'leaf';

    constructor(readonly expr: ast.Expr) {}

    get range() {
        return this.expr.$cstNode?.range ?? { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };
    }
}

/** Without its parentheses, and a chain by its operators. */
function opened(operand: Operand): Operand {
    let inner = operand;
    for (let depth = 0; depth < 1000 && inner.kind === 'leaf' && inner.expr.$type === 'Group'; depth++) {
        const next = operandOf((inner.expr as ast.Group).value);
        if (!next) return inner;
        inner = next;
    }
    return inner;
}

/** A figure and nothing else, where so much of something is wanted. */
function isBare(want: Type | undefined, got: Type | undefined): boolean {
    return want?.is === 'quantity' && !isPlainNumber(want) && isPlainNumber(got) && got !== PERCENT;
}

function unmarked(operand: Operand): boolean {
    return operand.kind === 'leaf' && ast.isUnmarkedLit(operand.expr);
}

function offered(repairs: readonly string[]): string {
    return repairs.length > 0 ? ` Did you mean ${listed(repairs, 'or')}?` : '';
}

/** "this", or the name where the text has one. */
function subject(operand: Operand): string {
    return operand.kind === 'leaf' && ast.isRef(operand.expr) ? quoted(operand.expr.target?.$refText) : 'this';
}

/** `USD` in `3.35 USD`; the dollar sign is the US dollar's. */
export function currencyOf(text: string): string {
    return /[A-Z]{3}$/.exec(text)?.[0] ?? 'USD';
}
