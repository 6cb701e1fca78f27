import type { Direction, Fixture, Grid, Perimeter, RoomWall, Spacing } from '../../job/model.ts';
import type { Given, Source } from '../../provenance/source.ts';
import type * as ast from '../generated/ast.ts';
import { sourceOf } from '../types/place.ts';
import { wordsOf } from '../types/values.ts';
import { quoted } from '../types/words.ts';
import { mergedBlock, type Block } from './block.ts';
import { readBoard } from './parts.ts';
import { readLaying } from './laying.ts';
import type { Raise } from './raised.ts';
import type { Reading } from './reading.ts';
import { listed } from '../../plain/words.ts';

/**
 * The grid of a room. Null where there is none; undefined where what is said of it cannot be known and every layout would
 * be a guess: then there is nothing to lay out.
 */
export function readGrid(room: Reading, { fixtures, walls, own }: Around, home: ast.Room, raise: Raise): Grid | null | undefined {
    const grid = room.inner('grid');
    if (!grid) return null;
    const size = grid.range('coffer-size');
    const north = spacingOf(grid, 'north', size), east = spacingOf(grid, 'east', size);
    checkSpacing(grid, home, raise);
    const residue = grid.word<Grid['residue']['value']>('residue'), splices = grid.word<Grid['splices']['value']>('splices');
    const perimeter = perimeterOf(grid, home, raise), around = aroundOf(grid, perimeter, walls, own, home, raise);
    const centered = grid.thing('centered-on');
    const on = centered && fixtures.get(centered.value);
    const lays = readLaying(grid, walls, raise);
    if (!residue || !splices || !lays || perimeter === undefined || !around || grid.lost('centered-on', on)) return undefined;
    return {
        ...grid.place(home), north, east, beams: grid.profile('beams'), through: throughOf(grid), residue, splices, around, ...lays,
        statements: statementsOf(grid),
        ...on && { centeredOn: { ...centered, value: on } },
    };
}

/** Lines 1, 2, 3 run north-south or fall, A, B, C run east-west or rise. */
function throughOf(grid: Reading): Grid['through'] {
    const through = grid.word<Direction | 'falling' | 'rising'>('through');
    return through && { ...through, value: through.value === 'falling' ? 'north-south' : through.value === 'rising' ? 'east-west' : through.value };
}

/** By lines, by number, or by size, the most particular first. */
function spacingOf(grid: Reading, wall: 'north' | 'east', size: Given<{ least: number; most: number }> | undefined): Spacing | undefined {
    const lines = `lines-${wall}`, coffers = `coffers-${wall}`;
    if (grid.block.entries.has(lines)) {
        const centers = grid.lengths(lines), from = grid.word<'north-west'>(lines, 'from');
        const said = grid.block.entries.get(lines)!.lines.at(-1)!.values.length;
        return from && said > 0 && centers.length === said ? { by: 'lines', centers, from } : undefined;
    }
    if (grid.block.entries.has(coffers)) {
        const number = grid.number(coffers);
        return number && { by: 'number', coffers: number };
    }
    return size && { by: 'size', size };
}

const DIVIDING = ['coffers-north', 'coffers-east', 'lines-north', 'lines-east', 'coffer-size'];

/** Of what is said on one line of the block; a path from elsewhere, `grid.coffers-north 4`, is no line of its own here. */
function statementsOf({ block: { entries } }: Reading): Grid['statements'] {
    return Object.fromEntries(DIVIDING.flatMap(name => {
        const lines = entries.get(name)?.lines ?? [], [line] = lines;
        return line && lines.length === 1 && line.path.length === 1 ? [[name, sourceOf(line)]] : [];
    }));
}

function checkSpacing(grid: Reading, home: ast.Room, raise: Raise): void {
    const says = (name: string): boolean => grid.block.entries.has(name) || grid.block.mayBeMeant(name);
    for (const wall of ['north', 'east'] as const) {
        const ways = [`lines-${wall}`, `coffers-${wall}`, 'coffer-size'];
        const [first, second] = ways.filter(name => grid.block.entries.has(name));
        if (first && second && second !== 'coffer-size') raise({ rule: 'said-twice', at: placeOf(grid, second), message: `${quoted(first)} and ${quoted(second)} both divide the ${wall} wall. Which one counts?`, related: [{ at: placeOf(grid, first), message: `${quoted(first)} is given here.` }] });
        if (first || ways.some(says)) continue;
        raise({ rule: 'not-said', at: grid.place(home).at, message: `${quoted('grid')} does not show how the ${wall} wall is divided: give ${listed(ways.map(quoted), 'or')}.` });
    }
}

function placeOf(grid: Reading, name: string): Source {
    return wordsOf(grid.block.entries.get(name)!.lines[0]!);
}

/** What walls say of what runs along them, by their names. */
export type Walls = ReadonlyMap<string, Block>;
/** What a grid stands among. */
interface Around { readonly fixtures: ReadonlyMap<ast.Fixture, Fixture>; readonly walls: readonly RoomWall[]; readonly own: Walls }

/** Wall by wall, the grid's overruled by the wall's own. Undefined where something runs along one of them, and nobody can tell what. */
function aroundOf(grid: Reading, perimeter: Perimeter | null | undefined, walls: readonly RoomWall[], said: Walls, home: ast.Room, raise: Raise): Grid['around'] | undefined {
    if (perimeter === undefined) return undefined;
    const around = new Map<string, Perimeter | null>();
    for (const { name } of walls) {
        const own = said.get(name), read = own ? readPerimeter(grid.of(mergedBlock(grid.block.blocks.get('perimeter'), own)), home, raise) : perimeter;
        if (read === undefined) return undefined;
        around.set(name, read);
    }
    return Object.fromEntries(around);
}

/** Null: nothing runs round the walls. Undefined: something does, and nobody can tell what. */
function perimeterOf(grid: Reading, home: ast.Room, raise: Raise): Perimeter | null | undefined {
    const perimeter = grid.inner('perimeter');
    if (!perimeter) return grid.lost('perimeter', undefined) ? undefined : null;
    return readPerimeter(perimeter, home, raise);
}

function readPerimeter(perimeter: Reading, home: ast.Room, raise: Raise): Perimeter | undefined {
    const kind = perimeter.word<Perimeter['kind']['value']>('kind');
    if (!kind) return undefined;
    const board = readBoard(perimeter, home), belowBeams = perimeter.measure('below-beams'), splices = perimeter.word<Perimeter['splices']['value']>('splices'), nails = perimeter.fasteners('nails');
    const width = perimeter.measure('width'), scribe = perimeter.length('scribe'), beams = perimeter.profile('beams'), shows = perimeter.word<NonNullable<Perimeter['shows']>['value']>('shows');
    if (!board || !belowBeams || !splices || perimeter.lost('width', width) || perimeter.lost('beams', beams) || !shows) return undefined;
    if (kind.value === 'band' && !perimeter.lost('stock', undefined) && !board.stock) {
        raise({ rule: 'not-said', at: board.at, message: `${quoted('perimeter')} does not say the ${quoted('stock')} of the band.` });
    }
    if (kind.value === 'half-beam' && !width) raise({ rule: 'not-said', at: board.at, message: `${quoted('perimeter')} does not say the ${quoted('width')} of the half beam.` });
    return { ...board, kind, belowBeams, splices, nails, ...width && { width }, ...scribe && { scribe }, ...beams && { beams }, ...shows.said && { shows } };
}
