import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { slow } from './slow-server.ts';

// The slow server as a process of its own.
slow(createConnection(ProposedFeatures.all));
