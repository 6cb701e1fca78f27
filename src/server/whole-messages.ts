import { Transform, type TransformCallback } from 'node:stream';

const HEADER = 'Content-Length: ', END = '\r\n\r\n';
/** Far more than any editor sends; who announces more has sent something else. */
const MOST_BYTES = 64_000_000;
const LONGEST_HEADERS = 4096;
/** As long as a header with its number and its end of line is at most. */
const LONGEST_BEGINNING = 40;

/**
 * Lets whole messages through, each with its headers. Where the headers say no length, or one that cannot be right, the stream is
 * taken up again at the next headers that do: that costs the messages between, where the reader behind this would never
 * find its place again and be deaf to all that follows. No byte is looked at once for each part in which a long message comes.
 */
export class WholeMessages extends Transform {
    private waiting: Buffer = Buffer.alloc(0);
    /** What came since: a long message is put together once, when all of it is there. */
    private parts: Buffer[] = [];
    private size = 0;
    /** With fewer bytes there is nothing to be done, unless further headers come. */
    private needed = 0;
    /** The last bytes that came. */
    private tail: Buffer = Buffer.alloc(0);
    private isSkipping = false;

    /** `onSkip`: told once whenever something that is no message begins. */
    constructor(private readonly onSkip: () => void = () => undefined) {
        super();
    }

    override _transform(chunk: Buffer, _encoding: BufferEncoding, done: TransformCallback): void {
        this.parts.push(chunk);
        this.size += chunk.length;
        const end = Buffer.concat([this.tail, chunk]);
        this.tail = end.subarray(-LONGEST_BEGINNING);
        if (this.size < this.needed && headersIn(end) === undefined) return done();
        this.waiting = this.parts.length === 1 ? chunk : Buffer.concat(this.parts);
        this.needed = 0;
        while (this.takeOne()) { /* as many as there are */ }
        this.parts = [this.waiting];
        this.size = this.waiting.length;
        done();
    }

    /** True where there may be more to take. */
    private takeOne(): boolean {
        const end = this.waiting.subarray(0, LONGEST_HEADERS).indexOf(END);
        if (end < 0) return this.waiting.length > LONGEST_HEADERS && this.skip();
        const length = lengthIn(this.waiting.toString('latin1', 0, end));
        if (length === undefined) return this.skip();
        const from = end + END.length, to = from + length;
        // A message holds no line ends of its own (JSON writes them otherwise), so further headers in it are those of the next one.
        const next = headersIn(this.waiting.subarray(from, to));
        if (next !== undefined) {
            this.tell();
            this.waiting = this.waiting.subarray(from + next);
            return true;
        }
        if (this.waiting.length < to) {
            this.needed = to;
            return false;
        }
        this.push(this.waiting.subarray(0, to));
        this.isSkipping = false;
        this.waiting = this.waiting.subarray(to);
        return this.waiting.length > 0;
    }

    /** Goes on at the next headers, or waits for them. */
    private skip(): boolean {
        this.tell();
        const next = this.waiting.indexOf(HEADER, 1);
        this.waiting = this.waiting.subarray(next < 0 ? Math.max(1, this.waiting.length - HEADER.length + 1) : next);
        return next >= 0;
    }

    private tell(): void {
        if (!this.isSkipping) this.onSkip();
        this.isSkipping = true;
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
        if (/^Content-Length: \d+\r\n/.test(message.toString('latin1', at, at + LONGEST_BEGINNING))) return at;
    }
    return undefined;
}
