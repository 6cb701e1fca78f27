import type { Profile } from '../../job/model.ts';
import type { Given, Source } from '../../provenance/source.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import * as ast from '../generated/ast.ts';
import type { Vocabulary } from '../scope/vocabulary.ts';
import { isBroken } from '../types/broken.ts';
import { sourceOf, sourceOfProperty } from '../types/place.ts';
import { nameOf } from '../types/values.ts';
import { Block } from './block.ts';
import type { Evaluator } from './evaluate.ts';
import type { Raise } from './raised.ts';
import { Values, type Found, type Slot } from './values.ts';

/** Makes readings of declarations. */
export interface Reader {
    readonly vocabulary: Vocabulary;
    /** A declaration's block, read by itself. */
    reading(kind: string, body: ast.Body | undefined, raise: Raise, owner: string): Reading;
}

/** Reads the properties of a block. */
export class Reading extends Values {
    constructor(readonly block: Block, evaluator: Evaluator, private readonly builtin: Evaluator, owner: string) {
        super(evaluator, block.kind.name, owner);
    }

    /** True where the block says a property (or seems to) whose value did not come out. */
    lost(name: string, value: unknown): boolean {
        return value === undefined && (this.block.entries.has(name) || this.block.mayBeMeant(name));
    }

    /** The inner block of that name. */
    inner(name: string): Reading | undefined {
        const block = this.block.blocks.get(name);
        return block && this.of(block);
    }

    /** Another block, with the same names in reach. */
    of(block: Block): Reading {
        return new Reading(block, this.evaluator, this.builtin, this.owner);
    }

    /** One line, whose values and modifiers are declared by `declaration`, of a thing of that kind. */
    line(line: ast.Line | ast.Fixture, declaration: ast.PropertyDecl, kind: string): LineReading {
        return new LineReading(line, declaration, kind, this.evaluator, this.builtin, this.owner);
    }

    /** A block of the same kind that says nothing: all of it stands at its defaults. */
    empty(): Reading {
        return this.of(new Block(this.block.kind, this.block.vocabulary));
    }

    /** Where the block's own word stands, and its braces where it stands in one piece within its declaration. */
    place(home: ast.Item): { at: Source; body?: Source } {
        const word = this.block.words[0]!;
        const [body, more] = this.block.bodies;
        const whole = body && !more && this.block.words.length === 1 && declarationOf(body) === home;
        return { at: sourceOfProperty(word.line, 'path', word.index), ...whole && { body: sourceOf(body) } };
    }

    /** All values of a property that takes many, from all lines that say it. */
    each<T>(name: string, convert: (found: Found, line: ast.Line) => T | undefined): Given<T>[] {
        const entry = this.block.entries.get(name);
        const sound = entry?.lines.filter(line => !isBroken(line)) ?? [];
        return sound.flatMap(line => line.values.flatMap(expr => {
            const slot: Slot = { declaration: entry!.property, values: line.values, said: true, evaluator: this.evaluator };
            return this.given(this.valueOf(slot, expr), found => convert(found, line)) ?? [];
        }));
    }

    /** All values of a modifier that takes many. */
    modValues(name: string, mod: string): Found[] {
        const slot = this.slot(name, mod);
        return slot?.values.flatMap(expr => this.valueOf(slot, expr) ?? []) ?? [];
    }

    /** A profile, with what lines that go on into it say: `beams.sides.corners butted`. */
    override profile(name: string): Given<Profile> | undefined {
        const given = super.profile(name);
        const changes = this.block.beyond.filter(({ line, index }) => line.path[index]?.$refText === name);
        return given && changes.length > 0 ? { ...given, value: this.evaluator.changed(given.value, changes) } : given;
    }

    lengths(name: string): Given<Ticks>[] {
        return this.each(name, found => this.ticks(found));
    }

    /** The modifier of one line of a property that stands on several. */
    modOn(line: ast.Line, name: string, mod: string): Found | undefined {
        const property = this.block.declaration(name);
        return property && this.line(line, property, this.kind).found(mod);
    }

    protected slot(name: string, mod?: string): Slot | undefined {
        const entry = this.block.entries.get(name);
        if (entry?.broken) return undefined;
        const declaration = entry?.property ?? this.block.declaration(name);
        if (!declaration || !entry && this.block.mayBeMeant(name)) return undefined;
        return slotOf(declaration, entry?.lines.at(-1), mod, this.evaluator, this.builtin);
    }
}

/** Reads one line: its value by the name `value`, its modifiers by theirs. */
export class LineReading extends Values {
    constructor(
        private readonly said: ast.Line | ast.Fixture, private readonly declaration: ast.PropertyDecl, kind: string, evaluator: Evaluator,
        private readonly builtin: Evaluator, owner: string,
    ) {
        super(evaluator, kind, owner);
    }

    /** All values of a modifier that takes many; what cannot be known leaves a gap. */
    lengths(mod: string): (Ticks | undefined)[] {
        const slot = this.slot(mod);
        return slot?.values.map(expr => {
            const found = this.valueOf(slot, expr);
            return found && this.ticks(found);
        }) ?? [];
    }

    /** All values of a modifier that takes many, each at its words. */
    each<T>(mod: string, convert: (found: Found) => T | undefined): Given<T>[] {
        const slot = this.slot(mod);
        return slot?.values.flatMap(expr => this.given(this.valueOf(slot, expr), convert) ?? []) ?? [];
    }

    /** All values of one modifier as it stands, each at its words: for those that may stand on a line more than once. */
    eachIn<T>(mod: ast.Mod, convert: (found: Found) => T | undefined): Given<T>[] {
        const declaration = mod.decl?.ref;
        if (!declaration || isBroken(this.said)) return [];
        const slot: Slot = { declaration, of: this.declaration, values: mod.values, said: true, evaluator: this.evaluator };
        return mod.values.flatMap(expr => this.given(this.valueOf(slot, expr), convert) ?? []);
    }

    /** A wall's length has no name of its own: it is that of the wall. */
    protected override nameOf(slot: Slot): string {
        return slot.of ? super.nameOf(slot) : nameOf(this.said, false);
    }

    protected slot(name: string): Slot | undefined {
        if (isBroken(this.said)) return undefined;
        return slotOf(this.declaration, this.said, name === 'value' ? undefined : name, this.evaluator, this.builtin);
    }
}

/** What a property's line says, or its modifier, or the default of either. */
function slotOf(
    declaration: ast.PropertyDecl, line: ast.Line | ast.Fixture | undefined, mod: string | undefined, evaluator: Evaluator, builtin: Evaluator,
): Slot | undefined {
    if (mod === undefined) {
        if (line) return { declaration, values: line.values, said: true, evaluator };
        return declaration.default ? { declaration, values: [declaration.default], said: false, evaluator: builtin } : undefined;
    }
    const wanted = declaration.mods.find(one => one.name === mod);
    if (!wanted) return undefined;
    const said = line?.mods.find(one => one.decl?.ref === wanted);
    if (said) return { declaration: wanted, of: declaration, values: said.values, said: true, evaluator };
    if (line?.mods.some(one => !one.decl?.ref)) return undefined;       // a modifier that leads nowhere may be this one
    return wanted.default ? { declaration: wanted, of: declaration, values: [wanted.default], said: false, evaluator: builtin } : undefined;
}

/** The declaration of the file that a block belongs to. */
function declarationOf(body: ast.Body): unknown {
    let at: { $container?: unknown; $type?: string } = body;
    while (at.$container && (at.$container as { $type?: string }).$type !== 'File') at = at.$container as typeof at;
    return at;
}
