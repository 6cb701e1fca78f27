import type { AstNode } from 'langium';
import * as ast from '../generated/ast.ts';
import type { Vocabulary } from './vocabulary.ts';

/** The first kind in a type: `Stock` in `wide: Stock`. */
export function kindOfType(type: ast.TypeRef | undefined, vocabulary: Vocabulary): ast.Kind | undefined {
    return vocabulary.kind(type?.parts[0]?.ref?.$refText);
}

/** What kind of block follows a word of a path: `sides` is followed by a block of kind Sides. */
export function kindOfTarget(target: AstNode | undefined, vocabulary: Vocabulary): ast.Kind | undefined {
    if (ast.isPropertyDecl(target)) return kindOfType(target.type, vocabulary);
    if (ast.isRoom(target)) return vocabulary.kind('Room');
    if (ast.isFixture(target)) return vocabulary.kindOfFixture(target);
    return undefined;
}

/** What a line speaks of: the last word of its path. Undefined where that is unknown. */
export function targetOf(line: ast.Line): ast.Target | undefined {
    return line.path[line.path.length - 1]?.ref;
}

/** The declaration that says what values and modifiers a line takes. */
export function declarationOf(member: ast.Line | ast.Fixture, vocabulary: Vocabulary): ast.PropertyDecl | undefined {
    const target = ast.isFixture(member) ? member : targetOf(member);
    if (ast.isFixture(target)) return vocabulary.valueOfFixture(target);
    return ast.isPropertyDecl(target) ? target : undefined;
}

/** Which properties a block may say. Undefined where that is unknown, and for the list of changes of an alternate. */
export function kindOfBody(body: ast.Body, vocabulary: Vocabulary): ast.Kind | undefined {
    const owner: AstNode = body.$container;
    if (ast.isLine(owner)) return kindOfTarget(targetOf(owner), vocabulary);
    if (ast.isFixture(owner)) return vocabulary.kindOfFixture(owner);
    return vocabulary.kind(owner.$type);
}

/**
 * What kind of thing an expression stands for, as far as it has members: `poplar.width`, `beam.sides.stock.width`.
 * Follows names and declared types only; it must not resolve a member, for members are resolved with its help.
 */
export function kindOfExpression(expr: ast.Expr | undefined, vocabulary: Vocabulary): ast.Kind | undefined {
    const members: string[] = [];                       // that are asked of it, the last first
    const seen = new Set<AstNode>();
    let at: ast.Expr | undefined = expr, kind: ast.Kind | undefined;
    // As many steps as there are names and parentheses on the way: a chain of `let`s is as long as the file.
    while (at && !kind) {
        if (seen.has(at)) return undefined;
        seen.add(at);
        if (ast.isGroup(at)) at = at.value;
        else if (ast.isMemberOf(at)) {
            members.push(at.member?.$refText ?? '');
            at = at.of;
        } else {
            const target: AstNode | undefined = ast.isRef(at) ? at.target?.ref : undefined;
            kind = kindOfDeclared(target, vocabulary);
            at = ast.isLet(target) && !target.type ? target.value : undefined;
        }
    }
    while (kind && members.length > 0) kind = kindOfType(vocabulary.properties(kind).get(members.pop()!)?.type, vocabulary);
    return kind;
}

/** What kind of thing a name stands for, as far as it has members. */
export function kindOfNamed(target: AstNode | undefined, vocabulary: Vocabulary): ast.Kind | undefined {
    return ast.isLet(target) && !target.type ? kindOfExpression(target.value, vocabulary) : kindOfDeclared(target, vocabulary);
}

/** The same as far as its own words tell: a `let` without a type is what its value is. */
function kindOfDeclared(target: AstNode | undefined, vocabulary: Vocabulary): ast.Kind | undefined {
    if (ast.isParam(target) || ast.isLet(target)) return target.type && kindOfType(target.type, vocabulary);
    if (ast.isStock(target) || ast.isProfile(target) || ast.isRoom(target)) return vocabulary.kind(target.$type);
    return undefined;
}

/** The room whose walls, lines and fixtures are meant at a place: the one around it, or the one an alternate's line begins with. */
export function roomAt(node: AstNode | undefined): ast.Room | undefined {
    for (let at = node; at; at = at.$container) {
        if (ast.isRoom(at)) return at;
        if (ast.isLine(at)) {
            const first = at.path[0]?.ref;
            if (ast.isRoom(first)) return first;
        }
    }
    return undefined;
}
