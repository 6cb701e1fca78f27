import { PassThrough } from 'node:stream';
import { afterEach, beforeEach, vi } from 'vitest';
import { createConnection, createMessageConnection, StreamMessageReader, StreamMessageWriter, type Diagnostic, type MessageConnection } from 'vscode-languageserver/node';
import { serve } from '../../../src/server/serve.ts';
import { HOLDING, type HoldingParams } from '../../../src/server/messages.ts';
import { REST_MS } from '../../../src/server/calm/typing.ts';

/** From one key to the next. */
export const KEY_MS = 130;
const URI = 'untitled:den.coffer';

/**
 * The tests of a file go by a clock that is set by hand. What a server still works at when one ends is let come to its end by that clock: whoever waited for
 * a turn would wait for ever, and everybody behind him, in the next file too.
 */
export function atTheirOwnClock(): void {
    beforeEach(() => { vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'Date'] }); });
    afterEach(async () => {
        for (let quiet = 0; quiet < 5; quiet = vi.getTimerCount() === 0 ? quiet + 1 : 0) {
            await vi.advanceTimersByTimeAsync(REST_MS);
            await rounds();
        }
        vi.useRealTimers();
    });
}

/** Rounds of the loop of Node, in which messages are read and written. */
async function rounds(): Promise<void> {
    for (let i = 0; i < 20; i++) await new Promise(resolve => setImmediate(resolve));
}

/** Somebody who types, at a clock of his own: what the server would do while nobody types it does when this clock says so. */
export class Hand {
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
        await rounds();
    }
}
