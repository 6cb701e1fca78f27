import type { Side, WallBow } from '../../job/model.ts';
import type { Given } from '../../provenance/source.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import type { Reading } from './reading.ts';

/** What is said of how straight and how plumb walls are, by their names; undefined where nothing is. The last that says it of a wall is believed. */
export function bowsOf(walls: readonly (readonly [name: string, reading: Reading])[]): Readonly<Record<string, WallBow>> | undefined {
    const said = walls.flatMap(([name, wall]): [string, WallBow][] => {
        const readings = [...offsets(wall, 'hump', 1), ...offsets(wall, 'hollow', -1)], into = wall.length('leans-in'), out = wall.length('leans-out');
        const lean: Given<Ticks> | undefined = into ?? (out && { ...out, value: -out.value });
        return readings.length > 0 || lean ? [[name, { readings, ...lean && { lean } }]] : [];
    });
    return said.length > 0 ? Object.fromEntries(said) : undefined;
}

function offsets(wall: Reading, name: 'hump' | 'hollow', sign: 1 | -1): WallBow['readings'][number][] {
    return wall.each(name, (found, line) => {
        const off = wall.ticks(found), at = wall.modOn(line, name, 'at'), place = at && wall.ticks(at), from = wall.modOn(line, name, 'from')?.known.value;
        return off === undefined || place === undefined ? undefined : { off, place, from: from?.is === 'word' ? from.word as Side : undefined };
    }).map(({ value: { off, place, from }, ...words }) => ({ ...words, value: sign * off, place, ...from && { from } }));
}
