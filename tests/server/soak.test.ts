import { getHeapStatistics, setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { expect, test } from 'vitest';
import type { CofferCodeLenses } from '../../src/server/features/code-lenses.ts';
import { createServerServices } from '../../src/server/services.ts';
import { EXAMPLE_PATHS, EXAMPLES } from '../support/examples.ts';
import { FULL, runs } from '../support/full.ts';
import { TestWorkspace } from '../support/workspace.ts';
import { edited, seeded } from './random-edits.ts';

const EDITS = runs(10_000, 120);
/** Where the first measurement is taken: once what is compiled and kept on the way has settled, as far as a short run gets there. */
const EARLY = EDITS >= 10_000 ? EDITS / 5 : EDITS / 2;

const PATHS = EXAMPLE_PATHS;

setFlagsFromString('--expose-gc');
const collect = runInNewContext('gc') as () => void;

test(`after ${EDITS} random edits the findings are those of a cold start, and memory has not grown`, { timeout: 3_600_000 }, async () => {
    const random = seeded(20);
    const workspace = await TestWorkspace.serve(EXAMPLES, createServerServices);
    const texts: Record<string, string> = { ...EXAMPLES };
    let early = 0;
    for (let edit = 1; edit <= EDITS; edit++) {
        const path = PATHS[Math.floor(random() * PATHS.length)]!;
        texts[path] = edited(texts[path]!, EXAMPLES[path]!, random);
        await workspace.edit({ [path]: texts[path] });
        await look(workspace, path);
        if (edit === EARLY) early = await memory(workspace, texts);
        if (edit % (EDITS / (FULL ? 4 : 2)) === 0 && edit < EDITS) await expectAsCold(workspace, texts);
    }
    const late = await memory(workspace, texts);
    await expectAsCold(workspace, texts);
    console.log(`${EDITS} edits: ${(early / 1e6).toFixed(2)} MB after ${EARLY}, ${(late / 1e6).toFixed(2)} MB at the end (${(100 * (late / early - 1)).toFixed(1)} %)`);
    expect(late / early).toBeLessThan(1.1);
});

/** What an editor asks for after a keystroke. */
async function look(workspace: TestWorkspace, path: string): Promise<void> {
    const { lsp } = workspace.coffer, document = workspace.document(path), textDocument = { uri: document.textDocument.uri };
    const range = { start: { line: 0, character: 0 }, end: { line: 9999, character: 0 } };
    await lsp.InlayHintProvider!.getInlayHints(document, { textDocument, range });
    await lsp.DocumentSymbolProvider!.getSymbols(document, { textDocument });
    await lsp.FoldingRangeProvider!.getFoldingRanges(document, { textDocument });
    const lenses = await lsp.CodeLensProvider!.provideCodeLens(document, { textDocument });
    for (const lens of lenses ?? []) (lsp.CodeLensProvider as CofferCodeLenses).resolve(lens);
    await lsp.CodeActionProvider!.getCodeActions(document, { textDocument, range, context: { diagnostics: document.diagnostics ?? [] } });
}

/** Bytes in use after a collection, with all files as they were at the beginning, so that two measurements are of the same texts. */
async function memory(workspace: TestWorkspace, texts: Record<string, string>): Promise<number> {
    await workspace.edit(EXAMPLES);
    for (const path of PATHS) await look(workspace, path);
    for (let time = 0; time < 3; time++) {
        collect();
        await new Promise(resolve => setImmediate(resolve));
    }
    const used = getHeapStatistics().used_heap_size;
    await workspace.edit(texts);
    return used;
}

async function expectAsCold(workspace: TestWorkspace, texts: Record<string, string>): Promise<void> {
    const cold = await TestWorkspace.serve(texts, createServerServices);
    for (const path of PATHS) expect(workspace.document(path).diagnostics, `${path}\n${texts[path]}`).toEqual(cold.document(path).diagnostics);
}
