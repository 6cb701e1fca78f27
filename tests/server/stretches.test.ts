import { describe, expect, test } from 'vitest';
import { HoverRequest } from 'vscode-languageserver';
import { PANE_KINDS, type PaneKind } from '../../src/pages/kinds.ts';
import type { ExportFormat } from '../../src/pages/page.ts';
import { contentInSteps, contentOn, PAGES } from '../../src/pages/pages.ts';
import { dryFitOf, partsOf } from '../../src/pipeline/inspect-closely.ts';
import { inTurns } from '../../src/plain/steps.ts';
import { putUp, putUpOf, puttingUpOf } from '../../src/putup/put-up.ts';
import { PANE_CONTENT, PANE_EXPORT, PANE_SHOWS, type PaneContentParams, type PaneExportResult, type PaneShowsParams } from '../../src/server/messages.ts';
import { hallOf } from '../bench/hall.ts';
import { roomOnPage, serve } from '../panes/support/content.ts';
import { bundledServer, Client } from './client.ts';

/** Of more coffers than are made at once. */
const HALL = hallOf(9, 8);
const files = { 'hall.coffer': HALL };

/** What it comes to, and between how many steps others have their turn. */
async function counted<Made>(steps: Generator<undefined, Made, undefined>): Promise<{ readonly made: Made; readonly turns: number }> {
    let turns = 0;
    const made = await inTurns(steps, () => { turns++; return Promise.resolve(); });
    return { made, turns };
}

describe('what takes long in a large room', () => {
    /** Of each content at least so many parts; those that are not named are short. */
    const PARTS = { plan: 3, section: 4, boards: 6, view: 6 };
    test.each(PANE_KINDS.filter(kind => kind !== 'suggest' && kind !== 'changes'))('the content of %s is made in parts, and is the same', async kind => {
        const room = roomOnPage(await serve(files), 'hall.coffer'), wishes = { width: 800, height: 700 };
        const { made, turns } = await counted(contentInSteps(PAGES[kind], room, wishes));
        expect(turns).toBeGreaterThanOrEqual((PARTS as Partial<Record<string, number>>)[kind] ?? 1);
        expect(JSON.stringify(made)).toBe(JSON.stringify(contentOn(PAGES[kind], room, wishes)));
    });

    test('how it goes together, and how it goes up, are found in parts', async () => {
        // one that nobody has looked at
        const { ceiling } = roomOnPage(await serve({ 'hall.coffer': hallOf(8, 9) }), 'hall.coffer'), fit = await counted(partsOf(ceiling));
        expect(fit.turns).toBeGreaterThanOrEqual(3);
        expect(dryFitOf.has(ceiling)).toBe(true);
        const up = await counted(puttingUpOf(ceiling));
        expect(up.turns).toBeGreaterThanOrEqual(6);
        expect(putUpOf(ceiling)).toEqual(putUp(ceiling));
    });

    /** Of each file that takes long at least so many. */
    const LONG: readonly (readonly [PaneKind, ExportFormat, number])[] = [
        ['plan', 'svg', 1], ['plan', 'html', 1], ['plan', 'dxf', 1], ['boards', 'html', 11], ['boards', 'svg', 1], ['boards', 'labels', 1],
        ['view', 'html', 1], ['view', 'svg', 1], ['view', 'gltf', 1], ['view', 'ifc', 1], ['put-up', 'html', 11],
    ];
    test.each(LONG)('the file of %s as %s is made in parts', async (kind, format, parts) => {
        const room = roomOnPage(await serve(files), 'hall.coffer');
        const { made, turns } = await counted(PAGES[kind].exports[format]!(room, undefined)), { bytes } = await made;
        expect(turns).toBeGreaterThanOrEqual(parts);
        expect(bytes.length).toBeGreaterThan(1000);
    });
});

test('a hover is answered before the page that was asked for before it, and before all that panes of a large room show', async () => {
    const client = await new Client(await bundledServer()).initialize(), answers: string[] = [];
    try {
        const uri = await client.open('untitled:hall.coffer', HALL);
        const position = { line: HALL.split('\n').findIndex(line => line.includes('coffers-north')), character: 12 };
        const hover = async (): Promise<void> => {
            const found = await client.request(HoverRequest.method, { textDocument: { uri }, position });
            answers.push(found === null ? 'nothing' : 'hover');
        };
        const shown = (pane: string): Promise<void> => new Promise(resolve => {
            client.on<PaneContentParams>(PANE_CONTENT, ({ pane: of, content }) => {
                if (!content || of !== pane) return;
                answers.push('pane');
                resolve();
            });
        });
        const show = (pane: string, kind: PaneShowsParams['kind']): Promise<void> => client.notify(PANE_SHOWS, { pane, kind, pinned: true, room: { uri, room: 'hall' } });
        // the text is read when the first one is there
        await Promise.all([shown('first'), show('first', 'plan')]);
        answers.length = 0;
        const there = shown('a');
        await show('a', 'view');
        await hover();
        await there;
        expect(answers).toEqual(['hover', 'pane']);
        answers.length = 0;
        const page = client.request<PaneExportResult>(PANE_EXPORT, { pane: 'a', format: 'html' }).then(result => { answers.push('page'); return result; });
        await hover();
        await hover();
        expect(answers.filter(each => each !== 'pane')).toEqual(['hover', 'hover']);
        expect((await page as { text?: string }).text).toContain('<svg');
        // the pane may be shown again meanwhile: how it goes up is found by then
        expect(answers.filter(each => each !== 'pane')).toEqual(['hover', 'hover', 'page']);
    } finally {
        client.dispose();
    }
});
