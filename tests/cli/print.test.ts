import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { PRINTED_PAGES } from '../../src/cli/commands/print.ts';
import { PAGES } from '../../src/pages/pages.ts';
import { trespasses } from '../pages/hostile.ts';
import { folderWith } from './folder.ts';
import { house } from './house.ts';
import { cofferwright } from './world.ts';

describe('print', () => {
    test.each(Object.entries(PAGES).filter(([kind]) => PRINTED_PAGES.some(page => page === kind)))('the page %s, in every format that the editor keeps it in by itself', async (kind, page) => {
        const cwd = folderWith(house);
        for (const format of ['html', 'svg', 'csv'] as const) {
            const { code, out, err } = await cofferwright(cwd, ['print', '--page', kind, '--format', format]);
            if (!page.exports[format]) {
                expect(code).toBe(2);
                expect(err).toMatch(new RegExp(`The page ${kind} is kept as .*html.*, not as ${format}\\.`));
                continue;
            }
            expect(code, err).toBe(0);
            const written = out.trim().split('\n');
            expect(readdirSync(join(cwd, 'pages')).filter(name => name.endsWith(`.${format}`)).sort()).toEqual(written.map(name => name.replace('pages/', '')).sort());
            for (const name of written) {
                const text = readFileSync(join(cwd, name), 'utf8');
                expect(text.length).toBeGreaterThan(100);
                if (format === 'csv') expect(text).toMatch(/^\ufeff?[\w ",]+\r\n/);
                else expect(trespasses(text).filter(tag => !/^<(style|meta)/.test(tag)), name).toEqual([]);
                expect(text).not.toContain(cwd);
            }
        }
    });

    test('only the room that is named, and none that is not there', async () => {
        const cwd = folderWith(house);
        const all = (await cofferwright(cwd, ['print'])).out.trim().split('\n');
        expect(all.every(name => /^pages\/plan-[\w-]+\.html$/.test(name))).toBe(true);
        expect((await cofferwright(cwd, ['print', '--room', 'nowhere'])).code).toBe(2);
    });
});
