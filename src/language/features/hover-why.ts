import { AstUtils, type AstNode } from 'langium';
import { describe } from '../elaborate/describe.ts';
import * as ast from '../generated/ast.ts';
import { quoted } from '../types/words.ts';
import { oneLine } from './explain.ts';
import { listed } from '../../plain/words.ts';

/** What the names in a value stand for: ``where `wide.width` is 5 1/2" (139.7 mm) and `groove` is 1/4" (6.35 mm) by default``. */
export function whereNames(node: AstNode): string | undefined {
    const values: readonly AstNode[] = ast.isLine(node) || ast.isFixture(node) || ast.isMod(node) ? node.values : ast.isLet(node) ? [node.value] : [];
    const found = new Map<string, string>();
    for (const value of values) for (const name of value ? namesIn(value) : []) {
        const text = oneLine(name);
        const comesTo = describe(name);
        if (comesTo && !found.has(text)) found.set(text, comesTo.startsWith('default ') ? `${comesTo.slice('default '.length)} by default` : comesTo);
    }
    return found.size > 0 ? `where ${listed([...found].map(([text, value]) => `${quoted(text)} is ${value}`), 'and')}` : undefined;
}

/** Names of values, and members with what they are members of; a stock or a profile by itself is no value. */
function* namesIn(value: AstNode): Iterable<AstNode> {
    const stream = AstUtils.streamAst(value).iterator();
    for (let next = stream.next(); !next.done; next = stream.next()) {
        const node = next.value;
        if (ast.isMemberOf(node)) {
            yield node;
            stream.prune();
        } else if (ast.isRef(node)) {
            const target = node.target?.ref;
            if (ast.isLet(target) || ast.isParam(target)) yield node;
            if (node.call) stream.prune();
        }
    }
}
