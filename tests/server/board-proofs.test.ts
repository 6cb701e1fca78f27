import { build } from 'esbuild';
import highs from 'highs';
import { copyFileSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { BoardProver } from '../../src/cutting/board-prover.ts';
import { lookCloser, USUAL_STEPS, type Found } from '../../src/cutting/look-closer.ts';
import { questionsOf, type Asked } from '../../src/cutting/questions.ts';
import { boardsContentInSteps } from '../../src/pages/boards/content.ts';
import { BoardProofs } from '../../src/server/panes/board-proofs.ts';
import { inches } from '../../src/quantity/rational.ts';
import { boardsInThreads } from '../../src/worker/boards-thread.ts';
import { solverBy } from '../../src/worker/highs.ts';
import { job, piece, stock } from '../cutting/samples.ts';
import { roomOnPage, serve } from '../panes/support/content.ts';
import { madeBy } from '../pages/made.ts';

const boardsContent = madeBy(boardsContentInSteps);

const den = `edition 1
stock board-1x6 { size 1x6; lengths 8', 12', 16'; price 2.10 USD per ft }
stock board-1x8 { size 1x8; lengths 12', 16'; price 3.00 USD per ft }
profile box {
  blocking { stock board-1x6; screws #8 x 2 1/2" every 16" }
  sides { stock board-1x8; held-down 1/4"; corners mitered; nails 16 ga x 2" every 12" }
  bottom { stock board-1x6; gap 0" to 1/32" }
}
room den {
  wall north 13'
  wall east 11'
  grid { coffers-north 3; coffers-east 2; beams box; through north-south }
}
`;
const later = (): Promise<void> => new Promise(resolve => { setTimeout(resolve, 5); });

/** Answers when it is told to, with what the real search finds. */
class Held implements BoardProver {
    stopped = 0;
    readonly searches: { readonly asked: readonly Asked[]; readonly found: (index: number, answer: Found['answer'], isLast: boolean) => void }[] = [];
    prove(asked: readonly Asked[], found: (index: number, answer: Found['answer'], isLast: boolean) => void): () => void {
        this.searches.push({ asked, found });
        return () => { this.stopped++; };
    }
}

describe('what is known of a house\'s boards', () => {
    test('is the first plan at once, then progress, then the proof; and one object until more is known', async () => {
        const solver = solverBy(await highs());
        const page = roomOnPage(await serve({ 'den.coffer': den }), 'den.coffer');
        const held = new Held();
        let changes = 0;
        const proofs = new BoardProofs(held, () => { changes++; });
        const first = proofs.of(page.house)!;
        expect(first.proving).toEqual({ done: 0, of: 2 });
        expect(first.plan.stocks.map(s => s.known.as)).toEqual(['first plan', 'first plan']);
        expect(proofs.of(page.house)).toBe(first);

        const { asked, found } = held.searches[0]!;
        const all = [...lookCloser(asked, solver, USUAL_STEPS)];
        for (const each of all.filter(f => f.index === 0)) found(each.index, each.answer, each.isLast);
        await later();
        expect(changes).toBe(1);
        const half = proofs.of(page.house)!;
        expect(half.proving).toEqual({ done: 1, of: 2 });
        expect(half.plan.stocks.map(s => s.known.as)).toEqual(['none cheaper', 'first plan']);
        for (const each of all.filter(f => f.index === 1)) found(each.index, each.answer, each.isLast);
        await later();
        const whole = proofs.of(page.house)!;
        expect(whole.proving).toBeUndefined();
        expect(whole.plan.stocks.map(s => s.known.as)).toEqual(['none cheaper', 'none cheaper']);
        expect(boardsContent(Object.create(page, { boards: { value: whole } }) as typeof page, {})).toMatchObject({ known: 'None cheaper exists (ways of cutting compared: cut across; no piece turned).', isProven: true, proving: null });
        expect(held.stopped).toBe(0);
    });

    test('is looked for anew when the pieces have changed, and the old search is ended; what it still says is not heard', async () => {
        const page = roomOnPage(await serve({ 'den.coffer': den }), 'den.coffer');
        const other = roomOnPage(await serve({ 'den.coffer': den.replace('13\'', '14\'') }), 'den.coffer');
        const held = new Held();
        let changes = 0;
        const proofs = new BoardProofs(held, () => { changes++; });
        proofs.of(page.house);
        const now = proofs.of(other.house);
        expect(held.stopped).toBe(1);
        expect(held.searches).toHaveLength(2);
        const { asked, found } = held.searches[0]!;
        found(0, { layouts: asked[0]!.layouts, bound: 0 }, true);
        await later();
        expect(changes).toBe(0);
        expect(proofs.of(other.house)).toBe(now);
        proofs.stop();
        expect(held.stopped).toBe(2);
    });

    test('stops where somebody has waited enough, with the best that is known; what it still says is not heard', async () => {
        const page = roomOnPage(await serve({ 'den.coffer': den }), 'den.coffer');
        const held = new Held();
        let changes = 0;
        const proofs = new BoardProofs(held, () => { changes++; });
        const first = proofs.of(page.house)!;
        const [{ asked, found }] = held.searches as [Held['searches'][number]];
        // 25 % above what it may cost
        const cost = asked[0]!.layouts.reduce((sum, { board, times }) => sum + asked[0]!.problem.boards[board]!.cost * times, 0), bound = cost / 1.25;
        found(0, { layouts: asked[0]!.layouts, bound }, false);
        await later();
        const looking = proofs.of(page.house)!;
        expect(looking.proving).toEqual({ done: 0, of: 2, percent: 25 });
        proofs.enough(first);
        expect(held.stopped).toBe(0);
        proofs.enough(looking);
        expect([held.stopped, changes]).toEqual([1, 2]);
        const stopped = proofs.of(page.house)!;
        expect([stopped.stopped, stopped.proving, stopped.plan.stocks[0]!.known.as]).toEqual([true, undefined, 'within']);
        found(1, { layouts: asked[1]!.layouts, bound: 0 }, true);
        await later();
        expect(proofs.of(page.house)).toBe(stopped);
        expect(boardsContent(Object.create(page, { boards: { value: stopped } }) as typeof page, {})).toMatchObject({ proving: null, stopped: true });
    });

    test('of nothing is nothing', () => {
        const held = new Held();
        expect(new BoardProofs(held, () => undefined).of([])).toBeUndefined();
        expect(held.searches).toEqual([]);
    });
});

describe('in a thread', () => {
    let folder = '';
    beforeAll(async () => {
        folder = mkdtempSync(join(tmpdir(), 'boards-'));
        await build({
            entryPoints: [new URL('../../src/worker/boards-worker.ts', import.meta.url).pathname], bundle: true, platform: 'node', format: 'esm', outfile: join(folder, 'boards-worker.mjs'),
            banner: { js: 'import { createRequire as forRequire } from \'node:module\'; const require = forRequire(import.meta.url);' }, logLevel: 'error',
        });
        copyFileSync(new URL('../../node_modules/highs/build/highs.wasm', import.meta.url), join(folder, 'highs.wasm'));
    });
    afterAll(() => rmSync(folder, { recursive: true }));

    const pine = stock({ feet: [8, 12], perFoot: '2' });
    const { asked } = questionsOf([30, 41, 52, 20, 20, 63].map((length, i) => piece(`p${i}`, pine, inches(length))), job());
    const search = (script: string) => new Promise<{ found: Found[]; said: string[] }>(resolve => {
        const found: Found[] = [], said: string[] = [];
        boardsInThreads(script, { steps: USUAL_STEPS, say: words => said.push(words) }).prove(asked, (index, answer, isLast) => {
            found.push({ index, answer, isLast });
            if (isLast) resolve({ found, said });
        });
    });

    test('the same is found as without one', async () => {
        const { found, said } = await search(join(folder, 'boards-worker.mjs'));
        expect(said).toEqual([]);
        expect(found).toEqual([...lookCloser(asked, solverBy(await highs()), USUAL_STEPS)]);
        expect(found.at(-1)!.isLast).toBe(true);
    });

    test('a search that is ended says nothing more', async () => {
        const found: Found[] = [];
        boardsInThreads(join(folder, 'boards-worker.mjs'), { steps: USUAL_STEPS, say: () => undefined }).prove(asked, (index, answer, isLast) => found.push({ index, answer, isLast }))();
        await new Promise(resolve => { setTimeout(resolve, 300); });
        expect(found).toEqual([]);
    });

    test('where it cannot run it says so, the plan stays as it is, and nobody waits', async () => {
        const { found, said } = await search(join(folder, 'nothing.mjs'));
        expect(said).toEqual([expect.stringMatching(/^boards: .*nothing\.mjs/)]);
        expect(found).toEqual([{ index: 0, answer: { layouts: asked[0]!.layouts, bound: 0 }, isLast: true }]);
    });
});
