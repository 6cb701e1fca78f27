import { distance } from 'fastest-levenshtein';
import * as ast from '../generated/ast.ts';
import type { Vocabulary } from '../scope/vocabulary.ts';
import { isBroken } from '../types/broken.ts';
import { blockKindOf } from '../types/declared.ts';
import { factsOf } from '../types/facts.ts';
import { atKey } from '../../plain/at-key.ts';

/** One word of a line's path: where a block or a property is named. */
export interface Word { readonly line: ast.Line; readonly index: number }

/** A property with the line that says it, and where it may be said more than once, with all of them. */
interface Entry {
    readonly property: ast.PropertyDecl;
    readonly lines: readonly ast.Line[];
    /** It is said, but nobody can tell what: a syntax error in its line, or a block without its block. */
    readonly broken: boolean;
}

/**
 * What a block says, put together from everything that adds to it: its own lines, dotted paths, and for a variant of a
 * profile first the lines of what it is like. Later words win.
 */
export class Block {
    readonly entries = new Map<string, Entry>();
    readonly blocks = new Map<string, Block>();
    readonly fixtures: ast.Fixture[] = [];
    readonly requires: ast.Require[] = [];
    /** Lines about a wall, a line, a fixture of the room: `north 16' 9 1/8"` in what was measured. */
    readonly ofThings: { readonly thing: ast.Fixture; readonly line: ast.Line }[] = [];
    /** Lines whose path goes on into something declared elsewhere: `beams.sides.corners butted`. */
    readonly beyond: Word[] = [];
    /** Words that lead nowhere. */
    readonly unknown: string[] = [];
    /** Where it was opened. */
    readonly words: Word[] = [];
    readonly bodies: ast.Body[] = [];

    constructor(readonly kind: ast.Kind, readonly vocabulary: Vocabulary) {}

    add(body: ast.Body | undefined): this {
        if (!body) return this;
        this.bodies.push(body);
        for (const member of body.members) {
            if (ast.isLine(member)) this.addLine(member, 0);
            else if (ast.isFixture(member)) this.fixtures.push(member);
            else if (ast.isRequire(member)) this.requires.push(member);
        }
        return this;
    }

    /** A line, from the word on that is one of this block's own. */
    addLine(line: ast.Line, index: number): void {
        for (const { decl } of line.mods) if (decl && !decl.ref) this.unknown.push(decl.$refText);
        const target = line.path[index]?.ref;
        const name = line.path[index]?.$refText;
        if (ast.isFixture(target)) { this.ofThings.push({ thing: target, line }); return; }
        if (!ast.isPropertyDecl(target)) { if (name) this.unknown.push(name); return; }
        const last = index === line.path.length - 1;
        const kind = blockKindOf(target);
        if (!last) {
            if (kind) this.inner(target, kind, { line, index }).addLine(line, index + 1);
            else this.beyond.push({ line, index });
        } else if (kind && line.body) this.inner(target, kind, { line, index }).add(line.body);
        else this.say(target, line, kind !== undefined || isBroken(line));
    }

    private say(property: ast.PropertyDecl, line: ast.Line, broken: boolean): void {
        const before = this.entries.get(property.name);
        const together = before && factsOf(property).severalLines;
        this.entries.set(property.name, { property, lines: together ? [...before.lines, line] : [line], broken: broken || Boolean(together && before.broken) });
    }

    private inner(property: ast.PropertyDecl, kind: ast.Kind, word: Word): Block {
        const block = atKey(this.blocks, property.name, () => new Block(kind, this.vocabulary));
        block.words.push(word);
        return block;
    }

    /** The declaration of a property of this kind of block. */
    declaration(name: string): ast.PropertyDecl | undefined {
        return this.vocabulary.properties(this.kind).get(name);
    }

    /** True where a property may have been meant by a word that leads nowhere: half typed, or a slip away. Then its default does not hold either. */
    mayBeMeant(name: string): boolean {
        return this.unknown.some(word => name.startsWith(word) || distance(word, name) <= 2);
    }
}

/** What was found on top of what was drawn: its words win. */
export function overruleBlock(drawn: Block, found: Block): void {
    for (const [name, entry] of found.entries) drawn.entries.set(name, entry);
    drawn.beyond.push(...found.beyond);
    for (const [name, inner] of found.blocks) {
        const under = drawn.blocks.get(name);
        if (under) overruleBlock(under, inner);
        else drawn.blocks.set(name, inner);
    }
}

/** A block without inner ones, overruled by another of its kind, whose place it takes; both stay what they are. */
export function mergedBlock(base: Block | undefined, over: Block): Block {
    const merged = new Block(over.kind, over.vocabulary);
    if (base) overruleBlock(merged, base);
    overruleBlock(merged, over);
    merged.words.push(...over.words);
    merged.bodies.push(...over.bodies);
    merged.unknown.push(...base?.unknown ?? [], ...over.unknown);
    return merged;
}
