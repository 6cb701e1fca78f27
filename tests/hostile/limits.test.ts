import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { createServerServices } from '../../src/server/services.ts';
import { TestWorkspace } from '../support/workspace.ts';

/**
 * Every limit of what is read, exactly at it and one beyond: what the README says in its table, what the message says, and what happens are the same.
 * `says`: what is told beyond it, and nothing like it at it.
 */
interface Limit {
    /** The first cell of its row. */
    readonly what: string;
    readonly most: number;
    readonly files: (count: number) => Readonly<Record<string, string>>;
    readonly says: RegExp;
    /** The file that it is told in. */
    readonly told?: string;
}

const STOCK = 'edition 1\nstock s { size 1x6; lengths 8\' }\n';
const BEAM = `${STOCK}profile b { blocking { stock s }; sides { stock s }; bottom { stock s } }
profile h like b { spacers { stock s; height 3"; every 1" } }
`;
const each = (count: number, of: (i: number) => string, between = '\n'): string => Array.from({ length: count }, (_, i) => of(i)).join(between);
const job = (text: string): Readonly<Record<string, string>> => ({ 'job.coffer': text });
const hall = (name: string, north: number, east: number, beams = 'b', feet = 80): string =>
    `room ${name} { wall north ${feet}'; wall east ${feet}'; grid { coffers-north ${north}; coffers-east ${east}; beams ${beams}; through north-south } }\n`;
/** A hall with one line of spacers, `count` of them at an inch. */
const hung = (name: string, count: number): string => `room ${name} { wall north 20'; wall east ${count}"; grid { coffers-north 2; coffers-east 1; beams h; through north-south } }\n`;
const readings = (table: string): Readonly<Record<string, string>> => ({
    'job.coffer': `${BEAM}room a { wall north 20'; wall east 20'; grid { coffers-north 2; coffers-east 2; beams b; through north-south }; survey { readings "./table.csv" in inches } }\n`, 'table.csv': table,
});

const LIMITS: readonly Limit[] = [
    { what: 'characters of a file', most: 300_000, files: count => job(`edition 1\n${`//${'a'.repeat(97)}\n`.repeat(2999)}${'/'.repeat(count - 10 - 2999 * 100)}`), says: /characters, and 300 000 is the limit/ },
    { what: 'characters of a line', most: 10_000, files: count => job(`edition 1\n//${'a'.repeat(count - 2)}\n`), says: /characters, and 10 000 is the limit/ },
    { what: 'words and signs of a file', most: 60_000, files: count => job(`edition 1\n${each(20, () => ';'.repeat(2998) + '\n', '')}${';'.repeat(count - 60_000 + 17)}`), says: /words and signs, and 60 000 is the limit/ },
    { what: 'rooms of a file', most: 200, files: count => job(`edition 1\n${each(count, i => `room r${i} { }`)}\n`), says: /too many rooms to be a job: 201, and 200 is the limit/ },
    { what: 'files that a file takes from (`from`)', most: 1000, files: count => job(`edition 1\n${each(count, i => `from "./f${i}.coffer" use a${i}`)}\n`), says: /1 001 times `from`, and 1 000 is the limit/ },
    { what: 'mistakes in a file', most: 500, files: count => job(`edition 1\n${each(count, () => 'let = 1"')}\n`), says: /more than 500 mistakes/ },
    { what: 'blocks or parentheses within each other', most: 64, files: count => job(`edition 1\nlet a = ${'('.repeat(count)}1"${')'.repeat(count)}\n`), says: /nested too deep: 64 levels is the limit/ },
    { what: 'operators in a value', most: 1000, files: count => job(`edition 1\nlet a = 1"${' + 1"'.repeat(count)}\n`), says: /too long: 1000 signs such as \+ or -/ },
    { what: 'signs before a value', most: 64, files: count => job(`edition 1\nlet a = ${'-'.repeat(count)}1"\n`), says: /more than 64 signs before one value/ },
    { what: 'digits of a figure', most: 30, files: count => job(`edition 1\nlet a = 0.${'3'.repeat(count - 1)}\n`), says: /more than 30 digits|digits/ },
    { what: 'feet of a length', most: 1000, files: count => job(`${BEAM}room a { wall north ${count}'; wall east 20' }\n`), says: /more than 1000'/ },
    { what: 'a count', most: 1_000_000, files: count => job(`edition 1\nlabor { crew ${count} rate 64 USD per h }\n`), says: /more than a million; no job has that many/ },
    { what: 'values that depend on each other in a row', most: 200, files: count => job(`edition 1\n${each(count - 1, i => `let a${i} = a${i + 1}`)}\nlet a${count - 1} = 1"\n`), says: /chain of 200 values/ },
    {
        what: 'values that one value is made from', most: 1500,
        files: count => job(`edition 1\nlet t = ${each(15, i => `b${i}`, ' + ')}\n${each(15, i => `let b${i} = ${each(i < 14 ? 99 : count - 16 - 14 * 99, k => `c${i}-${k}`, ' + ')}`)}\n${each(15, i => each(i < 14 ? 99 : count - 16 - 14 * 99, k => `let c${i}-${k} = 1"`))}\n`),
        says: /made from more than 1500 other values/,
    },
    { what: 'tolerances in a sum', most: 100, files: count => job(`edition 1\nlet a0 = 1"\n${each(count, i => `let a${i + 1} = a${i} + (1" ± 1/64")`)}\n`), says: /adds up more than 100 tolerances/ },
    { what: 'profiles in a row of `like`', most: 32, files: count => job(`${BEAM}profile p0(g: Length = 1/4") like b { }\n${each(count - 1, i => `profile p${i + 1}(g: Length = 1/4") like p${i}(g: g) { }`)}\n`), says: /32 in a row is the limit/ },
    {
        what: 'lines of rooms that the alternates of a file change', most: 20_000,
        files: count => job(`${BEAM}room a {\n${'\n'.repeat(88)}  wall north 20'; wall east 20'; grid { coffers-north 2; coffers-east 2; beams b }\n}\nroom c { wall north 20' }\n${each(200 - 1, i => `alternate n${i} { a.grid.coffers-north 3 }`)}\n${each(count - 20_000 > 0 ? 2 : 1, i => `alternate m${i} { a.grid.coffers-north 3 }`)}\n`),
        says: /rewrite \d+ lines of rooms.*the limit is 20000/,
    },
    { what: 'coffers one way', most: 41, files: count => job(`${BEAM}${hall('a', count, 2)}`), says: /42 coffers in one direction are not laid out; 41 is the limit/ },
    { what: 'coffers of all rooms of a file', most: 400, files: count => job(`${BEAM}${hall('a', 19, 21)}${hall('c', count - 399, 1)}`), says: /have 401 coffers, and 400 is the limit/ },
    { what: 'spacers of all rooms of a file', most: 4000, files: count => job(`${BEAM}${hung('a', 2000)}${hung('c', count - 2000)}`), says: /have 4001 spacers, and 4000 is the limit/ },
    { what: '`job`, `labor` or `bid` blocks of a folder', most: 50, files: count => Object.fromEntries(Array.from({ length: count }, (_, i) => [`f${String(i).padStart(2, '0')}.coffer`, 'edition 1\nlabor {\n}\n'])), says: /more than 50 labor blocks/, told: 'f50.coffer' },
    { what: 'readings of a table', most: 2000, files: count => readings(`x,y,z\n${each(count, i => `${i % 50},${Math.floor(i / 50)},100`)}\n`), says: /2000 readings is the limit/ },
    { what: 'characters of a table', most: 1_000_000, files: count => readings(`x,y,z\n1,1,100\n${'\n'.repeat(count - 14)}`), says: /more than 1000000 characters/ },
    { what: 'characters of a cell of a table', most: 200, files: count => readings(`x,y,z,${'n'.repeat(count)}\n1,1,100,\n`), says: /a cell of more than 200 characters/ },
];

const README = readFileSync(fileURLToPath(new URL('../../README.md', import.meta.url)), 'utf8');

describe.each(LIMITS.map(limit => [limit.what, limit] as const))('%s', (what, { most, files, says, told = 'job.coffer' }) => {
    const messages = async (count: number): Promise<readonly string[]> => {
        const workspace = await TestWorkspace.serve(files(count), createServerServices);
        return workspace.has(told) ? workspace.published(told).map(({ message }) => message) : [];
    };
    test('as many as the limit says are read', async () => {
        expect((await messages(most)).filter(message => says.test(message))).toEqual([]);
    });
    test('one more is told', async () => {
        expect((await messages(most + 1)).filter(message => says.test(message)).length).toBeGreaterThan(0);
    });
    test('stands in the README with its figure', () => {
        expect(README).toContain(`| ${what} | ${grouped(most)} |`);
    });
});

function grouped(count: number): string {
    return String(count).replace(/\B(?=(\d{3})+$)/g, ',');
}
