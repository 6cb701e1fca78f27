import { describe, expect, test } from 'vitest';
import { FULL, some } from '../support/full.ts';
import { createCofferServices } from '../../src/language/services.ts';
import type { PropertyDecl } from '../../src/language/generated/ast.ts';
import { factsOf } from '../../src/language/types/facts.ts';
import { piecesOverlap } from '../../src/rules/pieces-overlap.ts';
import { den, house, signedJob } from '../cli/house.ts';
import { folderWith } from '../cli/folder.ts';
import { made, OUTPUTS, wordsIn } from './outputs.ts';

/**
 * Whatever is said and not computed, or is found wrong, stands at the head of everything made from it, with its place. Where a figure is wrong or
 * missing for it, the exit code is 1, and what would be a wrong figure stands nowhere; else it is said calmly, and condemns nothing.
 */
const rates = `
labor { crew 1 rate 50 USD per h; blocking 3 min per ft; bottom 4 min per ft; trim 2 min per ft; coffer 10 min per coffer }
bid { overhead 10% }
`;
const whole = { ...house, 'job.coffer': signedJob.concat(rates) };
const inRoom = (words: string): Readonly<Record<string, string>> => ({ ...whole, 'den.coffer': den.replace('  grid {', `  ${words}\n\n  grid {`) });
const inBox = (from: string, to: string): Readonly<Record<string, string>> => ({ ...whole, 'box.coffer': whole['box.coffer'].replace(from, to) });

/** How each row of the table is said in a job. `lacks`: parts that are left out; 'all': the room is refused. `calm`: no figure would be another for it. */
const SAID: Readonly<Record<string, { readonly files: Readonly<Record<string, string>>; readonly lacks?: readonly string[] | 'all'; readonly calm?: true }>> = {
    'Ceiling.joists': { files: inRoom('ceiling { height 9\'; joists 2x8 every 16" running north-south }'), calm: true },
    'Fixture.value casing': { files: inRoom('fixture door casing on east width 3\''), calm: true },
    'Fixture.value cabinet': { files: inRoom('fixture press cabinet on east width 3\''), lacks: ['band-east', 'band-north', 'bottom-A-3'] },
    'Fixture.value soffit': { files: inRoom('fixture drop soffit on east width 3\''), lacks: 'all' },
    'Fixture.value pocket': { files: inRoom('fixture blind pocket on east width 3\''), lacks: 'all' },
    'Fixture.value stair-opening': { files: inRoom('fixture stair stair-opening on east width 3\''), lacks: 'all' },
};
/** What the table's own function tells besides its rows. */
const BESIDES: typeof SAID = {
    'a diagonal that is no rectangle\'s': { files: inRoom('diagonal north-west to south-east measures 16\' 9"'), lacks: 'all' },
    'a tolerance without use': { files: inBox('height  5"', 'height  5"\n    every 20" ± 1"'), calm: true },
};

test('all that the library says is not computed is tried', () => {
    const { vocabulary } = createCofferServices().coffer;
    const rows = [...vocabulary.kinds.values()].flatMap(kind => {
        const value = vocabulary.valueOf(kind);
        return [...value ? [value] : [], ...vocabulary.properties(kind).values()].flatMap(property => {
            const said = (of: PropertyDecl, path: string) => factsOf(of).notComputed.flatMap(({ only }) => only?.map(word => `${path} ${word}`) ?? [path]);
            const path = `${kind.name}.${property.name}`;
            return [...said(property, path), ...property.mods.flatMap(mod => said(mod, `${path}/${mod.name}`))];
        });
    });
    expect(Object.keys(SAID).sort()).toEqual([...rows].sort());
});

/** What a piece that is left out is called: `side-A-1-north`, `den.trim-1-east`. */
const named = (part: string): RegExp => new RegExp(`(?<![a-z-])${part}${part.includes('-') ? '' : '-(?:[A-Z]|\\d+)'}(?![A-Za-z0-9])`);

/** Every row through every output takes minutes; everyday each row goes through a fortieth of them, one after the other another. */
const tried = (row: number): typeof OUTPUTS => (FULL ? OUTPUTS : OUTPUTS.filter((_, output) => (row + output) % 40 === 0));

describe.each(Object.entries({ ...SAID, ...BESIDES }).map(([name, said], row) => [name, said, row] as const))('%s', (_, { files, lacks = [], calm }, row) => {
    test('stands at the head of every output, and no figure that it makes wrong', async () => {
        const cwd = folderWith({ ...files }), plain = folderWith(whole);
        for (const output of tried(row)) {
            const { code, texts, err } = await made(cwd, output), what = output.argv.join(' ');
            if (calm) {
                const without = await made(plain, output);
                expect(code, what).toBe(without.code);
                if (output.folder) expect(wordsIn(err), what).toMatch(/written, but not used in any figure here:.*(den|box)\.coffer:\d+:\d+/i);
                for (const { name, text } of texts) {
                    const words = wordsIn(text);
                    expect(words.toLowerCase(), name).not.toMatch(/not to be built from as it stands|"sound": false/);
                    // a client is told nothing of it, and it makes no draft of a bid
                    if (output.forClient) {
                        expect(words, name).not.toContain('not used in any figure');
                        expect(words.includes('to be considered'), name).toBe(false);
                        expect(words.includes('Draft'), name).toBe(without.texts.some(one => one.text.includes('Draft')));
                    } else {
                        expect(words, name).toMatch(/written, but not used in any figure here|"notUsed": \[ \{/i);
                        expect(words, name).toMatch(/(den|box)\.coffer(:\d+:\d+|", "line": \d+)/);
                        expect(words, name).toMatch(/Not computed yet/);
                    }
                }
                continue;
            }
            expect(code, what).toBe(1);
            // a room that is refused has no drawing: then the reason is said instead
            if (texts.length === 0 || lacks === 'all' && output.folder) expect(wordsIn(err), what).toMatch(/(den|box)\.coffer:\d+:\d+/);
            for (const { name, text } of texts) {
                const words = wordsIn(text);
                if (output.forClient) expect(words, name).toContain('Draft, not to be signed');
                else {
                    expect(words.toLowerCase(), name).toMatch(/not to be built from as it stands|"sound": false/);
                    expect(words, name).toMatch(/(den|box)\.coffer(:\d+:\d+|", "line": \d+)/);
                    if (lacks !== 'all') expect(words, name).toMatch(/Not computed yet/);
                }
                for (const part of lacks === 'all' ? ['blocking', 'side', 'bottom', 'cleat', 'band'] : lacks) expect(words, `${name}: ${part}`).not.toMatch(named(part));
            }
        }
    });
});

test('what was found of a board is no trouble where it is what its stock says', async () => {
    const cwd = folderWith({ ...inRoom('measured { board b1 pine-1x8 { width 7 1/4"; thickness 3/4" } }') });
    const { code, texts: [{ text } = { text: '' }] } = await made(cwd, { argv: ['cut-list'] });
    expect({ code, said: /Not computed|not used in any figure|Not to be built/.exec(text) }).toEqual({ code: 0, said: null });
});

test('so does what the dry fit finds wrong', async () => {
    const cwd = folderWith({ 'hall.coffer': `${piecesOverlap.wrong.replaceAll(/(size\s+1x\d)/g, "$1; lengths 8', 16'")}\n${signedJob.replace('edition 1\n', '')}\n${rates}` });
    for (const output of some(OUTPUTS.filter(({ argv }) => argv[0] !== 'dry-fit'), 12)) {
        const { code, texts } = await made(cwd, output), what = output.argv.join(' ');
        expect(code, what).toBe(1);
        expect(texts.length, what).toBeGreaterThan(0);
        for (const { name, text } of texts) {
            const words = wordsIn(text);
            if (output.forClient) expect(words, name).toContain('Draft, not to be signed');
            else expect(words, name).toMatch(/hall\.coffer:\d+:\d+.*pieces-overlap|"rule": "pieces-overlap"/);
        }
    }
});
