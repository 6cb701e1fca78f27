import type { AstNode, LangiumDocuments } from 'langium';
import { lineName } from '../../../job/line-names.ts';
import type { Direction } from '../../../job/model.ts';
import { PLURAL } from '../../../job/part.ts';
import { CURRENCIES } from '../../../data/currencies.ts';
import * as ast from '../../generated/ast.ts';
import { factsOf } from '../../types/facts.ts';
import { roomAt } from '../../scope/kind-of.ts';
import { PICTURE, type Suggestion } from './suggestion.ts';

/** Names that nobody declares because they follow from the layout. */
export interface NamesOfRoom {
    /** `1`, `2`, `A`, `B`. */
    readonly lines: readonly LineName[];
    /** `A1`, `B2`, each with its two lines. */
    readonly crossings: readonly { readonly name: string; readonly lines: readonly string[] }[];
    /** Names of pieces in the cut list. */
    readonly pieces: readonly string[];
}
interface LineName { readonly name: string; readonly runs: Direction }
/** For whoever knows what a room comes to. */
export type NamesIn = (room: ast.Room) => NamesOfRoom | undefined;

const WALLS_ACROSS: Readonly<Record<Direction, readonly string[]>> = { 'north-south': ['north', 'south'], 'east-west': ['west', 'east'] };

/** What can be written where a name is wanted that need not be declared. Undefined where nothing is known of such names. */
export function plainNames(
    property: ast.PropertyDecl | undefined, from: AstNode, namesIn: NamesIn, documents: LangiumDocuments,
): readonly Suggestion[] | undefined {
    if (!property) return undefined;
    const names = (): NamesOfRoom | undefined => {
        const room = roomAt(from);
        return room && namesKnown(room, namesIn);
    };
    const words = (list: readonly string[]): readonly Suggestion[] => list.map(label => ({ label, kind: PICTURE.word }));
    switch (factsOf(property).names) {
        case 'lines across': {
            const line = fixtureAt(from)?.name, all = names()?.lines ?? [], runs = all.find(({ name }) => name === line)?.runs;
            const others = all.filter(other => other.name !== line && other.runs !== runs);
            const ofRectangle = runs ? WALLS_ACROSS[runs] : Object.values(WALLS_ACROSS).flat();
            return words([...others.map(({ name }) => name), ...[...ofRectangle, ...wallsWithOtherNames(from)].map(wall => `wall-${wall}`)]);
        }
        case 'walls and lines': {
            const line = fixtureAt(from)?.name, walls = new Set([...wallsOf(from), 'north', 'east', 'south', 'west']);
            return words([...[...walls].map(wall => `wall-${wall}`), ...names()?.lines.map(({ name }) => name).filter(name => name !== line) ?? []]);
        }
        case 'lines here': {
            const crossing = fixtureAt(from)?.name, known = names();
            return words(known?.crossings.find(({ name }) => name === crossing)?.lines ?? known?.lines.map(({ name }) => name) ?? []);
        }
        case 'walls': {
            return words([...new Set([...wallsOf(from), 'north', 'east', 'south', 'west'])]);
        }
        case 'what goes up': {
            const known = names();
            const walls = wallsOf(from).map(wall => `wall-${wall}`), lines = known?.lines.map(({ name }) => `line-${name}`) ?? [];
            return words([...Object.values(PLURAL), ...lines, ...walls, ...known?.pieces ?? []]);
        }
        case 'pieces': return words(names()?.pieces ?? []);
        case 'currencies': return Object.entries(CURRENCIES).map(([code, { name }]) => ({ label: `"${code}"`, kind: PICTURE.constant, detail: name, written: `${name}, ${code} in ISO 4217.` }));
        case 'fence settings': return words(quotedAfter(/\b(?:ripped-with|with)[ \t]+("[^"\r\n]*")/g, documents));
        case 'suppliers': return words(quotedAfter(/\bsupplier[ \t]+("[^"\r\n]*")/g, documents));
        default: return undefined;
    }
}

/** Names for the fixtures of a room that are not invented but counted. */
export function namesForFixture(keyword: string, from: AstNode, namesIn: NamesIn): readonly string[] {
    const room = roomAt(from);
    if (!room) return [];
    const names = namesKnown(room, namesIn);
    return keyword === 'line' ? namesOf(names.lines) : keyword === 'crossing' ? namesOf(names.crossings) : keyword === 'board' ? names.pieces : [];
}

function namesOf(things: readonly { readonly name: string }[]): readonly string[] {
    return things.map(({ name }) => name);
}

function wallsOf(from: AstNode): readonly string[] {
    return roomAt(from)?.body?.members.filter(ast.isFixture).filter(({ kind }) => kind === 'wall').map(({ name }) => name) ?? [];
}

function wallsWithOtherNames(from: AstNode): readonly string[] {
    const usual = Object.values(WALLS_ACROSS).flat();
    return [...new Set(wallsOf(from))].filter(name => name && !usual.includes(name));
}

/** As the room was laid out; where it cannot be, as far as its grid says how many lines there are. */
function namesKnown(room: ast.Room, namesIn: NamesIn): NamesOfRoom {
    const known = namesIn(room);
    if (known) return known;
    const numbers = linesAlong(room, 'north', 'north-south'), letters = linesAlong(room, 'east', 'east-west');
    const crossings = letters.flatMap(({ name: letter }) => numbers.map(({ name: number }) => ({ name: letter + number, lines: [letter, number] })));
    return { lines: [...numbers, ...letters], crossings, pieces: [] };
}

function linesAlong(room: ast.Room, wall: 'north' | 'east', runs: Direction): readonly LineName[] {
    const grid = room.body?.members.find((member): member is ast.Line => ast.isLine(member) && member.path[0]?.$refText === 'grid')?.body;
    for (const line of grid?.members ?? []) {
        if (!ast.isLine(line)) continue;
        const [word] = line.path, [value] = line.values;
        const count = word?.$refText === `lines-${wall}` ? line.values.length : word?.$refText === `coffers-${wall}` && ast.isNumberLit(value) ? Number(value.text) - 1 : 0;
        if (count > 0) return Array.from({ length: Math.min(26, Math.floor(count)) }, (_, i) => ({ name: lineName(runs, i), runs }));
    }
    return [];
}

function fixtureAt(node: AstNode): ast.Fixture | undefined {
    for (let at: AstNode | undefined = node; at; at = at.$container) if (ast.isFixture(at)) return at;
    return undefined;
}

/** Names that some file has given something: a fence setting, a supplier. */
function quotedAfter(words: RegExp, documents: LangiumDocuments): readonly string[] {
    const found = new Set<string>();
    for (const document of documents.all) for (const name of document.textDocument.getText().matchAll(words)) found.add(name[1]!);
    return [...found].sort();
}
