import * as ast from '../generated/ast.ts';
import { kept } from '../../plain/kept.ts';
import { atom, many, pair, quantityNamed, rateNamed, type Type } from './type.ts';

/**
 * The type that a declaration states: of a property, a modifier, a parameter, a `let`.
 * Unknown where a name in it leads nowhere; the linker has said so.
 */
export function declaredType(ref: ast.TypeRef | undefined): Type | undefined {
    return ref && typeOfRef(ref);
}

const typeOfRef = kept((ref: ast.TypeRef): Type | undefined => {
    const [first, ...rest] = ref.parts.map(typeOfAtom);
    const type = rest.reduce<Type | undefined>((left, right, i) => pair(left, right, ref.seps[i] === 'to' ? 'range' : 'pair'), first);
    return ref.many ? many(type) : type;
});

function typeOfAtom(part: ast.TypeAtom): Type | undefined {
    const declaration = part.ref?.ref;
    if (ast.isWords(declaration)) return typeOfWords(declaration);
    if (ast.isKind(declaration)) return atom(declaration.name);
    const base = quantityNamed(declaration?.name);
    return part.per ? rateNamed(base, part.per.ref?.name) : base;
}

/** The type of the words of a list. */
export const typeOfWords = kept((list: ast.Words): Type => atom(list.name, list.words.map(word => word.name)));

/** Kinds whose values are names of things declared elsewhere; every other kind is a block. */
const NAMED_KINDS: ReadonlySet<string> = new Set(['Stock', 'Profile', 'Room', 'Fixture']);

/** The kind of the block that a property is said with, where it is said with one: `sides { ... }`. */
export function blockKindOf(declaration: ast.PropertyDecl | undefined): ast.Kind | undefined {
    return declaration && (blockKind(declaration) ?? undefined);
}
const blockKind = kept((declaration: ast.PropertyDecl): ast.Kind | null => {
    const kind = declaration.type?.parts[0]?.ref?.ref;
    return ast.isKind(kind) && !NAMED_KINDS.has(kind.name) ? kind : null;
});
