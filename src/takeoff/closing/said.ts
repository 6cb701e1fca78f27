import type { Ceiling } from '../../ceiling/model.ts';
import type { ClosingWord } from '../../job/closing-word.ts';
import type { Bottom as BottomSaid, Room } from '../../job/model.ts';
import { carrierOf } from '../carrier.ts';
import type { Piece } from '../model.ts';
import type { BottomOrder } from './bottoms.ts';
import { closingAmong, type Closing } from './pieces.ts';
import { waysIn, type Way } from './ways.ts';

/** The ways in by the words of the text. */
export const WAY_OF: Readonly<Record<ClosingWord, Way['kind']>> = {
    'slots-opened': 'open-slots', 'biscuits-left-out': 'leave-out', swung: 'swing', sprung: 'spring', kneed: 'knee', kerfed: 'kerfs',
};

/** What the text says of the bottoms of this one's line or half beam. */
export function bottomSaid(bottom: Pick<Piece, 'line' | 'on'>, ceiling: Ceiling): BottomSaid {
    return carrierOf(bottom, ceiling).section.profile.bottom!;
}

/** And of how their closing pieces get in; undefined: nothing, or the piece is no bottom, of which alone a way in is said. */
export function closingSaid(piece: Pick<Piece, 'part' | 'line' | 'on'>, ceiling: Ceiling): BottomSaid['closing'] {
    return piece.part === 'bottom' ? bottomSaid(piece, ceiling).closing : undefined;
}

/** Whether the text has some band up before some bottom; nobody saying anything, bands go up last. */
export function bandSaid({ putUp }: Room): BottomOrder {
    const isBand = (name: string): boolean => /^band\b|^wall-/.test(name), isBottom = (name: string): boolean => /^bottoms?\b|^line-/.test(name);
    const first = (putUp?.orders ?? []).some(({ what, before, after }) => before && isBottom(before.value) && what.some(({ value }) => isBand(value))
        || after && isBand(after.value) && what.some(({ value }) => isBottom(value)));
    return first ? { band: 'first' } : {};
}

/** A closing piece with the way in that is said of it, where it is one that goes for it. */
export interface SaidWay { readonly closing: Closing; readonly way: Way }

/** By the words of where each stands. A run that is joined before it goes up is no closing piece. */
export function saidWays(ceiling: Ceiling, pieces: readonly Piece[]): ReadonlyMap<string, SaidWay> {
    const isSaid = [...ceiling.lines.map(({ section }) => section), ...Object.values(ceiling.around).flatMap(own => (own?.kind === 'half-beam' ? own.section : []))]
        .some(({ profile }) => profile.bottom?.closing);
    if (!isSaid) return new Map();
    return new Map(closingAmong(ceiling, pieces, bandSaid(ceiling.room)).flatMap((closing): [string, SaidWay][] => {
        const said = closing.onlySplice ? undefined : closingSaid(closing.piece, ceiling);
        const way = said && waysIn(closing, ceiling).find(({ kind, works }) => kind === WAY_OF[said.value] && works !== false);
        return way ? [[closing.piece.where, { closing, way }]] : [];
    }));
}

/** Ends at which a way in leaves the biscuits out: the farther one of two. */
export function leftOut({ closing: { ends }, way }: SaidWay): readonly [boolean, boolean] {
    if (way.kind !== 'leave-out') return [false, false];
    const has = ends.map(({ sticksOut }) => sticksOut > 0);
    return [has[0]! && (way.ends === 2 || !has[1]), has[1]!];
}
