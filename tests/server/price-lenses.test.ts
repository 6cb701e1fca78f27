import type { CodeLens } from 'vscode-languageserver';
import { describe, expect, test } from 'vitest';
import { createServerServices } from '../../src/server/services.ts';
import type { CofferCodeLenses } from '../../src/server/features/code-lenses.ts';
import { TWO_ROOMS } from '../support/examples.ts';
import { TestWorkspace } from '../support/workspace.ts';

const house = TWO_ROOMS, served = TestWorkspace.serve(house, createServerServices);

async function titlesIn(path: string, files?: Record<string, string>): Promise<string[]> {
    const workspace = files ? await TestWorkspace.serve(files, createServerServices) : await served;
    const provider = workspace.coffer.lsp.CodeLensProvider as CofferCodeLenses;
    return provider.provideCodeLens(workspace.document(path)).map((lens: CodeLens) => provider.resolve(lens).command!.title);
}

describe('prices above the text', () => {
    test('the job tells what it costs its client, how long it takes, and each alternate how much more or less', async () => {
        expect(await titlesIn('quince-lane/house.coffer')).toEqual([expect.stringMatching(/^\$[\d,]+\.\d\d, [\d.]+ h, [\d.]+ days, on a first plan of boards$/)]);
        expect(await titlesIn('quince-lane/alternates.coffer')).toEqual([expect.stringMatching(/^\$[\d,]+\.\d\d less$/), expect.stringMatching(/^\$[\d,]+\.\d\d less$/), expect.stringMatching(/^\$[\d,]+\.\d\d less$/)]);
    });

    test('a house without rates has none; one that lacks some says so; an alternate that cannot be built is no price', async () => {
        const { 'rates.coffer': rates, 'quince-lane/alternates.coffer': _, ...bare } = house;
        const tooMany = 'edition 1\nfrom "./dining-room.coffer" use dining\nalternate wide { dining.grid.coffers-north 60 }\n';
        expect(await titlesIn('quince-lane/house.coffer', bare)).toEqual([]);
        expect(await titlesIn('quince-lane/house.coffer', { ...bare, 'rates.coffer': rates!.replace(/ {2}cleats .*\n/, '') })).toEqual([expect.stringMatching(/, without what has no rate$/)]);
        expect(await titlesIn('quince-lane/alternates.coffer', { ...house, 'quince-lane/alternates.coffer': tooMany })).toEqual(['cannot be built this way']);
    });
});
