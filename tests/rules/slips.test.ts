import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readFile } from '../../src/language/read-file.ts';
import { inspect } from '../../src/pipeline/inspect.ts';
import { inspectClosely } from '../../src/pipeline/inspect-closely.ts';
import { drawer } from '../support/drawer.ts';
import { readMarked } from '../support/marked.ts';
import { TestWorkspace } from '../support/workspace.ts';
import { toldOf } from './told.ts';

/**
 * Slips of a careful carpenter: in each of the real jobs one figure or line is another, and all that is said of it is written down, with places
 * and fixes. That the words are right is held by each rule's own examples; here they are held to stay as they are, alone and together.
 */
const folder = new URL('real-jobs/', import.meta.url);
const jobs = readdirSync(folder).filter(name => name.endsWith('.coffer')).sort();
const SLIPS_A_JOB = 2;

/** A length, a count or a whole line with its figure. */
const FIGURE = /(?<![\w#.-])(\d+)((?: \d+\/\d+|\/\d+)?(?:"|'| mm)?)(?![\w/.])/g;

function slipsIn(text: string, seed: number): { readonly told: string; readonly text: string }[] {
    const draw = drawer(seed), lineStart = (index: number): number => text.lastIndexOf('\n', index) + 1;
    // of a beam or a room, and not in a comment
    const begins = text.indexOf('\nprofile'), figures = [...text.matchAll(FIGURE)].filter(({ index }) => index > begins && !text.slice(lineStart(index), index).includes('//'));
    return Array.from({ length: SLIPS_A_JOB }, (_, i) => {
        const { index, 0: was, 1: figure = '', 2: rest = '' } = figures[draw(figures.length)]!, n = Number(figure);
        const start = lineStart(index), end = text.indexOf('\n', index), words = text.slice(start, end), where = `line ${text.slice(0, index).split('\n').length}`;
        const is = [`${n + 1}${rest}`, `${2 * n}${rest}`, `${Math.floor(n / 2)}${rest}`, `${figure} 1/32"`, `0${rest}`, undefined, `${n + 3}${rest}`][(i + 2 * seed) % 7];
        // a line that opens or closes a block stays
        return is === undefined && !/[{}]/.test(words)
            ? { told: `${where} left out: ${words.trim()}`, text: text.slice(0, start) + text.slice(end + 1) }
            : { told: `${where}, ${is ?? `9${rest}`} for ${was}: ${words.trim()}`, text: text.slice(0, index) + (is ?? `9${rest}`) + text.slice(index + was.length) };
    });
}

describe.each(jobs)('%s', name => {
    it('is told of each slip what it was told', async () => {
        const files = readMarked(readFileSync(new URL(name, folder), 'utf8')), [{ path, text }] = files as [typeof files[number]];
        const workspace = await TestWorkspace.open(Object.fromEntries(files.map(file => [file.path, file.text]))), lines: string[] = [];
        for (const slip of slipsIn(text, jobs.indexOf(name) + 1)) {
            await workspace.edit({ [path]: slip.text });
            const content = readFile(workspace.document(path));
            lines.push(slip.told, ...[...workspace.findings(path), ...inspect(content).findings, ...inspectClosely(content)].flatMap(toldOf).map(line => `    ${line}`), '');
        }
        await expect(lines.join('\n')).toMatchFileSnapshot(`./slips/${name.replace('.coffer', '.txt')}`);
    });
});
