import fc from 'fast-check';
import type { Seed } from './texts.ts';

/** One change of a text: what it does, where, how far, and with what. All of it are numbers, so that a failure shrinks to few and small ones. */
interface Step { readonly kind: number; readonly at: number; readonly length: number; readonly pick: number; readonly times: number }
export interface Input { readonly seed: number; readonly steps: readonly Step[] }

const step: fc.Arbitrary<Step> = fc.record({
    kind: fc.nat(15), at: fc.nat(1_000_000), length: fc.nat(60), pick: fc.nat(1_000_000), times: fc.integer({ min: 1, max: 80 }),
});
export const inputs = (seeds: number, most = 8): fc.Arbitrary<Input> =>
    fc.record({ seed: fc.nat(seeds - 1), steps: fc.array(step, { minLength: 1, maxLength: most }) });

/** Longer texts are cut: what is longer has tests of its own. */
const MOST = 20_000;

const CHARACTERS = ['\0', '\t', '\r', '\n', '\r\n', ' ', '"', "'", '\\', '/', '*', '{', '}', '(', ')', ';', ',', '.', ':', '=', '-', '+', 'x', '#', '%', '$', '\u00bd', '\u2033', '\u2028', '\ufeff', '\ud800', '\udc00', '\u{1f600}', '\u200d', '\u0301', '\u202e', '1', '0'];
const SCRAPS = [
    '"', '/*', '*/', '// ', '// allow depths-nearly-equal: seen\n', '1/2"', '5\' 6 1/4"', '12 mm', '1.25 m', '2 x 8\'', '#8 x 2"', '18 ga x 1 1/4" every 8"', '3.15 USD per ft', '12%', '45 deg', '5 min per ft', '2026-01-01',
    ' to ', ' per ', ' x ', ' ± 1/64"', 'like ', 'from "./yard.coffer" use poplar-1x6\n', 'from "../yard.coffer" use nothing as poplar-1x6\n', 'edition 1\n', 'let a = a\n', 'let a = b\nlet b = a\n', 'require groove < 1"\n', 'room den {\n',
    'profile slim(groove: Length = 1/8") like groove-box {\n}\n', 'profile round like round { }\n', 'alternate other { dining.grid.coffers-north 7 }\n', 'wall north 12\' 2"\n', 'line B { beams groove-box }\n', 'fixture lamp light at 3\', 4\'\n',
    'measured {\n  spoiled side-A-1-north\n  cut 16\' of poplar-1x8 into side-A-1-north left 4\'\n}\n', 'grid {\n', 'perimeter { kind none }\n', 'job "Other" { currency "EUR"; cut-to 1 mm; show millimeters }\n', 'stock s { size 1x6; lengths 8\' }\n', 'beams groove-box(groove: 0")\n',
];
const FIGURES = ['0', '1', '2', '7', '64', '100', '1000', '999999', '99999999999999999999', '1/0', '0/3', '1/3', '-1', '0.0001', '3/64', '1 1/2', '15 31/32'];
const UNITS = ['"', "'", ' mm', ' cm', ' m', ' ft', ' in', '', '%', ' deg', ' USD', ' ga'];

/** The text of an input. */
export function textOf({ seed, steps }: Input, seeds: readonly Seed[], most = MOST): string {
    return steps.reduce((text, each) => changed(text, each, seeds).slice(0, most), seeds[seed % seeds.length]!.text);
}

function changed(text: string, { kind, at: where, length, pick, times }: Step, seeds: readonly Seed[]): string {
    const at = where % (text.length + 1), end = Math.min(text.length, at + length);
    const put = (words: string, to = at): string => text.slice(0, at) + words + text.slice(to);
    const lines = text.split('\n'), line = where % lines.length, among = <T>(list: readonly T[]): T => list[pick % list.length]!;
    switch (kind) {
        case 0: return put(among(CHARACTERS));
        case 1: return put(among(CHARACTERS), at + 1);
        case 2: return put('', end);
        case 3: return put(among(SCRAPS));
        case 4: return lines.toSpliced(line, 1 + length % 4).join('\n');
        case 5: return lines.toSpliced(line, 0, ...Array<string>(times).fill(lines[pick % lines.length]!)).join('\n');
        case 6: return lines.toSpliced(line, 1, lines[pick % lines.length]!).join('\n');
        case 7: {
            const other = among(seeds).text.split('\n'), from = times % other.length;
            return lines.toSpliced(line, 0, ...other.slice(from, from + length)).join('\n');
        }
        case 8: return replaced(text, /\d+(?:\.\d+)?(?:\/\d+)?/g, where, among(FIGURES));
        case 9: return replaced(text, /(?<=\d)(?:["']| ?(?:mm|ft|USD|ga|deg|m)\b)/g, where, among(UNITS));
        case 10: return replaced(text, /[A-Za-z_][\w-]*/g, where, among(text.match(/[A-Za-z_][\w-]*/g) ?? ['a']));
        case 11: return put('{ '.repeat(times) + text.slice(at, end) + ' }'.repeat(pick % 2 === 0 ? times : times - 1), end);
        case 12: return put('('.repeat(times) + text.slice(at, end) + ')'.repeat(pick % 2 === 0 ? times : times - 1), end);
        case 13: return put(text.slice(at, end).repeat(times * 4), end);
        case 14: return replaced(text, /[A-Za-z_][\w-]*/g, where, 'long-name-'.repeat(times) + 'x');
        default: return pick % 3 === 0 ? text.slice(0, at) : pick % 3 === 1 ? text.slice(at) : text.replace(/\n/g, pick % 2 === 0 ? '\r\n' : '\r');
    }
}

/** One of the places where a pattern is found, said otherwise. */
function replaced(text: string, pattern: RegExp, which: number, by: string): string {
    const found = [...text.matchAll(pattern)];
    const one = found[which % Math.max(1, found.length)];
    return one ? text.slice(0, one.index) + by + text.slice(one.index + one[0].length) : text;
}
