import { readFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { join } from 'node:path';
import ts from 'typescript';
import { describe, expect, test } from 'vitest';
import { root } from '../structure/files.ts';

interface Texts {
    readonly bundleFile: string;
    sourceFilesIn(folder: string): ts.SourceFile[];
    isTranslation(node: ts.Node): boolean;
    translatedTexts(files?: readonly ts.SourceFile[]): string[];
}
const { bundleFile, sourceFilesIn, isTranslation, translatedTexts } = await import(pathToFileURL(join(root, 'src/build/translated-texts.mjs')).href) as Texts;
const sourceOf = (text: string): ts.SourceFile => ts.createSourceFile('sample.ts', text, ts.ScriptTarget.ES2022, true);

test('the bundle holds the texts that can be translated, and no others: node src/build/translated-texts.mjs', () => {
    const bundle = JSON.parse(readFileSync(bundleFile, 'utf8')) as Record<string, string>;
    expect(Object.keys(bundle)).toEqual(translatedTexts());
});

/**
 * Whatever the extension shows goes through `vscode.l10n.t`, whatever the server itself says through `t`; the manifest's own texts
 * are held by tests/structure. What the core finds, and what is written about the language, is in one language everywhere.
 */
describe('the extension and the server', () => {
    /** What is written to the log is for whoever mends the program, and so is what goes wrong between editor and server; what is found is in one language. */
    const isLog = (node: ts.Node): boolean => ts.isCallExpression(node) && /(\.(appendLine|log|error)|^report|^finding)$/.test(node.expression.getText())
        || ts.isNewExpression(node) && /^(Response)?Error$/.test(node.expression.getText());
    /** Names of ours that have spaces. */
    const names = ['Cofferwright', 'part of a page', 'already cut'];

    function untranslated(file: ts.SourceFile): string[] {
        const found: string[] = [];
        const visit = (node: ts.Node): void => {
            if (ts.isImportDeclaration(node) || ts.isLiteralTypeNode(node) || isLog(node) || isTranslation(node)) return;
            if (ts.isStringLiteral(node) || ts.isNoSubstitutionTemplateLiteral(node) || ts.isTemplateHead(node)
                || ts.isTemplateMiddleOrTemplateTail(node)) found.push(node.text);
            ts.forEachChild(node, visit);
        };
        visit(file);
        return found.filter(isProse);
    }

    /** Words to read, and no name, path, option or identifier: there is a space between letters, or it begins with a capital. */
    const isProse = (text: string): boolean => /[A-Za-z] [A-Za-z]/.test(text) || /^[A-Z][a-z]+$/.test(text);
    /** The empty page of a pane is markup. */
    const sources = [...sourceFilesIn('extension'), ...sourceFilesIn('server')].filter(({ fileName }) => !fileName.endsWith('/panes/document.ts'));

    test('shows no text that cannot be translated', () => {
        expect(sources.length).toBeGreaterThan(10);
        expect(sources.flatMap(untranslated).filter(text => !names.includes(text))).toEqual([]);
    });

    test('the scan sees what it looks for', () => {
        expect(untranslated(sourceOf("window.show('Not said so'); item.text = 'Ready'; window.show(vscode.l10n.t('Said so')); output.appendLine('For the log');"))).toEqual(['Not said so', 'Ready']);
    });
});

/**
 * Pages say their words by `t`: what stands in their markup itself are tags, signs and, in `<code>`, words of the job language. What is only
 * printed (printed.ts) is in English, as the drawings are.
 */
describe('pages and panes', () => {
    function wordsInMarkup(file: ts.SourceFile): string[] {
        const found: string[] = [];
        const visit = (node: ts.Node): void => {
            if (ts.isTaggedTemplateExpression(node) && node.tag.getText() === 'html') {
                const { template } = node;
                const markup = ts.isNoSubstitutionTemplateLiteral(template) ? template.text : [template.head.text, ...template.templateSpans.map(span => span.literal.text)].join('\u0000');
                const shown = markup.replace(/<code>[^<]*<\/code>/g, ' ').replace(/<[^>]*>/g, ' '), read = [...markup.matchAll(/\b(?:title|alt|aria-label|placeholder)="([^"]*)"/g)].map(match => match[1]!);
                found.push(...[shown, ...read].flatMap(text => text.match(/\p{Letter}{2,}/gu) ?? []));
            }
            ts.forEachChild(node, visit);
        };
        visit(file);
        return found;
    }

    test('hold no words in their markup that cannot be translated', () => {
        expect([...sourceFilesIn('pages'), ...sourceFilesIn('panes')].filter(({ fileName }) => !fileName.endsWith('/printed.ts')).flatMap(file => wordsInMarkup(file).map(word => `${file.fileName}: ${word}`))).toEqual([]);
    });

    test('the scan sees what it looks for', () => {
        expect(wordsInMarkup(sourceOf('html`<p class="some thing" title="Tip">${t("Said so")} Not <b>${name}</b></p>`; html`plain`'))).toEqual(['Not', 'Tip', 'plain']);
        expect(translatedTexts([sourceOf('t("Said so"); vscode.l10n.t("And so", 1); left("Not so")')])).toEqual(['And so', 'Said so']);
    });
});
