import type { Source } from '../../provenance/source.ts';
import * as ast from '../generated/ast.ts';
import { isBroken } from '../types/broken.ts';
import { declaredType } from '../types/declared.ts';
import { sourceOf, sourceOfProperty } from '../types/place.ts';
import { atom } from '../types/type.ts';
import { quoted } from '../types/words.ts';
import { factsOf, type NotComputedFact } from '../types/facts.ts';
import { wordsOf } from '../types/values.ts';
import type { Block } from './block.ts';
import type { Reading } from './reading.ts';
import type { Tell, Uncounted } from './uncounted.ts';

const PROFILE = atom('Profile');

/**
 * What a block says that is not computed yet. Each is told once, where it is said, and at the head of everything that is made from it; a
 * number that would be wrong for it is not told (see job/not-computed.ts). `without`: properties that say what holds without them.
 */
export function notComputed(reading: Reading, tell: Tell, without: readonly string[] = []): void {
    const { block } = reading;
    for (const { property, lines, broken } of block.entries.values()) {
        if (broken || without.includes(property.name)) continue;
        for (const fact of factsOf(property).notComputed) for (const line of lines) tellLine(reading, fact, property.name, line, tell);
    }
    for (const [name, inner] of block.blocks) {
        const word = inner.words[0];
        if (word) for (const { words, spoils } of ofBlock(block, name)) tell({ at: sourceOfProperty(word.line, 'path', word.index), words, spoils });
    }
    for (const { line, index } of block.beyond) {
        const into = line.path[index], word = into?.$refText;
        if (ast.isPropertyDecl(into?.ref) && declaredType(into.ref.type) === PROFILE) continue;
        tell({
            at: sourceOfProperty(line, 'path', index), words: `a change within ${quoted(word)} from here: write a profile that is like it, and name that`,
            spoils: { instead: 'a thing of its own with that changed: write it, and name it' },
        });
    }
}

/** A property that counts only with some of its words is judged by its value, so that it may come through a parameter. */
function tellLine(reading: Reading, { words, spoils, only }: NotComputedFact, name: string, line: ast.Line, tell: Tell): void {
    if (!only) return tell({ at: wordsOf(line), words, spoils });
    const given = reading.word(name);
    if (given?.said && only.includes(given.value)) tell({ at: given.at, words, spoils, via: given.via });
}

/** What is not computed of an inner block as a whole. */
function ofBlock(block: Block, name: string): readonly NotComputedFact[] {
    const declaration = block.declaration(name);
    return declaration ? factsOf(declaration).notComputed : [];
}

/** What stands on the line of a wall or a fixture. */
export function fixtureNotComputed(fixture: ast.Fixture, declaration: ast.PropertyDecl | undefined, tell: Tell): void {
    if (!declaration || isBroken(fixture)) return;
    tellValue(declaration, fixture.values[0], undefined, one => tell({ ...one, spoils: atWallOf(fixture, one.spoils) }));
    for (const mod of fixture.mods) if (mod.decl?.ref) tellValue(mod.decl.ref, mod.values[0], sourceOfProperty(mod, 'decl'), tell);
}

/** What a fixture spoils it spoils at its own wall; where nobody says which that is, the room cannot be laid out. */
function atWallOf({ mods }: ast.Fixture, spoils: Uncounted['spoils']): Uncounted['spoils'] {
    if (typeof spoils === 'string' || !('parts' in spoils)) return spoils;
    const wall = mods.find(({ decl }) => decl?.ref?.name === 'on')?.values[0]?.$cstNode?.text;
    return wall ? { ...spoils, wall } : { instead: 'one whose wall is given, as in `on north`' };
}

/** `whole`: where it is told what is not computed of any value. */
function tellValue(declaration: ast.PropertyDecl, value: ast.Expr | undefined, whole: Source | undefined, tell: Tell): void {
    for (const { words, spoils, only } of factsOf(declaration).notComputed) {
        if (only ? saysOne(only, value) : value) tell({ at: !only && whole || sourceOf(value!), words, spoils });
    }
}

function saysOne(words: readonly string[], value: ast.Expr | undefined): boolean {
    return ast.isRef(value) && words.includes(value.target?.$refText ?? '');
}

/** What was measured of a line, a fixture or a board by its name. */
export function measuredOf(line: ast.Line, { kind, name }: ast.Fixture): Uncounted {
    return {
        at: sourceOfProperty(line, 'path', 0), words: `what was measured of ${quoted(`${kind} ${name}`)}`,
        spoils: kind === 'board' ? 'nothing' : { instead: 'the same change at its own place in the room: make it there' },
    };
}

/** Where a profile says parts, or changes, that have no place in its section yet. */
export function partsNotComputed(block: Block): Source[] {
    const parts = [...block.blocks].flatMap(([name, { words: [word] }]) => (word && isLeftOut(block, name) ? [word] : []));
    return [...parts, ...[block, ...block.blocks.values()].flatMap(({ beyond }) => beyond)].map(({ line, index }) => sourceOfProperty(line, 'path', index));
}

/** A block that is not computed as a whole: what stands in it need not be looked at. */
export function isLeftOut(block: Block, name: string): boolean {
    return ofBlock(block, name).some(({ only }) => !only);
}
