import { spoiledAtBench } from './at-bench.ts';
import type { AsCut, CutBoard, CutName, Room } from '../job/model.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { nameInRoom } from '../takeoff/ids.ts';
import type { EndCut, Piece } from '../takeoff/model.ts';
import { acrossOf, degreesOf, endsFromTheLeft, isSlanted, roundedDegrees } from '../takeoff/ends.ts';

/** An angle is written to a hundredth of a degree. */
const SAME_ANGLE = 0.01;

/** A piece as it is cut today. */
export function recordOf(piece: Piece): AsCut {
    return { length: piece.cutOverall, miters: mitersOf(piece), hand: piece.hand };
}

/** Of its slanted ends, from the left where both are: negative where the face is the longer. */
function mitersOf(piece: Piece): number[] {
    return endsFromTheLeft(piece).flatMap(end => (isSlanted(end) ? [Math.sign(degreesOf(end)) * roundedDegrees(degreesOf(end))] : []));
}

/** True where the ends are as they have to be. A hand matters only where both know one: without a rabbet a piece may be turned round. */
export function hasItsEnds(piece: Piece, { miters, hand }: AsCut): boolean {
    const wanted = mitersOf(piece), cut = [...miters];
    return wanted.length === cut.length && wanted.every((degrees, i) => Math.abs(degrees - cut[i]!) <= SAME_ANGLE)
        && (!hand || !piece.hand || hand === piece.hand);
}

export function fits(piece: Piece, record: AsCut): boolean {
    return record.length === piece.cutOverall && hasItsEnds(piece, record);
}

/**
 * So much of a piece can be used for a piece with these ends: all of it, or what is left when its miters are cut off.
 * @param across what was mitered: as it was cut, be it wanted for another part
 */
export function usableFor(piece: Piece, record: AsCut, across = acrossOf(piece)): Ticks {
    return hasItsEnds(piece, record) ? record.length : record.length - Math.ceil(lostToMiters(across, record));
}

function lostToMiters(across: Ticks, { miters }: AsCut): number {
    return miters.reduce((sum, degrees) => sum + across * Math.tan(Math.abs(degrees) * Math.PI / 180), 0);
}

/** The pieces that came out of a board, as they were cut, as far as their names are in the cut list. */
export function piecesAsCut(board: CutBoard, pieces: readonly Piece[]): Piece[] {
    return board.into.flatMap(({ value, asCut }) => {
        const piece = pieces.find(each => nameInRoom(each) === value);
        return !piece ? [] : typeof asCut === 'object' && !fits(piece, asCut) ? [asRecorded(piece, asCut)] : [piece];
    });
}

/** Lengths of pieces that came out of a board and are in the cut list no more. */
export function lengthsUnlisted(board: CutBoard, pieces: readonly Piece[]): Ticks[] {
    return board.into.flatMap(({ value, asCut }) => (typeof asCut === 'object' && pieces.every(each => nameInRoom(each) !== value) ? [asCut.length] : []));
}

/** With the length and the ends that it was cut with. */
export function asRecorded(piece: Piece, record: AsCut): Piece {
    const { length } = record;
    if (hasItsEnds(piece, record)) return {
        ...piece, cutBack: length - (piece.cutOverall - piece.cutBack), cutFace: length - (piece.cutOverall - piece.cutFace), cutOverall: length,
    };
    const short = Math.max(0, length - Math.round(lostToMiters(acrossOf(piece), record)));
    const isLongBehind = piece.cutBack >= piece.cutFace;
    const cuts = [0, 1].map((i): EndCut => (record.miters[i] === undefined ? { cut: 'square' } : { cut: 'miter', degrees: record.miters[i]! }));
    return {
        ...piece, cutBack: isLongBehind ? length : short, cutFace: isLongBehind ? short : length, cutOverall: length,
        ends: [cuts[0]!, cuts[1]!], hand: record.hand,
    };
}

/** A piece that was cut and is wanted otherwise now. */
export interface Misfit { readonly piece: Piece; readonly name: CutName; readonly record: AsCut; readonly board: CutBoard }

interface Credit {
    /** What was cut, is wanted otherwise, and was not given up as spoiled. */
    readonly misfits: readonly Misfit[];
    /** How many times a piece of that name is still to be cut. */
    wanted(name: string): number;
    /** How many times it may be said to be cut: once, and once more for each that is spoiled or does not fit. */
    may(name: string): number;
}

/** What a room says of its wood. */
type Said = Pick<Room, 'cutBoards' | 'spoiled'> & Partial<Pick<Room, 'measuredBoards'>>;

/**
 * What counts of that which a room says is cut. A piece that does not fit any more counts for nothing, so it is to be cut again; one
 * that is said to be spoiled is first of all one that does not fit. So is one that was cut from a board that is no good for it, as that was measured.
 */
export function creditOf({ cutBoards, spoiled, measuredBoards = [] }: Said, pieces: readonly Piece[]): Credit {
    const byName = new Map(pieces.map(piece => [nameInRoom(piece), piece]));
    const bad = countOf(spoiled.map(({ value }) => value)), isCut = new Set(cutBoards.flatMap(({ into }) => into.map(({ value }) => value)));
    for (const name of spoiledAtBench({ measuredBoards }, pieces)) if (isCut.has(name) && !bad.has(name)) bad.set(name, 1);
    const fitting = new Map<string, number>(), unfit = new Map<string, number>();
    const misfits: Misfit[] = [];
    for (const board of cutBoards) {
        for (const name of board.into) {
            const piece = byName.get(name.value), record = name.asCut;
            if (!piece || typeof record !== 'object' || fits(piece, record)) { count(fitting, name.value); continue; }
            const before = unfit.get(name.value) ?? 0;
            count(unfit, name.value);
            if (before >= (bad.get(name.value) ?? 0)) misfits.push({ piece, name, record, board });
        }
    }
    const of = (counts: ReadonlyMap<string, number>, name: string): number => counts.get(name) ?? 0;
    return {
        misfits,
        wanted: name => Math.max(0, 1 - of(fitting, name) + Math.max(0, of(bad, name) - of(unfit, name))),
        may: name => 1 + Math.max(of(bad, name), of(unfit, name)),
    };
}

/** Pieces that are cut, as the room says. */
export function cutAlready(room: Said, pieces: readonly Piece[]): ReadonlySet<Piece> {
    const credit = room.cutBoards.length > 0 ? creditOf(room, pieces) : undefined;
    return new Set(credit ? pieces.filter(piece => credit.wanted(nameInRoom(piece)) === 0) : []);
}

/** What a room says is cut, and has not given up as spoiled, and that counts for nothing: it is wanted otherwise now, or not at all. */
export function cutNotCounted(room: Said, pieces: readonly Piece[]): ReadonlySet<CutName> {
    const listed = new Set(pieces.map(nameInRoom)), spoiled = countOf(room.spoiled.map(({ value }) => value)), unlisted = new Map<string, number>();
    const gone = room.cutBoards.flatMap(({ into }) => into).filter(({ value }) => {
        if (listed.has(value)) return false;
        count(unlisted, value);
        return unlisted.get(value)! > (spoiled.get(value) ?? 0);
    });
    return new Set([...creditOf(room, pieces).misfits.map(({ name }) => name), ...gone]);
}

function countOf(names: readonly string[]): Map<string, number> {
    const counts = new Map<string, number>();
    for (const name of names) count(counts, name);
    return counts;
}
function count(counts: Map<string, number>, name: string): void {
    counts.set(name, (counts.get(name) ?? 0) + 1);
}
