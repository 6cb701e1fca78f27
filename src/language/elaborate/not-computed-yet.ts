import type { Source } from '../../provenance/source.ts';
import * as ast from '../generated/ast.ts';
import { isBroken } from '../types/broken.ts';
import { declaredType } from '../types/declared.ts';
import { sourceOf, sourceOfProperty } from '../types/place.ts';
import { atom } from '../types/type.ts';
import { quoted } from '../types/words.ts';
import { wordsOf } from '../types/values.ts';
import type { Block } from './block.ts';
import { spoiledPieces, spoiledWords, type NotComputed, type Spoils } from '../../job/not-computed.ts';
import type { Raised } from './raised.ts';
import type { Reading } from './reading.ts';

/**
 * What the language can say and the program does not compute yet: this one table. Each is told once, where it is said, and at
 * the head of everything that is made from it; a number that would be wrong for it is not told (see job/not-computed.ts).
 *
 * Whoever computes one of these takes its row out.
 */
interface Row {
    /** `Kind.property`, `Kind.property/modifier`; a block's property stands for the whole block. */
    readonly what: string;
    readonly words: string;
    /** Only these words of it are meant. */
    readonly only?: readonly string[];
    /** What it makes wrong. `told`: the layout has an error of its own for it, and makes nothing that would be wrong. */
    readonly spoils: Spoils | 'told';
}
const TRIM: Spoils = { parts: ['trim'] };
export const NOT_COMPUTED: readonly Row[] = [
    // readings of heights: no length in the plane of the ceiling hangs on them
    { what: 'Room.survey', words: 'what the survey of the ceiling says', spoils: 'nothing' },
    { what: 'Room.trim', words: 'trim of one room: say it in the profile', spoils: TRIM },
    { what: 'Measured.survey', words: 'what the survey of the ceiling says', spoils: 'nothing' },
    { what: 'Measured.trim', words: 'trim of one room: say it in the profile', spoils: TRIM },
    { what: 'Ceiling.joists', words: 'whether blocking and screws find the joists', spoils: 'nothing' },
    { what: 'Profile.back', words: 'a panel over the coffers', spoils: 'told' },
    { what: 'Profile.under', words: 'a molding under the beam', spoils: 'told' },
    { what: 'Blocking.fit', words: 'a box made at the bench and slipped over the blocking', only: ['bench-box'], spoils: 'told' },
    { what: 'Bottom.place', words: 'a bottom that is not between the sides', only: ['under-sides', 'in-rabbets'], spoils: 'told' },
    { what: 'Trim.corners', words: 'trim with coped corners', only: ['coped'], spoils: 'told' },
    { what: 'Perimeter.kind', words: 'a half beam round the walls', only: ['half-beam'], spoils: 'told' },
    // in a rectangle, and nothing else is laid out, every wall is square to its neighbors
    { what: 'Grid.square-to', words: 'lines set square to one wall', spoils: 'nothing' },
    // trim round an opening stays below the beams
    { what: 'Fixture.value', words: 'whether a fixture at the wall is in the way', only: ['casing'], spoils: 'nothing' },
    { what: 'Fixture.value', words: 'what a cabinet leaves of the ceiling', only: ['cabinet'], spoils: { instead: 'a room without it: leave it out of the text where it stays below the beams' } },
    { what: 'Fixture.value', words: 'what a soffit leaves of the ceiling', only: ['soffit'], spoils: { instead: 'a room without one' } },
    { what: 'Fixture.value', words: 'what a pocket at the wall leaves of the ceiling', only: ['pocket'], spoils: { instead: 'a room without one' } },
    // of one board among many: the pieces are reckoned with their stock's own sizes
    { what: 'Board.width', words: 'what follows from the width of a measured board', spoils: 'nothing' },
    { what: 'Board.thickness', words: 'what follows from the thickness of a measured board', spoils: 'nothing' },
    { what: 'Board.length', words: 'what follows from the length of a measured board', spoils: 'nothing' },
    { what: 'BeamLine.from', words: 'a line that runs part way', spoils: 'told' },
    { what: 'BeamLine.until', words: 'a line that runs part way', spoils: 'told' },
    { what: 'BeamLine.meets', words: 'a beam that dies into another', only: ['dies-into'], spoils: 'told' },
];
/** By kind, then by property or `property/modifier`. */
const ROWS = new Map<string, Map<string, Row[]>>();
for (const row of NOT_COMPUTED) {
    const [kind, property] = row.what.split('.') as [string, string];
    const rows = ROWS.get(kind) ?? new Map<string, Row[]>();
    ROWS.set(kind, rows);
    rows.set(property, [...rows.get(property) ?? [], row]);
}
const NONE = new Map<string, Row[]>();
const PROFILE = atom('Profile');

/** Something not computed, as it was found: with the arguments it came through, and whether the layout tells it too. */
export interface Uncounted extends Omit<NotComputed, 'spoils'> { readonly spoils: Spoils | 'told'; readonly via?: Raised['via'] }
export type Tell = (one: Uncounted) => void;

/** What is told of it where it is said: as a warning where pieces are left out for it. An error of the layout takes the place of a room's hint. */
export function raisedFor({ at, words, spoils, via }: Uncounted): Raised {
    const pieces = spoils === 'told' ? undefined : spoiledPieces({ at, words, spoils });
    const left = pieces ? ` Left out of every list, price and drawing for that: ${spoiledWords(pieces)}.` : '';
    return { rule: 'not-computed-yet', severity: pieces ? 'warning' : 'hint', at, message: `Not computed yet: ${words}.${left}`, ...via && { via } };
}

/** What a block says that is not computed yet. */
export function notComputed(reading: Reading, tell: Tell): void {
    const { block } = reading;
    const rows = ROWS.get(block.kind.name) ?? NONE;
    if (rows.size > 0) {
        for (const [name, { lines, broken }] of block.entries) {
            if (!broken) for (const row of rows.get(name) ?? []) for (const line of lines) tellLine(reading, row, name, line, tell);
        }
        for (const [name, inner] of block.blocks) {
            const word = inner.words[0];
            if (word) for (const { words, spoils } of rows.get(name) ?? []) tell({ at: sourceOfProperty(word.line, 'path', word.index), words, spoils });
        }
    }
    for (const { line, index } of block.beyond) {
        const into = line.path[index], word = into?.$refText;
        if (ast.isPropertyDecl(into?.ref) && declaredType(into.ref.type) === PROFILE) continue;
        tell({
            at: sourceOfProperty(line, 'path', index), words: `a change within ${quoted(word)} from here: write a profile that is like it, and name that`,
            spoils: { instead: 'something of its own that says it otherwise: write that, and name it' },
        });
    }
}

/** A property that counts only with some of its words is judged by its value, so that it may come through a parameter. */
function tellLine(reading: Reading, { words, spoils, only }: Row, name: string, line: ast.Line, tell: Tell): void {
    if (!only) return tell({ at: wordsOf(line), words, spoils });
    const given = reading.word(name);
    if (given?.said && only.includes(given.value)) tell({ at: given.at, words, spoils, via: given.via });
}

/** What stands on the line of a wall or a fixture. */
export function fixtureNotComputed(fixture: ast.Fixture, kind: ast.Kind | undefined, tell: Tell): void {
    if (fixture.kind === 'crossing') return tell({ at: sourceOfProperty(fixture, 'name'), words: 'which line runs through at one crossing', spoils: ofCrossing(fixture.name) });
    const rows = kind && ROWS.get(kind.name);
    if (!rows || isBroken(fixture)) return;
    const value = fixture.values[0];
    for (const row of rows.get('value') ?? []) if (saysOne(row, value)) tell({ at: sourceOf(value!), words: row.words, spoils: row.spoils });
    for (const mod of fixture.mods) for (const { words, spoils, only } of rows.get(`value/${mod.decl?.ref?.name}`) ?? []) {
        if (!only || saysOne({ only }, mod.values[0])) tell({ at: only ? sourceOf(mod.values[0]!) : sourceOfProperty(mod, 'decl'), words, spoils });
    }
}

/** What runs through is one piece there, and what meets it is cut between: blocking and bottoms of both lines, `B` and `2` at `B2`. */
function ofCrossing(name: string | undefined): Spoils {
    const lines = /^([A-Za-z]+)(\d+)$/.exec(name ?? '')?.slice(1);
    return { parts: ['blocking', 'bottom'], ...lines && { lines } };
}

function saysOne({ only }: Pick<Row, 'only'>, value: ast.Expr | undefined): boolean {
    return ast.isRef(value) && only?.includes(value.target?.$refText) === true;
}

/** What was measured of a line, a fixture or a board by its name. */
export function measuredOf(line: ast.Line, { kind, name }: ast.Fixture): Uncounted {
    return {
        at: sourceOfProperty(line, 'path', 0), words: `what was measured of ${quoted(`${kind} ${name}`)}`,
        spoils: kind === 'board' ? 'nothing' : { instead: 'what is said at its own place in the room: change it there' },
    };
}

export function toleranceUnused(at: Source, name: string): Raised {
    return raisedFor({ at, words: `what a tolerance of ${quoted(name)} does`, spoils: 'nothing' });
}

/** Where a profile says parts, or changes, that have no place in its section yet. */
export function partsNotComputed(block: Block): Source[] {
    const parts = ['back', 'under'].flatMap(name => block.blocks.get(name)?.words[0] ?? []);
    return [...parts, ...[block, ...block.blocks.values()].flatMap(({ beyond }) => beyond)].map(({ line, index }) => sourceOfProperty(line, 'path', index));
}
