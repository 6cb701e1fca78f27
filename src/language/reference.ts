import type { CofferServices } from './coffer-services.ts';
import { typeText } from './features/explain.ts';
import { blockKindOf } from './types/declared.ts';
import * as ast from './generated/ast.ts';
import { factsInWords } from './types/facts-in-words.ts';
import introduction from './reference-introduction.md';

/**
 * The language reference, one page of Markdown: how things are said (written by hand, reference-introduction.md), then
 * every block and word, made from the built-in library, so that it cannot say anything else than the checker does.
 */
export function languageReference(services: CofferServices): string {
    const { file } = services.vocabulary;
    const told = (node: object): string => services.documentation.DocumentationProvider.getDocumentation(node as never)?.trim().replace(/\s*\n\s*/g, ' ') ?? '';
    return [
        introduction.trim(), '',
        '## Blocks', '', 'A `?` marks what can be left out. What follows `=` is the default.', '',
        ...file.items.filter(ast.isKind).flatMap(kind => block(kind, services, told)),
        '## Lists of words', '', '| list | words |', '|---|---|',
        ...file.items.filter(ast.isWords).map(words => `| ${words.name} | ${words.words.map(word => `\`${word.name}\``).join(', ')}${dash(told(words))} |`), '',
        '## Units after `per`', '',
        file.items.filter(ast.isUnit).map(unit => `\`${unit.name}\` (${unit.type.$refText})`).join(', '), '',
    ].join('\n');
}

function block(kind: ast.Kind, services: CofferServices, told: (node: object) => string): string[] {
    const value = services.vocabulary.valueOf(kind);
    const properties = [...services.vocabulary.properties(kind).values()];
    return [
        `### ${kind.name}`, '', ...(told(kind) ? [told(kind), ''] : []),
        ...(value ? [`Its line has: \`${typeText(value)}\`${modifiers(value)}. ${sentences(value).join(' ')}`.trim(), '', ...listOf(value, told)] : []),
        ...(properties.length > 0 ? ['| property | value | |', '|---|---|---|', ...properties.map(row), ''] : []),
    ];

    function row(property: ast.PropertyDecl): string {
        const about = [told(property), ...eachModifier(property, told), ...factsInWords(property)];
        return `| \`${property.name}\`${property.optional ? ' ?' : ''} | ${holds(property)}${fallback(property)}${modifiers(property)} | ${about.filter(text => text !== '').join(' ')} |`;
    }
    function sentences(property: ast.PropertyDecl): string[] {
        return [told(property), ...factsInWords(property)].filter(text => text !== '');
    }
}

/** What each modifier means, where the library says it. */
function eachModifier(property: ast.PropertyDecl, told: (node: object) => string): string[] {
    return property.mods.filter(each => told(each) !== '').map(each => `\`${each.name}\`: ${uncapped(told(each))}`);
}

function listOf(property: ast.PropertyDecl, told: (node: object) => string): string[] {
    const lines = eachModifier(property, told).map(line => `- ${line}`);
    return lines.length > 0 ? [...lines, ''] : [];
}

function uncapped(text: string): string {
    return /^[A-Z][a-z]/.test(text) ? text[0]!.toLowerCase() + text.slice(1) : text;
}

/** A block's kind leads to its own table. */
function holds(property: ast.PropertyDecl): string {
    const kind = blockKindOf(property);
    return kind ? `[${kind.name}](#${kind.name.toLowerCase()})` : `\`${typeText(property)}\``;
}

/** ` = 1/4"`, where nobody has to say it. */
function fallback(property: ast.PropertyDecl): string {
    return property.default?.$cstNode ? ` = \`${property.default.$cstNode.text}\`` : '';
}

function modifiers(property: ast.PropertyDecl): string {
    return property.mods.map(each => `, \`${each.name}\`${each.optional ? ' ?' : ''} \`${typeText(each)}\`${fallback(each)}`).join('');
}

function dash(text: string): string {
    return text ? ` (${text.replace(/\.$/, '')})` : '';
}
