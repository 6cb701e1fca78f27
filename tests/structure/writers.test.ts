import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { join } from 'node:path';
import ts from 'typescript';
import { expect, test } from 'vitest';

// What says of itself that it is fit for a place is believed: so these are all that may say it, and what they put into their texts is listed.
const src = fileURLToPath(new URL('../../src', import.meta.url));
const files = readdirSync(src, { recursive: true, encoding: 'utf8' }).filter(path => path.endsWith('.ts') && !path.includes('generated')).map(path => path.replaceAll('\\', '/')).sort();
const textOf = (path: string): string => readFileSync(join(src, path), 'utf8');

const PLACES = /\bas (?:unknown as )?(Terminal|Json|Csv|Xml|Svg|Html|Dxf|Ifc|Log|Own|Markdown)Text\b/g;

test('who says that a text is fit for its place', () => {
    const placesOf = (path: string) => [...new Set([...textOf(path).matchAll(PLACES)].map(([, place]) => place))];
    const found = Object.fromEntries(files.map(path => [path, placesOf(path)] as const).filter(([, places]) => places.length > 0));
    expect(found).toEqual({
        'drawing/svg/svg.ts': ['Svg'], 'drawing/view/picture-svg.ts': ['Svg'], 'exports/dxf/dxf.ts': ['Dxf'], 'exports/ifc/step.ts': ['Ifc'], 'pages/shared/printable.ts': ['Html'], 'report/findings/github.ts': ['Log'],
        'text/csv.ts': ['Csv'], 'text/fit.ts': ['Own'], 'text/json.ts': ['Json'], 'text/markdown.ts': ['Markdown'], 'text/terminal.ts': ['Terminal'], 'text/xml.ts': ['Xml'],
    });
});

/** The gates, and what of a drawing is no text of anybody: figures, pens, names of our own. */
const GATES = /^(?:escapeText|escapeAttribute|idText|coordinate|pathData|classes|patchSvg|paintClass|rulesFor|styleFor|styleSheet|lettersSvg|heldTo|(?:names\.)?looks\.(?:of|face|notice))\(/;
const OWN: Readonly<Record<string, readonly string[]>> = {
    'drawing/svg/svg.ts': [
        'SHEET_CLASS', 'attributes', 'c.codePointAt(0)!.toString(16)', 'cssHeight', 'cssWidth', 'descriptionId', 'fill', 'group.id', 'looks.all', 'name', 'names.id', 'page', 'pen', 'run.anchor', 'run.weight', 'titleId', 'x', 'y',
    ],
    'drawing/view/picture-svg.ts': [
        'VIEW_CLASS', "[all, `.vscode-light ${all}`, `.vscode-dark ${all}`].map(selector => rulesFor('print', selector, used)).join('')", 'all', 'color', 'edge', 'edges',
        'CALM', 'WRONG', 'calm ? CALM : WRONG', "faces.map(face => patchSvg(part, face, looks)).join('')", "i === 0 ? ' font-weight=\"600\"' : ''", "isCalm(notice) ? 'v-notice v-calm' : 'v-notice'",
        'lines', 'looks.all', 'looks.edge', 'looks.paper', 'looks.shadow', 'name', 'paper', "parts.map(part => part.toString(16).padStart(2, '0')).join('')",
        'selector', 'shade', "shadows.join('')", 'wood',
    ],
};

test.each(Object.keys(OWN))('what %s puts into its markup has gone through a gate, or is no text of anybody', path => {
    expect(interpolated(path).filter(expression => !GATES.test(expression)).sort()).toEqual([...OWN[path]!].sort());
});

/** What stands between `${` and `}`, each once. */
function interpolated(path: string): string[] {
    const file = ts.createSourceFile(path, textOf(path), ts.ScriptTarget.Latest, true), found = new Set<string>();
    const look = (node: ts.Node): void => {
        if (ts.isTemplateSpan(node)) found.add(node.expression.getText(file));
        ts.forEachChild(node, look);
    };
    look(file);
    return [...found];
}

/** PDF and DXF are written by libraries: these functions alone hand them words, each behind its gate. */
test('whoever hands words to a library for PDF or DXF', () => {
    const calls = files.filter(path => /^exports\/(pdf|dxf)\//.test(path)).flatMap(path => functionsIn(path)
        .filter(({ text }) => /\.(?:text|addText|addMText|addAttdef|addAttrib)\((?!\))/.test(text)).map(({ name, text }) => [`${path} ${name}`, /(stretchesOf|plainText)\(/.exec(text)?.[1]]));
    expect(Object.fromEntries(calls)).toEqual({ 'exports/dxf/dxf.ts words': 'plainText', 'exports/pdf/flow.ts set': 'stretchesOf', 'exports/pdf/sheet.ts drawText': 'stretchesOf' });
});

function functionsIn(path: string): { name: string; text: string }[] {
    const file = ts.createSourceFile(path, textOf(path), ts.ScriptTarget.Latest, true), found: { name: string; text: string }[] = [];
    const look = (node: ts.Node): void => {
        const isNamed = (ts.isFunctionDeclaration(node) || ts.isMethodDeclaration(node)) && node.name;
        if (isNamed) found.push({ name: isNamed.getText(file), text: node.getText(file) });
        ts.forEachChild(node, look);
    };
    look(file);
    return found;
}
