import { readdirSync, readFileSync } from 'node:fs';
import ts from 'typescript';
import { expect, test } from 'vitest';

/** Whatever the extension shows goes through `vscode.l10n.t`, so that it can be translated; the manifest's own texts are held by tests/structure. */
const folder = new URL('../../src/extension/', import.meta.url);
const sources = readdirSync(folder).filter(name => name.endsWith('.ts')).map(name => ts.createSourceFile(name, readFileSync(new URL(name, folder), 'utf8'), ts.ScriptTarget.ES2022, true));

const isTranslation = (node: ts.Node): boolean => ts.isCallExpression(node) && node.expression.getText() === 'vscode.l10n.t';
/** What is written to the log is for whoever mends the program. */
const isLog = (node: ts.Node): boolean => ts.isCallExpression(node) && /\.appendLine$/.test(node.expression.getText());

function literals(file: ts.SourceFile): { text: string; translated: boolean }[] {
    const found: { text: string; translated: boolean }[] = [];
    const visit = (node: ts.Node, translated: boolean): void => {
        if (ts.isImportDeclaration(node) || ts.isLiteralTypeNode(node) || isLog(node)) return;
        if (ts.isStringLiteral(node) || ts.isNoSubstitutionTemplateLiteral(node) || ts.isTemplateHead(node) || ts.isTemplateMiddleOrTemplateTail(node)) found.push({ text: node.text, translated });
        ts.forEachChild(node, child => visit(child, translated || isTranslation(node)));
    };
    visit(file, false);
    return found;
}

/** Words to read, and no name, path, option or identifier: there is a space between letters, or it begins with a capital. */
const isProse = (text: string): boolean => /[A-Za-z] [A-Za-z]/.test(text) || /^[A-Z][a-z]+$/.test(text);

test('every text that is shown can be translated, and the bundle holds these and no others', () => {
    const texts = sources.flatMap(literals);
    expect(texts.filter(({ text, translated }) => !translated && isProse(text) && text !== 'Cofferwright').map(({ text }) => text)).toEqual([]);
    const bundle = JSON.parse(readFileSync(new URL('l10n/bundle.l10n.json', folder), 'utf8')) as Record<string, string>;
    expect(Object.keys(bundle)).toEqual([...new Set(texts.filter(({ translated }) => translated).map(({ text }) => text))].sort());
});

test('the scan sees what it looks for', () => {
    const sample = ts.createSourceFile('sample.ts', "window.show('Not said so'); item.text = 'Ready'; window.show(vscode.l10n.t('Said so')); output.appendLine('For the log');", ts.ScriptTarget.ES2022, true);
    const texts = literals(sample);
    expect(texts.filter(({ text, translated }) => !translated && isProse(text)).map(({ text }) => text)).toEqual(['Not said so', 'Ready']);
    expect(texts.filter(({ translated }) => translated).map(({ text }) => text)).toEqual(['Said so']);
});
