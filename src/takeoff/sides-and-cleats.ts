import type { Line, WholeSection } from '../ceiling/model.ts';
import { relationOfBeams } from '../ceiling/meeting.ts';
import { sideFootOf } from '../ceiling/section.ts';
import type { Cleats, Direction, Rabbet } from '../job/model.ts';
import { term, type WhyTerm } from '../provenance/why.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { degreesOf } from './ends.ts';
import { edgesOf, type Pair } from './lie.ts';
import type { EndCut, Piece } from './model.ts';
import { pieceOf } from './piece.ts';
import { clearTerm, reachesOf, sideTerm } from './runs.ts';
import { sectionAt, sidesOf } from '../ceiling/flanks.ts';
import { endsOf, type Setting } from './setting.ts';
import type { Work } from './work.ts';

/** Sides or cleats of a line, from its west or north end, those on its north or west first. */
function inOrder(part: 'side' | 'cleat', line: Line, { pairs }: Setting): Pair[] {
    const [low] = sidesOf(line.runs);
    return [...pairs.of(part, line.name)].sort((a, b) => placeAlongLine(a, low) - placeAlongLine(b, low) || a.exact.from - b.exact.from);
}

function placeAlongLine({ exact: { strip }, named: { bay } }: Pair, low: string): number {
    return 2 * bay! + (strip.on!.includes(low) ? 0 : 1);
}

/** The coffer, and the thickness of every side that it is mitered with or runs past. */
export function whyOfSide({ exact, cut }: Pick<Pair, 'exact' | 'cut'>, runs: Direction, setting: Setting): WhyTerm[] {
    const { back, cuts, meets, at, strip: { coffers } } = exact;
    if (isReturn(exact)) return [term('from the back of the side to the wall', 1, Math.round(back), undefined, Math.round(cut.back))];
    let reach = 0;
    const past: WhyTerm[] = [];
    const beyond = reachesOf(exact);
    meets.forEach((name, i) => {
        if (cuts[i] === 'dies' && name !== null && runsOver(exact.strip.of, name, setting)) {
            const over = Math.round(beyond[i]!);
            reach += over;
            past.push(term(`over the ${name} half-beam`, 1, over));
        }
        if (cuts[i] !== 'miter' && cuts[i] !== 'past') return;
        const section = setting.sectionAt(name!, at[i])!;
        reach += section.sideThickness.ticks;
        past.push(sideTerm({ section }));
    });
    const clear = Math.round(back) - reach, cutClear = Math.round(cut.back) - reach;
    if (cuts.includes('splice')) return [inPieces(cuts, clear, cutClear), ...past];
    return [clearTerm(setting, runs, coffers.length, clear, cutClear), ...past];
}

/** Across the end of a half beam: from its face to the wall. */
function isReturn({ strip: { closes } }: Pair['exact']): boolean {
    return closes !== undefined;
}

/** Over a shallower half beam in its corner a side runs on to the wall. */
function runsOver(own: string, other: string, { isWall, beam }: Setting): boolean {
    const [mine, theirs] = [own, other].map(name => (isWall(name) ? beam(name) : undefined));
    return mine !== undefined && theirs !== undefined && relationOfBeams(mine, theirs) === 'over';
}

/**
 * Sides: the face is the coffer, the back longer by the other side's thickness at every mitered end. Where a side runs
 * past another it is as long at the face as at the back.
 */
export function sidesOfLine(line: Line, setting: Setting): Piece[] {
    return inOrder('side', line, setting).flatMap(pair => {
        const { exact } = pair, { coffers, flank } = exact.strip, on = exact.strip.on!, bay = pair.named.bay!, section = sectionAt(line, flank!);
        const sides = section.profile.sides!, rabbet = sides.rabbet?.value, heights = [section.heldDown.value.ticks, sideFootOf(section)] as const;
        return pieceOf({
            part: 'side', line: line.name, bay, coffer: coffers[0], on, nth: pair.named.nth, where: whereOf(line, bay, on, pair), stock: sides.stock,
            ...edgesOf(pair), ends: exact.ends, meets: exact.meets, width: section.sideHeight.ticks, thickness: section.sideThickness.ticks,
            work: [rabbet && rabbetWork(rabbet)], fence: sides.ripWith?.value,
            why: whyOfSide(pair, line.runs, setting), source: sides.at, corners: exact.corners, heights,
        }, setting);
    });
}

/** Cleats: as the back of their side, less what they are short at each end; on its back, over the bottom. */
export function cleatsOfLine(line: Line, setting: Setting): Piece[] {
    const sides = setting.pairs.of('side', line.name);
    return inOrder('cleat', line, setting).flatMap(pair => {
        const { exact, cut } = pair, { coffers } = exact.strip, bay = pair.named.bay!, on = exact.strip.on!, side = sideBehind(exact, sides)!;
        const { cleats, ...sizes } = cleatsIn(line.section);
        return pieceOf({
            work: nipWork(nipsOf(side.exact.ends, exact.cuts, sizes.thickness, cleats.shortEachEnd.value), line.runs), nth: pair.named.nth, part: 'cleat',
            line: line.name, bay, coffer: coffers[0], on, where: whereOf(line, bay, on, pair), stock: cleats.stock,
            back: exact.back, cutBack: cut.back, ends: exact.ends, meets: exact.meets, ...sizes,
            why: whyOfCleat(side, pair, cleats, line.runs, setting), source: cleats.at, corners: exact.corners,
        }, setting);
    });
}

/** Cleats of a section that has any, with their sizes: none is laid out of which one of these is not said. */
export function cleatsIn({ cleatThickness, cleatHeight, cleatTop, bottomTop, profile: { cleats } }: WholeSection): Pick<Piece, 'width' | 'thickness'> & { readonly cleats: Cleats; readonly heights: readonly [Ticks, Ticks] } {
    return { cleats: cleats!, width: cleatHeight!.ticks, thickness: cleatThickness!.ticks, heights: [cleatTop!.ticks, bottomTop.ticks] };
}

/** As its side, less what it is short at either end, and at an outside corner what it makes room for the other cleat. */
export function whyOfCleat(side: Pair, { exact: { strip, cuts, back }, cut }: Pick<Pair, 'exact' | 'cut'>, { shortEachEnd: { value, at } }: Cleats, runs: Direction, setting: Setting): WhyTerm[] {
    if (cuts.includes('splice')) return [inPieces(cuts, Math.round(back), Math.round(cut.back))];
    const room = strip.why.filter(({ what }) => what === 'cleat').map(({ ticks }) => term('cleat round the corner', -1, Math.round(-ticks)));
    return [...whyOfSide(side, runs, setting), term('short at the end', -2, value, at), ...room];
}

/** Of a piece that is spliced, at one of its ends or at both. */
export function inPieces(cuts: Pair['exact']['cuts'], ticks: Ticks, cut: Ticks): WhyTerm {
    return term(cuts.every(how => how === 'splice') ? 'from splice to splice' : 'to the splice', 1, ticks, undefined, cut);
}

/** The side that a cleat is nailed to. */
export function sideBehind({ strip, from, to }: Pair['exact'], sides: readonly Pair[]): Pair | undefined {
    const middle = (from + to) / 2;
    return sides.find(({ exact: side }) => side.strip.flank === strip.flank && side.strip.closes === strip.closes && side.from <= middle && middle <= side.to);
}

function whereOf({ name }: Line, bay: number, on: string, { named: { nth } }: Pair): string {
    return `line ${name}, bay ${bay}, ${on} side${typeof nth === 'string' ? `, piece ${nth}` : ''}`;
}

/**
 * Where a side ends along something that leans away from its face, a square cleat behind it would run into that: its corner is taken off, as
 * far as the end leans over the cleat's width. Common practice, no source.
 */
export function nipsOf(ends: Piece['ends'], cuts: Pair['exact']['cuts'], width: Ticks, short: Ticks): readonly [Ticks, Ticks] {
    const at = (end: EndCut): Ticks => {
        const leans = 0 - width * Math.tan(degreesOf(end) * Math.PI / 180);
        return leans > short ? Math.ceil(leans) : 0;
    };
    return [cuts[0] === 'splice' ? 0 : at(ends[0]), cuts[1] === 'splice' ? 0 : at(ends[1])];
}

export function nipWork(by: readonly [Ticks, Ticks], runs: Direction): readonly Work[] {
    return by.some(each => each > 0) ? [{ kind: 'nip', by, ends: endsOf(runs) }] : [];
}

export function rabbetWork({ width, height, edge, face }: Rabbet): Work {
    return { kind: 'rabbet', width: width.ticks, height: height.ticks, edge, face };
}
