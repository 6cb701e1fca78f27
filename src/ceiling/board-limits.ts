import { SIDES, type Stock } from '../job/model.ts';
import type { Given, Source } from '../provenance/source.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { baysAlong, between, bottomHigh, bottomLow, channelHigh, channelLow, stretches } from './bays.ts';
import { sideReach } from './corners.ts';
import { longestPiece } from './longest.ts';
import type { Ceiling, Line, Trouble } from './model.ts';

interface LongPart {
    readonly line: string; readonly part: string; readonly where: string;
    readonly length: Ticks; readonly stock: Given<Stock> | undefined; readonly at: Source;
}

/** Pieces that are longer than any board. One is told for each stock, the worst: what mends it mends the others. */
export function tooLongForBoards(ceiling: Ceiling): Trouble[] {
    const worst = new Map<string, Trouble & { readonly kind: 'longer-than-the-board' }>();
    for (const { line, part, where, length, stock, at } of longParts(ceiling)) {
        const longest = longestPiece(stock?.value, ceiling.room.job);
        const key = stock?.value.key ?? part;
        if (length <= longest || length <= (worst.get(key)?.length ?? 0)) continue;
        worst.set(key, { kind: 'longer-than-the-board', line, part, where, length, longest, at });
    }
    return [...worst.values()];
}

function* longParts(ceiling: Ceiling): Generator<LongPart> {
    for (const line of ceiling.lines) yield* partsOfLine(ceiling, line);
    yield* bandParts(ceiling);
    const trim = ceiling.room.grid?.beams?.value.trim;
    if (trim) {
        for (const { number, west, east, north, south } of ceiling.coffers) {
            const length = Math.max(east - west, south - north);
            yield { line: '', part: 'trim', where: `coffer ${number}`, length, stock: trim.stock, at: (trim.stock ?? trim).at };
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
            yield { line: line.name, part: 'bottom', where, length: to - from + press, stock: bottom?.stock, at: at(bottom?.stock) };
            yield { line: line.name, part: 'blocking', where, length: to - from, stock: blocking?.stock, at: at(blocking?.stock) };
        }
    }
    for (const bay of baysAlong(ceiling, line.runs)) {
        const where = `line ${line.name}, bay ${bay.number}`;
        const side = bay.end - bay.start + sideReach(line, bay.before) + sideReach(line, bay.after);
        if (!line.through) {
            yield { line: line.name, part: 'bottom', where, length: between(bay, bottomHigh, bottomLow) + press, stock: bottom?.stock, at: at(bottom?.stock) };
            yield { line: line.name, part: 'blocking', where, length: between(bay, channelHigh, channelLow), stock: blocking?.stock, at: at(blocking?.stock) };
        }
        yield { line: line.name, part: 'side', where, length: side, stock: sides?.stock, at: at(sides?.stock) };
        if (cleats) yield { line: line.name, part: 'cleat', where, length: side - 2 * cleats.shortEachEnd.value, stock: cleats.stock, at: at(cleats.stock) };
    }
}

function* bandParts({ band, room, width, inside }: Ceiling): Generator<LongPart> {
    const perimeter = room.grid?.perimeter;
    if (!band || !perimeter) return;
    for (const side of SIDES) {
        const [start, end] = side === 'north' || side === 'south' ? [0, width] : [inside.north, inside.south];
        for (const [from, to] of stretches(start, band.splices[side], end)) {
            yield { line: '', part: 'band', where: `the ${side} wall`, length: to - from, stock: perimeter.stock, at: (perimeter.stock ?? perimeter).at };
        }
    }
}
