import type * as ast from '../../generated/ast.ts';
import type { Vocabulary } from '../../scope/vocabulary.ts';
import { blockKindOf } from '../../types/declared.ts';

/** Writes properties with everything they cannot do without, and a place to fill in for each value. */
export class Skeleton {
    private places = 0;

    constructor(private readonly vocabulary: Vocabulary) {}

    property(property: ast.PropertyDecl, indent = ''): string {
        const block = blockKindOf(property);
        if (block) return `${property.name} ${this.block(block, indent)}`;
        return `${property.name}  ${this.values(property)}`;
    }

    /** The braces of a block, and between them what it has to say. */
    block(kind: ast.Kind, indent = ''): string {
        const inner = `${indent}\t`;
        const lines = requiredOf(kind, this.vocabulary).map(property => this.property(property, inner));
        return `{\n${inner}${lines.length > 0 ? lines.join(`\n${inner}`) : this.place()}\n${indent}}`;
    }

    values(property: ast.PropertyDecl): string {
        const value = this.place();
        const modifiers = property.mods.filter(isRequired).map(modifier => ` ${modifier.name} ${this.place()}`);
        return value + modifiers.join('');
    }

    place(text = ''): string {
        this.places++;
        return text ? `\${${this.places}:${text}}` : `$${this.places}`;
    }
}

export function requiredOf(kind: ast.Kind, vocabulary: Vocabulary): readonly ast.PropertyDecl[] {
    return [...vocabulary.properties(kind).values()].filter(isRequired);
}

export function isRequired(property: ast.PropertyDecl): boolean {
    return !property.optional && !property.default;
}
