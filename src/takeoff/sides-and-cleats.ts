import type { Line } from '../ceiling/model.ts';
import { sideFootOf } from '../ceiling/section.ts';
import type { Direction, Rabbet, Side } from '../job/model.ts';
import { term, type WhyTerm } from '../provenance/why.ts';
import { handHung } from './hands.ts';
import type { Pair } from './lie.ts';
import type { Piece } from './model.ts';
import { pieceOf, type Draft } from './piece.ts';
import { cofferTerm, sideTerm } from './runs.ts';
import { sidesOf, type Setting } from './setting.ts';
import type { Work } from './work.ts';

/** Sides or cleats of a line, from its west or north end, those on its north or west first. */
function inOrder(part: 'side' | 'cleat', line: Line, { pairs }: Setting): Pair[] {
    const [low] = sidesOf(line.runs);
    const place = ({ exact: { strip } }: Pair): number => 2 * strip.nth + (strip.on === low ? 0 : 1);
    return [...pairs.of(part, line.name)].sort((a, b) => place(a) - place(b));
}

/** The coffer, and the thickness of every side that it is mitered with or runs past. */
export function whyOfSide({ exact: { back, cuts, meets }, cut }: Pick<Pair, 'exact' | 'cut'>, runs: Direction, setting: Setting): WhyTerm[] {
    const met = meets.filter((_, i) => cuts[i] === 'miter' || cuts[i] === 'past').map(name => setting.beam(name!)!);
    const reach = met.reduce((sum, other) => sum + other.section.sideThickness.ticks, 0);
    return [cofferTerm(setting, runs, Math.round(back) - reach, Math.round(cut.back) - reach), ...met.map(sideTerm)];
}

/** What a side and its cleat have in common. */
function shared(line: Line, pair: Pair, setting: Setting): Pick<Draft, 'line' | 'bay' | 'coffer' | 'on' | 'where' | 'corners' | 'ends' | 'meets' | 'why'> {
    const { exact } = pair, { strip } = exact, on = strip.on as Side;
    return {
        line: line.name, bay: strip.nth, on, ...strip.coffers[0] !== undefined && { coffer: strip.coffers[0] },
        where: `line ${line.name}, bay ${strip.nth}, ${on} side`, corners: exact.corners, ends: exact.ends, meets: exact.meets,
        why: whyOfSide(pair, line.runs, setting),
    };
}

/**
 * Sides: the face is the coffer, the back longer by the other side's thickness at every mitered end. Where a side runs
 * past another it is as long at the face as at the back.
 */
export function sidesOfLine(line: Line, setting: Setting): Piece[] {
    const { section } = line, sides = section.profile.sides;
    if (!sides) return [];
    return inOrder('side', line, setting).flatMap(pair => pieceOf({
        ...shared(line, pair, setting), part: 'side', stock: sides.stock,
        face: pair.exact.face, back: pair.exact.back, cutFace: pair.cut.face, cutBack: pair.cut.back,
        hand: sides.rabbet ? handHung(pair.exact.strip.hand, sides.rabbet.value.edge) : null,
        width: section.sideHeight.ticks, thickness: section.sideThickness.ticks, work: [sides.rabbet && rabbetWork(sides.rabbet.value)], fence: sides.ripWith?.value, source: sides.at,
        heights: [section.heldDown.value.ticks, sideFootOf(section)],
    }, setting));
}

/** Cleats: as the back of their side, less what they are short at each end; on its back, over the bottom. */
export function cleatsOfLine(line: Line, setting: Setting): Piece[] {
    const { section } = line, { cleatThickness, cleatHeight, cleatTop } = section, cleats = section.profile.cleats;
    if (!cleats || !cleatThickness || !cleatHeight || !cleatTop) return [];
    const sides = new Map(setting.pairs.of('side', line.name).map(pair => [`${pair.exact.strip.nth} ${pair.exact.strip.on}`, pair]));
    return inOrder('cleat', line, setting).flatMap(({ exact, cut }) => {
        const ofSide = shared(line, sides.get(`${exact.strip.nth} ${exact.strip.on}`)!, setting);
        return pieceOf({
            ...ofSide, part: 'cleat', stock: cleats.stock, back: exact.back, cutBack: cut.back,
            corners: exact.corners, ends: exact.ends, why: [...ofSide.why, term('short at the end', -2, cleats.shortEachEnd.value, cleats.shortEachEnd.at)],
            width: cleatHeight.ticks, thickness: cleatThickness.ticks, source: cleats.at, heights: [cleatTop.ticks, section.bottomTop.ticks],
        }, setting);
    });
}

export function rabbetWork({ width, height, edge, face }: Rabbet): Work {
    return { kind: 'rabbet', width: width.ticks, height: height.ticks, edge, face };
}
