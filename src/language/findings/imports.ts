import type { LangiumDocument, URI } from 'langium';
import { replacing, type Finding } from '../../findings/finding.ts';
import type { Source } from '../../provenance/source.ts';
import * as ast from '../generated/ast.ts';
import { localName, ownNames } from '../scope/names.ts';
import { sourceOfProperty } from '../types/place.ts';
import { quoted } from '../types/words.ts';
import { MOST_FOLLOWED, pathBetween, stemOf } from '../workspace/import-graph.ts';
import { NOT_READ } from '../workspace/most-files.ts';
import { importPath, isInside } from '../workspace/imports.ts';
import { servicesOf } from '../workspace/services-of.ts';
import { finding } from './make.ts';
import { near } from './near.ts';
import { listed } from '../../plain/words.ts';

/** What is wrong with the `from` lines: files that are not there or not allowed, rings of imports, names brought in twice. */
export function importFindings(document: LangiumDocument, file: ast.File): readonly Finding[] {
    const found: Finding[] = [];
    for (const use of file.uses) {
        const wrong = pathFinding(document, use);
        if (wrong) found.push(wrong);
    }
    const ring = ringFinding(document);
    if (ring) found.push(ring);
    return [...found, ...nameFindings(document, file)];
}

function pathFinding(document: LangiumDocument, use: ast.Use): Finding | undefined {
    if (use.path === undefined) return undefined;
    const { LangiumDocuments, Imports } = servicesOf(document).shared.workspace;
    const at = sourceOfProperty(use, 'path');
    const leads = importPath(document.uri, use.path);
    if ('problem' in leads) {
        if (leads.problem === 'unwritable') return finding('missing-import', at, 'This path has a character in it that no file name can have: type it again.');
        if (leads.problem === 'empty') return finding('missing-import', at, 'Which file? Put its path between the quotes, as seen from this file, such as "./yard.coffer".');
        return finding('import-outside-workspace', at, `${quoted(use.path)} is not a path seen from this file. Write one that begins with ./ or ../, such as "../details/yard.coffer".`);
    }
    if (!isInside(leads.uri, Imports.folders)) {
        return finding('import-outside-workspace', at, `${quoted(use.path)} is outside the repository (with no repository: outside the open folder). Files can only be imported from inside it.`);
    }
    if (LangiumDocuments.hasDocument(leads.uri)) return undefined;
    if (Imports.leftOut.has(leads.uri.toString())) return finding('missing-import', at, NOT_READ);
    return missing(document, use.path, leads.uri, at);
}

function missing(document: LangiumDocument, path: string, uri: URI, at: Source): Finding {
    const nearby = filesNear(document, uri);
    const slash = document.textDocument.getText(at.range).includes('\\') ? ' Folders are separated by /, on every machine.' : '';
    const hint = nearby.length > 0 ? ` Similar names: ${listed(nearby.map(quoted), 'or')}.` : '';
    return finding('missing-import', at, `There is no file ${quoted(path)}, seen from this one.${slash}${hint}`, {
        fixes: nearby.map((other, i) => replacing(at, `"${other}"`, { preferred: i === 0 })),
    });
}

/** Files of the workspace that are called nearly so, or that are called so and lie elsewhere. */
function filesNear(document: LangiumDocument, wanted: URI): readonly string[] {
    const byStem = servicesOf(document).shared.workspace.Imports.byStem(), wantedStem = stemOf(wanted);
    const names = byStem.size > MOST_COMPARED ? [wantedStem] : near(wantedStem, byStem.keys());
    const found: string[] = [];
    for (const uri of names.flatMap(name => byStem.get(name) ?? [])) {
        if (found.length === 3) break;
        if (uri.toString() !== document.uri.toString()) found.push(pathBetween(document.uri, uri));
    }
    return found;
}

/**
 * Every file may miss one, and each is compared with all names: with more of them only the very same name is looked for. It depends on the files there
 * are and not on how many were looked at before, so that whoever looks first or last is told the same.
 */
const MOST_COMPARED = 500;

/** A ring is reported once in each of its files, at the line that leads into it. */
function ringFinding(document: LangiumDocument): Finding | undefined {
    const { Imports } = servicesOf(document).shared.workspace;
    const first = Imports.followed(document).find(each => Imports.closesRing(document, each));
    if (!first) return undefined;
    return finding('import-cycle', sourceOfProperty(first.use, 'path'), ringMessage(document, Imports.ring(document, first)));
}

function ringMessage(document: LangiumDocument, ring: readonly URI[] | undefined): string {
    if (ring === undefined) return `This import leads back to this file, through more than ${MOST_FOLLOWED - 1} others. Move what they need of each other into a file of its own.`;
    if (ring.length === 1) return 'This file imports itself. It can use its own names anyway: take the line out.';
    const all = [document.uri, ...ring], middle = all.length - 2 * SHOWN_OF_RING;
    const shown = middle > 1 ? [...all.slice(0, SHOWN_OF_RING), middle, ...all.slice(-SHOWN_OF_RING)] : all;
    const chain = shown.map(each => typeof each === 'number' ? `${each} more` : quoted(pathBetween(document.uri, each))).join(' → ');
    return `These files import each other in a circle: ${chain}. Move what both need into a file of its own.`;
}

/** Files of a long ring at its beginning, and at its end. */
const SHOWN_OF_RING = 4;

function nameFindings(document: LangiumDocument, file: ast.File): readonly Finding[] {
    const found: Finding[] = [];
    const first = new Map<string, ast.UsedName>();
    const own = ownNames(file);
    const { surroundings } = servicesOf(document);
    for (const use of file.uses) {
        const from = surroundings.importOf(use);
        if (!from || from === document) continue;           // reported as such
        for (const used of use.names) {
            const name = localName(used);
            if (!name) continue;
            const before = first.get(name);
            const declared = own.get(name);
            if (before) {
                found.push(finding('imported-twice', nameOfUsed(used), `${quoted(name)} is imported twice. Leave one out, or give it another name: ${name} as another-name.`, {
                    related: [{ at: nameOfUsed(before), message: 'Imported here first.' }],
                }));
            } else first.set(name, used);
            if (!before && declared) {
                found.push(finding('declared-twice', nameOfUsed(used), `${quoted(name)} is imported, and also defined in this file. Import it under another name: ${name} as another-name.`, {
                    related: [{ at: sourceOfProperty(declared, 'name'), message: 'Defined here.' }],
                }));
            }
        }
    }
    return found;
}

/** The name that an imported thing has here. */
function nameOfUsed(used: ast.UsedName): Source {
    return sourceOfProperty(used, used.name ? 'name' : 'target');
}
