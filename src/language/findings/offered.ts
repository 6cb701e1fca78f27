import type { LangiumDocument } from 'langium';
import type { Fix, TextChange } from '../../findings/finding.ts';
import * as ast from '../generated/ast.ts';
import { namesOf } from '../scope/names.ts';
import { sourceOf } from '../types/place.ts';
import { quoted } from '../types/words.ts';
import { pathBetween } from '../workspace/import-graph.ts';
import { importPath, isInside } from '../workspace/imports.ts';
import { isBuiltin } from '../workspace/builtin.ts';
import { servicesOf } from '../workspace/services-of.ts';

/** A file of the workspace that declares a name, and how to write its path. */
interface Offer { readonly uri: string; readonly path: string }

const MOST = 3;

export function offeredElsewhere(document: LangiumDocument, name: string): readonly Offer[] {
    const { LangiumDocuments, Imports } = servicesOf(document).shared.workspace;
    const offers: Offer[] = [];
    for (const other of LangiumDocuments.all) {
        if (other === document || isBuiltin(other.uri) || !isInside(other.uri, Imports.folders) || !namesOf(other).has(name)) continue;
        offers.push({ uri: other.uri.toString(), path: pathBetween(document.uri, other.uri) });
    }
    return offers.sort((a, b) => a.path.length - b.path.length || (a.path < b.path ? -1 : 1)).slice(0, MOST);
}

/** One fix a file: adds the name to the `from` line that is there, or writes one. */
export function importFixes(document: LangiumDocument, name: string, offers: readonly Offer[]): readonly Fix[] {
    return offers.map(({ uri, path }, i) => ({
        title: `Import ${quoted(name)} from ${path}`,
        edits: [importEdit(document, name, uri, path)],
        ...i === 0 && { preferred: true },
    }));
}

export function importEdit(document: LangiumDocument, name: string, uri: string, path: string): TextChange {
    const here = document.uri.toString();
    const file = document.parseResult.value;
    const uses = ast.isFile(file) ? file.uses : [];
    for (const use of uses) {
        const leads = importPath(document.uri, use.path ?? '');
        const last = use.names[use.names.length - 1];
        if (!last?.$cstNode || !('uri' in leads) || leads.uri.toString() !== uri) continue;
        const end = sourceOf(last).range.end;
        return { uri: here, range: { start: end, end }, text: `, ${name}` };
    }
    const above = uses.at(-1) ?? (ast.isFile(file) ? file.editions.at(-1) : undefined);
    const line = above?.$cstNode ? sourceOf(above).range.end.line + 1 : 0;
    return { uri: here, range: { start: { line, character: 0 }, end: { line, character: 0 } }, text: `from "${path}" use ${name}\n` };
}
