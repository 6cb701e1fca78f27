import type { Line, Splice, WholeSection } from '../ceiling/model.ts';
import { reliefOf } from '../ceiling/relief.ts';
import { isForward } from '../ceiling/shape.ts';
import type { Direction } from '../job/model.ts';
import { wallOf } from '../job/walls.ts';
import type { Source } from '../provenance/source.ts';
import { term, type WhyTerm } from '../provenance/why.ts';
import { roundTo } from '../quantity/round.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { isSlanted } from './ends.ts';
import { marksOf, placeAlong, runsBack, type Lengths, type Lie, type Pair } from './lie.ts';
import type { Setting } from './setting.ts';

/** What lies along a line, and is cut from bay to bay or runs through. */
type Lying = 'bottom' | 'blocking' | 'beam';

/** Where one piece of a line's bottom or blocking, or of the band, begins and ends, and why. */
export interface Stretch {
    readonly lie: Lie;
    readonly from: Ticks; readonly to: Ticks;
    /**
     * Its long edges and what it takes of a board; `cut…` with the coffer at the size it is cut to: the play beside a bottom counts half, be it an
     * odd tick or not.
     */
    readonly lengths: Lengths;
    readonly why: readonly WhyTerm[];
    /** Counted along the line, where it is cut between others; null where it runs through. */
    readonly bay: number | null;
    readonly letter: string | null;
}

/** From its overall length as it stands and as it is cut: an edge is shorter than that by what its ends lean. */
function lengthsOf({ back, face, overall }: Lie, stands: number, cut: number): Lengths {
    const less = { back: overall - back, face: overall - face };
    return { back: stands - less.back, face: stands - less.face, overall: stands, cutBack: cut - less.back, cutFace: cut - less.face, cutOverall: cut };
}

/** The same piece made longer, by what it is pressed. */
export function longer(lengths: Lengths, by: Ticks): Lengths {
    const { back, face, overall, cutBack, cutFace, cutOverall } = lengths;
    return { back: back + by, face: face + by, overall: overall + by, cutBack: cutBack + by, cutFace: cutFace + by, cutOverall: cutOverall + by };
}

/** A coffer's size along one direction, and what it is cut to, at the words that say how the coffers come about. */
export function cofferTerm({ ceiling: { across, down, room } }: Setting, along: Direction, coffer: Ticks, cut: Ticks): WhyTerm {
    const { spacing } = along === 'east-west' ? across : down;
    const at = spacing.by === 'number' ? spacing.coffers.at : spacing.by === 'size' ? spacing.size.at : room.grid.at;
    return term('coffer', 1, coffer, at, cut);
}

export function sideTerm({ section }: { readonly section: WholeSection }): WhyTerm {
    return section.sideThickness.why.terms[0]!;
}

/** Through lines run from band to band, or from splice to splice; the others from crossing to crossing. */
export function stretchesOf(setting: Setting, line: Line, part: Lying): Stretch[] {
    const pairs = setting.pairs.of(part, line.name);
    if (pairs[0]?.through) return spliced(pairs, line.splices, line.runs, setting);
    return pairs.map(pair => leaned(cutBetween(setting, line, pair, part)));
}

/** From face to face of what a piece lies between: a coffer, or several with the beams between them. */
export function clearTerm(setting: Setting, along: Direction, coffers: number, clear: Ticks, cut: Ticks): WhyTerm {
    const { what: _, ...coffer } = cofferTerm(setting, along, clear, cut);
    return { what: coffers > 1 ? 'from face to face' : 'coffer', ...coffer };
}

/**
 * From the edge of the piece that runs through before it to the edge of the one after it: what is clear between, and at each end what `endTerms`
 * say. At the band or wall: to its face. Blocking is shorter by its relief.
 */
function cutBetween(setting: Setting, line: Line, { exact, cut, named }: Pair, part: Lying): Stretch {
    const { strip, cuts, meets } = exact, from = Math.round(exact.from), to = Math.round(exact.to);
    const half = part === 'blocking' ? reliefOf(line, setting.ceiling.room.job) / 2 : 0, relieved = endsWithRelief(exact, setting);
    const relief = Math.round(relieved.filter(Boolean).length * half);
    const beyond = reachesOf(exact).map((reach, i) => Math.round(reach + (relieved[i] ? half : 0)));
    const [clear, cutClear] = [strip, cut.strip].map(({ why }) => Math.round(why.find(({ what }) => what === 'clear')?.ticks ?? 0)) as [Ticks, Ticks];
    // an odd tick of play is on one side of the bottom
    const last = beyond[1] === 0 ? 0 : 1;
    if (beyond[last] !== 0) beyond[last] = to - from + relief - clear - beyond[1 - last]!;
    const why = [
        clearTerm(setting, line.runs, baysWithin(line, exact), clear, cutClear),
        ...cuts.flatMap((how, i) => termsAt(how, { name: meets[i]!, flank: exact.at[i] }, beyond[i]!, part, setting)),
        term('relief', -1, relief, line.section.profile.blocking?.relief?.at),
    ];
    return { lie: exact, from, to, lengths: lengthsOf(exact, to - from, cut.overall), why, bay: named.bay ?? null, letter: typeof named.nth === 'string' ? named.nth : null };
}

/** What each end adds to what is clear between the faces: terms of nothing are left away. */
export function reachesOf({ strip: { ends, why, way } }: Lie): readonly number[] {
    const terms = why.filter(({ what }) => what === 'end'), [first, second] = terms;
    const atStart = terms.length === 2 || first?.of === ends[0].meets ? first?.ticks ?? 0 : 0;
    const atEnd = terms.length === 2 ? second!.ticks : atStart === 0 ? first?.ticks ?? 0 : 0;
    return runsBack(way) ? [atEnd, atStart] : [atStart, atEnd];
}

function baysWithin({ passes }: Line, { from, to }: Lie): number {
    return passes.filter(({ at, relation }) => relation !== 'over' && at > from && at < to).length + 1;
}

/** Of a piece that is between others at one end at least: that end, and one at a wall or band; not one at a deeper beam, which it stays clear of as it is. */
function endsWithRelief({ cuts, meets }: Lie, setting: Setting): readonly boolean[] {
    const between = cuts.includes('between');
    return cuts.map((cut, i) => between && (cut === 'between' || cut === 'dies' && !setting.beam(meets[i] ?? '')));
}

/** What one end adds to the length that is clear between the faces, or takes off it. */
function termsAt(
    cut: Lie['cuts'][number], { name, flank }: { readonly name: string | null; readonly flank: Lie['at'][number] }, beyond: Ticks, part: Lying, setting: Setting,
): WhyTerm[] {
    const section = name === null ? undefined : setting.sectionAt(name, flank);
    switch (cut) {
        case 'between': return section ? endTerms({ name: beamNamed(name!, setting), section }, part, beyond) : [];
        case 'runs-through': return [term(`through the ${beamNamed(name!, setting)} beam`, 1, beyond)];
        case 'dies': return beyond === 0 ? [] : [term(section ? `clear of the ${beamNamed(name!, setting)} side` : `clear of the wall`, -1, -beyond)];
        // nothing is clear of a splice
        default: return [];
    }
}

/** `line 2`, `west half-beam`: what of it stands behind, so that no figure does, and no foot's mark behind a number. */
function beamNamed(name: string, { ceiling }: Setting): string {
    return ceiling.walls.some(wall => wall.name === name) ? `${name} half-beam` : `line ${name}`;
}

/**
 * What a piece is longer than the coffer where it ends at the edge of another line's: that line's side, and for blocking what a box leaves
 * beside it; for a bottom half of the play, less what it is let in; or where it lies under the sides, the overhang, which it is shorter by.
 */
function endTerms({ name, section }: { readonly name: string; readonly section: WholeSection }, part: Lying, beyond: Ticks): WhyTerm[] {
    const { bottom, sides } = section.profile, side = section.sideThickness.ticks;
    if (part === 'beam') return beyond === 0 ? [] : [term(`at the ${name} beam`, beyond < 0 ? -1 : 1, Math.abs(beyond))];
    if (part !== 'bottom') return [sideTerm({ section }), term(`gap beside the ${name} blocking`, 1, beyond - side)];
    switch (bottom!.place.value) {
        case 'under-sides': return [term(`overhang of the ${name} bottom`, -1, -beyond, (bottom!.overhang ?? bottom!.place).at)];
        case 'in-rabbets': {
            const { width, widthAt } = sides!.rabbet!.value;
            return [sideTerm({ section }), term(`${name} rabbet`, -1, width.ticks, widthAt), term(`gap beside the ${name} bottom`, 1, beyond - side + width.ticks)];
        }
        case 'between-sides': return [sideTerm({ section }), term(`gap beside the ${name} bottom`, 1, beyond - side)];
    }
}

/** The room from wall to wall, at the words of a wall that says so. */
function roomTerm({ ceiling: { room, width, length } }: Setting, along: Direction): WhyTerm {
    const saidBy = (name: string): Source | undefined => wallOf(room, name)?.length?.at;
    return along === 'east-west' ? term('room', 1, width, saidBy('north') ?? saidBy('south')) : term('room', 1, length, saidBy('east') ?? saidBy('west'));
}

/** What keeps a run from a wall, at its words. */
function wallTerm({ ceiling: { around } }: Setting, wall: string | null, ticks: Ticks): WhyTerm {
    const own = around[wall ?? ''], by = own?.kind === 'half-beam' ? own.width : own?.thickness;
    return term(own?.kind === 'half-beam' ? 'half beam' : 'band', 1, ticks, by?.why.terms[0]?.at);
}

/** The pieces of a run from wall to wall: in whole it is the room less what runs along the walls at either end. */
export function spliced(pairs: readonly Pair[], splices: readonly Splice[], runs: Direction, setting: Setting): Stretch[] {
    if (pairs.length === 0) return [];
    const first = pairs[0]!.exact, final = pairs.at(-1)!.exact, mark = marksOf(pairs, setting.step);
    const whole = isRectangle(setting) ? roomTerm(setting, runs) : betweenEnds(first, final, setting);
    const begins = isRectangle(setting) ? 0 : Math.round(first.from);
    const start = wallTerm(setting, first.meets[0], Math.round(first.from) - begins);
    const end = wallTerm(setting, final.meets[1], whole.ticks + begins - Math.round(final.to));
    const less = (t: WhyTerm): WhyTerm => term(t.what, -t.times, t.ticks, t.at, t.mark);
    const origin = startOf(first, setting);
    const at = ({ at, place, said }: Splice): WhyTerm => term(`splice ${place}, at`, 1, Math.round(at + origin) - begins, said, roundTo(mark(at + origin) - begins, setting.step));
    return pairs.map(({ exact, named: { nth } }, i) => {
        const from = i === 0 ? start : at(splices[i - 1]!), to = i === pairs.length - 1 ? [whole, less(end)] : [at(splices[i]!)];
        const lengths = lengthsOf(exact, exact.to - exact.from, mark(exact.to) - mark(exact.from));
        return leaned({ lie: exact, from: exact.from, to: exact.to, lengths, why: [...to, less(from)], bay: null, letter: typeof nth === 'string' ? nth : null });
    });
}

/** What the back of a piece with slanted ends is longer or shorter than what is clear in the middle, with what its ends add. */
function leaned(stretch: Stretch): Stretch {
    const lean = Math.round(stretch.lengths.back) - stretch.why.reduce((sum, { times, ticks }) => sum + times * ticks, 0);
    return lean === 0 || !stretch.lie.ends.some(isSlanted) ? stretch : { ...stretch, why: [...stretch.why, term('what the ends lean', 1, lean)] };
}

/** Where the splices of a run are counted from: those of a line from where its direction begins to count, those of a wall from its own west or north end. */
function startOf({ strip, way }: Lie, { ceiling: { walls } }: Setting): number {
    const wall = walls.find(({ name }) => name === strip.of);
    return wall ? placeAlong(way, isForward(wall) ? wall.from : wall.to) : 0;
}

/**
 * What a run has between what it meets, where the walls are not those of a rectangle. What is cut between others, and a line that dies into them, ends at
 * the band or half beam along a wall; what lies along a wall itself, and runs through, at the next wall.
 */
function betweenEnds(first: Lie, last: Lie, setting: Setting): WhyTerm {
    return term(`between ${endOf(first, 0, setting)} and ${endOf(last, 1, setting)}`, 1, Math.round(last.to) - Math.round(first.from));
}

function endOf({ strip, meets, cuts }: Lie, end: 0 | 1, { ceiling: { around, walls } }: Setting): string {
    const met = meets[end] ?? '', cut = cuts[end], isOfLine = !walls.some(({ name }) => name === strip.of);
    const own = cut === 'between' || cut === 'dies' && isOfLine ? around[met] : undefined;
    return own ? `the ${own.kind === 'band' ? 'band' : 'half beam'} on wall ${met}` : `wall ${met}`;
}

function isRectangle({ ceiling: { walls, square } }: Setting): boolean {
    return square && walls.length === 4;
}
