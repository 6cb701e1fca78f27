import { distance } from '../plane/point.ts';
import type { JobSettings, Profile } from '../job/model.ts';
import { term } from '../provenance/why.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { leanOf } from './ends.ts';
import type { Corners, Part, Piece } from './model.ts';

/**
 * Hidden pieces of nearly one length, each cut as the shortest of them: fewer settings of the stop for the same wood or less. Only what is square at
 * both ends and ends short of what it runs up to. A piece is as much shorter at either end, and says so in its sum.
 * @param profileOf the detail of a line, or of the half beam along a wall
 */
export function pooled(
    pieces: readonly Piece[], { poolHidden }: Pick<JobSettings, 'poolHidden'>, profileOf: (name: string | null) => Profile | undefined,
): readonly Piece[] {
    if (!poolHidden) return pieces;
    const able = pieces.filter(piece => isPooled(piece, poolHidden, profileOf(piece.line ?? piece.on)) && isSquare(piece));
    const shorter = shorterBy(able, ({ part, width, thickness }) => `${part} ${width} ${thickness}`, piece => piece.cutOverall, poolHidden.value.slack);
    return pieces.map(piece => {
        const by = shorter.get(piece) ?? 0;
        return by === 0 ? piece : {
            ...piece, face: piece.face - by, back: piece.back - by, overall: piece.overall - by,
            cutFace: piece.cutFace - by, cutBack: piece.cutBack - by, cutOverall: piece.cutOverall - by,
            why: { terms: [...piece.why.terms, term('pooled at one stop', -1, by, poolHidden.at)] },
            ...piece.part === 'spacer' ? { box: { ...piece.box, foot: piece.box.foot - by } } : placed(piece, by),
        };
    });
}

/** Cleats that are shorter than their side; of blocking only what goes in between lines with a relief: what runs through would come apart at its splices. */
export function isPooled(
    { part, bay }: { readonly part: Part; readonly bay?: number | null | undefined }, { value: { of } }: NonNullable<JobSettings['poolHidden']>, profile: Profile | undefined,
): boolean {
    if (!of.has(part)) return false;
    switch (part) {
        case 'spacer': return true;
        case 'cleat': return (profile?.cleats?.shortEachEnd.value ?? 0) > 0;
        case 'blocking': return typeof bay === 'number' && profile?.blocking?.relief?.value !== 0;
        default: return false;
    }
}

/**
 * By how much each is cut shorter: from the shortest of a kind on, all that are at most `slack` longer are as long as it. No other way makes fewer
 * lengths.
 */
export function shorterBy<T>(all: readonly T[], kindOf: (one: T) => string, lengthOf: (one: T) => Ticks, slack: Ticks): Map<T, Ticks> {
    const bases = new Map<string, Ticks>();
    return new Map([...all].sort((a, b) => lengthOf(a) - lengthOf(b)).map(one => {
        const kind = kindOf(one), length = lengthOf(one), more = length - (bases.get(kind) ?? -Infinity);
        if (more <= slack) return [one, more];
        bases.set(kind, length);
        return [one, 0];
    }));
}

function isSquare(piece: Piece): boolean {
    return piece.work.every(({ kind }) => kind !== 'nip') && piece.ends.every(end => Math.round(leanOf(end, piece)) === 0);
}

/** As much shorter at either end, half a tick at the most to one side. */
function placed({ corners, box }: Piece, by: Ticks): Pick<Piece, 'corners' | 'box'> {
    const [a, b, c, d] = corners, long = distance(b, a), u = { x: (b.x - a.x) / long, y: (b.y - a.y) / long };
    const first = Math.floor(by / 2), last = by - first;
    const moved = ({ x, y }: Corners[number], along: Ticks): Corners[number] => ({ x: Math.round(x + u.x * along), y: Math.round(y + u.y * along) });
    const shorter: Corners = [moved(a, first), moved(b, -last), moved(c, -last), moved(d, first)];
    const xs = shorter.map(({ x }) => x), ys = shorter.map(({ y }) => y);
    return { corners: shorter, box: { ...box, west: Math.min(...xs), east: Math.max(...xs), north: Math.min(...ys), south: Math.max(...ys) } };
}
