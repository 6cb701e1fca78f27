import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { dryFit } from '../../src/dryfit/dry-fit.ts';
import type { Piece } from '../../src/takeoff/model.ts';
import { takeOff } from '../../src/takeoff/take-off.ts';
import { TICKS_PER_INCH } from '../../src/quantity/ticks.ts';
import { told as faultTold } from '../dryfit/told.ts';
import { layoutsOf } from '../support/layouts-of.ts';
import { wrongIn } from './look-at-ceiling.ts';

/**
 * Rooms whose every piece was reckoned by hand, and stands in a comment behind its room: `// piece NAME, NAME FACE [BACK] CUT CUT`, lengths in inches, the cut
 * of the west or north end first; of a timber what it is ripped to before the cuts, of a panel `LONG x WIDE`. What is not named there must not be in the
 * list, but for spacers and trim.
 */
const folder = new URL('piece-tables/', import.meta.url);

test.each(readdirSync(folder))('%s', async name => {
    const text = readFileSync(new URL(name, folder), 'utf8'), lines = text.split('\n');
    const layouts = await layoutsOf(text);
    expect(layouts.length).toBeGreaterThan(0);
    for (const { room, ceiling, troubles } of layouts) {
        expect(troubles.map(trouble => trouble.kind), room.name).toEqual([]);
        const wanted = tableOf(lines, room.name), off = takeOff(ceiling!);
        const found = off.pieces.filter(({ part }) => part !== 'spacer' && part !== 'trim').map(piece => told(piece, room.name)).sort();
        expect(found, room.name).toEqual(wanted);
        expect(dryFit(ceiling!, off).faults.map(faultTold), room.name).toEqual([]);
        expect(wrongIn(ceiling!), room.name).toBeUndefined();
    }
});

/** The lines behind a room, up to the next one. */
function tableOf(lines: readonly string[], room: string): string[] {
    const start = lines.findIndex(line => line.startsWith(`room ${room} `)), rest = lines.slice(start + 1);
    const end = rest.findIndex(line => line.startsWith('room '));
    return (end < 0 ? rest : rest.slice(0, end)).flatMap(line => {
        const [, names, figures] = /^\/\/ piece ((?:\S+, )*\S+) (.*)$/.exec(line) ?? [];
        return names ? names.split(', ').map(each => `${each} ${figures}`) : [];
    }).sort();
}

function told({ id, part, face, back, ends, width, thickness, outline }: Piece, room: string): string {
    const inches = (ticks: number): string => String(Math.round(ticks / TICKS_PER_INCH * 1e4) / 1e4), name = id.slice(room.length + 1);
    if (part === 'panel') return `${name} ${inches(back)} x ${inches(width)}${outline ? ' shaped' : ''}`;
    const size = part === 'timber' ? ` ${inches(thickness)} x ${inches(width)}` : '';
    return `${name} ${inches(face)}${face === back ? '' : ` ${inches(back)}`}${size} ${ends.map(({ how = 'square' }) => how).join(' ')}`;
}
