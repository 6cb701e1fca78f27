import { thicknessOf, widthOf } from '../ceiling/part-sizes.ts';
import { compareEach } from '../plain/order.ts';
import { edgesOf, onceCoped, type Lie } from './lie.ts';
import type { Compass, Piece } from './model.ts';
import { pieceOf } from './piece.ts';
import { cofferTerm, spliced } from './runs.ts';
import { endsOf, type Setting } from './setting.ts';
import { inPieces } from './sides-and-cleats.ts';

/** The band, wall by wall: who runs full and who stands between is decided in the corners, see the arrangement. */
export function bandOf(setting: Setting): Piece[] {
    return setting.ceiling.walls.flatMap(({ name: side }) => {
        const band = setting.ceiling.around[side], runs = setting.runsOf(side);
        if (band?.kind !== 'band') return [];
        const { perimeter } = band;
        return spliced(setting.pairs.of('band', side), band.splices, runs, setting).flatMap(stretch => pieceOf({
            part: 'band', on: side, nth: stretch.letter, stock: perimeter.stock, ...stretch.lengths, ends: stretch.lie.ends, why: stretch.why,
            width: band.height.ticks, thickness: band.thickness.ticks, fence: perimeter.ripWith?.value, source: perimeter.at,
            where: stretch.letter ? `${side} wall, piece ${stretch.letter} from the ${endsOf(runs)[0]}` : `${side} wall`,
            corners: stretch.lie.corners, meets: stretch.lie.meets, heights: [band.lowerEdge.ticks - band.height.ticks, band.lowerEdge.ticks],
        }, setting));
    });
}

/**
 * Ceiling trim: round every coffer, mitered like a picture frame inside it, so the long points are the coffer; or in two directions square and as long
 * as it, and coped in the other two.
 */
export function trimOf(setting: Setting): Piece[] {
    const pairs = setting.pairs.of('trim', 'trim');
    if (pairs.length === 0) return [];
    // of what is laid out the sizes are known, but for the board of a crown
    const beams = setting.ceiling.beams!, trim = beams.profile.trim!;
    const out = beams.trimThickness!.ticks, down = beams.trimHeight!.ticks, isCrown = trim.spring !== undefined;
    const width = isCrown ? widthOf(trim, 'trim')?.ticks : down, thickness = isCrown ? thicknessOf(trim, 'trim')?.ticks : out;
    if (!width || !thickness) return [];
    const order = ({ coffers: [coffer], on, nth }: Lie['strip']): readonly number[] => [coffer!, ORDER.indexOf(on!), nth];
    const inOrder = [...pairs].sort(({ exact: { strip: a } }, { exact: { strip: b } }) => compareEach(order(a), order(b)));
    return inOrder.flatMap(pair => {
        const { exact, cut } = pair, { strip, back, face, ends } = exact, coffer = strip.coffers[0]!, side = strip.on!;
        if (face <= 0) return [];
        return pieceOf({
            part: 'trim', coffer, on: side, nth: pair.named.nth, stock: trim.stock, ...edgesOf(pair),
            ends, width, thickness, ...isCrown && { stands: { out, down } }, fence: trim.ripWith?.value, where: `coffer ${coffer}, ${side} side${typeof pair.named.nth === 'string' ? `, piece ${pair.named.nth}` : ''}`, source: trim.at,
            why: [exact.cuts.includes('splice') ? inPieces(exact.cuts, Math.round(back), Math.round(cut.back))
                : cofferTerm(setting, side.startsWith('north') || side.startsWith('south') ? 'east-west' : 'north-south', Math.round(back), Math.round(cut.back))],
            corners: onceCoped(exact), meets: exact.meets, heights: [0, down],
        }, setting);
    });
}
const ORDER: readonly Compass[] = ['north', 'north-east', 'east', 'south-east', 'south', 'south-west', 'west', 'north-west'];
