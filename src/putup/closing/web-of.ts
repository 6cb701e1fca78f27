import type { End, LineRun, Passing, Piece as Strip } from '../../arrangement/model.ts';
import { grouped } from '../../plain/groups.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import type { Meeting, Place, Strand, Tie, Web, Which } from './web.ts';

/** What an arrangement does not know: biscuits, and what is behind an end before the band is up. */
interface Given {
    /** What a biscuit of this line sticks out; 0 without. */
    stickOut(line: string): Ticks;
    /** Room along the piece behind an end that dies into what it meets. */
    roomBehind(end: Pick<End, 'meets' | 'angle'>): Ticks;
    /** How much longer the bottoms of this line are than their openings. */
    press(line: string): Ticks;
}

/** A line, and the strands that deeper lines part it into: from where to where, and the number of the first of them. */
interface Parted {
    readonly run: LineRun;
    readonly index: number;
    readonly first: number; readonly parts: readonly number[];
    readonly ends: readonly [End | undefined, End | undefined];
}

/** The web of the lines of a room. `runs` and `strips`: what every line meets, and all pieces, as they are arranged. */
export function webOf(runs: readonly LineRun[], strips: readonly Strip[], given: Given): Web {
    const bottoms = grouped(strips.filter(({ part }) => part === 'bottom'), ({ of }) => of), lines = new Map<string, Parted>();
    let first = 0;
    runs.forEach((run, index) => {
        const own = [...bottoms.get(run.line) ?? []].sort((a, b) => a.nth - b.nth);
        const parts = run.passes.filter(({ relation, cuts }) => relation === 'dies' && cuts).map(({ at }) => at);
        lines.set(run.line, { run, index, first, parts, ends: [own[0]?.ends[0], own.at(-1)?.ends[1]] });
        first += parts.length + 1;
    });
    const strands = [...lines.values()].flatMap(({ run: { line }, parts, ends }) => {
        const stickOut = given.stickOut(line), biscuits = stickOut > 0 && bottoms.has(line);
        const tie = (end: End | undefined): Tie | null => {
            if (!end || end.cut === 'miter' || end.cut === 'outside-miter') return 'tight';
            if (lines.has(end.meets) && (end.cut === 'between' || end.cut === 'runs-through')) return null;
            if (end.cut === 'between') return stickOut > 0 ? 'biscuits' : 'tight';
            return given.roomBehind(end) - given.press(line) >= stickOut ? 'free' : 'tight';
        };
        const endsOf = (i: number): Strand['ends'] => [i === 0 ? tie(ends[0]) : 'tight', i === parts.length ? tie(ends[1]) : 'tight'];
        return [...parts, null].map((_, i): Strand => ({ name: line, biscuits, ends: endsOf(i) }));
    });
    return { strands, meetings: [...lines.values()].flatMap(line => [...line.run.passes.flatMap(pass => passed(line, pass, lines)), ...ringsOf(line, lines)]) };
}

/** The strand of a line at a place along it, or at one of its ends. */
function strandAt({ first, parts }: Parted, place: Place): number {
    if ('end' in place) return first + (place.end === 0 ? 0 : parts.length);
    return first + parts.filter(at => at < place.along).length;
}

function meeting(kind: Meeting['kind'], lines: readonly [Parted, Parted], at: readonly [Place, Place], now: Which): Meeting {
    return { kind, of: [strandAt(lines[0], at[0]), strandAt(lines[1], at[1])], at, now };
}

/** A crossing is told once, by the line that comes first; a tee by its bar. */
function passed(line: Parted, pass: Passing, lines: ReadonlyMap<string, Parted>): Meeting[] {
    const other = lines.get(pass.of), { run: { line: name } } = line;
    if (!other || pass.relation !== 'flush') return [];
    const now: Which = pass.cuts ? 1 : 0, along: Place = { along: pass.at };
    if (pass.stem !== null) return [meeting('tee', [line, other], [along, { end: other.run.start.of === name ? 0 : 1 }], now)];
    if (other.index < line.index) return [];
    const back = other.run.passes.find(({ of, stem }) => of === name && stem === null);
    return back ? [meeting('crossing', [line, other], [along, { along: back.at }], now)] : [];
}

function ringsOf(line: Parted, lines: ReadonlyMap<string, Parted>): Meeting[] {
    return ([0, 1] as const).flatMap((end): Meeting[] => {
        const { of, relation } = end === 0 ? line.run.start : line.run.end, other = lines.get(of);
        if (!other || other.index < line.index || relation !== 'flush') return [];
        const { start, end: last } = other.run, name = line.run.line, theirEnd = start.of === name ? 0 : last.of === name ? 1 : undefined;
        return theirEnd === undefined ? [] : [meeting('ring', [line, other], [{ end }, { end: theirEnd }], line.ends[end]?.cut === 'between' ? 1 : 0)];
    });
}
