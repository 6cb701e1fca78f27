import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { WholeMessages } from '../../src/server/whole-messages.ts';

const message = (body: string): Buffer => Buffer.from(`Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`);
const HELLO = '{"method":"hello"}';

/** What comes through, of the chunks that went in. */
async function through(chunks: readonly Buffer[]): Promise<string> {
    const messages = new WholeMessages();
    const out: Buffer[] = [];
    messages.on('data', (data: Buffer) => out.push(data));
    for (const chunk of chunks) messages.write(chunk);
    messages.end();
    await new Promise(resolve => messages.once('end', resolve));
    return Buffer.concat(out).toString();
}

test('messages come through as they are, however they are cut', async () => {
    await fc.assert(fc.asyncProperty(fc.array(fc.json(), { maxLength: 6 }), fc.array(fc.nat(40), { maxLength: 60 }), async (bodies, cuts) => {
        const whole = Buffer.concat(bodies.map(message));
        const chunks: Buffer[] = [];
        let from = 0;
        for (const cut of cuts) { chunks.push(whole.subarray(from, from + cut)); from += cut; }
        chunks.push(whole.subarray(from));
        expect(await through(chunks)).toBe(whole.toString());
    }), { seed: 3, numRuns: 150 });
});

test('a long message in many parts is put together once, and what is no message is told once', async () => {
    const long = message(JSON.stringify({ text: 'a'.repeat(400_000) })), parts = Array.from({ length: Math.ceil(long.length / 500) }, (_, i) => long.subarray(i * 500, (i + 1) * 500));
    const concat = vi.spyOn(Buffer, 'concat');
    let copied = 0, told = 0;
    const messages = new WholeMessages(() => { told++; });
    let out = 0;
    messages.on('data', (data: Buffer) => { out += data.length; });
    for (const part of [...parts, message(HELLO), Buffer.from('nothing\r\n\r\n'), Buffer.from('nothing more\r\n\r\n'), message(HELLO)]) messages.write(part);
    messages.end();
    await new Promise(resolve => messages.once('end', resolve));
    for (const { value } of concat.mock.results) copied += (value as Buffer).length;
    concat.mockRestore();
    expect(out).toBe(long.length + 2 * message(HELLO).length);
    expect(copied).toBeLessThan(4 * long.length);
    expect(told).toBe(1);
});

describe('the message after something broken comes through', () => {
    test.each<[string, string]>([
        ['a length that is a word', 'Content-Length: abc\r\n\r\n{}'],
        ['a length below nothing', 'Content-Length: -5\r\n\r\n{}'],
        ['a length that nobody sends', 'Content-Length: 99999999999\r\n\r\n{}'],
        ['a length too long by some', 'Content-Length: 40\r\n\r\n{}'],
        ['a length too long by much', 'Content-Length: 4000\r\n\r\n{"a":1}'],
        ['no length', 'Content-Foo: 5\r\n\r\n{}'],
        ['no headers', 'hello\r\n\r\n'],
        ['a body without headers', '{"jsonrpc":"2.0"}'],
        ['much that is nothing', 'x'.repeat(100_000)],
    ])('%s', async (_, broken) => {
        expect(await through([Buffer.from(broken), message(HELLO)])).toBe(message(HELLO).toString());
        expect(await through([...[...broken].slice(0, 200).map(each => Buffer.from(each)), message(HELLO)])).toBe(message(HELLO).toString());
    });
    test('a length too short: its beginning goes to the reader, who cannot read it', async () => {
        expect(await through([Buffer.from('Content-Length: 5\r\n\r\n{"jsonrpc":"2.0","id":3}'), message(HELLO)])).toBe(`Content-Length: 5\r\n\r\n{"jso${message(HELLO).toString()}`);
    });
});
