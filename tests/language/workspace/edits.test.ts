import { describe, expect, test } from 'vitest';
import { jobOf, reachStamp } from '../../../src/language/workspace/services-of.ts';
import { TestWorkspace } from '../../support/workspace.ts';

const YARD = 'edition 1\nstock poplar { size 1x6 }\nstock oak { size 1x6 }\n';
const BOX = 'edition 1\nfrom "../yard.coffer" use poplar\nprofile box { sides { stock poplar }; bottom { stock poplar } }\n';
const DEN = 'edition 1\nfrom "../details/box.coffer" use box\nroom den {\n  grid { beams box; through north-south }\n}\n';
const ATTIC = 'edition 1\nroom attic { wall north 10\' }\n';
const HOUSE = { 'yard.coffer': YARD, 'details/box.coffer': BOX, 'rooms/den.coffer': DEN, 'rooms/attic.coffer': ATTIC };

function stamps(workspace: TestWorkspace): Record<string, number> {
    const all = workspace.shared.workspace.LangiumDocuments.all.toArray();
    return Object.fromEntries(all.map(document => [document.uri.path.replace('/house/', ''), reachStamp(document)]));
}

/** Which files' stamps an edit changes. */
async function bumped(workspace: TestWorkspace, edit: Readonly<Record<string, string | undefined>>): Promise<string[]> {
    const before = stamps(workspace);
    await workspace.edit(edit);
    return Object.entries(stamps(workspace)).filter(([path, stamp]) => before[path] !== stamp).map(([path]) => path).sort();
}

describe('an edit checks again whatever depends on it', () => {
    test('a file nobody imports: that file', async () => {
        const workspace = await TestWorkspace.open(HOUSE);
        expect(await bumped(workspace, { 'rooms/den.coffer': DEN.replace('north-south', 'east-west') })).toEqual(['rooms/den.coffer']);
    });

    test('a shared file: everything that reaches it, through any chain', async () => {
        const workspace = await TestWorkspace.open(HOUSE);
        expect(await bumped(workspace, { 'yard.coffer': YARD + '// more to come\n' })).toEqual(['details/box.coffer', 'rooms/den.coffer', 'yard.coffer']);
    });

    test('a file that is imported but nothing of it is used', async () => {
        const unused = 'edition 1\nfrom "../yard.coffer" use oak\nroom attic { wall north 10\' }\n';
        const workspace = await TestWorkspace.open({ ...HOUSE, 'rooms/attic.coffer': unused });
        expect(await bumped(workspace, { 'yard.coffer': YARD.replace('stock oak', 'stock ash') })).toContain('rooms/attic.coffer');
        expect(workspace.rules('rooms/attic.coffer')).toEqual(['name-not-exported']);
    });

    test('what the names mean follows the edit, in the tree as in the findings', async () => {
        const workspace = await TestWorkspace.open(HOUSE);
        await workspace.edit({ 'yard.coffer': YARD.replace('stock poplar', 'stock aspen') });
        expect(workspace.rules('details/box.coffer')).toEqual(['name-not-exported']);
        await workspace.edit({ 'yard.coffer': YARD });
        expect(workspace.rules('details/box.coffer')).toEqual([]);
        const use = workspace.file('details/box.coffer').uses[0]!;
        expect(use.names[0]!.target.ref).toBe(workspace.file('yard.coffer').items[0]);
    });

    test('a ring of imports ends', async () => {
        const workspace = await TestWorkspace.open(HOUSE);
        await workspace.edit({ 'yard.coffer': `from "./rooms/den.coffer" use den\n${YARD}` });
        for (const path of ['yard.coffer', 'details/box.coffer', 'rooms/den.coffer']) expect(workspace.rules(path)).toContain('import-cycle');
        await workspace.edit({ 'yard.coffer': YARD });
        for (const path of ['yard.coffer', 'details/box.coffer', 'rooms/den.coffer']) expect(workspace.rules(path)).toEqual([]);
    });
});

describe('files that come and go', () => {
    test('a missing file that appears mends its importers, also those far off', async () => {
        const { 'yard.coffer': yard, ...others } = HOUSE;
        const workspace = await TestWorkspace.open(others);
        expect(workspace.rules('details/box.coffer')).toEqual(['missing-import']);
        expect(await bumped(workspace, { 'yard.coffer': yard })).toEqual(['details/box.coffer', 'rooms/den.coffer', 'yard.coffer']);
        expect(workspace.rules('details/box.coffer')).toEqual([]);
    });

    test('a deleted file leaves no ghost behind, and its importers say so', async () => {
        const workspace = await TestWorkspace.open(HOUSE);
        await workspace.edit({ 'yard.coffer': undefined });
        expect(workspace.has('yard.coffer')).toBe(false);
        expect(workspace.rules('details/box.coffer')).toContain('missing-import');
        await workspace.edit({ 'yard.coffer': YARD });
        expect(workspace.rules('details/box.coffer')).toEqual([]);
    });

    test('a renamed file: the old path is missing, and the new one is named', async () => {
        const workspace = await TestWorkspace.open(HOUSE);
        await workspace.edit({ 'yard.coffer': undefined, 'yards.coffer': YARD });
        expect(workspace.published('details/box.coffer')[0]!.message).toContain('Similar names: `../yards.coffer`.');
        await workspace.edit({ 'details/box.coffer': BOX.replace('yard.', 'yards.') });
        for (const path of ['yards.coffer', 'details/box.coffer', 'rooms/den.coffer']) expect(workspace.rules(path)).toEqual([]);
    });

    test('a folder that goes takes its files along', async () => {
        const workspace = await TestWorkspace.open(HOUSE);
        await workspace.edit({ details: undefined });
        expect(workspace.has('details/box.coffer')).toBe(false);
        expect(workspace.rules('rooms/den.coffer')).toContain('missing-import');
    });

    test('a file outside the folders that are skipped is read when it is first imported', async () => {
        const workspace = await TestWorkspace.open({ ...HOUSE, 'out/strips.coffer': 'edition 1\nfrom "../yard.coffer" use oak\nstock strip { size 1x2 }\n' });
        expect(workspace.has('out/strips.coffer')).toBe(false);
        await workspace.edit({ 'rooms/attic.coffer': 'edition 1\nfrom "../out/strips.coffer" use strip\nprofile p { sides { stock strip }; bottom { stock strip } }\n' });
        expect(workspace.has('out/strips.coffer')).toBe(true);
        expect(workspace.rules('rooms/attic.coffer')).toEqual([]);
    });

    test('a file that cannot be read is empty, and stops nothing', async () => {
        const workspace = await TestWorkspace.open(HOUSE);
        const { DocumentBuilder } = workspace.shared.workspace;
        const gone = workspace.document('rooms/attic.coffer').uri;
        await workspace.edit({ 'rooms/attic.coffer': undefined });
        await workspace.edit({ 'rooms/attic.coffer': ATTIC });
        const readFile = workspace.shared.workspace.FileSystemProvider.readFile;
        workspace.shared.workspace.FileSystemProvider.readFile = async () => { throw new Error('gone'); };
        await DocumentBuilder.update([gone], []);
        workspace.shared.workspace.FileSystemProvider.readFile = readFile;
        expect(workspace.rules('rooms/attic.coffer')).toEqual([]);
        await workspace.edit({ 'rooms/den.coffer': DEN.replace('box;', 'bax;') });
        expect(workspace.rules('rooms/den.coffer')).toEqual(['unknown-name']);
    });
});

describe('the job that holds', () => {
    const job = (title: string) => `edition 1\njob "${title}" { currency "USD" }\n`;
    const titleFor = (workspace: TestWorkspace, path: string) => jobOf(workspace.document(path))?.title;

    test('is that of the nearest folder upward', async () => {
        const workspace = await TestWorkspace.open({ ...HOUSE, 'house.coffer': job('House'), 'rooms/rooms.coffer': job('Rooms'), 'roomsale/x.coffer': ATTIC });
        expect(titleFor(workspace, 'yard.coffer')).toBe('House');
        expect(titleFor(workspace, 'details/box.coffer')).toBe('House');
        expect(titleFor(workspace, 'rooms/den.coffer')).toBe('Rooms');
        expect(titleFor(workspace, 'roomsale/x.coffer')).toBe('House');
    });

    test('a change of it checks its folder and what is below, and nothing else', async () => {
        const workspace = await TestWorkspace.open({ ...HOUSE, 'rooms/rooms.coffer': job('Rooms') });
        expect(await bumped(workspace, { 'rooms/rooms.coffer': job('New rooms') })).toEqual(['rooms/attic.coffer', 'rooms/den.coffer', 'rooms/rooms.coffer']);
        expect(titleFor(workspace, 'rooms/den.coffer')).toBe('New rooms');
    });

    test('one that is added, and one that goes', async () => {
        const workspace = await TestWorkspace.open({ ...HOUSE, 'house.coffer': job('House') });
        expect(await bumped(workspace, { 'rooms/rooms.coffer': job('Rooms') })).toEqual(['rooms/attic.coffer', 'rooms/den.coffer', 'rooms/rooms.coffer']);
        expect(titleFor(workspace, 'rooms/den.coffer')).toBe('Rooms');
        expect(await bumped(workspace, { 'rooms/rooms.coffer': 'edition 1\n' })).toEqual(['rooms/attic.coffer', 'rooms/den.coffer', 'rooms/rooms.coffer']);
        expect(titleFor(workspace, 'rooms/den.coffer')).toBe('House');
        await workspace.edit({ 'rooms/rooms.coffer': job('Rooms') });
        expect(await bumped(workspace, { 'rooms/rooms.coffer': undefined })).toEqual(['rooms/attic.coffer', 'rooms/den.coffer']);
        expect(titleFor(workspace, 'rooms/den.coffer')).toBe('House');
    });

    test('two in a folder: the second is reported, until one of them goes', async () => {
        const workspace = await TestWorkspace.open({ 'a.coffer': job('A'), 'b.coffer': job('B'), 'rooms/c.coffer': job('C') });
        expect([workspace.rules('a.coffer'), workspace.rules('b.coffer'), workspace.rules('rooms/c.coffer')]).toEqual([[], ['two-jobs'], []]);
        await workspace.edit({ 'a.coffer': undefined });
        expect(workspace.rules('b.coffer')).toEqual([]);
        await workspace.edit({ 'a.coffer': job('A') });
        expect(workspace.rules('b.coffer')).toEqual(['two-jobs']);
    });
});

describe('rooms of one house that are called alike', () => {
    const job = 'edition 1\njob "House" { currency "USD" }\n';
    const room = (name: string) => `edition 1\nroom ${name} "Room" {\n  wall north 10'\n  wall east 9'\n}\n`;
    const files = { 'house.coffer': job, 'a.coffer': room('den'), 'rooms/b.coffer': room('den'), 'other/house.coffer': job, 'other/c.coffer': room('den') };
    const told = (workspace: TestWorkspace) => Object.keys(files).filter(path => workspace.has(path)).filter(path => workspace.rules(path).includes('declared-twice'));

    test('are told at all but the first, and not between houses', async () => {
        const workspace = await TestWorkspace.open(files);
        expect(told(workspace)).toEqual(['rooms/b.coffer']);
        const finding = workspace.findings('rooms/b.coffer').find(({ rule }) => rule === 'declared-twice')!;
        expect(finding).toMatchObject({ severity: 'warning', message: 'Another room of this house is called `den` (../a.coffer), and pieces are named by their room, so every name would be there twice. Give one of the rooms another name.' });
        expect(workspace.words(finding.at)).toBe('den');
        expect(finding.related.map(({ at }) => [at.uri, workspace.words(at)])).toEqual([[workspace.document('a.coffer').uri.toString(), 'den']]);
    });

    test('until one of them is called otherwise, goes, or is in another house', async () => {
        const workspace = await TestWorkspace.open(files);
        await workspace.edit({ 'a.coffer': room('hall') });
        expect(told(workspace)).toEqual([]);
        await workspace.edit({ 'a.coffer': `// moved\n${room('den')}` });
        expect(told(workspace)).toEqual(['rooms/b.coffer']);
        await workspace.edit({ 'a.coffer': `// moved\n// again\n${room('den')}` });
        expect(workspace.findings('rooms/b.coffer').flatMap(({ related }) => related.map(({ at }) => workspace.words(at)))).toEqual(['den']);
        expect(workspace.document('rooms/b.coffer').diagnostics!.flatMap(({ relatedInformation }) => relatedInformation!.map(({ location }) => location.range.start.line))).toEqual([3]);
        await workspace.edit({ 'a.coffer': undefined });
        expect(told(workspace)).toEqual([]);
        await workspace.edit({ 'a.coffer': room('den') });
        expect(told(workspace)).toEqual(['rooms/b.coffer']);
        await workspace.edit({ 'rooms/house.coffer': job });
        expect(told(workspace)).toEqual([]);
        await workspace.edit({ 'rooms/house.coffer': undefined, 'other/house.coffer': undefined });
        expect(told(workspace)).toEqual(['other/c.coffer', 'rooms/b.coffer'].sort((a, b) => Object.keys(files).indexOf(a) - Object.keys(files).indexOf(b)));
    });
});
