import type { AstNode, LangiumDocuments } from 'langium';
import { lineName, runsByName } from '../../../job/line-names.ts';
import { CURRENCIES } from '../../../data/currencies.ts';
import * as ast from '../../generated/ast.ts';
import { factsOf } from '../../types/facts.ts';
import { roomAt } from '../../scope/kind-of.ts';
import { PICTURE, type Suggestion } from './suggestion.ts';

/** Names that nobody declares because they follow from the layout. */
export interface NamesOfRoom {
    /** `1`, `2`, `A`, `B`. */
    readonly lines: readonly string[];
    /** `A1`, `B2`. */
    readonly crossings: readonly string[];
    /** Names of pieces in the cut list. */
    readonly pieces: readonly string[];
}
/** For whoever knows what a room comes to. */
export type NamesIn = (room: ast.Room) => NamesOfRoom | undefined;

const WALLS: Readonly<Record<'north-south' | 'east-west', readonly string[]>> = { 'north-south': ['wall-north', 'wall-south'], 'east-west': ['wall-west', 'wall-east'] };

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
            const line = fixtureAt(from)?.name ?? '';
            const along = runsByName(line);
            return words([...(names()?.lines ?? []).filter(name => runsByName(name) !== along), ...WALLS[along]]);
        }
        case 'lines here': {
            const crossing = fixtureAt(from)?.name ?? '';
            return words(/[A-Za-z]+|\d+/.test(crossing) ? crossing.match(/[A-Za-z]+|\d+/g)! : names()?.lines ?? []);
        }
        case 'walls': {
            const room = roomAt(from);
            const walls = room?.body?.members.filter(ast.isFixture).filter(({ kind }) => kind === 'wall').map(({ name }) => name) ?? [];
            return words([...new Set([...walls, 'north', 'east', 'south', 'west'])]);
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
    return keyword === 'line' ? names.lines : keyword === 'crossing' ? names.crossings : keyword === 'board' ? names.pieces : [];
}

/** As the room was laid out; where it cannot be, as far as its grid says how many lines there are. */
function namesKnown(room: ast.Room, namesIn: NamesIn): NamesOfRoom {
    const known = namesIn(room);
    if (known) return known;
    const numbers = linesAlong(room, 'north', i => lineName('north-south', i));
    const letters = linesAlong(room, 'east', i => lineName('east-west', i));
    return { lines: [...numbers, ...letters], crossings: letters.flatMap(letter => numbers.map(number => letter + number)), pieces: [] };
}

function linesAlong(room: ast.Room, wall: 'north' | 'east', nameOf: (index: number) => string): readonly string[] {
    const grid = room.body?.members.find((member): member is ast.Line => ast.isLine(member) && member.path[0]?.$refText === 'grid')?.body;
    for (const line of grid?.members ?? []) {
        if (!ast.isLine(line)) continue;
        const [word] = line.path, [value] = line.values;
        const count = word?.$refText === `lines-${wall}` ? line.values.length : word?.$refText === `coffers-${wall}` && ast.isNumberLit(value) ? Number(value.text) - 1 : 0;
        if (count > 0) return Array.from({ length: Math.min(26, Math.floor(count)) }, (_, i) => nameOf(i));
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
