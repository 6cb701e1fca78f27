import type { Side, WallBow } from '../../job/model.ts';
import * as ast from '../generated/ast.ts';
import { sourceOf } from '../types/place.ts';
import type { Reading } from './reading.ts';
import { recordedBy } from './recorded.ts';

const BOWS: ReadonlySet<string | undefined> = new Set(['hump', 'hollow', 'leans-in', 'leans-out']);

/** Whether what a line says of a wall, besides its length, is how straight and how plumb it is, and nothing else. */
export function saysBowsAlone({ path, body }: ast.Line, wall: ast.Fixture): boolean {
    const rest = path.slice(path.findIndex(word => word.ref === wall) + 1);
    if (rest.length > 0) return rest.length === 1 && BOWS.has(rest[0]!.$refText);
    return (body?.members ?? []).every(one => ast.isLine(one) && BOWS.has(one.path[0]?.$refText));
}

/** What is said of how straight and how plumb walls are, by their names; undefined where nothing is. The last that says it of a wall is believed. */
export function bowsOf(walls: readonly (readonly [name: string, reading: Reading])[]): Readonly<Record<string, WallBow>> | undefined {
    const said = walls.flatMap(([name, wall]): [string, WallBow][] => {
        const readings = [...offsets(wall, 'hump', 1), ...offsets(wall, 'hollow', -1)], lean = leanOf(wall, 'leans-in', 1) ?? leanOf(wall, 'leans-out', -1);
        return readings.length > 0 || lean ? [[name, { readings, ...lean && { lean } }]] : [];
    });
    return said.length > 0 ? Object.fromEntries(said) : undefined;
}

/** Nobody draws or tells how straight and how plumb a wall is: what is not said otherwise was found on site. */
function leanOf(wall: Reading, name: 'leans-in' | 'leans-out', sign: 1 | -1): WallBow['lean'] {
    const lean = wall.length(name);
    return lean && { ...lean, value: sign * lean.value, ...recordedBy(wall, mod => wall.found(name, mod), lean.at, true) };
}

function offsets(wall: Reading, name: 'hump' | 'hollow', sign: 1 | -1): WallBow['readings'][number][] {
    return wall.each(name, (found, line) => {
        const off = wall.ticks(found), at = wall.modOn(line, name, 'at'), place = at && wall.ticks(at), from = wall.modOn(line, name, 'from')?.known.value;
        const known = recordedBy(wall, mod => wall.modOn(line, name, mod), sourceOf(found.expr), true);
        return off === undefined || place === undefined ? undefined : { off, place, from: from?.is === 'word' ? from.word as Side : undefined, known };
    }).map(({ value: { off, place, from, known }, ...words }) => ({ ...words, ...known, value: sign * off, place, ...from && { from } }));
}
