import { describe, expect, test } from 'vitest';
import { createCofferServices } from '../../../src/language/services.ts';
import { CofferLinker } from '../../../src/language/scope/linker.ts';
import { readFile } from '../../../src/language/read-file.ts';
import { inspect } from '../../../src/pipeline/inspect.ts';
import { createServerServices } from '../../../src/server/services.ts';
import { TestWorkspace, uriOf } from '../../support/workspace.ts';
import type { CofferDocumentFactory } from '../../../src/language/workspace/document-factory.ts';
import type { CofferDocuments } from '../../../src/language/workspace/documents.ts';
import { NO_ROOM_LEFT } from '../../../src/language/workspace/most-files.ts';
import type { LineReport } from '../../../src/language/lexer/coffer-lexer.ts';

const SOUND = 'edition 1\nlet reveal = brass\n';

describe('one file in which something fails', () => {
    const failing = { 'bad.coffer': 'edition 1\nlet bang = 1"\n', 'good.coffer': SOUND, 'user.coffer': 'edition 1\nfrom "./bad.coffer" use bang\nlet a = bang\n' };
    const isBad = (uri: { toString(): string }): boolean => uri.toString().endsWith('bad.coffer');

    test('in a check of its own: it says so, and the others say what they have to say', async () => {
        const workspace = await TestWorkspace.open(failing, document => {
            if (isBad(document.uri)) throw new Error('bang');
            return inspect(readFile(document)).findings;
        });
        expect(workspace.published('bad.coffer').map(({ message }) => message)).toEqual(['A fault in Cofferwright itself kept it from checking this file: bang.']);
        expect(workspace.rules('good.coffer')).toEqual(['unknown-name']);
    });

    test('while its names are looked for: it has no content until its text changes', async () => {
        class Failing extends CofferLinker {
            failing = true;
            override async link(...[document, token]: Parameters<CofferLinker['link']>): Promise<void> {
                if (isBad(document.uri) && document.textDocument.getText().includes('bang')) {
                    if (this.failing) { this.failing = false; throw new RangeError('too deep'); }
                }
                return super.link(document, token);
            }
        }
        const workspace = await TestWorkspace.serve(
            failing, context => createCofferServices(context, { coffer: { references: { Linker: services => new Failing(services) } } }),
        );
        expect(workspace.published('bad.coffer').map(({ message }) => message)).toEqual(['This file cannot be read, and that is a fault of the program, not of the file: too deep']);
        expect(workspace.rules('good.coffer')).toEqual(['unknown-name']);
        await workspace.edit({ 'bad.coffer': 'edition 1\nlet bang = 2"\n' });
        expect(workspace.rules('bad.coffer')).toEqual([]);
        expect(workspace.rules('user.coffer')).toEqual([]);
    });

    test('in somebody who waits for it to be built', async () => {
        const workspace = await TestWorkspace.serve({ 'good.coffer': 'edition 1\n' }, createServerServices);
        const { DocumentBuilder } = workspace.shared.workspace;
        const faults: unknown[] = [];
        Object.assign(DocumentBuilder, { onFault: (error: unknown) => faults.push(error) });
        for (const state of [1, 2, 3, 4, 5, 6]) DocumentBuilder.onBuildPhase(state, () => { throw new Error('listener'); });
        await workspace.edit({ 'good.coffer': SOUND });
        expect(workspace.rules('good.coffer')).toEqual(['unknown-name']);
        expect(faults.length).toBeGreaterThan(0);
    });
});

/** So many lines, each made from its number. */
const rows = (count: number, make: (i: number) => string): string => Array.from({ length: count }, (_, i) => `${make(i)}\n`).join('');
const PROFILE = '{ sides { stock s }; bottom { stock s } }';

describe('what goes on for long has its limit, said where it is reached', () => {
    test.each<[string, string, string, RegExp]>([
        ['values of values, the last first', rows(1475, i => `let a${i} = a${i + 1}`) + 'let a1475 = 1"\n', 'out-of-range', /`a200` is at the end of a chain of 200 values/],
        ['members of values of values', `${rows(3000, i => `let a${i} = a${i + 1}`)}let a3000 = s\nlet w = a0.width\n`, 'out-of-range', /200 values/],
        ['profiles like profiles', `profile p0 ${PROFILE}\n${rows(1000, i => `profile p${i + 1}(g: Length = 1/4") like p${i} { }`)}`, 'out-of-range', /`p33` is like a profile that is like another, and so on: 32 in a row/],
        ['profiles like profiles in a ring', rows(1000, i => `profile p${i} like p${(i + 1) % 1000} { }`), 'out-of-range', /`p0` is like a profile/],
        ['lengths that are off for many reasons', rows(200, i => i === 0 ? 'let a0 = 1"' : `let a${i} = a${i - 1} + 1" ± 1/64"`), 'out-of-range', /more than 100 tolerances/],
        ['alternates of a long room', `room r {\n${rows(300, i => `  fixture f${i} light at 2', 3'`)}}\n${rows(200, i => `alternate a${i} { r.grid.coffers-north 3 }`)}`, 'out-of-range', /rewrite \d+ lines of rooms, .* 20000/],
    ])('%s', async (_, text, rule, message) => {
        const workspace = await TestWorkspace.serve({ 'long.coffer': `edition 1\nstock s { size 1x6; lengths 8' }\n${text}`, 'good.coffer': SOUND }, createServerServices);
        expect(workspace.published('long.coffer').filter(each => each.rule === 'internal-error')).toEqual([]);
        const found = workspace.published('long.coffer').filter(each => each.rule === rule);
        expect(found[0]?.message).toMatch(message);
        expect(workspace.rules('good.coffer')).toEqual(['unknown-name']);
    });
});

test('a path that no file can have is said to be none, and stops nothing', async () => {
    const workspace = await TestWorkspace.open({ 'odd.coffer': 'edition 1\nfrom "./a\ud800b" use c\nfrom "./a\u0007b" use d\n', 'good.coffer': SOUND });
    expect(workspace.rules('odd.coffer')).toEqual(['missing-import', 'missing-import']);
    await workspace.edit({ 'good.coffer': `${SOUND}\n` });
    expect(workspace.rules('good.coffer')).toEqual(['unknown-name']);
});

test('files are read until they hold as many words as are read together; what is left out is told, and read when there is room', async () => {
    const line = (i: number): string => `let a${i} = 1"\n`, ten = (name: string): string => `edition 1\n${Array.from({ length: 10 }, (_, i) => line(i)).join('')}let ${name} = brass\n`;
    const workspace = await TestWorkspace.serve({ 'a.coffer': ten('den') }, createServerServices), factory = workspace.shared.workspace.LangiumDocumentFactory as CofferDocumentFactory;
    const words = (workspace.document('a.coffer').parseResult.lexerReport as LineReport).words;
    const before = (workspace.shared.workspace.LangiumDocuments as CofferDocuments).wordsBeside(uriOf('b.coffer'));
    expect(words).toBeGreaterThan(50);
    expect(factory.mostWords).toBe(1_200_000);
    // one more than there are when the second file comes, and as many as there are when the third does
    factory.mostWords = before + words;
    await workspace.edit({ 'b.coffer': ten('hall') });
    expect(workspace.rules('b.coffer')).toEqual(['unknown-name']);
    await workspace.edit({ 'c.coffer': ten('attic') });
    expect(workspace.published('c.coffer').map(({ message, line: at }) => [message, at])).toEqual([[NO_ROOM_LEFT, 0]]);
    expect(workspace.rules('a.coffer')).toEqual(['unknown-name']);
    // what has been read already is read on
    await workspace.edit({ 'a.coffer': `${ten('den')}let more = brass\n` });
    expect(workspace.rules('a.coffer')).toEqual(['unknown-name', 'unknown-name']);
    await workspace.edit({ 'a.coffer': undefined, 'c.coffer': ten('attic') });
    expect(workspace.rules('c.coffer')).toEqual(['unknown-name']);
    expect((workspace.shared.workspace.LangiumDocuments as CofferDocuments).wordsBeside(uriOf('none.coffer'))).toBe(before + words);
});
