import { parentPort, workerData } from 'node:worker_threads';
import { USUAL_STEPS } from '../cutting/look-closer.ts';
import { boardsInThreads } from '../worker/boards-thread.ts';
import { nodeFiles } from './file-system.ts';
import type { Answered, Asked, Called, ToCommand, ToFront } from './messages.ts';
import { run } from './program.ts';
import { notingTerminal } from './rehearsal.ts';

// The command, in a thread of its own: it reads and computes, for as long as that takes, and the main thread shows, writes and hears.
const port = parentPort!, { argv, cwd } = workerData as Called;
const stop = new AbortController();
const waiting: { resolve(answered: Answered): void }[] = [];
const tell = (message: ToFront): void => { port.postMessage(message); };

port.on('message', (message: ToCommand) => {
    if ('stop' in message) stop.abort(message.stop);
    else waiting[message.id]!.resolve(message.answered);
});

// in a bundle of its own, beside this one. A search that fails is a mistake in the program: a plan that is less than was asked for must not look like one
const say = (words: string): never => { throw new Error(words); };
const prover = boardsInThreads(new URL('./boards-worker.js', import.meta.url), { steps: USUAL_STEPS, keep: true, say });

void run(argv, {
    cwd, disk: nodeFiles, stopped: stop.signal,
    openTerminal(color) {
        tell({ color });
        return notingTerminal(act => { tell({ act }); }, progress => { tell({ progress }); });
    },
    hold: write => { tell({ act: { write } }); },
    replace: async (replace, content, { ino, size, mtimeMs, mode, uid, gid }) => {
        await answer({ replace, content, before: { ino, size, mtimeMs, mode, uid, gid } });
    },
    async readStdin() {
        const answered = await answer('stdin');
        return 'bytes' in answered ? answered.bytes : new Uint8Array();
    },
    prover: {
        prove(asked, found) {
            tell({ searches: true });
            return prover.prove(asked, found);
        },
    },
    ready: performance => { tell({ ready: performance }); },
    serveEditor() {
        tell({ serve: true });
        return new Promise(() => {});
    },
}).then(code => { tell({ end: code }); });

async function answer(asked: Asked): Promise<Answered> {
    const answered = await new Promise<Answered>(resolve => {
        waiting.push({ resolve });
        tell({ asked, id: waiting.length - 1 });
    });
    if ('failed' in answered) throw Object.assign(new Error(answered.failed), answered.code === undefined ? {} : { code: answered.code });
    return answered;
}
