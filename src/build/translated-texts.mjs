// The texts that can be translated: in the extension by `vscode.l10n.t`, in pages and panes by `t` of src/pages/shared/words.ts.
// Run by hand after a change of such a text, it writes them into src/extension/l10n/bundle.l10n.json; a test holds the two equal.
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';
import { isEntry, main, root } from './ready.mjs';

/** Folders under src whose texts are shown in the editor. */
const folders = ['extension', 'pages', 'panes', 'server', 'language/features'];
export const bundleFile = join(root, 'src/extension/l10n/bundle.l10n.json');

/** The TypeScript files of a folder under src, and of those in it. */
export function sourceFilesIn(folder) {
    return readdirSync(join(root, 'src', folder), { recursive: true, encoding: 'utf8' }).filter(name => name.endsWith('.ts')).sort()
        .map(name => join(root, 'src', folder, name)).map(path => ts.createSourceFile(path, readFileSync(path, 'utf8'), ts.ScriptTarget.ES2022, true));
}

export function isTranslation(node) {
    return ts.isCallExpression(node) && /^(vscode\.l10n\.t|l10n\.t|t)$/.test(node.expression.getText()) && node.arguments[0] !== undefined && ts.isStringLiteralLike(node.arguments[0]);
}

export function translatedTexts(files = folders.flatMap(sourceFilesIn)) {
    const texts = new Set();
    const visit = node => {
        if (isTranslation(node)) texts.add(node.arguments[0].text);
        ts.forEachChild(node, visit);
    };
    files.forEach(visit);
    return [...texts].sort();
}

if (isEntry(import.meta.url)) await main(() => {
    const texts = translatedTexts();
    writeFileSync(bundleFile, `${JSON.stringify(Object.fromEntries(texts.map(text => [text, text])), undefined, 2)}\n`);
    console.log(`${texts.length} texts`);
});
