import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { isFullGrid } from '../../src/ceiling/coffer-size.ts';
import { layOut } from '../../src/ceiling/layout.ts';
import type { Around, Ceiling, Layout, Run, Trouble } from '../../src/ceiling/model.ts';
import { readFile } from '../../src/language/read-file.ts';
import { printInches } from '../../src/quantity/print-length.ts';
import { readMarked } from '../support/marked.ts';
import { TestWorkspace } from '../support/workspace.ts';

/**
 * Rooms whose figures were reckoned by hand, and stand in comments in them: `is` says what has to be told of the room that it stands in, word
 * by word; `trouble` what it is told instead, at its mark. Every trouble has to be expected.
 */
const folder = new URL('stated/', import.meta.url);

test.each(readdirSync(folder))('%s', async name => {
    const [file] = readMarked(readFileSync(new URL(name, folder), 'utf8'), { verbs: ['is', 'trouble'] }) as [ReturnType<typeof readMarked>[number]];
    const workspace = await TestWorkspace.open({ 'rooms.coffer': file.text });
    expect(workspace.findings('rooms.coffer').filter(({ severity }) => severity === 'error').map(({ message }) => message)).toEqual([]);
    const layouts = readFile(workspace.document('rooms.coffer')).rooms.map(room => layOut(room));
    const of = (line: number): Layout => layouts.findLast(({ room: { at } }) => at.range.start.line <= line)!;
    const wrong: string[] = [], open = new Map(layouts.map(layout => [layout, layout.troubles.map(trouble => ({ trouble, words: troubleWords(trouble) }))]));
    for (const { verb, rest, line, range } of file.expectations) {
        const layout = of(line), told = verb === 'is' ? toldOf(layout) : [], troubles = open.get(layout)!;
        const i = troubles.findIndex(({ trouble, words }) => words === rest && (!range || JSON.stringify(trouble.at.range) === JSON.stringify(range)));
        if (verb === 'is' ? told.includes(rest) : i >= 0) troubles.splice(i, verb === 'trouble' ? 1 : 0);
        else wrong.push(`${line + 1}: ${verb} ${rest}`, ...verb === 'is' ? told.filter(words => words.split(':')[0] === rest.split(':')[0]).map(words => `    but ${words}`) : []);
    }
    const left = [...open.values()].flat().map(({ trouble, words }) => `${trouble.at.range.start.line + 1}:${trouble.at.range.start.character + 1}: not expected: trouble ${words}`);
    expect([...wrong, ...left]).toEqual([]);
});

/** Figures that are no lengths. */
const COUNTS = ['count', 'coffers', 'most', 'value'];

/** `line-goes-nowhere line 1, why leaves-the-room to west`. */
function troubleWords({ at: _, kind, ...trouble }: Trouble): string {
    const words = (key: string, value: unknown): string => {
        if (typeof value === 'number') return `${key} ${COUNTS.includes(key) ? value : printInches(value)}`;
        if (Array.isArray(value)) return `${key} ${value.map(each => (typeof each === 'object' ? all(each) : String(each))).join(' ')}`;
        return `${key} ${typeof value === 'object' ? all(value) : value as string}`;
    };
    const all = (of: object | null): string => Object.entries(of ?? {}).filter(([key]) => key !== 'other').map(([key, value]) => words(key, value)).join(', ');
    return `${kind} ${all(trouble)}`.trim();
}

function toldOf({ ceiling }: Layout): string[] {
    return ceiling ? [...toldCeiling(ceiling), isFullGrid(ceiling) ? 'full grid' : 'not a full grid'] : ['no ceiling'];
}

const span = (from: number, to: number): string => `${printInches(Math.round(from))} to ${printInches(Math.round(to))}`;

function toldCeiling({ width, length, square, walls, around, lines, coffers, crossings, across, down }: Ceiling): string[] {
    return [
        `box: ${printInches(width)} x ${printInches(length)}`, square ? 'all along the compass' : 'not all along the compass',
        ...walls.map(({ name, length: long }) => `wall ${name}: ${printInches(long)}, ${edgeWords(around, name)}`),
        toldRun('across', across), toldRun('down', down),
        ...lines.flatMap(line => [
            `line ${line.name}: ${span(line.low, line.high)}, ${line.from} to ${line.to}${line.through ? ', through' : ''}${line.byHand ? ', by hand' : ''}`,
            `line ${line.name} bottom: ${span(line.start, line.end)}`,
            `line ${line.name} meets: ${line.passes.map(({ of, relation, cuts, stem, at }) => `${of} ${relation}${cuts ? ' cuts' : ''}${stem ? ` at its ${stem}` : ''} at ${printInches(Math.round(at))}`).join(', ')}`,
            ...line.splices.length > 0 ? [`line ${line.name} splices: ${line.splices.map(({ at, place }) => `${printInches(at)} ${place}`).join(', ')}`] : [],
        ]),
        ...coffers.map(({ number, west, east, north, south, outline, holes }) =>
            `coffer ${number}: ${span(west, east)} by ${span(north, south)}${outline.length === 4 ? '' : `, ${outline.length} corners`}${holes.length > 0 ? ', around others' : ''}`),
        `crossings: ${crossings.map(({ name, flush }) => `${name}${flush ? '' : ' not flush'}`).join(', ')}`,
    ];
}

function toldRun(name: string, { coffers, residue: { ticks, place, cutCoffers, rest } }: Run): string {
    const sizes = (all: readonly number[]): string => all.map(each => printInches(Math.round(each))).join(' ');
    const cut = cutCoffers.some((each, i) => each !== coffers[i]) ? `, cut ${sizes(cutCoffers)}, over ${printInches(ticks)} ${place}, left ${printInches(rest)}` : '';
    return `${name}: ${sizes(coffers)}${cut}`;
}

function edgeWords(around: Around, wall: string): string {
    const own = around[wall];
    if (!own) return 'nothing';
    const splices = (all: readonly { readonly at: number; readonly place: string }[]): string => all.map(({ at, place }) => `${printInches(at)} ${place}`).join(', ');
    const sides = 'sideSplices' in own ? `, sides spliced ${splices(own.sideSplices ?? [])}` : '';
    return `${own.kind}${own.splices.length > 0 ? `, spliced ${splices(own.splices)}` : ''}${sides}`;
}
