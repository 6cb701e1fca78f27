import type { Coffer as Face } from '../arrangement/model.ts';
import { extentOf } from '../plane/polygon.ts';
import type { Coffer, Crossing, Line } from './model.ts';

/** Crossings row by row from the north-west, named by both lines: `B2`. Names that are longer than a letter or a number are parted: `stub-B`. */
export function crossingsOf<Of extends Pick<Line, 'name' | 'runs' | 'from' | 'to' | 'passes'>>(lines: readonly Of[]): Crossing<Of>[] {
    const named = new Map(lines.map(line => [line.name, line]));
    const rows = lines.filter(line => line.runs === 'east-west'), columns = lines.filter(line => line.runs === 'north-south');
    const met = rows.flatMap(ew => [
        ...ew.passes.map(({ of, relation }) => ({ ew, ns: named.get(of)!, flush: relation === 'flush' })),
        ...columns.flatMap(ns => {
            const ending = ns.passes.filter(({ of, stem }) => stem !== null && of === ew.name);
            return ending.map(({ relation }) => ({ ew, ns, flush: relation === 'flush' }));
        }),
    ]);
    // two lines that end at each other, as in the corner of a ring
    for (const ew of rows) {
        for (const ns of columns) if ([ew.from, ew.to].includes(ns.name) && [ns.from, ns.to].includes(ew.name)) met.push({ ew, ns, flush: true });
    }
    const order = (line: Of): number => lines.indexOf(line);
    return met.sort((a, b) => order(a.ew) - order(b.ew) || order(a.ns) - order(b.ns)).map(one => ({ name: crossingName(one.ew.name, one.ns.name), ...one }));
}

function crossingName(first: string, second: string): string {
    return /^[A-Z]+$/.test(first) && /^\d+$/.test(second) ? `${first}${second}` : `${first}-${second}`;
}

/** The two lines that a crossing is named by. */
export function linesOfCrossing<T extends { readonly name: string }>(name: string, lines: readonly T[]): readonly [T, T] | undefined {
    for (const a of lines) {
        for (const b of lines) if (a !== b && (`${a.name}${b.name}` === name || `${a.name}-${b.name}` === name)) return [a, b];
    }
    return undefined;
}

/** A coffer of the arrangement, with the box round it. */
export function cofferOf({ number, outline, holeOutlines }: Face): Coffer {
    return { number, ...extentOf(outline), outline, holes: holeOutlines };
}
