import fc from 'fast-check';
import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { cutSizeOf } from '../../src/ceiling/coffer-size.ts';
import { layOut } from '../../src/ceiling/layout.ts';
import type { Ceiling, Trouble } from '../../src/ceiling/model.ts';
import { readFile } from '../../src/language/read-file.ts';
import { TestWorkspace } from '../support/workspace.ts';
import { randomCeilings, YARD } from '../takeoff/random-ceilings.ts';

/**
 * Where everything stands in rooms of all kinds, or why it cannot: written down, so that it stays. That pieces go together in just these rooms, and
 * cover them, is held by `random-ceilings` and the worked jobs of the take-off.
 */
const WORKED = new URL('../takeoff/worked/', import.meta.url);

test('random ceilings of every shape, and the worked jobs', async () => {
    const workspace = await TestWorkspace.open({ 'yard.coffer': YARD, 'room.coffer': 'edition 1\n' });
    const lines = async (text: string): Promise<string[]> => {
        await workspace.edit({ 'room.coffer': text });
        return told(workspace);
    };
    const random: string[] = [];
    for (const [i, { text, shape }] of fc.sample(randomCeilings, { seed: 63, numRuns: 14 }).entries()) random.push(`${i + 1}: ${shape}`, ...await lines(text), '');
    await expect(random.join('\n')).toMatchFileSnapshot('./whole-layouts/random.txt');
    for (const file of readdirSync(WORKED)) {
        const worked = await lines(readFileSync(new URL(file, WORKED), 'utf8'));
        await expect([...worked, ''].join('\n')).toMatchFileSnapshot(`./whole-layouts/${file.replace('.coffer', '.txt')}`);
    }
});

function told(workspace: TestWorkspace): string[] {
    const [room] = readFile(workspace.document('room.coffer')).rooms;
    if (!room) return ['no room'];
    const { ceiling, troubles } = layOut(room);
    return [...troubles.map(toldTrouble), ...ceiling ? toldCeiling(ceiling) : []];
}

const inch = (ticks: number): string => String(Math.round(ticks / 16256 * 1e4) / 1e4);
const all = (ticks: readonly number[]): string => ticks.map(inch).join(' ');

function toldTrouble({ at, ...trouble }: Trouble): string {
    const { line, character } = at.range.start;
    return `    ${line + 1}:${character + 1} ${JSON.stringify(trouble, (_, value: unknown) => (typeof value === 'object' && value !== null && 'uri' in value ? undefined : value))}`;
}

function toldCeiling(ceiling: Ceiling): string[] {
    const { width, length, square, walls, around, lines, coffers, crossings, across, down, trimSplices = [] } = ceiling;
    return [
        `    ${inch(width)} x ${inch(length)}${square ? '' : ', askew'}`,
        ...walls.map(({ name, from, to, length: long }) => {
            const own = around[name], splices = own?.splices.map(({ at, place }) => `${inch(at)} ${place}`).join(', ');
            return `    wall ${name} ${inch(long)}: ${all([from.x, from.y, to.x, to.y])}; ${own?.kind ?? 'none'}${splices ? `, spliced ${splices}` : ''}`;
        }),
        ...[across, down].map(({ along, start, end, wallEnds, coffers: sizes, residue }) =>
            `    ${along} ${all([start, end, ...wallEnds])}: ${all(sizes)}; ${residue.place} ${all([residue.ticks, residue.rest, ...residue.cutCoffers])}`),
        ...lines.flatMap(line => [
            `    line ${line.name} ${line.runs} from ${line.from} to ${line.to}${line.byHand ? ', by hand' : ''}${line.through ? ', through' : ''}: `
                + `${all([line.low, line.high, line.start, line.end, ...line.faces])}; ${line.leans.map(lean => lean.toFixed(6)).join(' ')}; `
                + line.splices.map(({ at, place }) => `${inch(at)} ${place}`).join(', '),
            ...line.passes.map(({ of, relation, cuts, stem, at, low, high, bottomLow, bottomHigh }) =>
                `        ${of} ${relation}${cuts ? ' cuts' : ''} ${stem ?? ''} ${all([at, low, high, bottomLow, bottomHigh])}`),
        ]),
        ...coffers.map(coffer => {
            const { number, west, east, north, south, outline } = coffer, cut = cutSizeOf(ceiling, coffer);
            const isOther = cut.width !== east - west || cut.length !== south - north;
            return `    coffer ${number} ${all([west, east, north, south])}, ${outline.length} corners${isOther ? `, cut ${inch(cut.width)} x ${inch(cut.length)}` : ''}`;
        }),
        ...trimSplices.map(splice => `    trim spliced ${JSON.stringify(splice)}`),
        `    ${crossings.map(({ name, flush }) => `${name}${flush ? '' : ' not flush'}`).join(', ')}`,
    ];
}
