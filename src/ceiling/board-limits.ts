import { SIDES, type JobSettings, type Stock } from '../job/model.ts';
import type { Given, Source } from '../provenance/source.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { baysAlong, between, bottomHigh, bottomLow, channelHigh, channelLow, stretches } from './bays.ts';
import { sideReach } from './corners.ts';
import { longestPiece } from './longest.ts';
import type { Ceiling, Line, Trouble } from './model.ts';

interface LongPart {
    readonly line: string; readonly part: string; readonly where: string;
    readonly length: Ticks; readonly stock: Given<Stock> | undefined; readonly at: Source;
    /** Pieces like it at this place: a beam has two sides. */
    readonly count: number;
}

/**
 * Pieces that are longer than any board that is sold and that no long board on hand is there for. One is told for each stock, the
 * longest: what mends it mends the others.
 */
export function tooLongForBoards(ceiling: Ceiling): Trouble[] {
    const long = new Map<string, LongPart[]>();
    for (const part of longParts(ceiling)) {
        if (part.length <= longestPiece(part.stock?.value, ceiling.room.job)) continue;
        const key = part.stock?.value.key ?? part.part;
        long.set(key, [...long.get(key) ?? [], part]);
    }
    return [...long.values()].flatMap(parts => {
        const { stock, line, part, where, length, at } = longestWithoutBoard(parts, ceiling.room.job) ?? {};
        if (line === undefined) return [];
        const longest = Math.max(longestPiece(stock?.value, ceiling.room.job), ...longBoards(stock?.value, ceiling.room.job).filter(board => board < length!));
        return [{ kind: 'longer-than-the-board' as const, line, part: part!, where: where!, length: length!, longest, at: at! }];
    });
}

/** Each long board on hand is there for one piece, the longest board for the longest piece. */
function longestWithoutBoard(parts: readonly LongPart[], job: JobSettings): LongPart | undefined {
    const boards = longBoards(parts[0]?.stock?.value, job);
    const pieces = parts.flatMap(part => Array.from({ length: Math.min(part.count, boards.length + 1) }, () => part)).sort((a, b) => b.length - a.length);
    let next = 0;
    return pieces.find(piece => {
        if (next >= boards.length || boards[next]! < piece.length) return true;
        next++;
        return false;
    });
}

/** The longest pieces that come out of what is on hand, the longest first, one a board. */
function longBoards(stock: Stock | undefined, job: JobSettings): Ticks[] {
    const sold = longestPiece(stock, job);
    return (stock?.onHand ?? []).flatMap(({ value }) => {
        const piece = value.length - Math.max(0, job.endTrim.value);
        return piece > sold ? Array.from({ length: Math.min(value.count, MOST_LOOKED_AT) }, () => piece) : [];
    }).sort((a, b) => b - a);
}
/** More long boards than a room has lines. */
const MOST_LOOKED_AT = 200;

function* longParts(ceiling: Ceiling): Generator<LongPart> {
    for (const line of ceiling.lines) yield* partsOfLine(ceiling, line);
    yield* bandParts(ceiling);
    const trim = ceiling.room.grid?.beams?.value.trim;
    if (trim) {
        for (const { number, west, east, north, south } of ceiling.coffers) {
            const length = Math.max(east - west, south - north);
            yield { line: '', part: 'trim', where: `coffer ${number}`, count: 2, length, stock: trim.stock, at: (trim.stock ?? trim).at };
        }
    }
}

function* partsOfLine(ceiling: Ceiling, line: Line): Generator<LongPart> {
    const { blocking, bottom, sides, cleats } = line.section.profile;
    const at = (given: Given<unknown> | undefined): Source => line.splices[0]?.said ?? given?.at ?? line.at;
    const press = bottom?.press?.value ?? 0;
    if (line.through) {
        for (const [from, to] of stretches(line.start, line.splices, line.end)) {
            const where = `line ${line.name}`;
            yield { line: line.name, part: 'bottom', where, count: 1, length: to - from + press, stock: bottom?.stock, at: at(bottom?.stock) };
            yield { line: line.name, part: 'blocking', where, count: 1, length: to - from, stock: blocking?.stock, at: at(blocking?.stock) };
        }
    }
    for (const bay of baysAlong(ceiling, line.runs)) {
        const where = `line ${line.name}, bay ${bay.number}`;
        const side = bay.end - bay.start + sideReach(line, bay.before) + sideReach(line, bay.after);
        if (!line.through) {
            yield { line: line.name, part: 'bottom', where, count: 1, length: between(bay, bottomHigh, bottomLow) + press, stock: bottom?.stock, at: at(bottom?.stock) };
            yield { line: line.name, part: 'blocking', where, count: 1, length: between(bay, channelHigh, channelLow), stock: blocking?.stock, at: at(blocking?.stock) };
        }
        yield { line: line.name, part: 'side', where, count: 2, length: side, stock: sides?.stock, at: at(sides?.stock) };
        if (cleats) yield { line: line.name, part: 'cleat', where, count: 2, length: side - 2 * cleats.shortEachEnd.value, stock: cleats.stock, at: at(cleats.stock) };
    }
}

function* bandParts({ band, room, width, inside }: Ceiling): Generator<LongPart> {
    const perimeter = room.grid?.perimeter;
    if (!band || !perimeter) return;
    for (const side of SIDES) {
        const [start, end] = side === 'north' || side === 'south' ? [0, width] : [inside.north, inside.south];
        for (const [from, to] of stretches(start, band.splices[side], end)) {
            yield { line: '', part: 'band', where: `the ${side} wall`, count: 1, length: to - from, stock: perimeter.stock, at: (perimeter.stock ?? perimeter).at };
        }
    }
}
