import { URI, type LangiumDocuments } from 'langium';
import type { Finding } from '../../src/findings/finding.ts';
import type { Range } from '../../src/provenance/source.ts';

/** Something that must never be. */
export class Broken extends Error {}

/** Findings, what they are related to, and what would mend them stand in the texts; none is a fault of the program. Throws `Broken` otherwise. */
export function mustStandWithin(findings: readonly Finding[], documents: LangiumDocuments): void {
    for (const finding of findings) {
        if (finding.rule === 'internal-error') throw new Broken(finding.message);
        placeWithin(finding.at.uri, finding.at.range, finding.rule, documents);
        for (const { at } of finding.related) placeWithin(at.uri, at.range, `${finding.rule}, related`, documents);
        for (const fix of finding.fixes) for (const { uri, range } of fix.edits) placeWithin(uri, range, `${finding.rule}, "${fix.title}"`, documents);
    }
}

function placeWithin(uri: string, { start, end }: Range, of: string, documents: LangiumDocuments): void {
    const text = documents.getDocument(URI.parse(uri))?.textDocument;
    if (!text) throw new Broken(`${of} stands in ${uri}, which is no file.`);
    for (const place of [start, end]) {
        const back = text.positionAt(text.offsetAt(place));
        if (back.line !== place.line || back.character !== place.character) throw new Broken(`${of} stands at ${place.line}:${place.character}, outside of the text of ${uri}.`);
    }
    if (end.line < start.line || end.line === start.line && end.character < start.character) throw new Broken(`${of} ends before it begins.`);
}
