import { join } from 'node:path';
import { NodeFileSystemProvider } from 'langium/node';
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { USUAL_STEPS } from '../cutting/look-closer.ts';
import { boardsInThreads } from '../worker/boards-thread.ts';
import { outlive } from './outlive.ts';
import { serve } from './serve.ts';

// The way to the editor (--stdio, --node-ipc, --pipe, --socket) stands in the command line, as the protocol's library reads it.
const connection = createConnection(ProposedFeatures.all);
outlive(connection.console);
// a bundle of its own beside the command line's, where the boards' solver lies
const boardsWorker = join(__dirname, '../cli/boards-worker.js');
serve(connection, new NodeFileSystemProvider(), undefined, say => boardsInThreads(boardsWorker, USUAL_STEPS, say));
