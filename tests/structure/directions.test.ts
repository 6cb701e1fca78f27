import { createRequire } from 'node:module';
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { tmpdir } from 'node:os';
import { cruise, type ICruiseOptions, type ICruiseResult } from 'dependency-cruiser';
import extractOptions from 'dependency-cruiser/config-utl/extract-depcruise-options';
import extractTsConfig from 'dependency-cruiser/config-utl/extract-ts-config';
import { afterAll, describe, expect, test } from 'vitest';
import { root } from './files.ts';

/**
 * The directions between the parts, as .dependency-cruiser.cjs states them. A rule that matches nothing would pass
 * unnoticed, so each is also shown a small tree of files that breaks it.
 */
const planted = mkdtempSync(join(tmpdir(), 'directions-'));
afterAll(() => rmSync(planted, { recursive: true, force: true }));

async function violations(baseDir: string): Promise<string[]> {
    const options: ICruiseOptions = { ...await extractOptions(join(root, '.dependency-cruiser.cjs')), baseDir };
    const result = await cruise(['src'], options, undefined, { tsConfig: extractTsConfig(join(root, 'tsconfig.json')) });
    const { summary } = result.output as ICruiseResult;
    return summary.violations.map(({ rule, from, to }) => `${rule.name}: ${from} -> ${to}`);
}

describe('directions between the parts', () => {
    test('the code keeps to them', async () => {
        expect(await violations(root)).toEqual([]);
    });

    test('each rule catches what it is there for', async () => {
        const tree: Record<string, string> = {
            'package.json': '{ "dependencies": { "langium": "4.2.1" }, "devDependencies": { "esbuild": "0.28.2" } }',
            'src/quantity/a.ts': "import type { B } from '../job/b.ts'; export type A = B;",
            'src/job/b.ts': "import { readFileSync } from 'node:fs'; export type B = typeof readFileSync;",
            'src/job/t.ts': "import type { U } from './u.ts'; export type T = U;",
            'src/job/u.ts': "import type { T } from './t.ts'; export type U = T | 1;",
            'src/job/c.ts': "import { d } from './d.ts'; export const c = (): number => d();",
            'src/job/d.ts': "import { c } from './c.ts'; export const d = (): number => c();",
            'src/rules/e.ts': "import { planBoards } from '../cutting/f.ts'; export const e = planBoards;",
            'src/cutting/f.ts': "import { gone } from './gone.ts'; export const planBoards = gone;",
            'src/language/g.ts': "import type { H } from '../ceiling/h.ts'; import * as vscode from 'vscode'; export type G = H | typeof vscode;",
            'src/ceiling/h.ts': "import { AstNode } from 'langium'; export type H = AstNode;",
            'src/extension/i.ts': "import { e } from '../rules/e.ts'; export const i = e;",
            'src/cellar/j.ts': "import { i } from '../extension/i.ts'; export const j = i;",
            'src/server/k.ts': "import { l } from '../cli/l.ts'; export const k = l;",
            'src/cli/l.ts': "import { m } from '../server/m.ts'; import 'esbuild'; export const l = m;",
            'src/server/m.ts': 'export const m = 1;',
            'src/report/r.ts': 'export const r = 1;',
            'src/rules/q.ts': "import { r } from '../report/r.ts'; export const q = r;",
            'src/panes/o.ts': "import { e } from '../rules/e.ts'; export const o = e;",
            'src/server/n.ts': "import { NodeFileSystem } from 'langium/node'; export const n = NodeFileSystem;",
        };
        for (const [path, text] of Object.entries(tree)) {
            mkdirSync(dirname(join(planted, path)), { recursive: true });
            writeFileSync(join(planted, path), text);
        }
        symlinkSync(join(root, 'node_modules'), join(planted, 'node_modules'), 'junction');

        const broken = new Set((await violations(planted)).map(line => line.split(':')[0]!));
        const config = createRequire(import.meta.url)(join(root, '.dependency-cruiser.cjs')) as { forbidden: { name: string }[] };
        const oneOf = (name: string): boolean => name.endsWith('-directions') && !['server-directions', 'cli-directions'].includes(name);
        for (const { name } of config.forbidden.filter(rule => !oneOf(rule.name))) expect(broken, `${name} catches nothing`).toContain(name);
        // one wrong import for some of the table's rows; the rows are all made by the same line
        for (const name of ['quantity-directions', 'rules-directions', 'language-directions']) expect(broken).toContain(name);
    });
});
