import type { LangiumDocument } from 'langium';
import type { LangiumServices, LangiumSharedServices } from 'langium/lsp';
import type { Finding } from '../findings/finding.ts';
import type { Editor } from './features/editor.ts';
import type { Surroundings } from './scope/reach.ts';
import type { Vocabulary } from './scope/vocabulary.ts';
import type { ImportGraph } from './workspace/import-graph.ts';
import type { Jobs } from './workspace/jobs.ts';
import type { Rooms } from './workspace/rooms.ts';
import type { Stamps } from './workspace/stamps.ts';
import type { Tables } from './workspace/tables.ts';

// What services there are, for whoever uses them; services.ts makes them.

/** What a document is checked with. The server and the command line put the whole inspection here; until then it is the language alone. */
export interface Checks {
    readonly findings: (document: LangiumDocument) => readonly Finding[];
}

export interface SharedAdditions {
    readonly workspace: { readonly Imports: ImportGraph, readonly Jobs: Jobs, readonly Rooms: Rooms, readonly Stamps: Stamps, readonly Tables: Tables };
}
export interface Additions {
    readonly vocabulary: Vocabulary;
    readonly surroundings: Surroundings;
    readonly checks: Checks;
    readonly editor: Editor;
}
export type CofferSharedServices = LangiumSharedServices & SharedAdditions;
export type CofferServices = LangiumServices & Additions & { readonly shared: CofferSharedServices };
