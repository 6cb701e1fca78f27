import { SIDES, type Corner, type Diagonal, type MeasuredWall, type RoomWall, type Side } from '../../job/model.ts';
import type { Source } from '../../provenance/source.ts';
import * as ast from '../generated/ast.ts';
import { sourceOf, sourceOfProperty } from '../types/place.ts';
import { slipOfWall } from '../types/wall-slip.ts';
import { quoted } from '../types/words.ts';
import { isBroken } from '../types/broken.ts';
import type { Raise } from './raised.ts';
import type { LineReading, Reading } from './reading.ts';
import { recordedBy } from './recorded.ts';

/** The line of a wall, a fixture or the like: what stands behind its name, there or where it is said anew. */
type OwnLine = (thing: ast.Fixture, said: ast.Fixture | ast.Line) => LineReading | undefined;

/** The way one walks along a wall of that name, in degrees clockwise from north: the room lies on the right. */
const BEARINGS: Readonly<Record<Side, number>> = { north: 90, east: 180, south: 270, west: 0 };
const COMPASS = ['north', 'north-east', 'east', 'south-east', 'south', 'south-west', 'west', 'north-west'];

/**
 * The walls in the order of the text, which goes clockwise round the room. Where nobody says a heading or another name than north, east, south
 * and west, the order does not matter, and a wall that nobody names is as long as the one across.
 */
export function readWalls(room: Reading, measured: Reading | undefined, ownLine: OwnLine): RoomWall[] {
    const things = new Map<string, { thing: ast.Fixture; said: ast.Fixture | ast.Line }>(), found = new Set(measured?.block.fixtures);
    for (const thing of [...room.block.fixtures, ...found]) {
        if (thing.kind === 'wall' && thing.name !== undefined && !slipOfWall(thing)) things.set(thing.name, { thing, said: thing });
    }
    const anew = new Set(measured?.block.ofThings.map(({ line }) => line));
    for (const { thing, line } of [...measured?.block.ofThings ?? [], ...room.block.ofThings]) {
        if (thing.kind === 'wall' && things.has(thing.name) && line.path.at(-1)?.ref === thing && line.values.length > 0) things.set(thing.name, { thing, said: line });
    }
    const walls: RoomWall[] = [];
    for (const { thing, said } of things.values()) {
        const line = ownLine(thing, said), drawn = said === thing ? line : ownLine(thing, thing);
        const onSite = said === thing ? found.has(thing) : anew.has(said as ast.Line);
        walls.push(wallOf({ thing, said, line, onSite }, headingOf(line) ?? headingOf(drawn), walls.at(-1)));
    }
    return walls.every(({ name, bearingAt }) => isSide(name) && !bearingAt) ? roundTheCompass(walls) : walls;
}

/** A wall, what says its length last, and whether that was found on site. */
interface SaidWall { readonly thing: ast.Fixture; readonly said: ast.Fixture | ast.Line; readonly line: LineReading | undefined; readonly onSite: boolean }

function wallOf({ thing, said, line, onSite }: SaidWall, heading: Heading | undefined, before: RoomWall | undefined): RoomWall {
    const length = line && !isWayLost(said, heading) ? lengthOf(thing, line, onSite) : undefined;
    const usual = isSide(thing.name) ? BEARINGS[thing.name] : before ? before.bearing + 90 : 90;
    const bearing = heading?.bearing ?? (heading?.turn === undefined ? usual : (before?.bearing ?? 90) + heading.turn);
    return {
        name: thing.name, at: sourceOfProperty(thing, 'name'), ...length ? { length } : (isLost(said) || isWayLost(said, heading)) && { lost: true },
        bearing: ((bearing % 360) + 360) % 360, ...heading && { bearingAt: heading.at },
    };
}

/** Whether a length is said that could not be read. */
function isLost(said: ast.Fixture | ast.Line): boolean {
    return said.values.length > 0 || isBroken(said);
}

/** Whether a way is said that could not be read: where the wall leads to is then unknown, however long it is. */
function isWayLost(said: ast.Fixture | ast.Line, heading: Heading | undefined): boolean {
    return !heading && said.mods.some(({ decl }) => !decl?.ref || decl.ref.name === 'heading' || decl.ref.name === 'turn');
}

function isSide(name: string): name is Side {
    return (SIDES as readonly string[]).includes(name);
}

function lengthOf(wall: ast.Fixture, line: LineReading, onSite: boolean): MeasuredWall | undefined {
    const length = line.measure('value', `tape along wall ${wall.name} of ${line.owner}`);
    return length && { ...length, ...recordedBy(line, mod => line.found(mod), length.at, onSite) };
}

interface Heading { readonly bearing?: number; readonly turn?: number; readonly at: Source }

function headingOf(line: LineReading | undefined): Heading | undefined {
    const heading = line?.word<string>('heading'), turn = line?.given(line.found('turn'), ({ known: { value } }) => value.is === 'quantity' ? value.exact.valueOf() : undefined);
    if (heading) return { bearing: COMPASS.indexOf(heading.value) * 45, at: heading.at };
    return turn && { turn: turn.value, at: turn.at };
}

/** North, east, south and west, in this order. Nobody measured those that nobody names. */
function roundTheCompass(walls: readonly RoomWall[]): RoomWall[] {
    const named = new Map(walls.map(wall => [wall.name, wall]));
    return SIDES.flatMap((side, i): RoomWall[] => {
        const own = named.get(side), across = named.get(SIDES[(i + 2) % 4]!);
        if (own?.length || own?.lost) return [own];
        if (!across?.length) return own ? [own] : [];
        const { on: _on, by: _by, status: _status, ...length } = across.length;
        return [{ name: side, at: own?.at ?? across.at, length, assumed: true, bearing: BEARINGS[side] }];
    });
}

/** Where nobody could say how large the room is, since too few of its walls are said. */
export function checkWalls(declaration: ast.Room, walls: readonly RoomWall[], raise: Raise): void {
    const at = sourceOfProperty(declaration, 'name'), named = new Set(walls.map(({ name }) => name));
    if (walls.every(({ name, bearingAt }) => isSide(name) && !bearingAt)) {
        for (const [one, other] of [['north', 'south'], ['east', 'west']] as const) {
            if (named.has(one) || named.has(other)) continue;
            raise({ rule: 'not-said', at, message: `How long is ${quoted(declaration.name)}? Neither its ${one} nor its ${other} wall is given: write wall ${one} ...` });
        }
    } else if (walls.length < 3) {
        raise({ rule: 'not-said', at, message: `${quoted(declaration.name)} names ${walls.length === 1 ? 'one wall' : 'two walls'}, and no room has fewer than three. Write a line for each wall, clockwise, as the tape goes round.` });
    }
}

/** What was measured from corner to corner. */
export function readDiagonals(room: Reading): Diagonal[] {
    return room.each('diagonal', ({ known: { value }, expr }, said): Diagonal | undefined => {
        const measures = room.modOn(said, 'diagonal', 'measures'), ticks = measures && room.ticks(measures);
        if (value.is !== 'range' || ticks === undefined) return undefined;
        const [from, to] = [value.first.value, value.second.value].map(corner => (corner.is === 'word' ? corner.word as Corner : undefined));
        const at = sourceOf(measures?.expr ?? expr);
        return from && to && { at, ticks, from, to, ...recordedBy(room, mod => room.modOn(said, 'diagonal', mod), at, true) };
    }).map(({ value }) => value);
}
