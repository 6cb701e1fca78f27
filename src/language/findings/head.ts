import type { AstNode } from 'langium';
import { replacing, type Finding } from '../../findings/finding.ts';
import type { Source } from '../../provenance/source.ts';
import * as ast from '../generated/ast.ts';
import { sourceOf, sourceOfKeyword, sourceOfProperty } from '../types/place.ts';
import { quoted } from '../types/words.ts';
import { finding, removeLines } from './make.ts';

/** The edition of the language that this program reads. */
const EDITION = '1';

/** The head of a file: its edition first, then what it imports, then what it declares. */
export function headFindings(file: ast.File): readonly Finding[] {
    return [...editionFindings(file), ...useFindings(file)];
}

function editionFindings(file: ast.File): Finding[] {
    const found: Finding[] = [];
    for (const [i, edition] of file.editions.entries()) {
        const at = sourceOfKeyword(edition, 'edition');
        if (i > 0 || stands(edition).after(first(file.uses)) || stands(edition).after(first(file.items))) {
            const message = i > 0 ? 'The edition is written once, in the first line of the file.' : 'The edition goes in the first line of the file, before anything else.';
            found.push(finding('misplaced-edition', at, message, { fixes: [moved(edition, i === 0 ? top(at) : undefined, 'the edition')] }));
        } else if (edition.number !== undefined && edition.number !== EDITION) {
            const number = sourceOfProperty(edition, 'number');
            found.push(finding('unknown-edition', number, `This program reads edition ${EDITION} of the language, not edition ${edition.number}.`, { fixes: [replacing(number, EDITION, { title: `Write edition ${EDITION}`, preferred: false })] }));
        }
    }
    return found;
}

function useFindings(file: ast.File): Finding[] {
    const item = first(file.items);
    if (!item) return [];
    return file.uses.filter(use => stands(use).after(item)).map(use => {
        return finding('misplaced-import', sourceOfProperty(use, 'path'), `Imports go at the top of the file, before everything else.`, {
            severity: 'warning', related: [{ at: sourceOf(item), message: 'What comes first now.' }], fixes: [moved(use, above(file, item), quoted(use.path))],
        });
    });
}

/** Takes a line out and puts it in at another place, or nowhere. */
function moved(node: AstNode, to: Source | undefined, what: string) {
    const out = removeLines(to ? `Move ${what} to the top` : `Take this line out`, sourceOf(node));
    return to ? { ...out, edits: [...out.edits, { uri: to.uri, range: to.range, text: `${node.$cstNode?.text ?? ''}\n` }] } : out;
}

function above(file: ast.File, item: AstNode): Source {
    const head = [...file.editions, ...file.uses].filter(node => !stands(node).after(item)).at(-1);
    const line = head ? sourceOf(head).range.end.line + 1 : 0;
    return { uri: sourceOf(item).uri, range: { start: { line, character: 0 }, end: { line, character: 0 } } };
}

function top(at: Source): Source {
    return { uri: at.uri, range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } } };
}

function first(nodes: readonly AstNode[]): AstNode | undefined {
    return nodes.find(node => node.$cstNode && !ast.isStray(node) && !ast.isLoose(node));
}

function stands(node: AstNode) {
    return { after: (other: AstNode | undefined): boolean => !!other?.$cstNode && !!node.$cstNode && node.$cstNode.offset > other.$cstNode.offset };
}
