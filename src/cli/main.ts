import { EXIT } from './exit-code.ts';
import { run } from './program.ts';

const stop = new AbortController();
process.once('SIGINT', () => {
    stop.abort();
    // Outside of --watch nothing listens: end as an interrupted program does, without waiting for the work.
    process.once('SIGINT', () => process.exit(130));
    if (!process.argv.includes('--watch')) process.exit(130);
});

// A reader that has seen enough (`| head`) closes the pipe: not a failure.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE') process.exit(process.exitCode ?? EXIT.clean);
    internal(error);
});

process.on('uncaughtException', internal);
process.on('unhandledRejection', internal);

async function readStdin(): Promise<Uint8Array> {
    const chunks: Uint8Array[] = [];
    for await (const chunk of process.stdin) chunks.push(chunk as Uint8Array);
    return Buffer.concat(chunks);
}

function internal(error: unknown): never {
    process.stderr.write(`cofferwright: this is a mistake in the program, not in your files.\n${error instanceof Error ? error.stack : String(error)}\n`);
    process.exit(EXIT.internal);
}

run(process.argv.slice(2), { cwd: process.cwd(), stdout: process.stdout, stderr: process.stderr, env: process.env, readStdin, stop: stop.signal })
    .then(code => { process.exitCode = code; }, internal);
