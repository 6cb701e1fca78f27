import type { AstNode } from 'langium';
import * as ast from '../generated/ast.ts';
import { declarationOf } from './kind-of.ts';
import type { Vocabulary } from './vocabulary.ts';

/**
 * The declared type that an expression is expected to have, where one is declared: it comes down from the property,
 * modifier, parameter or `let` it is a value of. In `2 x #20` and `0" to 1/32"` each side has its own.
 */
export function expectedType(expr: AstNode, vocabulary: Vocabulary): ast.TypeAtom | undefined {
    let side = 0;
    let inner = expr;
    for (let outer = expr.$container; outer; inner = outer, outer = outer.$container) {
        if (ast.isChain(outer)) side = sideOf(outer, inner);
        else if (!ast.isGroup(outer) && !ast.isNeg(outer)) {
            const type = typeOfPlace(outer, inner, vocabulary);
            return type?.parts[side] ?? type?.parts[0];
        }
    }
    return undefined;
}

/** How many `x` and `to` stand before an operand. */
function sideOf(chain: ast.Chain, operand: AstNode): number {
    const before = chain.operators.slice(0, chain.operands.indexOf(operand as ast.Expr));
    return before.filter(operator => operator === 'x' || operator === 'to').length;
}

function typeOfPlace(place: AstNode, value: AstNode, vocabulary: Vocabulary): ast.TypeRef | undefined {
    if (ast.isLine(place) || ast.isFixture(place)) return declarationOf(place, vocabulary)?.type;
    if (ast.isMod(place)) return place.decl?.ref?.type;
    if (ast.isArg(place)) return parameterOf(place)?.type;
    if (ast.isParam(place) || ast.isLet(place) || ast.isPropertyDecl(place)) return value === place.type ? undefined : place.type;
    return undefined;
}

/** The parameter an argument is for: by its name, or by its place. */
export function parameterOf(argument: ast.Arg): ast.Param | undefined {
    if (argument.param) return argument.param.ref;
    const profile = argument.$container.target?.ref;
    return ast.isProfile(profile) ? profile.params[argument.$containerIndex ?? -1] : undefined;
}

/**
 * True for a word that is a name in itself and need not be declared: `A` in `from A`, `wall-south` in `to wall-south`,
 * `s-12` in `spoiled s-12`. It is no mistake that it leads nowhere.
 */
export function isPlainName(ref: ast.Ref, vocabulary: Vocabulary): boolean {
    return !ref.call && expectedType(ref, vocabulary)?.ref?.$refText === 'Name';
}
