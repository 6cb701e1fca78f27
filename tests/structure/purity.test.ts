import ts from 'typescript';
import { describe, expect, test } from 'vitest';
import { projectFiles, read } from './files.ts';

/**
 * The core takes plain data and gives plain data: no clock, no randomness, no environment, nothing that depends on the
 * machine's language. What it may import is held by directions.test.ts; this looks at what needs no import.
 */
const pure = ['quantity', 'data', 'plane', 'arrangement', 'provenance', 'findings', 'job', 'billing', 'ceiling', 'takeoff', 'cutting', 'rules', 'drawing', 'dryfit', 'sawing', 'estimate', 'pipeline', 'report', 'exports', 'pages', 'language'];

/** Globals that know the time, the machine or the outside world. Those of a browser do not even compile: tsconfig.json leaves them out. */
const forbiddenNames = new Set([
    'Date', 'performance', 'crypto', 'process', 'console', 'fetch', 'globalThis', 'navigator', 'Buffer',
    'setTimeout', 'setInterval', 'setImmediate', 'queueMicrotask', 'Intl', 'WebAssembly', 'eval',
]);
/** Members that give other results on other machines or at other times. */
const forbiddenMembers = new Set(['localeCompare', 'toLocaleString', 'toLocaleLowerCase', 'toLocaleUpperCase', 'toLocaleDateString']);

/** Most files hold none of these words, and are not taken apart. */
const suspicious = new RegExp(`\\b(Math\\.random|${[...forbiddenNames, ...forbiddenMembers].join('|')})\\b`);

function impurities(path: string, text: string): string[] {
    if (!suspicious.test(text)) return [];
    const file = ts.createSourceFile(path, text, ts.ScriptTarget.ES2022, true);
    const found: string[] = [];
    const report = (node: ts.Node, what: string): void => {
        found.push(`${path}:${file.getLineAndCharacterOfPosition(node.getStart()).line + 1}: ${what}`);
    };
    const visit = (node: ts.Node): void => {
        if (ts.isPropertyAccessExpression(node)) {
            if (node.expression.getText() === 'Math' && node.name.text === 'random') report(node, 'Math.random');
            if (forbiddenMembers.has(node.name.text)) report(node, node.name.text);
        }
        if (ts.isIdentifier(node) && forbiddenNames.has(node.text) && isUseOfGlobal(node) && !isSegmenter(node)) report(node, node.text);
        ts.forEachChild(node, visit);
    };
    visit(file);
    return found;
}

/** Where a reader sees one character end and the next begin is Unicode's matter and no language's. */
function isSegmenter(node: ts.Identifier): boolean {
    return ts.isPropertyAccessExpression(node.parent) && node.parent.getText() === 'Intl.Segmenter';
}

/** `x.Date`, `{ Date: … }`, `import { Date }` and declarations name something else. */
function isUseOfGlobal(node: ts.Identifier): boolean {
    const parent = node.parent;
    if (ts.isPropertyAccessExpression(parent)) return parent.expression === node;
    if (ts.isQualifiedName(parent)) return parent.left === node;
    if (ts.isPropertyAssignment(parent)) return parent.initializer === node;
    if (ts.isVariableDeclaration(parent) || ts.isParameter(parent) || ts.isBindingElement(parent)) return parent.initializer === node;
    return !(ts.isPropertySignature(parent) || ts.isPropertyDeclaration(parent) || ts.isMethodDeclaration(parent) || ts.isImportSpecifier(parent)
        || ts.isInterfaceDeclaration(parent) || ts.isTypeAliasDeclaration(parent) || ts.isFunctionDeclaration(parent));
}

const files = projectFiles().filter(path => path.endsWith('.ts') && pure.some(folder => path.startsWith(`src/${folder}/`)));

describe('the core is pure', () => {
    test('it reads no clock, draws no lots and asks nothing of the machine', () => {
        expect(files.length).toBeGreaterThan(10);
        expect(files.flatMap(path => impurities(path, read(path)))).toEqual([]);
    });

    test('the check sees what it looks for', () => {
        const text = 'export const a = Date.now() + Math.random();\nconsole.log(new Date());\n["b"].sort((p, q) => p.localeCompare(q));\nconst x = { Date: 1 }; x.Date;';
        expect(impurities('sample.ts', text)).toEqual(['sample.ts:1: Date', 'sample.ts:1: Math.random', 'sample.ts:2: console', 'sample.ts:2: Date', 'sample.ts:3: localeCompare']);
    });
});
