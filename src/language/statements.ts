import { CstUtils, type AstNode, type CstNode, type LangiumDocument, type LeafCstNode } from 'langium';
import { readLength } from '../quantity/read-length.ts';
import type { Statement } from '../job/statement.ts';
import * as ast from './generated/ast.ts';
import { VALUES } from './grammar-words.ts';
import { plainValue } from './lexer/pasted.ts';
import { sourceOf } from './types/place.ts';

/** All that a file says, in its order; comments, spaces, and the order of its files' own blocks are no statements. What could not be read is left out. */
export function statementsOf(document: LangiumDocument): Statement[] {
    const root = document.parseResult.value;
    return ast.isFile(root) ? [...root.uses.flatMap(use => one([], `from ${words(use).value.split(' ')[1] ?? ''}`, use, 2)), ...root.items.flatMap(item => ofItem(item))] : [];
}

function ofItem(item: ast.Item): Statement[] {
    if (ast.isLet(item)) return one([], `let ${item.name}`, item, 2);
    if (ast.isStock(item) || ast.isRoom(item) || ast.isAlternate(item) || ast.isProfile(item)) {
        const within = [`${item.$type.toLowerCase()} ${item.name}`];
        return [...one(within, '', item, 2, true), ...ofBody(item.body, within)];
    }
    if (ast.isJob(item) || ast.isLabor(item) || ast.isBid(item)) {
        const within = [item.$type.toLowerCase()];
        return [...one(within, '', item, 1), ...ofBody(item.body, within)];
    }
    return [];
}

function ofBody(body: ast.Body | undefined, within: readonly string[]): Statement[] {
    return body?.members.flatMap(member => {
        if (ast.isLet(member)) return one(within, `let ${member.name}`, member, 2);
        if (ast.isRequire(member)) return one(within, 'require', member, 1);
        if (ast.isFixture(member)) return withBlock(member, within, `${member.kind} ${member.name}`, 2);
        return ast.isLine(member) ? withBlock(member, within, member.path.map(part => part.$refText).join('.'), member.path.length * 2 - 1) : [];
    }) ?? [];
}

function withBlock(member: ast.Fixture | ast.Line, within: readonly string[], what: string, skip: number): Statement[] {
    if (!member.body) return one(within, what, member, skip, true);
    const inner = [...within, what];
    return [...one(inner, '', member, skip), ...ofBody(member.body, inner)];
}

/**
 * @param skip so many words at its head say what it is, and not what is said of it
 * @param always also where nothing is said of it: that it is there says something
 */
function one(within: readonly string[], what: string, node: AstNode, skip: number, always = false): Statement[] {
    const { value, mark } = words(node, skip);
    return value === '' && !always ? [] : [{ within, what, value, mark, at: sourceOf(node) }];
}

function words(node: AstNode & { readonly body?: AstNode | undefined }, skip = 0): { value: string; mark: string } {
    const leaves = node.$cstNode ? leavesBefore(node.$cstNode, node.body?.$cstNode).slice(skip) : [];
    let value = '';
    leaves.forEach(({ text }, i) => { value += i === 0 || SETS_NO_SPACE_BEFORE.has(text) || SETS_NO_SPACE_AFTER.has(leaves[i - 1]!.text) ? text : ` ${text}`; });
    return { value, mark: leaves.map(markOf).join(' ') };
}
const SETS_NO_SPACE_BEFORE = new Set([',', ')', '.', ':', '(']), SETS_NO_SPACE_AFTER = new Set(['(', '.']);

function leavesBefore(whole: CstNode, body: CstNode | undefined): LeafCstNode[] {
    return CstUtils.flattenCst(whole).toArray().filter(leaf => !leaf.hidden && leaf.tokenType.name !== 'EOL' && (!body || leaf.offset < body.offset));
}

function markOf({ text, tokenType: { name } }: LeafCstNode): string {
    const plain = VALUES.has(name) && name !== 'STRING' ? plainValue(text) : text;
    const length = name === 'LENGTH' ? readLength(plain) : undefined;
    return length ? `${length.toFraction()} ticks` : name === 'NUMBER' && Number.isFinite(Number(plain)) ? String(Number(plain)) : plain;
}
