import { AstUtils, type AstNode, type LangiumDocument, type ReferenceInfo } from 'langium';
import * as ast from '../generated/ast.ts';
import { expectedType } from './expected.ts';
import { declarationOf, kindOfBody, kindOfExpression, kindOfTarget, roomAt } from './kind-of.ts';
import type { Layer } from './layer.ts';
import { fixturesOf, ImportedNames, letsOf, namesOf, ownNames, parametersOf } from './names.ts';
import type { Vocabulary } from './vocabulary.ts';

/** What the rules of reach need to know besides the tree. */
export interface Surroundings {
    readonly vocabulary: Vocabulary;
    importOf(use: ast.Use): LangiumDocument | undefined;
}

const NOTHING: readonly Layer[] = [];

/** Which names a cross-reference can mean, nearest first. */
export function inReach(info: ReferenceInfo, around: Surroundings): readonly Layer[] {
    const { vocabulary } = around;
    const node = info.container;
    if (ast.isLine(node)) return wordsOfPath(node, info.index ?? 0, around);
    if (ast.isMod(node)) return modifiersOf(node.$container, vocabulary);
    if (ast.isRef(node)) return namesFor(node, around);
    if (ast.isMemberOf(node)) return membersOf(node.of, vocabulary);
    if (ast.isRate(node)) return [vocabulary.units];
    if (ast.isArg(node)) return argumentsOf(node.$container);
    if (ast.isUsedName(node)) return offeredBy(node.$container, around);
    if (ast.isTypeAtom(node)) return [info.property === 'per' ? vocabulary.quantities : vocabulary.types];
    if (ast.isUnit(node)) return [vocabulary.quantities];
    if (ast.isKind(node)) return [vocabulary.kinds];
    return NOTHING;
}

/** The words that a line may begin with in a block, or that may follow a dot in its path. */
function wordsOfPath(line: ast.Line, index: number, around: Surroundings): readonly Layer[] {
    return index === 0 ? wordsOfBody(line.$container, around) : wordsAfter(line.path[index - 1]?.ref, line, around.vocabulary);
}

export function wordsOfBody(body: ast.Body | undefined, around: Surroundings): readonly Layer[] {
    const owner = body?.$container;
    if (!body || !owner) return NOTHING;
    if (ast.isAlternate(owner)) return [new OnlyRooms(fileNames(owner, around))];
    return wordsOfKind(kindOfBody(body, around.vocabulary), owner, around.vocabulary);
}

/** What may follow a word of a path and a dot. */
export function wordsAfter(target: ast.Target | undefined, at: AstNode, vocabulary: Vocabulary): readonly Layer[] {
    const kind = kindOfTarget(target, vocabulary);
    if (!kind) return NOTHING;
    if (ast.isRoom(target)) return [vocabulary.properties(kind), fixturesOf(target)];
    return wordsOfKind(kind, at, vocabulary);
}

/** Where something of the room is overruled (in `measured`, in an alternate), its walls, lines and fixtures can be named too. */
function wordsOfKind(kind: ast.Kind | undefined, at: AstNode, vocabulary: Vocabulary): readonly Layer[] {
    if (!kind) return NOTHING;
    const overruling = kind.name === 'Measured' || (kind.name === 'Room' && !ast.isRoom(at));
    const room = overruling ? roomAt(at) : undefined;
    return room ? [vocabulary.properties(kind), fixturesOf(room)] : [vocabulary.properties(kind)];
}

function modifiersOf(member: ast.Line | ast.Fixture | undefined, vocabulary: Vocabulary): readonly Layer[] {
    const declaration = member && declarationOf(member, vocabulary);
    return declaration ? [vocabulary.modifiers(declaration)] : NOTHING;
}

function membersOf(owner: ast.Expr | undefined, vocabulary: Vocabulary): readonly Layer[] {
    const kind = kindOfExpression(owner, vocabulary);
    return kind ? [vocabulary.properties(kind)] : NOTHING;
}

function argumentsOf(call: ast.Ref | undefined): readonly Layer[] {
    const profile = call?.target?.ref;
    return ast.isProfile(profile) ? [parametersOf(profile)] : NOTHING;
}

function offeredBy(use: ast.Use | undefined, around: Surroundings): readonly Layer[] {
    const from = use && around.importOf(use);
    return from ? [namesOf(from)] : NOTHING;
}

/**
 * Names in an expression. Words of the expected list come first, so that `mitered` needs no prefix; then what is nearest:
 * values of the block, parameters of the profile, things of the room where one is wanted, names of the file, imports.
 */
function namesFor(ref: ast.Ref, around: Surroundings): readonly Layer[] {
    return namesAt(ref, expectedType(ref, around.vocabulary)?.ref?.$refText, around);
}

export function namesAt(at: AstNode, wanted: string | undefined, around: Surroundings): readonly Layer[] {
    const { vocabulary } = around;
    const layers: Layer[] = [];
    const words = wanted === undefined ? undefined : vocabulary.words.get(wanted);
    if (words) layers.push(vocabulary.wordsOf(words));
    for (let place: AstNode | undefined = at; place; place = place.$container) {
        if (ast.isBody(place)) layers.push(letsOf(place));
        if (ast.isProfile(place)) layers.push(parametersOf(place));
    }
    if (wanted === 'Name' || vocabulary.kind(wanted)) {
        const room = roomAt(at);
        if (room) layers.push(fixturesOf(room));
    }
    layers.push(...fileNames(at, around));
    return layers;
}

function fileNames(at: AstNode, around: Surroundings): readonly Layer[] {
    const file = AstUtils.findRootNode(at);
    return ast.isFile(file) ? [ownNames(file), new ImportedNames(file, use => around.importOf(use))] : NOTHING;
}

/** The rooms among some names: what an alternate's lines begin with. */
class OnlyRooms implements Layer {
    constructor(private readonly layers: readonly Layer[]) {}

    get(name: string): AstNode | undefined {
        for (const layer of this.layers) {
            const node = layer.get(name);
            if (ast.isRoom(node)) return node;
        }
        return undefined;
    }

    *entries(): Iterable<[string, AstNode]> {
        for (const layer of this.layers) for (const entry of layer.entries()) if (ast.isRoom(entry[1])) yield entry;
    }
}
