import { centerOf } from '../ceiling/bays.ts';
import type { Crossing } from '../ceiling/model.ts';
import type { Biscuits, Corner, Side } from '../job/model.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Joint, Part, Piece } from './model.ts';
import { endsOf, type Setting } from './setting.ts';

/**
 * The joints that show: bottoms that butt against the one that runs through, splices of bottoms, corners of sides, of
 * the band and of the trim, and splices of the band. Biscuits are the profile's, in every butt and splice of bottoms.
 */
export function jointsOf(pieces: readonly Piece[], setting: Setting): Joint[] {
    const find = new Pieces(pieces);
    const { ceiling } = setting, columns = ceiling.across.lines.length;
    return [
        ...ceiling.crossings.flatMap(crossing => butts(crossing, find)),
        ...ceiling.lines.flatMap(({ name, splices: at, section }) =>
            splices('splice', find.all('bottom', name), `line ${name}`, at.map(s => s.place), section.profile.bottom?.biscuits?.value)),
        ...ceiling.crossings.flatMap((crossing, i) => sideCorners(crossing, Math.floor(i / columns), i % columns, find)),
        ...bandJoints(find, setting),
        ...ceiling.coffers.flatMap(({ number }) => CORNERS.flatMap(([ns, ew]) =>
            joint('trim-corner', `coffer ${number}, ${ns}-${ew}`, find.trim(number, ns), find.trim(number, ew)))),
    ];
}

type VerticalSide = 'north' | 'south';
type HorizontalSide = 'west' | 'east';
const CORNERS: readonly [VerticalSide, HorizontalSide][] = [['north', 'west'], ['north', 'east'], ['south', 'west'], ['south', 'east']];

function joint(kind: Joint['kind'], at: string, a: Piece | undefined, b: Piece | undefined, biscuits?: Biscuits): Joint[] {
    return a && b ? [{ kind, at, pieces: [a.id, b.id], biscuits: biscuits ? { count: biscuits.count, size: biscuits.size } : null }] : [];
}

/** Either side of a crossing a bottom butts against the one that runs through; at a splice, against its first piece. */
function butts({ name, ns, ew, through }: Crossing, find: Pieces): Joint[] {
    const [on, cut] = through === 'north-south' ? [ns, ew] : [ew, ns];
    const passing = find.bottomAt(on.name, on.runs, centerOf(cut));
    const bays = find.all('bottom', cut.name);
    return endsOf(cut.runs).flatMap(end => {
        const butting = bays.find(piece => meets(piece, end, passing));
        return joint('butt', `crossing ${name}, ${end}`, butting, passing, cut.section.profile.bottom?.biscuits?.value);
    });
}

/** Whether the piece comes up to the passing one from this side. */
function meets({ box }: Piece, from: Side, passing: Piece | undefined): boolean {
    if (!passing) return false;
    switch (from) {
        case 'west': return box.east === passing.box.west;
        case 'east': return box.west === passing.box.east;
        case 'north': return box.south === passing.box.north;
        case 'south': return box.north === passing.box.south;
    }
}

function splices(kind: Joint['kind'], pieces: readonly Piece[], of: string, places: readonly string[], biscuits?: Biscuits): Joint[] {
    return places.flatMap((place, i) => joint(kind, `${of}, ${place}`, pieces[i], pieces[i + 1], biscuits));
}

/** Four sides' corners at a crossing, one in each of the coffers around it. */
function sideCorners({ name, ns, ew }: Crossing, row: number, column: number, find: Pieces): Joint[] {
    return CORNERS.flatMap(([vertical, horizontal]) => {
        const a = find.side(ew.name, column + (horizontal === 'west' ? 1 : 2), vertical);
        const b = find.side(ns.name, row + (vertical === 'north' ? 1 : 2), horizontal);
        return joint('corner', `crossing ${name}, ${vertical}-${horizontal}`, a, b);
    });
}

function bandJoints(find: Pieces, { ceiling: { band } }: Setting): Joint[] {
    if (!band) return [];
    const corners = CORNERS.flatMap(([ns, ew]) => {
        const full = find.band(ns), between = find.band(ew);
        const corner: Corner = `${ns}-${ew}`;
        return joint('band-corner', corner, ew === 'west' ? full[0] : full.at(-1), ns === 'north' ? between[0] : between.at(-1));
    });
    const sides: Side[] = ['north', 'east', 'south', 'west'];
    return [...corners, ...sides.flatMap(side => splices('band-splice', find.band(side), `${side} wall`, band.splices[side].map(s => s.place)))];
}

/** Pieces by the place they have in the ceiling. */
class Pieces {
    private readonly byPlace = new Map<string, Piece[]>();

    constructor(pieces: readonly Piece[]) {
        for (const piece of pieces) {
            const key = placeKey(piece.part, piece.line, piece.part === 'trim' ? piece.coffer : piece.part === 'side' ? piece.bay : null, piece.on);
            const there = this.byPlace.get(key);
            if (there) there.push(piece);
            else this.byPlace.set(key, [piece]);
        }
    }
    all(part: Part, line: string): readonly Piece[] { return this.byPlace.get(placeKey(part, line, null, null)) ?? []; }
    side(line: string, bay: number, on: Side): Piece | undefined { return this.byPlace.get(placeKey('side', line, bay, on))?.[0]; }
    trim(coffer: number, on: Side): Piece | undefined { return this.byPlace.get(placeKey('trim', null, coffer, on))?.[0]; }
    band(on: Side): readonly Piece[] { return this.byPlace.get(placeKey('band', null, null, on)) ?? []; }
    bottomAt(line: string, runs: 'north-south' | 'east-west', position: Ticks): Piece | undefined {
        return this.all('bottom', line).find(({ box }) => {
            const [from, to] = runs === 'east-west' ? [box.west, box.east] : [box.north, box.south];
            return from < position && position <= to;
        });
    }
}

function placeKey(part: Part, line: string | null, place: number | null, on: Side | null): string {
    return `${part} ${line} ${place} ${on}`;
}
