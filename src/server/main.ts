import { NodeFileSystemProvider } from 'langium/node';
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { outlive } from './outlive.ts';
import { serve } from './serve.ts';

// The way to the editor (--stdio, --node-ipc, --pipe, --socket) stands in the command line, as the protocol's library reads it.
const connection = createConnection(ProposedFeatures.all);
outlive(connection.console);
serve(connection, new NodeFileSystemProvider());
