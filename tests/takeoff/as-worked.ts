import type { Layout } from '../../src/ceiling/model.ts';
import { takeOffOf } from '../../src/pipeline/inspect.ts';
import { SOUND } from '../../src/pipeline/standing.ts';
import { jsonCutList } from '../../src/report/cut-list/json.ts';
import type { CutListJson } from '../../src/report/cut-list/shape.ts';
import { number, type WorkedPiece, type WorkedRoom } from '../arrangement/worked.ts';
import { files } from '../report/samples.ts';

/**
 * A cut list held against the independent model of tests/arrangement/worked.json: every piece of the list is one of the model's, with both edges,
 * what it takes of a board, both ends with cut and angle, hand, and what it runs between; and none is missing.
 */
export type Listed = CutListJson['pieces'][number];
/** What walls and lines of the model are called in the text. */
type Named = (name: string) => string;

/** The cut list of a room as it is printed for other programs. Spacers hang wherever there is room, and the model has none. */
export function listed({ room, ceiling }: Layout): Listed[] {
    const text = jsonCutList([{ job: room.job, rooms: [{ room, takeOff: takeOffOf(ceiling!), standing: SOUND }] }], files);
    return (JSON.parse(text) as { readonly pieces: Listed[] }).pieces.filter(({ part }) => part !== 'spacer');
}

/** Families of the model's lines of which lists tell the west end first. */
const WEST_FIRST = ['east-west', 'rising'];

/** What is in one list and not in the other: empty where they agree. `near`: by how many ticks lengths may differ. */
export function unlike(list: readonly Listed[], { pieces, lines }: Pick<WorkedRoom, 'pieces' | 'lines'>, named: Named, near = 1): string[] {
    const eastWest = new Set(lines.filter(([, family]) => WEST_FIRST.includes(family)).map(([name]) => named(name)));
    const left = pieces.flatMap(piece => piece.at.map(at => ({ piece, at })));
    const found = list.flatMap(piece => {
        const fit = left.findIndex(each => isAt(piece, each.piece, each.at, named) && agrees(piece, each.piece, eastWest.has(piece.line ?? ''), near));
        if (fit >= 0) left.splice(fit, 1);
        return fit >= 0 ? [] : [`${piece.id} ${JSON.stringify([piece.face.ticks, piece.back.ticks, piece.left, piece.right, piece.hand, piece.on, piece.meets])}`];
    });
    return [...found, ...left.map(({ piece, at }) => `nothing is ${JSON.stringify([piece.part, piece.of, piece.edges, piece.cuts, piece.angles, piece.hand, at])}`)];
}

function isAt({ part, line, coffer, on, meets, id }: Listed, { part: wanted, of }: WorkedPiece, at: readonly (string | number)[], named: Named): boolean {
    const isAlongWall = line === null, between = (words: readonly (string | number)[]): boolean =>
        meets!.map(String).sort().join() === words.map(each => named(String(each))).sort().join();
    switch (wanted) {
        case 'trim': return part === 'trim' && coffer === at[0] && on === at[1];
        case 'band': return part === 'band' && on === named(of!);
        case 'wall-cleat': return part === 'cleat' && id.endsWith('-wall') && on === named(of!);
        case 'side': case 'cleat': return part === wanted && !id.endsWith('-wall') && (line ?? on) === named(of!) && (isAlongWall || on === at[0]) && between(at.slice(1));
        default: return part === wanted && (line ?? on) === named(of!) && (isAlongWall || between(at));
    }
}

function agrees(piece: Listed, { part, edges, cuts, angles, hand, width, overall }: WorkedPiece, runsEast: boolean, ticks: number): boolean {
    const near = (length: { readonly ticks: number } | undefined, inches: string): boolean =>
        length !== undefined && Math.abs(length.ticks - number(inches)) <= ticks;
    // the model tells a piece from left to right, its first edge first: of what lies in a line the left one, which is the back of what runs to the east
    const backIsFirst = part === 'band' || part === 'wall-cleat' || lies(part) && (piece.line === null || runsEast);
    const [first, second] = backIsFirst ? [piece.back, piece.face] : [piece.face, piece.back], sign = backIsFirst ? -1 : 1;
    const isCleat = part === 'cleat' || part === 'wall-cleat', longest = number(edges[0]) > number(edges[1]) ? edges[0] : edges[1];
    const endsAre = (ends: readonly Listed['left'][]): boolean =>
        ends.every((end, i) => Math.abs(end!.angle! - sign * angles[i]!) < 0.001 && (cuts === undefined || end!.how === cuts[i]));
    const { left, right } = piece;
    return (isCleat || near(first, edges[0]) && near(second, edges[1])) && (!isCleat || near(piece.back, edges[backIsFirst ? 0 : 1]))
        && near(piece.overall, overall ?? longest) && (endsAre([left, right]) || lies(part) && endsAre([right, left]))
        && (hand === undefined || lies(part) || piece.hand === hand)
        && (width === undefined || near(piece.width, width) || part === 'band' && near(piece.thickness, width));
}
const lies = (part: WorkedPiece['part']): boolean => part === 'bottom' || part === 'blocking';
