import { AstUtils } from 'langium';
import fc from 'fast-check';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { describe as explain } from '../../../src/language/elaborate/describe.ts';
import { readFile } from '../../../src/language/read-file.ts';
import { readMarked } from '../../support/marked.ts';
import { TestWorkspace } from '../../support/workspace.ts';
import { runs } from '../../support/full.ts';

/** Whole houses, damaged as people damage them while they type: whatever comes of it, it is read without a throw. */
const here = new URL('.', import.meta.url).pathname;
const fixtures = ['house.coffer', ...readdirSync(join(here, 'findings')).map(name => `findings/${name}`), 'describe.coffer'];
const houses = fixtures.map(name => Object.fromEntries(readMarked(readFileSync(join(here, name), 'utf8'), { verbs: ['comes-to'] }).map(file => [file.path, file.text])));

const PIECES = ['{', '}', '"', '(', ')', '.', ',', ' x ', ' to ', ' per ', '± ', '/', '-', '= ', '0"', '1/0"', '99999999999999"', '3.5', 'like box', 'let a = a', 'box(', 'wide', 'north', '\n', '\r\n', '\t', '½', '″', '×', '//', '/*', 'stock', 'room den {', '\ufeff', '5 1/2', '#8', '20%', '2x4', '$3', 'profile p like p { }', 'measured { north 1\' }', '.width'];

interface Edit { readonly at: number; readonly cut: number; readonly put: string }
const edit: fc.Arbitrary<Edit> = fc.record({
    at: fc.double({ min: 0, max: 1, noNaN: true }), cut: fc.integer({ min: 0, max: 30 }),
    put: fc.oneof(fc.constantFrom(...PIECES), fc.string({ maxLength: 4 }), fc.constant('')),
});

test('damaged houses are read without a throw, and what a hover asks is answered', async () => {
    const workspaces = await Promise.all(houses.map(texts => TestWorkspace.open(texts)));
    await fc.assert(fc.asyncProperty(fc.nat(houses.length - 1), fc.nat(), fc.array(edit, { minLength: 1, maxLength: 4 }), async (which, file, edits) => {
        const workspace = workspaces[which]!;
        const paths = Object.keys(houses[which]!);
        const path = paths[file % paths.length]!;
        let text = houses[which]![path]!;
        for (const { at, cut, put } of edits) {
            const start = Math.floor(at * text.length);
            text = text.slice(0, start) + put + text.slice(start + cut);
        }
        await workspace.edit({ [path]: text });
        for (const each of paths) {
            const content = readFile(workspace.document(each));
            for (const finding of content.findings) expect(finding.at.uri).toBe(content.uri);
            for (const node of AstUtils.streamAst(workspace.document(each).parseResult.value)) explain(node);
        }
        await workspace.edit({ [path]: houses[which]![path]! });
    }), { seed: 20260302, numRuns: runs(200) });
});

test('a damaged house that is mended says what it said before', async () => {
    for (const texts of houses) {
        const workspace = await TestWorkspace.open(texts);
        const before = Object.keys(texts).map(path => readFile(workspace.document(path)).findings);
        for (const [path, text] of Object.entries(texts)) {
            await workspace.edit({ [path]: text.slice(0, text.length / 2) });
            for (const each of Object.keys(texts)) readFile(workspace.document(each));
            await workspace.edit({ [path]: text });
        }
        expect(Object.keys(texts).map(path => readFile(workspace.document(path)).findings)).toEqual(before);
    }
});
