import { DiagnosticTag, type CodeAction, type Diagnostic, type Hover, type PublishDiagnosticsParams } from 'vscode-languageserver';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { piecesOverlap } from '../../../src/rules/pieces-overlap.ts';
import { bundledServer, Client, hasNoErrors, hasRule } from '../client.ts';
import { slow } from './slow-server.ts';

/** Findings that take their time, as the real server publishes them: its closer look is one that is slow and always finds something. */
let client: Client;
let room: string;
beforeEach(async () => {
    client = await new Client(slow).initialize();
    room = client.uri('rooms/den.coffer');
});
afterEach(() => client.dispose());

/** What goes by the order in which a disk, a build and an editor come to it is tried with a server of its own. */
async function inAProcess(entry?: string): Promise<void> {
    client.dispose();
    client = await new Client(await bundledServer(entry)).initialize();
    room = client.uri('rooms/den.coffer');
}

const LATE = 'slow-rule';
const late = (findings: readonly Diagnostic[]): Diagnostic[] => findings.filter(({ code }) => code === LATE);
const isDimmed = ({ tags }: Diagnostic): boolean => tags?.includes(DiagnosticTag.Unnecessary) ?? false;
const fresh = (findings: readonly Diagnostic[]): boolean => late(findings).length > 0 && !late(findings).some(isDimmed);
const dimmed = (findings: readonly Diagnostic[]): boolean => late(findings).length > 0 && late(findings).every(isDimmed);
const wordsAt = (text: string, { start, end }: Diagnostic['range']): string => {
    const lines = text.split('\n');
    return start.line === end.line ? lines[start.line]!.slice(start.character, end.character) : `${lines[start.line]!.slice(start.character)} …`;
};
const publicationsOf = (uri: string, from = 0): PublishDiagnosticsParams[] => client.history.slice(from).filter(each => each.uri === uri);
const BEAMS = 'beams          beam';

async function openedDen(): Promise<void> {
    room = await client.open('rooms/den.coffer');
    await client.until(room, fresh);
    await settled();
}
/** Ends when whatever was sent before has been read and built. */
const settled = async (): Promise<void> => { await client.request('textDocument/documentSymbol', { textDocument: { uri: room } }); };

test('come after those of the build and with them, of files that nobody has opened too', async () => {
    const findings = await client.until(room, fresh);
    const [first, ...more] = publicationsOf(room);
    expect(late(first!.diagnostics)).toEqual([]);
    expect(more.map(({ diagnostics }) => late(diagnostics).length)).toEqual([1]);
    expect(late(findings)).toMatchObject([{ severity: 2, source: 'cofferwright', message: 'The beams of den were looked at: pine-1x6.' }]);
    expect(wordsAt(client.onDisk('rooms/den.coffer'), late(findings)[0]!.range)).toBe('beam');
    // what the closer look finds that is known already is not said again
    expect(findings.length).toBe(first!.diagnostics.length + 1);
});

test('stay at their words, once, dimmed, while somebody types, and are looked for again when the hand rests', async () => {
    await openedDen();
    const from = client.history.length, looks = client.log.filter(line => line.includes('looks at den')).length;
    let typed = 'edition 1\n';
    for (const letter of '// two lines\n// of notes\n\n') {
        await client.type(room, typed, typed + letter);
        typed += letter;
    }
    // an editor that sends the whole text each time
    const text = client.text(room);
    for (let count = 1; count <= 30; count++) await client.change(room, text.replace(typed, `${typed}// ${'n'.repeat(count)}\n`));
    await client.until(room, findings => dimmed(findings) && wordsAt(client.text(room), late(findings)[0]!.range) === 'beam');
    expect(client.log.filter(line => line.includes('looks at den')).length).toBe(looks);
    await client.until(room, fresh);
    const since = publicationsOf(room, from);
    expect(since.length).toBeGreaterThan(2);
    for (const { diagnostics } of since) expect(late(diagnostics).length).toBe(1);
    expect(wordsAt(client.text(room), late(client.findings(room)!)[0]!.range)).toBe('beam');
    // from dimmed to fresh is one step
    expect(since.map(({ diagnostics }) => isDimmed(late(diagnostics)[0]!)).join(' ')).toMatch(/^(true )+false$/);
});

test('offer their fix while they hold, and none while they are dimmed', async () => {
    await openedDen();
    const fixesOf = async (diagnostics: readonly Diagnostic[]): Promise<string[]> => (await client.request<CodeAction[]>('textDocument/codeAction', {
        textDocument: { uri: room }, range: late(diagnostics)[0]!.range, context: { diagnostics: late(diagnostics) },
    })).map(({ title }) => title);
    expect(await fixesOf(client.findings(room)!)).toContain('Other beams');
    await client.type(room, 'edition 1\n', 'edition 1\n\n');
    expect(await fixesOf(await client.until(room, dimmed))).not.toContain('Other beams');
    const again = await client.until(room, fresh);
    expect(await fixesOf(again)).toContain('Other beams');
});

test('stay while the room cannot be read, however long the hand rests, and go with their words', async () => {
    await openedDen();
    await client.type(room, 'coffers-north  3', 'coffers-north  3 +');
    await client.until(room, findings => dimmed(findings) && !hasNoErrors(findings));
    const from = client.history.length, looks = client.log.filter(line => line.includes('looks at den')).length;
    // the hand rests: another room, that came after, has been looked at
    await client.onDiskChange('rooms/hall.coffer', client.onDisk('rooms/den.coffer').replace(/job[\s\S]*?\n}\n/, '').replace('room den', 'room hall'));
    await client.until(client.uri('rooms/hall.coffer'), fresh);
    expect(client.log.filter(line => line.includes('looks at den')).length).toBe(looks);
    for (const { diagnostics } of publicationsOf(room, from)) expect(dimmed(diagnostics)).toBe(true);
    await client.type(room, 'coffers-north  3 +', 'coffers-north  3');
    await client.until(room, fresh);

    await client.type(room, `    ${BEAMS}\n`, '');
    await client.until(room, findings => late(findings).length === 0);
});

test('of a room are dimmed while what it is made from changes, and their other place moves with its words', async () => {
    await openedDen();
    const beam = await client.open('details/beam.coffer');
    await client.type(beam, '/** A plain', '// a note\n/** A plain');
    const moved = await client.until(room, dimmed);
    const related = late(moved)[0]!.relatedInformation!;
    expect(related.map(({ location }) => [location.uri, wordsAt(client.text(beam), location.range)])).toEqual([[beam, 'beam']]);
    await client.until(room, fresh);
    const all = client.text(beam).replaceAll('stock   pine-1x6', 'stock   pine-1x8');
    await client.change(beam, all);
    await client.until(room, findings => fresh(findings) && late(findings)[0]!.message.endsWith('pine-1x8.'));
});

test('are as they were where nothing has changed: a file is opened, or a change is undone', async () => {
    await openedDen();
    const from = client.history.length, looks = client.log.filter(line => line.includes('looks at den')).length;
    await client.open('details/beam.coffer');
    await client.open('yard.coffer');
    await settled();
    expect(publicationsOf(room, from).map(({ diagnostics }) => fresh(diagnostics))).not.toContain(false);
    await client.type(room, 'edition 1\n', 'edition 1\n\n');
    await client.until(room, dimmed);
    await client.type(room, 'edition 1\n\n', 'edition 1\n');
    await client.until(room, fresh);
    expect(client.log.filter(line => line.includes('looks at den')).length).toBe(looks);
});

test('are broken off by a newer edit, and questions are answered between rooms', async () => {
    const rooms = Array.from({ length: 40 }, (_, i) => client.onDisk('rooms/den.coffer').replace(/^[\s\S]*?(?=room den)/, '').replace('room den "Den"', `room den-${i}-x`)).join('\n');
    await client.onDiskChange('many.coffer', `edition 1\nfrom "./details/beam.coffer" use beam, clear-beam\n${rooms}`);
    const many = await client.open('many.coffer');
    await client.untilLogged('looks at den-3-x', 1);
    await client.request<Hover>('textDocument/hover', { textDocument: { uri: many }, position: { line: 3, character: 6 } });
    expect(client.log.some(line => line.includes('looks at den-39-x'))).toBe(false);
    await client.type(many, 'edition 1\n', 'edition 1\n\n');
    await client.untilLogged('looks at den-0-x', 2);
    // of the first look nobody heard
    expect(publicationsOf(many).flatMap(({ diagnostics }) => late(diagnostics))).toEqual([]);
    expect(client.log.filter(line => line.includes('looks at den-39-x')).length).toBe(0);
    await client.until(many, fresh);
    expect(late(client.findings(many)!).length).toBe(40);
    expect(late(client.findings(many)!).map(({ range }) => wordsAt(client.text(many), range))).toEqual(Array.from({ length: 40 }, () => 'beam'));
});

test('a fault in the closer look is said, and costs nothing else', async () => {
    await openedDen();
    const text = client.text(room).replace('room den', 'room cursed');
    await client.change(room, text);
    const findings = await client.until(room, hasRule('internal-error'));
    expect(findings.find(({ code }) => code === 'internal-error')!.message).toContain('no luck');
    await client.change(room, text.replace('room cursed', 'room den'));
    await client.until(room, each => fresh(each) && hasNoErrors(each));
});

test('the dry fit of the shipped server comes late too, and stays while its room is typed in', async () => {
    await inAProcess();
    const isIt = hasRule(piecesOverlap.name);
    room = await client.open('untitled:hall', piecesOverlap.wrong);
    await client.until(room, isIt);
    const [first] = publicationsOf(room);
    expect(isIt(first!.diagnostics)).toBe(false);
    const from = client.history.length;
    await client.change(room, `// a note\n${client.text(room)}`);
    const placeOf = (findings: readonly Diagnostic[]): Diagnostic => findings.find(({ code }) => code === piecesOverlap.name)!;
    const moved = await client.until(room, findings => isIt(findings) && isDimmed(placeOf(findings)));
    expect(wordsAt(client.text(room), placeOf(moved).range))
        .toBe(wordsAt(piecesOverlap.wrong, placeOf(publicationsOf(room).find(({ diagnostics }) => isIt(diagnostics))!.diagnostics).range));
    await client.until(room, findings => isIt(findings) && !isDimmed(placeOf(findings)));
    for (const { diagnostics } of publicationsOf(room, from)) expect(diagnostics.filter(({ code }) => code === piecesOverlap.name).length).toBeGreaterThan(0);
    await client.change(room, piecesOverlap.right);
    await client.until(room, findings => !isIt(findings));
});

describe('are gone', () => {
    test('with a text that was never saved and is closed', async () => {
        const beam = client.onDisk('yard.coffer') + client.onDisk('details/beam.coffer').replace(/^edition.*\nfrom.*\n/, '');
        const uri = await client.open('untitled:den', beam + client.onDisk('rooms/den.coffer').replace(/^edition.*\nfrom.*\n/, ''));
        await client.until(uri, fresh);
        await client.close(uri);
        await client.until(uri, findings => findings.length === 0);
        expect(client.history.filter(each => each.uri === uri).at(-1)!.diagnostics).toEqual([]);
    });

    test('with a file that is deleted: while it is open it is what the editor holds, and closed it is gone', async () => {
        await inAProcess('tests/server/late/slow-process.ts');
        await openedDen();
        const from0 = client.history.length;
        await client.onDiskChange('rooms/den.coffer', undefined);
        await client.until(client.uri('yard.coffer'), () => publicationsOf(room, from0).length > 0);
        expect(publicationsOf(room, from0).at(-1)!.diagnostics.length).toBeGreaterThan(0);
        await client.close(room);
        await client.until(room, findings => findings.length === 0);
        const from = client.history.length;
        const other = await client.open('untitled:other', 'edition 1\nroom hall { wall north 9 }\n');
        await client.until(other, findings => findings.length > 0);
        expect(publicationsOf(room, from).flatMap(({ diagnostics }) => diagnostics)).toEqual([]);
    });

    test('not with a file that is closed: what the disk holds is looked at again, and changes thrown away take nothing along', async () => {
        await openedDen();
        await client.type(room, 'edition 1\n', 'edition 1\n\n\n');
        await client.until(room, dimmed);
        await client.close(room);
        const findings = await client.until(room, fresh);
        expect(wordsAt(client.onDisk('rooms/den.coffer'), late(findings)[0]!.range)).toBe('beam');
        for (const { diagnostics } of publicationsOf(room).slice(2)) expect(late(diagnostics).length).toBe(1);
    });
});
