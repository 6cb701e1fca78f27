import { stat } from 'node:fs/promises';
import { join } from 'node:path';
import { setFlagsFromString } from 'node:v8';
import type { URI } from 'langium';
import { NodeFileSystemProvider } from 'langium/node';
import { createConnection, ProposedFeatures, type Connection, type ConnectionOptions } from 'vscode-languageserver/node';
import { USUAL_STEPS } from '../cutting/look-closer.ts';
import { boardsInThreads } from '../worker/boards-thread.ts';
import { NotBeforeInitialize } from './not-before-initialize.ts';
import { logToEditor, outlive } from './outlive.ts';
import { serve } from './serve.ts';
import { isSoundOpening } from './sound-openings.ts';
import { WholeMessages } from './whole-messages.ts';

// A server lives as long as the editor, and holds far less than V8 lets grow before it collects: that is done sooner, for a few hundredths of the
// processor's time. See DEVELOPERS.md for what it saves. V8 11 to 13 know it.
setFlagsFromString('--heap-growing-percent=30');

// The way to the editor (--stdio, --node-ipc, --pipe, --socket) stands in the command line, as the protocol's library reads it.
const early = new NotBeforeInitialize();
const options: ConnectionOptions = {
    messageStrategy: {
        handleMessage(message, next) {
            if (isSoundOpening(message)) early.handleMessage(message, next);
            else connection.console.error('The editor opened something that is no text, or is at an address that no file has: it is left out.');
        },
    },
};
const MOST_BYTES = 8_000_000;
const connection: Connection = process.argv.includes('--stdio') ? overStdio() : createConnection(ProposedFeatures.all, options);
early.answerOn(connection);
outlive(connection.console);

/** The disk, of which nothing is read that is larger than any house. */
class Disk extends NodeFileSystemProvider {
    override async readFile(uri: URI): Promise<string> {
        if ((await stat(uri.fsPath)).size > MOST_BYTES) throw new Error('is too large');
        return super.readFile(uri);
    }
}

/** What is written to the console is logged by the editor: its way is standard output, and what is no message would break it. */
function overStdio(): Connection {
    const messages = new WholeMessages(() => { made.console.error('What the editor sent is no message, or longer than any: it is left out up to the next one.'); });
    process.stdin.pipe(messages);
    process.stdin.on('close', () => messages.end());
    const made: Connection = createConnection(ProposedFeatures.all, messages, process.stdout, options);
    logToEditor(made.console);
    return made;
}
// a bundle of its own beside the command line's, where the boards' solver lies
const boardsWorker = join(__dirname, '../cli/boards-worker.js');
serve(connection, new Disk(), undefined, say => boardsInThreads(boardsWorker, { steps: USUAL_STEPS, say }));
