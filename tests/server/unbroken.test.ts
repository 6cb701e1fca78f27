import { spawn } from 'node:child_process';
import { describe, expect, test } from 'vitest';
import { some } from '../support/full.ts';
import { bundledServer } from './client.ts';

interface Answer {
    readonly id?: number;
    readonly method?: string;
    readonly error?: { readonly code: number };
    readonly params?: { readonly uri?: string; readonly diagnostics?: { readonly message: string }[] };
}

const framed = (body: string): string => `Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`;
const message = (content: object): string => framed(JSON.stringify({ jsonrpc: '2.0', ...content }));
const open = (name: string, text: string): string => message({ method: 'textDocument/didOpen', params: { textDocument: { uri: `file:///nowhere/at/all/${name}`, languageId: 'coffer', version: 1, text } } });
const HELLO = message({ id: 1, method: 'initialize', params: { processId: null, rootUri: null, capabilities: {}, workspaceFolders: null } }) + message({ method: 'initialized', params: {} });
/** A file with one mistake, and a question about another one: who finds the one and answers the other is not deaf. */
const LIVES = open('alive.coffer', 'edition 1\nlet reveal = brass\n') + message({ id: 99, method: 'textDocument/foldingRange', params: { textDocument: { uri: 'file:///nowhere/at/all/alive.coffer' } } });

/** Everything the server says to what is written to it byte by byte, until it has shown that it lives. */
async function saidTo(...written: readonly string[]): Promise<Answer[]> {
    const server = spawn(process.execPath, [await bundledServer(), '--stdio']);
    const said: Answer[] = [];
    const opened = [...written.join('').matchAll(/"uri":"[^"]*\/(\w+\.coffer)","languageId"/g)].map(found => found[1]!);
    let rest = '';
    try {
        await new Promise<void>((resolve, reject) => {
            server.on('exit', code => reject(new Error(`The server ended with ${code}.`)));
            server.stdout.on('data', (data: Buffer) => {
                rest += data.toString();
                for (let found = /^Content-Length: (\d+)\r\n\r\n/.exec(rest); found && rest.length >= found[0].length + Number(found[1]); found = /^Content-Length: (\d+)\r\n\r\n/.exec(rest)) {
                    const end = found[0].length + Number(found[1]);
                    said.push(JSON.parse(rest.slice(found[0].length, end)) as Answer);
                    rest = rest.slice(end);
                }
                if (said.some(({ id }) => id === 99) && opened.every(name => findings(said, name).length > 0)) resolve();
            });
            server.stdin.write(written.join(''));
        });
    } finally {
        server.removeAllListeners('exit');
        server.kill();
    }
    return said;
}

function findings(said: readonly Answer[], name: string): string[] {
    return said.filter(({ params }) => params?.uri?.endsWith(name)).at(-1)?.params?.diagnostics?.map(each => each.message) ?? [];
}

const NONSENSE = [
    'Content-Length: abc\r\n\r\n{}',
    'Content-Type: text\r\n\r\n{}',
    'Content-Length: 5\r\n\r\n{"jsonrpc":"2.0","id":3,"method":"shutdown"}',
    'Content-Length: 500\r\n\r\n{}',
    framed('{"a":'),
    framed('null') + framed('[]') + framed('3'),
    message({ id: 5, method: 'textDocument/hover' }) + message({ method: 'textDocument/didChange', params: {} }) + message({ method: 'textDocument/didOpen', params: null }),
    message({ method: 'textDocument/didOpen', params: { textDocument: { uri: 5 } } }) + message({ method: 'workspace/didChangeWatchedFiles', params: { changes: [{ uri: '%zz', type: 9 }] } }),
    ...[null, 5, undefined].map(text => message({ method: 'textDocument/didOpen', params: { textDocument: { uri: 'file:///nowhere/none', languageId: 'coffer', version: 1, text } } })),
    message({ method: 'textDocument/didOpen', params: { textDocument: { uri: `file://${'/a'.repeat(20_000)}`, languageId: 'coffer', version: 1, text: 'edition 1' } } }),
    message({ method: 'textDocument/didOpen', params: { textDocument: { uri: 'file:///a\ud800', languageId: 'coffer', version: 1, text: 'edition 1' } } }),
];

describe('the server lives on after', () => {
    test('requests before the first', async () => {
        const early = message({ id: 7, method: 'textDocument/hover', params: { textDocument: { uri: 'file:///nowhere/at/all/alive.coffer' }, position: { line: 0, character: 0 } } });
        const said = await saidTo(early, HELLO, LIVES);
        expect(said.find(({ id }) => id === 7)?.error?.code).toBe(-32002);
    });
    test('a second beginning', async () => {
        const said = await saidTo(HELLO, message({ id: 8, method: 'initialize', params: { processId: null, rootUri: null, capabilities: {} } }), LIVES);
        expect(said.find(({ id }) => id === 8)?.error?.code).toBe(-32600);
    });
    test.each(some([[[null]], [5], [[{ uri: 5, name: 'a' }, { name: 'b' }]], [[{ uri: 'file:///a\ud800', name: 'a' }]]], 2))('folders that are none: %j', async workspaceFolders => {
        const hello = message({ id: 1, method: 'initialize', params: { processId: null, rootUri: null, capabilities: {}, workspaceFolders } }) + message({ method: 'initialized', params: {} });
        const said = await saidTo(hello, LIVES);
        expect(findings(said, 'alive.coffer')).toEqual(['There is no name `brass` here.']);
    });
    test('all that is no message, or one without sense: what comes after each is understood', async () => {
        const said = await saidTo(HELLO, ...NONSENSE.flatMap((broken, i) => [broken, open(`after${i}.coffer`, 'edition 1\nlet reveal = brass\n')]), LIVES);
        expect(NONSENSE.map((_, i) => findings(said, `after${i}.coffer`))).toEqual(NONSENSE.map(() => ['There is no name `brass` here.']));
    });
    test('half a character in the path of an import', async () => {
        const said = await saidTo(HELLO, open('odd.coffer', 'edition 1\nfrom "./a\ud800b" use c\n'), LIVES);
        expect(findings(said, 'odd.coffer')).toEqual([expect.stringMatching(/no file name can have/)]);
    });
    test('values that depend on each other without end', async () => {
        const lets = Array.from({ length: 2000 }, (_, i) => `let a${i} = a${i + 1}\n`).join('');
        const said = await saidTo(HELLO, open('odd.coffer', `edition 1\n${lets}let a2000 = 1"\n`), LIVES);
        expect(findings(said, 'odd.coffer')[0]).toMatch(/`a\d+` is at the end of a chain of 200 values that depend on each other/);
    });
});
