import type { LangiumDocument } from 'langium';
import type { CofferSharedServices } from '../../coffer-services.ts';
import { isBuiltin } from '../../workspace/builtin.ts';
import { pathBetween } from '../../workspace/import-graph.ts';
import { isInside } from '../../workspace/imports.ts';
import { PICTURE, type Suggestion } from './suggestion.ts';

/** Paths from a file to the others of the workspace, and to the folders they lie in. */
export function importPaths(document: LangiumDocument, services: CofferSharedServices): readonly Suggestion[] {
    const files = filesFrom(document, services);
    const folders = new Set(files.flatMap(path => {
        const steps = path.split('/').slice(0, -1);
        return steps.map((_, i) => `${steps.slice(0, i + 1).join('/')}/`).filter(folder => !/^(\.\.?\/)+$/.test(folder));
    }));
    return [
        ...files.map(label => ({ label, kind: PICTURE.file })),
        ...[...folders].sort().map(label => ({ label, kind: PICTURE.folder, last: true })),
    ];
}

export function filesFrom(document: LangiumDocument, { workspace: { LangiumDocuments, Imports } }: CofferSharedServices): readonly string[] {
    return LangiumDocuments.all
        .filter(other => other !== document && !isBuiltin(other.uri) && isInside(other.uri, Imports.folders))
        .map(other => pathBetween(document.uri, other.uri)).toArray().sort();
}
