import type { Piece as Strip } from '../arrangement/model.ts';
import type { JobSettings, Stock } from '../job/model.ts';
import type { Given, Source } from '../provenance/source.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { longestPiece } from './longest.ts';
import type { Band, Ceiling, HalfBeam, Line, Trouble } from './model.ts';
import { arrangedOf } from './plan.ts';

interface LongPart {
    readonly line: string; readonly part: string; readonly where: string;
    readonly length: Ticks; readonly stock: Given<Stock> | undefined; readonly at: Source;
}

/**
 * Pieces that are longer than any board that is sold and that no long board on hand is there for. One is told for each stock, the
 * longest: what mends it mends the others.
 */
export function tooLongForBoards(ceiling: Ceiling): Trouble[] {
    if (nothingIsLong(ceiling)) return [];
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

/** Whether every strip, were it of the shortest stock there is, would come out of it: so it nearly always is, and it is looked at with every keystroke. */
function nothingIsLong(ceiling: Ceiling): boolean {
    const { lines, around, room } = ceiling;
    let longest = 0, least = Infinity, press = 0;
    for (const { overall } of arrangedOf(ceiling).exact.pieces) longest = Math.max(longest, overall);
    const stocks = new Set<Stock | undefined>([room.grid?.beams?.value.trim?.stock?.value]);
    for (const { profile: { blocking, bottom, sides, cleats } } of beamsOf(lines, Object.values(around))) {
        for (const part of [blocking, bottom, sides, cleats]) if (part) stocks.add(part.stock?.value);
        press = Math.max(press, bottom?.press?.value ?? 0);
    }
    for (const own of Object.values(around)) if (own?.kind === 'band') stocks.add(own.perimeter.stock?.value);
    for (const stock of stocks) least = Math.min(least, longestPiece(stock, room.job));
    return longest + press + 1 <= least;
}

function beamsOf(lines: readonly Line[], around: readonly (Band | HalfBeam | null)[]): Set<Line['section']> {
    return new Set([...lines.map(line => line.section), ...around.flatMap(own => (own?.kind === 'half-beam' ? [own.section] : []))]);
}

/** Each long board on hand is there for one piece, the longest board for the longest piece. */
function longestWithoutBoard(parts: readonly LongPart[], job: JobSettings): LongPart | undefined {
    const boards = longBoards(parts[0]?.stock?.value, job);
    const pieces = [...parts].sort((a, b) => b.length - a.length);
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

/** Bottoms before blocking, sides and cleats, line by line and bay by bay; then what runs round the walls, then trim. */
function longParts(ceiling: Ceiling): LongPart[] {
    const { pieces } = arrangedOf(ceiling).exact;
    const own = new Map<string, Strip[]>();
    for (const piece of pieces) own.set(piece.of, [...own.get(piece.of) ?? [], piece]);
    const inOrder = (of: string): Strip[] => (own.get(of) ?? []).sort((a, b) => a.nth - b.nth || ORDER.indexOf(a.part) - ORDER.indexOf(b.part));
    const trim = ceiling.beams?.profile.trim;
    return [
        ...ceiling.lines.flatMap(line => inOrder(line.name).flatMap(strip => partOfBeam(strip, line.section, line.name,
            line.through && (strip.part === 'bottom' || strip.part === 'blocking') ? `line ${line.name}` : `line ${line.name}, bay ${strip.nth}`, given => line.splices[0]?.said ?? given?.at ?? line.at))),
        ...ceiling.walls.flatMap(({ name: side }) => {
            const around = ceiling.around[side];
            return inOrder(side).flatMap((strip): LongPart[] => around?.kind === 'half-beam' ? partOfBeam(strip, around.section, '', `the half beam along the ${side} wall`, given => given?.at ?? around.perimeter.at)
                : around ? [{ line: '', part: 'band', where: `the ${side} wall`, length: Math.round(strip.overall), stock: around.perimeter.stock, at: (around.perimeter.stock ?? around.perimeter).at }] : []);
        }),
        ...trim ? inOrder('trim').map((strip): LongPart => ({ line: '', part: 'trim', where: `coffer ${strip.coffers[0]}`, length: Math.round(strip.overall), stock: trim.stock, at: (trim.stock ?? trim).at })) : [],
    ];
}
const ORDER: readonly Strip['part'][] = ['bottom', 'blocking', 'side', 'cleat', 'wall-cleat', 'band', 'trim'];

function partOfBeam(strip: Strip, { profile: { blocking, bottom, sides, cleats } }: Line['section'], line: string, where: string, at: (given: Given<unknown> | undefined) => Source): LongPart[] {
    const part = ({ bottom, blocking, side: sides, cleat: cleats, 'wall-cleat': cleats } as Partial<Record<Strip['part'], { readonly stock?: Given<Stock> }>>)[strip.part];
    if (!part) return [];
    const press = strip.part === 'bottom' ? bottom?.press?.value ?? 0 : 0;
    return [{ line, part: strip.part === 'wall-cleat' ? 'cleat' : strip.part, where, length: Math.round(strip.overall) + press, stock: part.stock, at: at(part.stock) }];
}
