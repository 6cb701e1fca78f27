import { posix } from 'node:path';
import { describe, expect, test } from 'vitest';
import { projectFiles, read } from './files.ts';

/** What is exported and what nobody else imports is either dead or private; either way a reader looks in vain for who uses it. */
type Texts = ReadonlyMap<string, string>;

const IMPORT = /(?:import|export)\s+(?:type\s+)?(?:\w+\s*,\s*)?(?:\{([^}]*)\}|\*(?:\s+as\s+\w+)?)\s+from\s+'(\.[^']*)'/g;
/** Whoever imports a whole file as it runs may use all of it. */
const WHOLE = /\bimport\(\s*'(\.[^']*)'\s*\)|new URL\('(\.[^']*\.ts)'/g;
const EXPORT = /^export\s+(?:declare\s+)?(?:default\s+)?(?:async\s+)?(?:abstract\s+)?(?:function\*?|class|interface|type|const|let|enum)\s+([\w$]+)(?:[^\n(<]*?, (\w+) = )?/gm;
const LISTED = /^export\s+(?:type\s+)?\{([^}]*)\}/gm;

/** Used by who is not of the project: what runs the scripts, the editor, the runner of tests, and the schemas, which name what is exported. */
const OUTSIDE = [
    /\.mjs: /, /^src\/extension\/(main|browser)\.ts: (de)?activate$/, /^src\/report\/(.*Json|house-json\.ts: HouseRoom)$/, /^tests\/bench\/.*: measure$/, /^tests\/fuzz\/threads\.ts: inThreads$/, /^tests\/editor\/suite\//,
    /^tests\/panes\/support\/browser-for-all\.ts: setup$/,
];

/** Names in a list of imports or exports; of `a as b` the one that the other file knows. */
function namesIn(list: string, side: 0 | 1): string[] {
    return list.split(',').map(each => each.trim().replace(/^type\s+/, '')).filter(each => each !== '').map(each => each.split(/\s+as\s+/).at(side === 0 ? 0 : -1)!);
}

function unused(texts: Texts): string[] {
    const used = new Set<string>();
    for (const [path, text] of texts) {
        const there = (to: string): string => posix.join(posix.dirname(path), to);
        for (const [, list, to] of text.matchAll(IMPORT))
            for (const name of list === undefined ? ['*'] : namesIn(list, 0)) used.add(`${there(to!)} ${name}`);
        for (const [, to, url] of text.matchAll(WHOLE)) used.add(`${there((to ?? url)!)} *`);
    }
    return [...texts].flatMap(([path, text]) => {
        if (used.has(`${path} *`)) return [];
        const declared = [...text.matchAll(EXPORT)].flatMap(([, ...all]) => all.filter(Boolean));
        const listed = [...text.matchAll(LISTED)].flatMap(([, list]) => namesIn(list!, 1));
        return [...declared, ...listed].filter(name => !used.has(`${path} ${name}`)).map(name => `${path}: ${name}`);
    });
}

describe('exports', () => {
    test('each is imported by another file', () => {
        const paths = projectFiles().filter(path => /^(src|tests)\/.*\.(ts|mjs)$/.test(path) && !path.endsWith('.d.ts'));
        expect(paths.length).toBeGreaterThan(1000);
        expect(unused(new Map(paths.map(path => [path, read(path)]))).filter(one => !OUTSIDE.some(used => used.test(one)))).toEqual([]);
    });

    test('the check sees what it looks for', () => {
        const texts = new Map([
            ['a.ts', 'export const a = 1, b = 2;\nexport function c(): void {}\nexport type D = 1;\nexport interface E {}\nexport { f as g };\nexport class H {}\n'],
            ['in/b.ts', "import { a, type D } from '../a.ts';\nimport * as all from './c.ts';\nexport default 1;"], ['in/c.ts', 'export const x = 1;'],
        ]);
        expect(unused(texts)).toEqual(['a.ts: b', 'a.ts: c', 'a.ts: E', 'a.ts: H', 'a.ts: g']);
    });
});
