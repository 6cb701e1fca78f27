import { BrowserMessageReader, BrowserMessageWriter, createConnection, ProposedFeatures } from 'vscode-languageserver/browser';
import { serve } from './serve.ts';

/** The worker this runs in; it is its own way to the editor. */
declare const self: ConstructorParameters<typeof BrowserMessageReader>[0];

// The same server in a browser's worker, where there is no disk: the editor reads the files.
serve(createConnection(ProposedFeatures.all, new BrowserMessageReader(self), new BrowserMessageWriter(self)));
