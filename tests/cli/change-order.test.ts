import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { house, signedJob, tooWide } from './house.ts';
import { repositoryOf, type Files } from './repository.ts';
import { cofferwright } from './world.ts';

const rates = `edition 1
labor {
  crew       2 rate 40 USD per h
  day        8 h
  layout     10 min per crossing
  blocking   3 min per ft
  sides      5 min per ft
  bottoms    4 min per ft
  band       4 min per ft
  corner     4 min per joint
}
bid {
  contractor  "Alder & Sons"
  overhead    10%
  profit      20% of cost
  valid-days  21
}
`;
const finer = (files: Files): Files => ({ ...files, 'den.coffer': files['den.coffer']!.replace('coffers-north  3', 'coffers-north  4') });

async function ordered(states: readonly Files[], ...argv: readonly string[]) {
    const cwd = repositoryOf(states), ran = await cofferwright(cwd, ['change-order', 'one', 'two', '--quick', '--number', '7', '--format', 'html', ...argv]);
    const folder = join(cwd, 'change-orders'), name = ran.out.trim() === '' ? undefined : readdirSync(folder).find(each => each.startsWith('change-order-7'));
    return { ...ran, cwd, name, page: name ? readFileSync(join(folder, name), 'utf8') : '' };
}

describe('a change order', () => {
    test('says what is otherwise, what it costs and how long it holds; the plans before and after have a cloud round every line that is', async () => {
        const { page, name, code } = await ordered([{ ...house, 'rates.coffer': rates }, finer({ ...house, 'rates.coffer': rates })], '--reason', 'Finer <coffers>', '--date', '2026-05-04');
        expect([name, code]).toEqual(['change-order-7-plum-street-4.html', 1]);
        for (const words of ['change order 7: Plum Street 4', 'Reason: Finer &lt;coffers&gt;', 'Date: 2026-05-04', 'from <bdi>Alder &amp; Sons</bdi>', 'line 2 is new', 'The price holds for 21 days', 'before the change', 'as changed by change order 7']) {
            expect(page.toLowerCase()).toContain(words.toLowerCase());
        }
        expect(page.match(/IN A CLOUD: WHAT CHANGES/g)).toHaveLength(2);
        // lines 1 and 2 before; 1, 2 and 3 after
        expect(page.match(/changed\.\d/g)).toHaveLength(5);
    });

    test('points to no sheet of a section, for it has none; its plans are numbered on', async () => {
        const { page } = await ordered([house, finer(house)]), words = page.replaceAll(/<[^>]*>/g, ' ');
        expect(page).not.toMatch(/Section \d+ on sheet|id="[^"]*mark\./);
        expect(words).not.toMatch(/section on/);
        expect(words).toMatch(/\sdeep\.\s/);
        expect([...page.matchAll(/>(C-\d+)</g)].map(found => found[1])).toEqual(['C-1', 'C-2']);
    });

    test('has no cost, rate or hour of ours', async () => {
        const { page } = await ordered([{ ...house, 'rates.coffer': rates }, finer({ ...house, 'rates.coffer': rates })]);
        for (const word of ['overhead', 'profit', 'pine-1x6', '2.10', '3.25', ' min', '40.00', 'hours']) expect(page.replace(/<style>.*?<\/style>|url\([^)]*\)/gs, '')).not.toContain(word);
    });

    test('is a draft without lines to sign where something of it is wrong or has no price, 1', async () => {
        const { page, code, err } = await ordered([house, tooWide]);
        expect(code).toBe(1);
        expect(page).toContain('Draft, not to be signed');
        expect(page).not.toContain('For the client: name and signature');
        expect(err).toContain('The change order of Plum Street 4 is a draft');
    });

    test('is added to the contract to date, where one says it', async () => {
        const amounts = (page: string): string[] => [...page.matchAll(/<th[^>]*>(The contract[^<]*)<\/th><td[^>]*>([^<]*)<|<th[^>]*>This change<\/th><td[^>]*>([^<]*)</g)].map(([, what, amount, change]) => (what === undefined ? change! : `${what} ${amount!}`));
        const signed = { ...house, 'job.coffer': signedJob }, { page } = await ordered([signed, finer(signed)]), [change, before, after] = amounts(page);
        expect(before).toBe('The contract to date $8,333.33');
        const cents = (words: string): number => Number(/[\d,]+\.\d\d/.exec(words)![0].replaceAll(/[,.]/g, ''));
        expect(cents(after!) - cents(before!)).toBe(cents(change!));
    });

    test('is none the less to be signed where pieces that are cut are wanted otherwise by it: that is in its price', async () => {
        const list = JSON.parse((await cofferwright(repositoryOf([house]), ['cut-list', '--format', 'json'])).out) as { pieces: { id: string; overall: { text: string } }[] };
        const record = ['bottom-A-1', 'bottom-2'].map(name => `    cut  12' of pine-1x6 into ${name} at ${list.pieces.find(({ id }) => id === `den.${name}`)!.overall.text}\n`).join('');
        const cut = (files: Files): Files => ({
            ...files, 'den.coffer': files['den.coffer']!.replace('use pine-1x8', 'use pine-1x6, pine-1x8').replace('  grid {', `  measured {\n${record}  }\n\n  grid {`),
        });
        const all = { ...house, 'rates.coffer': readFileSync('examples/rates.coffer', 'utf8') };
        const kept = await ordered([cut(all), finer(cut(all))]);
        expect([kept.code, kept.err]).toEqual([0, expect.stringMatching(/^\d pieces? that (is|are) cut (is|are) wanted otherwise by this change, or no more: that is in its price/)]);
        expect(kept.page).toContain('For the client: name and signature');
        // a name that is wrong in both states is no part of the change
        const wrong = (files: Files): Files => ({ ...files, 'den.coffer': files['den.coffer']!.replace('into bottom-2', 'into botom-2') });
        const both = await ordered([wrong(cut(all)), wrong(finer(cut(all)))]);
        expect([both.code, both.page.includes('Draft, not to be signed')]).toEqual([1, true]);
    });

    test('has a line for how long its price holds, where the bid does not say it', async () => {
        const { page } = await ordered([house, finer(house)]);
        expect(page).toContain('The price holds until ______________.');
    });

    test('is not made where nothing is otherwise', async () => {
        const { err, name } = await ordered([house, { ...house, 'den.coffer': `${house['den.coffer']}\n// a note\n` }]);
        expect(name).toBeUndefined();
        expect(err).toContain('there is nothing to sign');
    });

    test('as PDF: the same bytes each time', async () => {
        const cwd = repositoryOf([house, finer(house)]), made = async (out: string): Promise<Buffer> => {
            await cofferwright(cwd, ['change-order', 'one', 'two', '--quick', '--number', '7', '--out', out]);
            return readFileSync(join(cwd, out, 'change-order-7-plum-street-4.pdf'));
        };
        const [first, second] = [await made('a'), await made('b')];
        expect(first.subarray(0, 5).toString()).toBe('%PDF-');
        expect(Buffer.compare(first, second)).toBe(0);
    });
});
