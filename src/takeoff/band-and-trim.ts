import { SIDES, type Side } from '../job/model.ts';
import type { Coffer } from '../ceiling/model.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Box, EndCut, Piece } from './model.ts';
import { pieceOf } from './piece.ts';
import { bandTerm, cofferTerm, roomTerm, spliced } from './runs.ts';
import { boxOf, type Setting } from './setting.ts';

/** The band: north and south run full from wall to wall, west and east between them; square everywhere. */
export function bandOf(setting: Setting): Piece[] {
    const { band, room, width, length, inside } = setting.ceiling;
    const perimeter = room.grid?.perimeter;
    if (!band || !perimeter) return [];
    const depth: [Ticks, Ticks] = [band.lowerEdge.ticks - band.height.ticks, band.lowerEdge.ticks];
    return SIDES.flatMap(side => {
        const full = side === 'north' || side === 'south';
        const runs = full ? 'east-west' : 'north-south';
        const across: Record<Side, [Ticks, Ticks]> = { north: [0, inside.north], south: [inside.south, length], west: [0, inside.west], east: [inside.east, width] };
        const [start, end] = full ? [0, width] : [inside.north, inside.south];
        return spliced(start, band.splices[side], end, roomTerm(setting, runs), bandTerm(setting, full ? 0 : 1), setting.step).flatMap(stretch => pieceOf({
            part: 'band', on: side, nth: stretch.letter, stock: perimeter.stock, back: stretch.to - stretch.from, why: stretch.why,
            width: band.height.ticks, thickness: band.thickness.ticks, source: perimeter.at,
            where: stretch.letter ? `${side} wall, piece ${stretch.letter} from the ${full ? 'west' : 'north'}` : `${side} wall`,
            box: boxOf(runs, [stretch.from, stretch.to], across[side], depth),
        }, setting));
    });
}

const MITERED: readonly [EndCut, EndCut] = [{ cut: 'miter', degrees: 45 }, { cut: 'miter', degrees: 45 }];

/** Ceiling trim: four a coffer, mitered like a picture frame inside it, so the long points are the coffer. */
export function trimOf(setting: Setting): Piece[] {
    const { ceiling } = setting;
    const trim = ceiling.beams?.profile.trim;
    const thickness = ceiling.beams?.trimThickness?.ticks, height = ceiling.beams?.trimHeight?.ticks;
    if (!thickness || !height || trim?.corners.value !== 'mitered') return [];
    return ceiling.coffers.flatMap(coffer => SIDES.flatMap(side => {
        const alongX = side === 'north' || side === 'south';
        const run = alongX ? ceiling.across : ceiling.down;
        const back = alongX ? coffer.east - coffer.west : coffer.south - coffer.north;
        const cut = run.residue.cutCoffers[(alongX ? coffer.column : coffer.row) - 1]!;
        if (back <= 2 * thickness) return [];
        return pieceOf({
            part: 'trim', coffer: coffer.number, on: side, stock: trim.stock, face: back - 2 * thickness, back, cutFace: cut - 2 * thickness, cutBack: cut,
            ends: MITERED, width: height, thickness, fence: trim.ripWith?.value, where: `coffer ${coffer.number}, ${side} side`, source: trim.at,
            why: [cofferTerm(setting, alongX ? 'east-west' : 'north-south', back)],
            box: trimBox(coffer, side, thickness, height),
        }, setting);
    }));
}

function trimBox({ west, east, north, south }: Coffer, side: Side, thickness: Ticks, height: Ticks): Box {
    const box = { west, east, north, south, top: 0, foot: height };
    switch (side) {
        case 'north': return { ...box, south: north + thickness };
        case 'south': return { ...box, north: south - thickness };
        case 'west': return { ...box, east: west + thickness };
        case 'east': return { ...box, west: east - thickness };
    }
}
