import { AstUtils, type CstNode, type LangiumDocument } from 'langium';
import { type CutBoard, type CrossingSpec, type CutName, type LineSpec, type MeasuredBoard, type Room, type Side } from '../../job/model.ts';
import { outlineOf } from '../../job/outline.ts';
import type { Recorded } from '../../job/status.ts';
import type { Source } from '../../provenance/source.ts';
import * as ast from '../generated/ast.ts';
import { hasBroken, isBroken } from '../types/broken.ts';
import { factsOf } from '../types/facts.ts';
import { recordsOf } from '../types/cut-record.ts';
import { sourceOf, sourceOfProperty } from '../types/place.ts';
import { wordsOf } from '../types/values.ts';
import { Block, overruleBlock } from './block.ts';
import { bowsOf, saysBowsAlone } from './bows.ts';
import { readFixture } from './fixture.ts';
import { readGrid, type Walls } from './grid.ts';
import { readJoists } from './joists.ts';
import { warnNoEffect, warnUnusedOfFixture } from './no-effect.ts';
import { gaugesOf } from './gauges.ts';
import { fixtureNotComputed, measuredOf, notComputed } from './not-computed-yet.ts';
import type { Raise } from './raised.ts';
import type { LineReading, Reader, Reading } from './reading.ts';
import { limitOf, recordedBy } from './recorded.ts';
import { raisedFor, type Uncounted } from './uncounted.ts';
import type { Found } from './values.ts';
import { readSeasons } from './seasons.ts';
import { keyOfDeclaration } from './stock.ts';
import { readTrim } from './parts.ts';
import { readPutUp } from './put-up.ts';
import { readSurvey } from './survey.ts';
import type { RoomsElsewhere } from './waits.ts';
import { checkWalls, readDiagonals, readWalls } from './walls.ts';

/** Knows besides which names of a file lead nowhere. */
interface RoomReader extends Reader, RoomsElsewhere { hasLostName(document: LangiumDocument, words: CstNode): boolean }

/** A room: drawn first, then overruled by what was measured, and by what an alternate changes: lines that begin with its name. */
export function readRoom(declaration: ast.Room, { job: ofHouse, rates }: Pick<Room, 'job' | 'rates'>, reader: RoomReader, raise: Raise, changes: readonly ast.Line[] = []): Room {
    const key = keyOfDeclaration(declaration);
    const room = reader.reading('Room', declaration.body, raise, key);
    const measured = room.inner('measured');
    for (const body of measured?.block.bodies ?? []) overrule(room.block, body);
    for (const line of changes) change(room.block, line);
    const longestPiece = limitOf(room, 'longest-piece'), job = longestPiece ? { ...ofHouse, longestPiece } : ofHouse;
    const walls = readWalls(room, measured, (thing, said) => ownLine(room, thing, said, reader));
    const diagonals = readDiagonals(room), outline = outlineOf({ walls, diagonals });
    const [across, down] = outline && 'corners' in outline ? [outline.width, outline.length] : ['north', 'east'].map(name => walls.find(wall => wall.name === name)?.length?.value.ticks);
    const ofThisRoom: Raise = one => raise({ ...one, room: declaration.name ?? '' });
    const ceiling = ceilingOf(room, ofThisRoom), things = room.block.fixtures.filter(thing => thing.name !== undefined);
    const fixtures = new Map(things.filter(thing => thing.kind === 'fixture' && !isBroken(thing)).flatMap(thing => {
        const said = saidAnew(room.block, thing) ?? thing, line = ownLine(room, thing, said, reader);
        if (!line) return [];
        warnUnusedOfFixture(thing, said, line, ofThisRoom);
        return [[thing, readFixture(thing, line, { across, down, height: ceiling.height?.value })] as const];
    }));
    const placed = (thing: ast.Fixture): boolean => fixtures.get(thing)?.atWall !== undefined;
    const hasJoists = ceiling.joists?.first !== undefined && ceiling.joists.width !== undefined;
    const unknown = notComputedOf(declaration, { room, measured, placed, hasJoists }, reader, raise);
    const trim = room.inner('trim'), seasons = readSeasons(room, job.show.value), survey = readSurvey(room, declaration), putUp = readPutUp(room, declaration, reader);
    const grid = readGrid(room, { fixtures, walls, own: perimetersOf(room, reader) }, declaration, raise);
    if (grid) checkWalls(declaration, walls, raise);
    const wallSplices = wallSplicesOf(room, reader);
    const ofWalls = [...room.block.fixtures, ...measured?.block.fixtures ?? []].filter(thing => thing.kind === 'wall' && thing.name !== undefined);
    const bows = bowsOf(ofWalls.map(thing => [thing.name, wallAsFound(room, thing, measured, reader)]));
    return {
        name: declaration.name ?? '', ...declaration.title !== undefined && { title: declaration.title }, at: sourceOfProperty(declaration, 'name'), ...declaration.body && { body: sourceOf(declaration.body) },
        key, job, rates,
        walls, ...ceiling, grid: grid ?? undefined, ...trim && { trim: readTrim(trim, declaration) }, ...survey && { survey }, ...putUp && { putUp }, boards: room.word('boards'),
        ...seasons && { seasons },
        lines: things.filter(thing => thing.kind === 'line').map(thing => lineOf(thing, room, reader)),
        ...wallSplices && { wallSplices }, ...bows && { bows },
        crossings: things.filter(thing => thing.kind === 'crossing').map(thing => crossingOf(thing, room, reader)),
        fixtures: [...fixtures.values()],
        measuredBoards: [...measured?.block.fixtures ?? [], ...things].filter(thing => thing.kind === 'board').map(thing => boardOf(thing, room, reader)),
        ...cutOf(measured), ...gaugesOf(measured),
        broken: isIncomplete(declaration, reader), notComputed: unknown, diagonals,
    };
}

/** What was measured is said in the words of a room, and comes on top of what was drawn. */
function overrule(room: Block, measured: ast.Body): void {
    overruleBlock(room, new Block(room.kind, room.vocabulary).add(measured));
}

/** A grid is divided one way, so a change that says another takes the place of what was drawn. */
function change(room: Block, line: ast.Line): void {
    const before = new Set(room.blocks.get('grid')?.entries.values());
    room.addLine(line, 1);
    const grid = room.blocks.get('grid');
    for (const entry of grid?.entries.values() ?? []) {
        if (!before.has(entry)) for (const other of factsOf(entry.property).insteadOf) grid!.entries.delete(other);
    }
}

/** What lines of the room itself, or of an alternate, say anew of one of its walls, lines or fixtures, the last of them. */
function saidAnew(room: Block, thing: ast.Fixture): ast.Line | undefined {
    return room.ofThings.findLast(one => one.thing === thing && one.line.path.at(-1)?.ref === thing)?.line;
}

/** What walls say of what runs along them. */
function perimetersOf(room: Reading, reader: RoomReader): Walls {
    return new Map(room.block.fixtures.flatMap((thing): [string, Block][] => {
        const own = thing.kind === 'wall' ? thingReading(room, thing, reader).block.blocks.get('perimeter') : undefined;
        return own ? [[thing.name, own]] : [];
    }));
}

/** The line of a wall, a board, a fixture: what stands behind its name. */
function ownLine(room: Reading, thing: ast.Fixture, said: ast.Fixture | ast.Line, reader: RoomReader): LineReading | undefined {
    const kind = reader.vocabulary.kindOfFixture(thing), declaration = reader.vocabulary.valueOfFixture(thing);
    return kind && declaration && room.line(said, declaration, kind.name);
}

function ceilingOf(room: Reading, raise: Raise): Pick<Room, 'height' | 'covering' | 'joists'> {
    const ceiling = room.inner('ceiling');
    if (!ceiling) return {};
    const kind = ceiling.word<string>('covering'), thickness = ceiling.length('covering', 'thickness'), joists = readJoists(ceiling, raise), height = ceiling.length('height');
    const known = (name: string, at: Source): Recorded => recordedBy(ceiling, mod => ceiling.found(name, mod), at);
    return {
        ...height && { height: { ...height, ...known('height', height.at) } },
        ...kind && { covering: { kind, ...thickness && { thickness }, ...known('covering', (thickness ?? kind).at) } }, ...joists && { joists },
    };
}

/** The block of a line, a board or a fixture, read as its own kind. */
function thingReading(room: Reading, thing: ast.Fixture, reader: RoomReader): Reading {
    const kind = reader.vocabulary.kindOfFixture(thing)!;
    const block = new Block(kind, reader.vocabulary).add(thing.body);
    for (const { thing: other, line } of room.block.ofThings) if (other === thing) addAnew(block, thing, line);
    return room.of(block);
}

/** A wall as its own words have it, overruled by what was found of it on site: `measured { north { hump 1/4" at 3' } }`. */
function wallAsFound(room: Reading, wall: ast.Fixture, measured: Reading | undefined, reader: RoomReader): Reading {
    const { block } = thingReading(room, wall, reader), found = new Block(block.kind, reader.vocabulary);
    for (const { thing, line } of measured?.block.ofThings ?? []) if (thing === wall) addAnew(found, thing, line);
    overruleBlock(block, found);
    return room.of(block);
}

/** `den.B.beams fine-box`, or `den.B { beams fine-box }`. */
function addAnew(block: Block, thing: ast.Fixture, line: ast.Line): void {
    const index = line.path.findIndex(word => word.ref === thing);
    if (index < line.path.length - 1) block.addLine(line, index + 1);
    else block.add(line.body);
}

function lineOf(thing: ast.Fixture, room: Reading, reader: RoomReader): LineSpec {
    const line = thingReading(room, thing, reader);
    const direct = ownLine(room, thing, saidAnew(room.block, thing) ?? thing, reader)?.profile('value');
    const by = line.lengths('at')[0], from = line.text('at', 'from');
    return {
        name: thing.name, at: sourceOfProperty(thing, 'name'), beams: line.profile('beams') ?? direct, heldDown: line.measure('held-down'), otherSide: line.word<Side>('other-side'),
        splices: splicesOf(line), splicing: line.word('splices'), ...by && { place: { by, ...from && { from } } },
        from: line.text('from'), until: line.text('until'), meets: line.word('meets'),
    };
}

function crossingOf(thing: ast.Fixture, room: Reading, reader: RoomReader): CrossingSpec {
    return { name: thing.name, at: sourceOfProperty(thing, 'name'), through: thingReading(room, thing, reader).text('through') };
}

/** What is said of splices along each wall; undefined where nothing is. */
function wallSplicesOf(room: Reading, reader: RoomReader): Room['wallSplices'] {
    const said = room.block.fixtures.filter(thing => thing.kind === 'wall' && thing.name !== undefined)
        .map(thing => [thing.name, splicesOf(thingReading(room, thing, reader))] as const).filter(([, splices]) => splices.length > 0);
    return said.length > 0 ? Object.fromEntries(said) : undefined;
}

/** `splice 110" from north`: each line of splices says from where. */
function splicesOf(line: Reading): LineSpec['splices'] {
    return line.each('splice', (found, said) => {
        const ticks = line.ticks(found);
        return ticks === undefined ? undefined : { ticks, from: line.modOn(said, 'splice', 'from')?.expr.$cstNode?.text };
    }).map(({ value: { ticks, from }, ...words }) => ({ ...words, value: ticks, ...from && { from } }));
}

function boardOf(thing: ast.Fixture, room: Reading, reader: RoomReader): MeasuredBoard {
    const board = thingReading(room, thing, reader);
    const line = ownLine(room, thing, thing, reader), stock = line?.stock('value'), at = sourceOfProperty(thing, 'name');
    const rabbet = board.length('rabbet'), width = board.length('width'), thickness = board.length('thickness'), length = board.length('length');
    return {
        name: thing.name, at, stock, ...line && recordedBy(line, mod => line.found(mod), at, true), into: board.each('into', pieceNamed), ...rabbet && { rabbet }, ...width && { width }, ...thickness && { thickness }, ...length && { length },
    };
}

/** What is cut and what is spoiled. A board of which stock or length is unknown is left out: nothing can be reckoned from it. */
function cutOf(measured: Reading | undefined): Pick<Room, 'spoiled' | 'cutBoards'> {
    if (!measured) return { spoiled: [], cutBoards: [] };
    const property = measured.block.declaration('cut')!;
    const boards = measured.each('cut', (found, said): CutBoard | undefined => {
        const line = measured.line(said, property, 'Measured');
        const length = measured.given(found, each => measured.ticks(each)), stock = line.stock('of');
        const left = line.each('left', each => line.ticks(each));
        const isLeftSaid = said.mods.some(mod => mod.decl?.$refText === 'left');
        return length && stock && { at: wordsOf(said), length, stock, ...intoOf(said, line, pieceNamed), ...isLeftSaid && { left } };
    });
    return { spoiled: measured.each('spoiled', pieceNamed), cutBoards: boards.map(({ value }) => value) };
}

/** A board that was measured may have the name of the piece it is for. */
function pieceNamed({ known: { value } }: Found): string | undefined {
    return value.is === 'text' ? value.text : value.is === 'thing' ? value.node.name : undefined;
}

/** The pieces that came out of a board, those that follow one `into` with how they were cut. */
function intoOf({ mods }: ast.Line, line: LineReading, named: (found: Found) => string | undefined): Pick<CutBoard, 'into' | 'intoAt'> {
    const records = recordsOf(mods);
    const into = records.flatMap((record): CutName[] => {
        const asCut = asCutOf(record, line);
        return line.eachIn(record[0]!, named).map(name => ({ ...name, ...asCut && { asCut } }));
    });
    const first = mods.indexOf(records[0]?.[0] as ast.Mod), last = mods.indexOf(records.at(-1)?.at(-1) as ast.Mod);
    if (first < 0 || last - first + 1 !== records.flat().length) return { into };
    const from = sourceOf(mods[first]!), until = sourceOf(mods[last]!);
    return { into, intoAt: { ...from, range: { start: from.range.start, end: until.range.end } } };
}

function asCutOf(record: readonly ast.Mod[], line: LineReading): CutName['asCut'] {
    const [, ...rest] = record;
    if (rest.length === 0) return undefined;
    const mod = (name: string): ast.Mod | undefined => rest.find(each => each.decl?.ref?.name === name);
    const at = mod('at'), left = mod('left-hand'), right = mod('right-hand'), ends = left ?? right ?? mod('mitered');
    const length = at && line.eachIn(at, found => line.ticks(found))[0];
    const miters = ends ? line.eachIn(ends, ({ known: { value } }) => value.is === 'quantity' ? value.exact.valueOf() : undefined).map(({ value }) => value) : [];
    if (!length || ends && (miters.length === 0 || miters.length !== ends.values.length)) return 'unknown';
    return { length: length.value, miters, hand: left ? 'left' : right ? 'right' : null, at: length.at };
}

interface SaidOfRoom {
    readonly room: Reading; readonly measured: Reading | undefined;
    /** Whether enough is said of what stands at a wall to be looked at. */
    placed(fixture: ast.Fixture): boolean;
    /** Whether it is known where the joists are. */
    readonly hasJoists: boolean;
}

/** What is said of the room and not computed: each is told, and what the layout has no error for goes with the room. */
function notComputedOf({ name }: ast.Room, { room, measured, placed, hasJoists }: SaidOfRoom, reader: RoomReader, raise: Raise): Room['notComputed'] {
    const found: Uncounted[] = [];
    const tell = (one: Uncounted): void => { found.push(one); };
    notComputed(room, tell);
    if (measured) notComputed(measured, tell);
    for (const block of ['ceiling', 'grid', 'survey'] as const) {
        for (const inner of [room.inner(block), measured?.inner(block)]) if (inner) notComputed(inner, tell, hasJoists ? ['joists'] : []);
    }
    for (const grid of [room.inner('grid'), measured?.inner('grid')]) {
        const perimeter = grid?.inner('perimeter');
        if (perimeter) notComputed(perimeter, tell);
        for (const inner of [grid, perimeter]) if (inner) warnNoEffect(inner, one => raise({ ...one, ...name !== undefined && { room: name } }));
    }
    for (const survey of [room.inner('survey'), measured?.inner('survey')]) if (survey) warnNoEffect(survey, one => raise({ ...one, ...name !== undefined && { room: name } }));
    for (const own of perimetersOf(room, reader).values()) {
        notComputed(room.of(own), tell);
        if (own.entries.has('kind')) warnNoEffect(room.of(own), one => raise({ ...one, ...name !== undefined && { room: name } }));
    }
    for (const thing of [...room.block.fixtures, ...measured?.block.fixtures ?? []]) {
        if (!placed(thing)) fixtureNotComputed(thing, reader.vocabulary.valueOfFixture(thing), tell);
        if (thing.kind === 'line' || thing.kind === 'board') notComputed(thingReading(room, thing, reader), tell);
    }
    for (const { thing, line } of measured?.block.ofThings ?? []) {
        if (thing.kind !== 'wall' || !saysBowsAlone(line, thing)) tell(measuredOf(line, thing));
    }
    for (const one of found) raise({ ...raisedFor(one), ...name !== undefined && { room: name } });
    return found.flatMap(({ at, words, spoils }) => (spoils === 'told' ? [] : [{ at, words, spoils }]));
}

/** True where anything in the room could not be read: a syntax error, a name that leads nowhere. */
function isIncomplete(declaration: ast.Room, reader: RoomReader): boolean {
    const words = declaration.$cstNode;
    if (!words || !declaration.body) return true;
    if (hasBroken(declaration.body) || isBroken(declaration)) return true;
    const document = AstUtils.findRootNode(declaration).$document;
    return !document || reader.hasLostName(document, words);
}
