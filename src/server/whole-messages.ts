import { Transform, type TransformCallback } from 'node:stream';

const HEADER = 'Content-Length: ', END = '\r\n\r\n';
/** Far more than any editor sends; who announces more has sent something else. */
const MOST_BYTES = 64_000_000;
const LONGEST_HEADERS = 4096;

/**
 * Lets whole messages through, each with its headers. Where the headers say no length, or one that cannot be right, the stream is
 * taken up again at the next headers that do: that costs the messages between, where the reader behind this would never
 * find its place again and be deaf to all that follows.
 */
export class WholeMessages extends Transform {
    private waiting: Buffer = Buffer.alloc(0);

    override _transform(chunk: Buffer, _encoding: BufferEncoding, done: TransformCallback): void {
        this.waiting = this.waiting.length === 0 ? chunk : Buffer.concat([this.waiting, chunk]);
        while (this.takeOne()) { /* as many as there are */ }
        done();
    }

    /** True where there may be more to take. */
    private takeOne(): boolean {
        const end = this.waiting.indexOf(END);
        if (end < 0) return this.waiting.length > LONGEST_HEADERS && this.skip();
        const length = lengthIn(this.waiting.toString('latin1', 0, end));
        if (length === undefined) return this.skip();
        const from = end + END.length, to = from + length;
        // A message holds no line ends of its own (JSON writes them otherwise), so further headers in it are those of the next one.
        const next = headersIn(this.waiting.subarray(from, to));
        if (next !== undefined) {
            this.waiting = this.waiting.subarray(from + next);
            return true;
        }
        if (this.waiting.length < to) return false;
        this.push(this.waiting.subarray(0, to));
        this.waiting = this.waiting.subarray(to);
        return this.waiting.length > 0;
    }

    /** Goes on at the next headers, or waits for them. */
    private skip(): boolean {
        const next = this.waiting.indexOf(HEADER, 1);
        this.waiting = this.waiting.subarray(next < 0 ? Math.max(1, this.waiting.length - HEADER.length + 1) : next);
        return next >= 0;
    }
}

/** The length that headers say, where they are headers at all. */
function lengthIn(headers: string): number | undefined {
    const lines = headers.split('\r\n');
    if (!lines.every(line => /^[\w-]+: ?[^\r\n]*$/.test(line))) return undefined;
    const said = lines.flatMap(line => /^content-length: *(\d+) *$/i.exec(line)?.[1] ?? []);
    const length = Number(said.at(-1) ?? Infinity);
    return length <= MOST_BYTES ? length : undefined;
}

/** Where further headers begin in what should be one message. */
function headersIn(message: Buffer): number | undefined {
    for (let at = message.indexOf(HEADER); at >= 0; at = message.indexOf(HEADER, at + 1)) {
        if (/^Content-Length: \d+\r\n/.test(message.toString('latin1', at, at + 40))) return at;
    }
    return undefined;
}
