import { AstUtils, type AstNode, type LangiumDocument } from 'langium';
import type { Line } from '../../ceiling/model.ts';
import * as ast from '../../language/generated/ast.ts';
import { sourceOf, sourceOfProperty } from '../../language/types/place.ts';
import { BLOCK_OF, PARTS_OF_BEAM } from '../../job/parts-of.ts';
import type { RoomOnPage } from '../../pages/page.ts';
import { isWithin, sameSource, type Position, type Source } from '../../provenance/source.ts';
import type { Part } from '../../takeoff/model.ts';
import { gridKeys } from './grid-keys.ts';
import { nodeAt } from './node-at.ts';

/** The words of a profile's blocks, and of the grid's, with the pieces they make. */
const PARTS: Readonly<Record<string, Part>> = { ...Object.fromEntries(PARTS_OF_BEAM.map(part => [BLOCK_OF[part], part])), 'other-side': 'side', perimeter: 'band' };

/**
 * The parts of a room's ceiling that a place in a text speaks of, by the keys that pages give them: ids of pieces, `line.B`,
 * `fixture.NAME`, `wall.north`, `stock.NAME`. The innermost word that speaks of some counts.
 */
export function keysAt(document: LangiumDocument, position: Position, room: RoomOnPage): readonly string[] {
    for (let node: AstNode | undefined = nodeAt(document, position); node; node = node.$container) {
        const keys = keysOf(node, room);
        if (keys.length > 0) return keys;
    }
    return [];
}

function keysOf(node: AstNode, room: RoomOnPage): readonly string[] {
    if (ast.isFixture(node)) return isIn(node, room) ? fixtureKeys(node, room) : [];
    if (ast.isLine(node)) return lineKeys(node, room);
    if (ast.isProfile(node)) return saidIn(node, room);
    if (ast.isStock(node)) {
        const name = sourceOfProperty(node, 'name');
        const pieces = room.takeOff.pieces.filter(({ stock }) => sameSource(stock.at, name));
        return pieces.length === 0 ? [] : [`stock.${node.name}`, ...pieces.map(({ id }) => id)];
    }
    return [];
}

/** The pieces whose words stand in a node: also those of a profile that is like another one, where it says nothing else. */
function saidIn(node: AstNode, { takeOff }: RoomOnPage): readonly string[] {
    const words = sourceOf(node);
    return takeOff.pieces.filter(({ source }) => isWithin(source, words)).map(({ id }) => id);
}

/** `wall`, `fixture`, `board`, `line` and `crossing` are written alike. */
function fixtureKeys({ kind, name }: ast.Fixture, room: RoomOnPage): readonly string[] {
    if (kind !== 'line') return [`${kind}.${name}`];
    const line = room.ceiling.lines.find(each => each.name === name);
    return line ? [`line.${name}`, ...piecesOf(room, [line])] : [];
}

function lineKeys(line: ast.Line, room: RoomOnPage): readonly string[] {
    const word = line.path.at(-1)?.$refText ?? '', part = PARTS[word], sets = isOfGrid(line) && isIn(line, room) ? gridKeys(word, room) : [];
    if (sets.length > 0) return sets;
    if (part === undefined) return [];
    const said = saidIn(line, room);
    if (said.length > 0) return said;
    // a profile that is like another one says some of a part: `spacers.every 20"`
    const profile = AstUtils.getContainerOfType(line, ast.isProfile);
    return profile ? piecesOf(room, linesOf(profile, room), part) : [];
}

/** A property of a grid, or the grid's own word. */
function isOfGrid(line: ast.Line): boolean {
    const outer = AstUtils.getContainerOfType(line.$container, ast.isLine);
    return [outer, line].some(each => each?.path.at(-1)?.$refText === 'grid') || line.path.at(-2)?.$refText === 'grid';
}

function isIn(node: AstNode, { layout: { room } }: RoomOnPage): boolean {
    const container = AstUtils.getContainerOfType(node, ast.isRoom);
    return container !== undefined && sameSource(sourceOfProperty(container, 'name'), room.at);
}

function linesOf(profile: ast.Profile, { ceiling }: RoomOnPage): readonly Line[] {
    const name: Source = sourceOfProperty(profile, 'name');
    return ceiling.lines.filter(({ section }) => sameSource(section.profile.at, name));
}

/** Trim belongs to a coffer and to no line: it goes with the beams of the grid. */
function piecesOf(room: RoomOnPage, lines: readonly Line[], part?: Part): readonly string[] {
    const names = new Set(lines.map(({ name }) => name));
    if (names.size === 0) return [];
    return room.takeOff.pieces.filter(piece => (piece.line === null ? part === 'trim' && piece.part === 'trim' : names.has(piece.line)) && (part === undefined || piece.part === part)).map(({ id }) => id);
}
