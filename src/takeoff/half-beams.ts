import type { HalfBeam } from '../ceiling/model.ts';
import { sideFootOf } from '../ceiling/section.ts';
import { slotsOf, type SaidWays } from './closing/slots.ts';
import { edgesOf, type Pair } from './lie.ts';
import type { Part, Piece } from './model.ts';
import { pieceOf } from './piece.ts';
import { spliced, type Stretch } from './runs.ts';
import { endsOf, type Setting } from './setting.ts';
import { cleatsIn, nipsOf, nipWork, rabbetWork, sideBehind, whyOfCleat, whyOfSide } from './sides-and-cleats.ts';

/**
 * The pieces of one part of every half beam along a wall. Its sides and their cleats are as those of a line; what lies in it runs along the
 * wall, and is ripped to its width.
 */
export function halfBeamPieces(part: Part, setting: Setting, said: SaidWays = new Map()): Piece[] {
    return setting.ceiling.walls.flatMap(({ name: side }) => {
        const own = setting.ceiling.around[side];
        return own?.kind === 'half-beam' ? piecesOf(part, side, own, setting, said) : [];
    });
}

function piecesOf(part: Part, wall: string, own: HalfBeam, setting: Setting, said: SaidWays): Piece[] {
    switch (part) {
        case 'blocking': case 'bottom': return lying(part, wall, own, setting, said);
        case 'side': return sidesOf(wall, own, setting);
        case 'timber': return timbers(wall, own, setting);
        case 'cleat': return [...cleatsOf(wall, own, setting), ...wallCleats(wall, own, setting)];
        default: return [];
    }
}

function lying(
    part: 'blocking' | 'bottom', wall: string, { section, width, bottomWidth, splices, perimeter }: HalfBeam, setting: Setting, said: SaidWays,
): Piece[] {
    const board = section.profile[part], runs = setting.runsOf(wall);
    if (!board) return [];
    const bottom = part === 'bottom' ? section.profile.bottom : undefined;
    const thickness = part === 'bottom' ? section.bottomThickness.ticks : section.blockingThickness.ticks;
    const whereOfIt = ({ letter }: Stretch): string => `half beam along the ${wall} wall${letter ? `, piece ${letter} from the ${endsOf(runs)[0]}` : ''}`;
    return spliced(setting.pairs.of(part, wall), splices, runs, setting).flatMap((stretch, _, stretches) => pieceOf({
        part, wall, nth: stretch.letter, stock: board.stock, ...stretch.lengths, ends: stretch.lie.ends, why: stretch.why,
        width: bottom ? bottomWidth.ticks : width.ticks, thickness, ...bottom && perimeter.scribe && { scribe: perimeter.scribe.value },
        work: [
            bottom?.ease && { kind: 'ease', by: bottom.ease.value },
            ...bottom ? slotsOf({ of: wall, where: whereOfIt(stretch), biscuits: bottom.biscuits?.value, stretch, stretches }, said, setting) : [],
        ],
        source: board.at, where: whereOfIt(stretch),
        corners: stretch.lie.corners, meets: stretch.lie.meets, heights: part === 'bottom' ? [section.bottomTop.ticks, section.depth.ticks] : [0, thickness],
    }, setting));
}

/** A timber against the wall: as deep as its stock is wide, as wide as the text says. */
function timbers(wall: string, { section, width, splices, perimeter: { scribe } }: HalfBeam, setting: Setting): Piece[] {
    const solid = section.profile.solid, runs = setting.runsOf(wall);
    if (!solid) return [];
    return spliced(setting.pairs.of('beam', wall), splices, runs, setting).flatMap(stretch => pieceOf({
        part: 'timber', wall, nth: stretch.letter, stock: solid.stock, ...stretch.lengths, ends: stretch.lie.ends, why: stretch.why,
        width: section.depth.ticks, thickness: width.ticks, ...scribe && { scribe: scribe.value }, fence: solid.ripWith?.value,
        source: solid.at, where: `timber along the ${wall} wall${stretch.letter ? `, piece ${stretch.letter} from the ${endsOf(runs)[0]}` : ''}`,
        corners: stretch.lie.corners, meets: stretch.lie.meets, heights: [0, section.depth.ticks],
    }, setting));
}

function whereOf(wall: string, { bay, nth }: Pair['named']): string {
    return `half beam along the ${wall} wall, ${bay ? `bay ${bay}` : nth}`;
}

function sidesOf(wall: string, { section }: HalfBeam, setting: Setting): Piece[] {
    return setting.pairs.of('side', wall).flatMap(pair => { const { exact, named } = pair, { bay = null, nth } = named, sides = section.profile.sides!; return pieceOf({
        part: 'side', wall, bay, nth, coffer: exact.strip.coffers[0], stock: sides.stock,
        ...edgesOf(pair), ends: exact.ends,
        width: section.sideHeight.ticks, thickness: section.sideThickness.ticks,
        work: [sides.rabbet && rabbetWork(sides.rabbet.value)], fence: sides.ripWith?.value,
        where: whereOf(wall, named), why: whyOfSide(pair, setting.runsOf(wall), setting), source: sides.at,
        corners: exact.corners, meets: exact.meets, heights: [section.heldDown.value.ticks, sideFootOf(section)],
    }, setting); });
}

function cleatsOf(wall: string, { section }: HalfBeam, setting: Setting): Piece[] {
    const sides = setting.pairs.of('side', wall);
    return setting.pairs.of('cleat', wall).flatMap(pair => {
        const { exact, cut, named } = pair, { bay = null, nth } = named, side = sideBehind(exact, sides)!, { cleats, ...sizes } = cleatsIn(section);
        return pieceOf({
            work: nipWork(nipsOf(side.exact.ends, exact.cuts, sizes.thickness, cleats.shortEachEnd.value), setting.runsOf(wall)), part: 'cleat', wall, bay, nth,
            coffer: exact.strip.coffers[0], stock: cleats.stock, back: exact.back, cutBack: cut.back,
            ...sizes, where: whereOf(wall, named), source: cleats.at, corners: exact.corners, meets: exact.meets,
            why: whyOfCleat(side, pair, cleats, setting.runsOf(wall), setting),
        }, setting);
    });
}

/** A strip along the wall that the bottom's other edge is pressed against. */
function wallCleats(wall: string, { section, splices, cleatSplices = splices }: HalfBeam, setting: Setting): Piece[] {
    return spliced(setting.pairs.of('wall-cleat', wall), cleatSplices, setting.runsOf(wall), setting).flatMap(stretch => {
        const { cleats, ...sizes } = cleatsIn(section);
        return pieceOf({
            part: 'cleat', wall, nth: stretch.letter, stock: cleats.stock, ...stretch.lengths, ends: stretch.lie.ends, why: stretch.why, ...sizes,
            where: `half beam along the ${wall} wall, on the wall`, source: cleats.at, corners: stretch.lie.corners, meets: stretch.lie.meets,
        }, setting);
    });
}
