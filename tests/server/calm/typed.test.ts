import { PassThrough } from 'node:stream';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { createConnection, createMessageConnection, StreamMessageReader, StreamMessageWriter, type Diagnostic, type MessageConnection } from 'vscode-languageserver/node';
import { serve } from '../../../src/server/serve.ts';
import { BEAM, HALL } from '../../../src/rules/support/examples.ts';
import { HOLDS_MS } from '../../../src/server/calm/holding.ts';
import { REST_MS } from '../../../src/server/calm/typing.ts';
import { HOLDING, type HoldingParams } from '../../../src/server/messages.ts';

const KEY_MS = 130;
const URI = 'untitled:den.coffer';

/** Somebody who types, at a clock of his own: what the server would do while nobody types it does when this clock says so. */
class Hand {
    text = '';
    /** Everything that was published for the file, in order. */
    readonly published: (readonly Diagnostic[])[] = [];
    /** Whether all holds still, as often as it was told. */
    readonly holding: boolean[] = [];
    private version = 1;

    private constructor(private readonly connection: MessageConnection) {
        connection.onNotification('textDocument/publishDiagnostics', ({ uri, diagnostics }: { uri: string; diagnostics: Diagnostic[] }) => {
            if (uri === URI) this.published.push(diagnostics);
        });
        connection.onNotification(HOLDING, ({ still }: HoldingParams) => { this.holding.push(still); });
        connection.listen();
    }

    static async at(text: string): Promise<Hand> {
        const up = new PassThrough(), down = new PassThrough();
        serve(createConnection(new StreamMessageReader(up), new StreamMessageWriter(down)));
        const hand = new Hand(createMessageConnection(new StreamMessageReader(down), new StreamMessageWriter(up)));
        await hand.connection.sendRequest('initialize', { processId: null, rootUri: null, workspaceFolders: null, capabilities: { textDocument: { publishDiagnostics: {} } } });
        await hand.connection.sendNotification('initialized', {});
        hand.text = text;
        await hand.connection.sendNotification('textDocument/didOpen', { textDocument: { uri: URI, languageId: 'coffer', version: 1, text } });
        await hand.rest();
        return hand;
    }

    get shown(): readonly string[] {
        return (this.published.at(-1) ?? []).map(({ message }) => message);
    }

    /** In place of `length` characters at `offset`. */
    async edit(offset: number, length: number, text: string): Promise<void> {
        const at = (place: number): { line: number; character: number } => {
            const lines = this.text.slice(0, place).split('\n');
            return { line: lines.length - 1, character: lines.at(-1)!.length };
        };
        const range = { start: at(offset), end: at(offset + length) };
        this.text = this.text.slice(0, offset) + text + this.text.slice(offset + length);
        await this.connection.sendNotification('textDocument/didChange', { textDocument: { uri: URI, version: ++this.version }, contentChanges: [{ range, text }] });
        await this.built();
    }

    /** Key by key. The editor writes a closing brace along and indents a new line; both are typed over as they come. */
    async type(words: string, offset: number, { afterLine = KEY_MS } = {}): Promise<void> {
        for (const key of words) {
            const next = this.text[offset];
            if (key === '{') await this.edit(offset, 0, '{}');
            else if (key === '}' && next === '}') await this.pass(0);
            else if (key === '}' && /^\s*}/.test(this.text.slice(offset))) {
                const blank = /^\s*/.exec(this.text.slice(offset))![0];
                await this.edit(offset, blank.length, '');
            } else await this.edit(offset, 0, key);
            offset++;
            await this.pass(key === '\n' ? afterLine : KEY_MS);
        }
    }

    async rest(): Promise<void> {
        await this.built();
        for (let i = 0; i < 6; i++) {
            await this.pass(REST_MS);
            await this.built();
        }
    }

    private async pass(ms: number): Promise<void> {
        await vi.advanceTimersByTimeAsync(ms);
    }

    /** The answer waits for the build. */
    private async built(): Promise<void> {
        await this.connection.sendRequest('textDocument/foldingRange', { textDocument: { uri: URI } });
        for (let i = 0; i < 20; i++) await new Promise(resolve => setImmediate(resolve));
    }
}

beforeEach(() => { vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'Date'] }); });
afterEach(() => { vi.useRealTimers(); });


const ROOM = HALL.slice(BEAM.length);

test('right text is typed in calm, though the hand rests after every line: nothing is told but what the block still lacks, and little changes', async () => {
    const hand = await Hand.at(BEAM);
    await hand.type(ROOM, BEAM.length, { afterLine: REST_MS * 2 });
    await hand.rest();
    expect(hand.text.replace(/ +$/gm, '')).toContain(ROOM);
    for (const { message } of hand.published.flat()) expect(message).toMatch(/^`grid` (still needs .*\.|does not show .*: give .*)$/);
    expect(hand.shown).toEqual([]);
    expect(hand.published.length).toBeLessThan(10);
});

test('a wrong word is told when its line is left, though the hand does not rest; in the line that is typed nothing is', async () => {
    const hand = await Hand.at(BEAM);
    const line = '  spacers { stok poplar-1x4 }', at = BEAM.indexOf('  cleats');
    await hand.type(line, at);
    expect(hand.shown).toEqual([]);
    await hand.type('\n  ', at + line.length);
    expect(hand.shown.join()).toContain('`stok`');
    const changes = hand.published.length;
    await hand.type('/', at + line.length + '\n  '.length);
    expect(hand.published.length).toBe(changes);
    await hand.rest();
    expect(hand.shown.some(message => message.includes('`stok`'))).toBe(true);
    expect(hand.shown.length).toBeGreaterThan(1);
});

test('what is wrong at rest is told, wherever the hand rests; and what is mended at one stroke is gone at once', async () => {
    const hand = await Hand.at(BEAM);
    const at = BEAM.indexOf('3/4" x');
    await hand.edit(at, 1, 'y');
    expect(hand.shown).toEqual([]);
    await hand.rest();
    expect(hand.shown).not.toEqual([]);
    await hand.edit(at, 'y/4"'.length, '3/4"');
    expect(hand.text).toBe(BEAM);
    expect(hand.shown).toEqual([]);
});

test('who goes on typing is told that all holds still, and told when it does not; who types a figure is not', async () => {
    const hand = await Hand.at(BEAM);
    const at = BEAM.indexOf('  cleats'), figure = '// 5';
    expect(figure.length * KEY_MS + REST_MS).toBeLessThan(HOLDS_MS);
    await hand.type(figure, at);
    await hand.rest();
    expect(hand.holding).toEqual([]);
    await hand.type(' and what is to be said of it', at + figure.length);
    expect(hand.holding).toEqual([true]);
    await hand.rest();
    expect(hand.holding).toEqual([true, false]);
    // an edit that no key makes is meant as it is
    await hand.type('// and on and on', at);
    expect(hand.holding).toEqual([true, false, true]);
    await hand.edit(0, 0, '// something longer that was pasted\n');
    expect(hand.holding).toEqual([true, false, true, false]);
});
