import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
// @ts-expect-error a library for tests alone, which has no types of its own
import MarkdownIt from 'markdown-it';
import { describe, expect, test } from 'vitest';
import { git, repositoryOf, temporaryFolder, write } from '../cli/repository.ts';
import { cofferwright } from '../cli/world.ts';
import { EVIL, EVIL_FILE, evilHouse, MARK } from './house.ts';
import { mustBeClean } from './clean.ts';

// What a code host does with Markdown at most: tags go through, addresses become links.
const renderer = new (MarkdownIt as new (options: object) => { render(markdown: string): string })({ html: true, linkify: true });
const OURS = ['details', 'h2', 'h3', 'li', 'p', 'strong', 'summary', 'table', 'tbody', 'td', 'th', 'thead', 'tr', 'ul'];
/** In a table of Markdown, which ends a cell at a stroke. */
const TRICKS = `${EVIL} ![x](https://example.com/x.png) www.example.com | a | b \\| c </td></tr></table></details><img src=x> @all #12 - [ ] x`;

/** Git takes neither a line end nor a quote in a name that it is handed this way. */
const named = (texts: Record<string, string>): Record<string, string> => {
    const { [EVIL_FILE]: file, ...rest } = texts;
    return { ...rest, "=1+1 | <b>&' $(x) ![a](b).coffer": file! };
};

describe('two states that are full of what others obey', () => {
    const states = (): string => {
        const before = named(evilHouse(TRICKS)), after = named(evilHouse(`${TRICKS} more`));
        return repositoryOf([before, { ...after, 'den.coffer': after['den.coffer']!.replace('coffers-north 3', 'coffers-north 4') }]);
    };
    test.each(['human', 'json', 'csv', 'markdown'])('compare, as %s', async format => {
        const { code, out, err } = await cofferwright(states(), ['compare', 'one', 'two', '--quick', '--format', format]);
        expect(code, err).toBeLessThan(2);
        expect(out.length).toBeGreaterThan(100);
        // long lines are broken between words, further in
        expect(out).not.toMatch(new RegExp(`^${MARK}`, 'm'));
        mustBeClean(format === 'human' || format === 'markdown' ? 'text' : format, out);
        if (format !== 'markdown') return;
        const html = renderer.render(out), tags = [...new Set([...html.matchAll(/<(\w+)/g)].map(([, name]) => name!))].sort();
        expect(tags.filter(tag => !OURS.includes(tag)), out).toEqual([]);
        expect([...html.matchAll(/<details>/g)]).toHaveLength([...html.matchAll(/<\/details>/g)].length);
    });

    test.each(['html', 'pdf'])('a change order, as %s', async format => {
        const cwd = states();
        const { code, err } = await cofferwright(cwd, ['change-order', 'one', 'two', '--quick', '--format', format, '--number', EVIL, '--reason', TRICKS, '--date', '2026-03-02', '--out', 'orders']);
        expect(code, err).toBeLessThan(3);
        mustBeClean('human', err);
        for (const name of code < 2 ? readdirSync(join(cwd, 'orders')).filter(each => !each.startsWith('.')) : []) mustBeClean(format, readFileSync(join(cwd, 'orders', name), format === 'pdf' ? 'latin1' : 'utf8'));
    });

    test('of the first line of a message as much is told as anybody reads', async () => {
        const cwd = repositoryOf([{ 'a.coffer': 'edition 1\n' }]);
        git(cwd, ['commit', '-q', '--allow-empty', '-F', '-'], `${'m'.repeat(100_000)}\n`);
        const { code, out } = await cofferwright(cwd, ['compare', 'one', 'HEAD']);
        expect([code, out.length < 2000, /mmm\s+…/.test(out)]).toEqual([0, true, true]);
    });

    test('commits, branches and names that are no commit', async () => {
        const cwd = repositoryOf([{ 'a.coffer': 'edition 1\n' }]), message = join(temporaryFolder(), 'message');
        write(cwd, { 'a.coffer': 'edition 1\nlet a = 1"\n' });
        git(cwd, ['commit', '-q', '-a', '-F', '-'], `${TRICKS}\n\nbody\n`);
        git(cwd, ['branch', "=1+1';$(x)&<b>|"]);
        for (const asked of ['HEAD~1', "=1+1';$(x)&<b>|", TRICKS, '\u001b[31m', 'a\nb', '-x', '--output=x', ':/x', 'HEAD^{/x}', '@{-1}', `HEAD${'^0'.repeat(2000)}`, 'x'.repeat(100_000), message]) {
            for (const format of ['human', 'json', 'markdown']) {
                const { code, out, err } = await cofferwright(cwd, ['compare', '--format', format, '--', asked]);
                expect(code, `${asked.slice(0, 40)}: ${err}`).toBeLessThan(3);
                mustBeClean('human', err);
                mustBeClean(format === 'markdown' ? 'text' : format, out === '' && format === 'json' ? '{}' : out);
            }
        }
    });
});
