import type { Source } from '../../provenance/source.ts';
import * as ast from '../generated/ast.ts';
import type { Vocabulary } from '../scope/vocabulary.ts';
import { hasBroken } from './broken.ts';
import { blockKindOf, declaredType } from './declared.ts';
import { factsOf } from './facts.ts';
import { sourceOfProperty } from './place.ts';
import type { Report } from './report.ts';
import { nameOf, wordsOf } from './values.ts';
import { quoted, wantedInWords } from './words.ts';
import { atKey } from '../../plain/at-key.ts';
import { listed } from '../../plain/words.ts';

/** One thing said twice in a block: which of the two holds? */
export function checkSaidTwice(body: ast.Body, report: Report): void {
    const seen = new Map<string, ast.Line | ast.Fixture>();
    for (const member of body.members) {
        const key = keyOf(member);
        if (key === undefined || !(ast.isLine(member) || ast.isFixture(member))) continue;
        const first = seen.get(key);
        if (!first) { seen.set(key, member); continue; }
        report({ rule: 'said-twice', at: wordsOf(member), message: `${nameOf(member)} is given twice. Which one counts?`, related: [{ at: wordsOf(first), message: 'First given here.' }] });
    }
}

function keyOf(member: ast.Member): string | undefined {
    if (ast.isFixture(member)) return member.name === undefined ? undefined : `${member.kind === 'fixture' ? 'a' : member.kind} ${member.name}`;
    if (!ast.isLine(member) || member.path.length === 0 || member.path.some(word => !word.ref)) return undefined;
    const last = member.path.at(-1)!;
    const several = ast.isPropertyDecl(last.ref) ? factsOf(last.ref).severalLines : undefined;
    if (!several) return member.path.map(word => word.$refText).join('.');
    if (several.by === undefined) return undefined;
    const only = member.mods.find(mod => mod.decl?.$refText === several.by)?.values[0]?.$cstNode?.text;
    return `${last.$refText} ${only ?? ''}`;
}

/** A line of a block, from that word of its path on which lies within the block. */
interface Words { readonly line: ast.Line; readonly from: number }

/** What a block cannot do without. Blocks said in one piece and by dotted paths count as one. */
export function checkComplete(body: ast.Body, kind: ast.Kind, name: string, at: () => Source, vocabulary: Vocabulary, report: Report): void {
    if (!hasBroken(body)) complete(linesOf(body), kind, name, at, vocabulary, report);
}

function complete(lines: readonly Words[], kind: ast.Kind, name: string, at: () => Source, vocabulary: Vocabulary, report: Report): void {
    if (kind.name === 'Measured') return;       // says only what differs
    const said = new Map<string, Words[]>();
    let unknown = false;
    for (const words of lines) {
        const word = words.line.path[words.from]!;
        unknown ||= !word.ref || words.line.mods.some(mod => !mod.decl?.ref);
        atKey(said, word.$refText, () => []).push(words);
    }
    const missing: ast.PropertyDecl[] = [], properties = vocabulary.properties(kind);
    const replaced = new Set([...properties.values()].flatMap(property => (said.has(property.name) ? factsOf(property).insteadOf : [])));
    for (const property of properties.values()) {
        const found = said.get(property.name);
        if (!found) {
            if (!property.optional && !property.default && !replaced.has(property.name)) missing.push(property);
            continue;
        }
        const inner = blockKindOf(property);
        if (!inner) continue;
        const isLast = ({ line, from }: Words): boolean => from === line.path.length - 1;
        const bodies = found.flatMap(words => isLast(words) && words.line.body ? [words.line.body] : []);
        if (bodies.length === 0 && found.every(isLast) || bodies.some(hasBroken)) continue;
        const within = found.flatMap(words => isLast(words) ? words.line.body ? linesOf(words.line.body) : [] : [{ line: words.line, from: words.from + 1 }]);
        const { line, from } = found[0]!;
        complete(within, inner, property.name, () => sourceOfProperty(line, 'path', from), vocabulary, report);
    }
    if (missing.length === 0 || unknown) return;       // a word that leads nowhere is likely what is missing
    const wants = missing.map(property => `${quoted(property.name)} (${blockKindOf(property) ? 'a block' : wantedInWords(declaredType(property.type))})`);
    report({ rule: 'not-said', at: at(), message: `${quoted(name)} still needs ${listed(wants, 'and')}.` });
}

function linesOf(body: ast.Body): Words[] {
    return body.members.flatMap(line => ast.isLine(line) && line.path.length > 0 ? [{ line, from: 0 }] : []);
}
