import type { AstNode } from 'langium';
import * as ast from '../generated/ast.ts';
import { blockKindOf } from '../types/declared.ts';
import { quoted } from '../types/words.ts';
import { listed } from '../../plain/words.ts';

/** Letters of a line that is still read at a glance. */
const LONGEST = 200;

/** What is written of a declaration, on one line: `held-down : Length = 1/4"`, `profile box(groove: Length = 1/4")`. */
export function signature(node: AstNode): string {
    if (ast.isPropertyDecl(node)) return `${node.name}${node.optional ? '?' : ''} : ${typeText(node)}${node.default ? ` = ${oneLine(node.default)}` : ''}`;
    if (ast.isWordDecl(node) || ast.isUsedName(node)) return node.name ?? '';
    if (ast.isKind(node)) return `kind ${node.name}`;
    if (ast.isWords(node)) return `words ${node.name}`;
    return heading(node);
}

/** Where a declaration belongs, where its own words do not say it. */
export function whereabouts(node: AstNode): string | undefined {
    if (ast.isPropertyDecl(node)) {
        const owner = node.$container;
        return ast.isPropertyDecl(owner) ? `follows the value of ${quoted(owner.name)}` : `property of ${quoted(owner?.name)}`;
    }
    if (ast.isWordDecl(node)) return `one of ${listed(node.$container.words.map(word => word.name), 'or')}`;
    if (ast.isParam(node)) return `parameter of ${quoted(ast.isProfile(node.$container) ? node.$container.name : undefined)}`;
    return undefined;
}

/** The declared type of a property in a word or two: `Length`, `Corners`, `a block`. */
export function typeText(node: ast.PropertyDecl | ast.Param): string {
    if (ast.isPropertyDecl(node) && blockKindOf(node)) return 'a block';
    return node.type ? oneLine(node.type) : '';
}

/** The text of a statement up to its block. */
export function heading(node: AstNode): string {
    const words = node.$cstNode;
    if (!words) return '';
    const body = (node as { body?: ast.Body }).body?.$cstNode;
    return collapse(body ? words.text.slice(0, body.offset - words.offset) : words.text);
}

export function oneLine(node: AstNode): string {
    return collapse(node.$cstNode?.text ?? '');
}

function collapse(text: string): string {
    const line = text.replace(/\/\/[^\n]*/g, ' ').replace(/\/\*[\s\S]*?\*\//g, ' ').replace(/\s+/g, ' ').replace(/\( | (?=\))/g, found => found.trim()).trim();
    if (line.length <= LONGEST) return line;
    const comma = line.lastIndexOf(', ', LONGEST - 3);
    return comma > 0 ? `${line.slice(0, comma)}, …` : `${line.slice(0, LONGEST - 1)}…`;
}
