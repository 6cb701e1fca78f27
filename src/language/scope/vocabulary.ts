import * as ast from '../generated/ast.ts';
import { byName } from './layer.ts';
import { kept } from '../../plain/kept.ts';

/** The kinds of block that begin with one of the words of a room. */
const KIND_OF_FIXTURE: Readonly<Record<ast.Fixture['kind'], string>> = {
    wall: 'Wall', fixture: 'Fixture', board: 'Board', line: 'BeamLine', crossing: 'Crossing',
};

/**
 * The words of the language, indexed: what the built-in library declares. It never changes while the program runs.
 * Everything is looked up by the text of the name, not through cross-references, because cross-references are resolved
 * with the help of this.
 */
export class Vocabulary {
    readonly kinds: ReadonlyMap<string, ast.Kind>;
    readonly words: ReadonlyMap<string, ast.Words>;
    readonly quantities: ReadonlyMap<string, ast.Quantity>;
    readonly units: ReadonlyMap<string, ast.Unit>;
    /** Whatever a parameter can be: kinds, lists of words, quantities. */
    readonly types: ReadonlyMap<string, ast.Type>;

    constructor(readonly file: ast.File) {
        this.kinds = byName(file.items.filter(ast.isKind));
        this.words = byName(file.items.filter(ast.isWords));
        this.quantities = byName(file.items.filter(ast.isQuantity));
        this.units = byName(file.items.filter(ast.isUnit));
        this.types = byName(file.items.filter(item => ast.isKind(item) || ast.isWords(item) || ast.isQuantity(item)));
    }

    /** What may be said in a block of this kind: its own properties first, then those it has from what it `is`. */
    readonly properties = kept((kind: ast.Kind): ReadonlyMap<string, ast.PropertyDecl> => {
        return byName(this.lineage(kind).flatMap(k => k.props).filter(p => p.name !== 'value'));
    });

    /** What stands behind the name in `wall north 16'` and the like. */
    readonly valueOf = kept((kind: ast.Kind): ast.PropertyDecl | null => {
        return this.lineage(kind).flatMap(k => k.props).find(p => p.name === 'value') ?? null;
    });

    /** What may stand behind the value of a property: `every` in `nails 18 ga x 1 1/4" every 8"`. */
    readonly modifiers = kept((property: ast.PropertyDecl) => byName(property.mods));

    readonly wordsOf = kept((words: ast.Words) => byName(words.words));

    kind(name: string | undefined): ast.Kind | undefined {
        return name === undefined ? undefined : this.kinds.get(name);
    }

    kindOfFixture(fixture: ast.Fixture): ast.Kind | undefined {
        return this.kind(KIND_OF_FIXTURE[fixture.kind]);
    }

    valueOfFixture(fixture: ast.Fixture): ast.PropertyDecl | undefined {
        const kind = this.kindOfFixture(fixture);
        return (kind && this.valueOf(kind)) ?? undefined;
    }

    /** A kind and what it is, and what that is: bounded, should someone make it go round in a ring. */
    private lineage(kind: ast.Kind): ast.Kind[] {
        const kinds = new Set<ast.Kind>();
        for (let next: ast.Kind | undefined = kind; next && !kinds.has(next); next = this.kind(next.base?.$refText)) kinds.add(next);
        return [...kinds];
    }
}
