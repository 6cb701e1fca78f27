import { arrangedOf } from '../ceiling/plan.ts';
import type { Ceiling } from '../ceiling/model.ts';
import { grouped } from '../plain/groups.ts';
import type { Point } from '../plane/point.ts';
import { extentOf } from '../plane/polygon.ts';
import type { Piece, TakeOff } from '../takeoff/model.ts';
import { kindOf, KINDS } from './groups.ts';
import type { Before, FirstBay } from './model.ts';

/**
 * The coffer that is tried first: of those with beams on most of its edges, so that it tells of the beams and not of the walls, one that can be put up
 * before all others, or else needs fewest of their pieces; of several as good the first. A slot, less than half as wide as the others, tells little and
 * is none. For it are cut its sides and cleats, those across from them in the same bays, so that the bottom's channel is there to be measured, the
 * spacers between, and whatever else has to be up before one of these.
 */
export function firstBayOf(ceiling: Ceiling, { pieces }: TakeOff, befores: readonly Before[]): FirstBay | null {
    const lines = new Set(ceiling.lines.map(({ name }) => name));
    const beams = arrangedOf(ceiling).exact.coffers.map(({ number, edges, outline }) =>
        ({ number, count: edges.filter(({ along }) => along.some(of => lines.has(of))).length, narrow: narrowest(outline) }));
    const said = ceiling.room.putUp?.firstBay, own = said && beams.find(({ number }) => number === said.value);
    const most = Math.max(...beams.map(({ count }) => count)), among = beams.filter(({ count }) => count === most && count > 0);
    const widest = Math.max(...among.map(({ narrow }) => narrow)), able = own ? [own] : among.filter(({ narrow }) => narrow >= widest / 2);
    const trying = new Trying(pieces, befores);
    let best: { coffer: number; pieces: string[]; besides: number } | undefined;
    for (const { number } of able) {
        const bay = trying.piecesOf(number), all = trying.withWhatTheyNeed(bay), besides = all.length - bay.length;
        if (bay.length > 0 && (!best || besides < best.besides)) best = { coffer: number, pieces: all, besides };
        if (best?.besides === 0) break;
    }
    return best ? { coffer: best.coffer, pieces: best.pieces, ...own && { at: said.at } } : null;
}

function narrowest(outline: readonly Point[]): number {
    const { west, east, north, south } = extentOf(outline);
    return Math.min(east - west, south - north);
}

/** In which kinds of steps somebody is done before the first bay comes. */
const EARLIER = KINDS.slice(0, KINDS.indexOf('first-bay'));

class Trying {
    private readonly byCoffer: ReadonlyMap<number | null, readonly Piece[]>;
    private readonly byBay: ReadonlyMap<string, readonly Piece[]>;
    private readonly needs: ReadonlyMap<string, readonly Before[]>;
    private readonly early: ReadonlySet<string>;

    constructor(pieces: readonly Piece[], befores: readonly Before[]) {
        const tried = pieces.filter(({ part }) => part === 'side' || part === 'cleat' || part === 'spacer');
        this.byCoffer = grouped(tried.filter(({ part }) => part !== 'spacer'), ({ coffer }) => coffer);
        this.byBay = grouped(tried.filter(({ line, bay }) => line !== null && bay !== null), bayOf);
        // what only follows by custom gives way
        this.needs = grouped(befores.filter(({ why }) => why !== 'custom' && why !== 'last'), ({ then }) => then);
        this.early = new Set(pieces.filter(({ part }) => EARLIER.includes(kindOf(part))).map(({ id }) => id));
    }

    piecesOf(coffer: number): string[] {
        const own = this.byCoffer.get(coffer) ?? [], bays = new Set(own.filter(({ part, line, bay }) => part === 'side' && line !== null && bay !== null).map(bayOf));
        return [...new Set([...own, ...[...bays].flatMap(bay => this.byBay.get(bay) ?? [])].map(({ id }) => id))];
    }

    withWhatTheyNeed(bay: readonly string[]): string[] {
        const all = new Set(bay);
        for (const id of all) for (const { first } of this.needs.get(id) ?? []) if (!this.early.has(first)) all.add(first);
        return [...all];
    }
}

function bayOf({ line, bay }: Piece): string {
    return `${line} ${bay}`;
}
