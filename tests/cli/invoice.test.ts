import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Decimal } from 'decimal.js';
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { hasPoppler, wordsOf } from '../exports/support/poppler.ts';
import { strictSchema } from '../report/samples.ts';
import { folderWith } from './folder.ts';
import { den, house, signedHouse, signedJob, tooWide } from './house.ts';
import { git, repositoryOf, write } from './repository.ts';
import { cofferwright } from './world.ts';

const run = (files: Readonly<Record<string, string>>, ...argv: readonly string[]) => {
    const cwd = folderWith(files);
    return cofferwright(cwd, ['invoice', '--number', '3', ...argv]).then(ran => ({ ...ran, cwd }));
};
const signed = (from: string, to: string) => {
    expect(signedJob.split(from)).toHaveLength(2);
    return { ...signedHouse, 'job.coffer': signedJob.replace(from, to) };
};
const DONE = { ...signedHouse, 'job.coffer': signedJob.replace('done 50%\n    phase      "Filling"', 'done 100%\n    phase      "Filling" done 100%').replace('band" done 50%', 'band" done 100%') };

describe('an invoice', () => {
    // 3,200 + half of 3,600 + half of 333.33, less 10 % and the deposit: 5,166.67 - 516.67 - 800
    test('from what is done to what is due: 0', async () => {
        const { out, code, err } = await run(signedHouse, '--format', 'human', '--date', 'May 8, 2026');
        for (const line of [
            /^INVOICE 3, May 8, 2026 {2}Plum Street 4$/m, /Signed on 2026-02-09, drawings at 5b1f0c7 +\$8,000\.00$/m, /Change 1, accepted on 2026-03-02: A deeper band +\+\$333\.33$/m,
            /The contract to date +\$8,333\.33$/m, /Beams up +\$3,600\.00 +50 % +\$1,800\.00$/m, /Filling +\$1,200\.00 +0 % +\$0\.00$/m, /Change 1: A deeper band +\$333\.33 +50 % +\$166\.67$/m,
            /Work done to date +\$5,166\.67$/m, /Retainage, 10 % of that +-\$516\.67$/m, /Paid on 2026-02-11, the deposit +-\$800\.00$/m, /Due with this bill +\$3,850\.00$/m,
            /Billed before \(1 on 2026-02-09\) +\$800\.00$/m, /retainage with it +\$3,683\.33$/m, /Due 14 days after the date above\./, /By check, to the shop\./, /local law/,
        ]) expect(out).toMatch(line);
        expect({ code, err }).toEqual({ code: 0, err: '' });
    });

    // the contract to date is 8,333.33, so half of it 4,166.665: 10 % of that is kept, and no more
    test('where no more is retained once half is done', async () => {
        const { out, code } = await run(signed('retainage  10%', 'retainage  10% until 50%'), '--format', 'human');
        for (const line of [/Retainage, 10 % of the first \$4,166\.67 +-\$416\.67$/m, /Due with this bill +\$3,950\.00$/m]) expect(out).toMatch(line);
        expect(code).toBe(0);
    });

    test('JSON as its schema says', async () => {
        const { out } = await run(signedHouse, '--format', 'json'), told = JSON.parse(out) as { invoices: { due: { exact: string }; date: null; work: { done: string }[] }[] }, valid = strictSchema('invoice');
        expect(valid(told), JSON.stringify(valid.errors)).toBe(true);
        expect([told.invoices[0]!.due.exact, told.invoices[0]!.date, told.invoices[0]!.work.map(({ done }) => done)]).toEqual(['3850', null, ['1', '1/2', '0', '1/2']]);
        const none = JSON.parse((await run(house, '--format', 'json')).out) as { invoices: unknown[]; none: { why: string }[] };
        expect(valid(none), JSON.stringify(valid.errors)).toBe(true);
        expect([none.invoices, none.none.length]).toEqual([[], 1]);
    });

    test('CSV: the amounts above what is due add up to it', async () => {
        const { out } = await run(signedHouse, '--format', 'csv');
        const rows = Papa.parse<Record<string, string>>(out, { header: true, skipEmptyLines: true }).data, due = rows.findIndex(({ kind }) => kind === 'due');
        const amounts = rows.slice(0, due).map(({ amount }) => amount!).filter(amount => amount !== '');
        expect(amounts).toHaveLength(6);
        expect(amounts.reduce((sum, amount) => sum.plus(amount), new Decimal(0)).toString()).toBe(rows[due]!['amount']);
        expect(new Set(rows.map(({ standing }) => standing))).toEqual(new Set(['ok']));
    });

    test('as a page and as PDF: the same words, the same bytes each time, and no cost of ours', async () => {
        const { cwd, out } = await run(signedHouse, '--format', 'html', '--date', '2026-05-08'), page = readFileSync(join(cwd, 'invoices/invoice-3-plum-street-4.html'), 'utf8');
        expect(out).toBe('invoices/invoice-3-plum-street-4.html\n');
        const plain = page.replace(/<style>.*?<\/style>/gs, '').replace(/<[^>]*>/g, ' ').replace(/\s+/g, ' ');
        for (const words of ['Invoice 3: Plum Street 4', 'Date: 2026-05-08', '$3,850.00', '-$516.67', 'Approved', 'For the contractor: name and signature, date', 'rights of lien']) expect(plain).toContain(words);
        for (const word of ['overhead', 'profit', 'pine-1x6', '2.10', '3.25']) expect(plain).not.toContain(word);
        for (const folder of ['a', 'b']) await cofferwright(cwd, ['invoice', '--number', '3', '--date', '2026-05-08', '--out', folder]);
        const [first, second] = ['a', 'b'].map(folder => readFileSync(join(cwd, folder, 'invoice-3-plum-street-4.pdf')));
        expect(Buffer.compare(first!, second!)).toBe(0);
        if (hasPoppler()) expect(wordsOf(first!).join(' ').replace(/\s+/g, ' ')).toContain('Due with this bill $3,850.00');
    });

    test('the final one asks for all that is left, and only once all is done', async () => {
        const early = await run(signedHouse, '--final', '--format', 'human');
        expect([early.code, early.out]).toEqual([1, '']);
        expect(early.err).toContain('There is no final bill for Plum Street 4 yet: Beams up is 50 % done, Filling is 0 % done, Change 1: A deeper band is 50 % done.');
        const { out, code } = await run(DONE, '--final', '--format', 'human');
        expect(code).toBe(0);
        expect(out).toMatch(/^FINAL INVOICE 3 {2}Plum Street 4$/m);
        expect(out).not.toContain('Retainage');
        expect(out).toMatch(/Due with this bill +\$7,533\.33$/m);
        expect(out).toMatch(/Left of the contract once this is paid +\$0\.00$/m);
    });

    test('is none where nothing is due: 0', async () => {
        const { code, err, cwd } = await run(signed('payment    800 USD', 'payment    5,000 USD'));
        expect(code).toBe(0);
        expect(err).toContain('Nothing is due for Plum Street 4: $5,166.67 is done, $516.67 of it is retained, and $5,000.00 is paid.');
        expect(existsSync(join(cwd, 'invoices'))).toBe(false);
    });

    test.each([
        ['phases that do not come to the contract', signed('share 45%', 'share 46%\n    phase      "Paint" sum 6,000 USD'), 'its contract contradicts itself'],
        ['a phase that is more than done', signed('share 45% done 50%', 'share 45% done 150%'), 'its contract contradicts itself'],
        ['a line that cannot be read', signed('deposit    800 USD', 'deposit    800'), 'not all of its contract could be read'],
        ['a word that leads nowhere', signed('due-days', 'deu-days'), 'not all of its contract could be read'],
        ['a day that is none', signed('2026-03-02', '2026-02-30'), 'not all of its contract could be read'],
        ['no contract', house, 'its job has no contract'],
    ])('is none with %s: 1', async (_, files, words) => {
        const { code, err, cwd } = await run(files);
        expect(code).toBe(1);
        expect(err).toContain(`Nothing is billed for Plum Street 4: ${words}`);
        expect(existsSync(join(cwd, 'invoices'))).toBe(false);
    });

    test('is a draft without lines to sign where something is wrong: 1', async () => {
        const { code, err, cwd } = await run({ ...tooWide, 'job.coffer': signedJob }, '--format', 'html'), page = readFileSync(join(cwd, 'invoices/invoice-3-plum-street-4.html'), 'utf8');
        expect(code).toBe(1);
        expect(err).toContain('The invoice of Plum Street 4 is a draft');
        expect(page).toContain('Draft, not to be signed');
        expect(page).not.toContain('name and signature');
        expect((await run(signed('change     1', 'change     2'), '--format', 'html')).code).toBe(1);
        // and so is its PDF, the same each time
        const printed = await run({ ...tooWide, 'job.coffer': signedJob }, '--format', 'pdf'), pdf = readFileSync(join(printed.cwd, 'invoices/invoice-3-plum-street-4.pdf'));
        await cofferwright(printed.cwd, ['invoice', '--number', '3', '--out', 'again']);
        expect(Buffer.compare(pdf, readFileSync(join(printed.cwd, 'again/invoice-3-plum-street-4.pdf')))).toBe(0);
        if (hasPoppler()) {
            const words = wordsOf(pdf).join(' ').replace(/\s+/g, ' ');
            expect(words).toContain('Draft of invoice 3: Plum Street 4');
            expect(words).toContain('Draft, not to be signed');
            expect(words).not.toContain('name and signature');
        }
    });

    test('a phase that is known by what is cut is done as far as that', async () => {
        const known = signed('"Work in the shop" share 40% done 100%', '"Work in the shop" share 40% known-by cut'), list = await cofferwright(folderWith(house), ['cut-list', '--format', 'json']);
        const names = [...list.out.matchAll(/"id": "([^"]+)"/g)].map(([, name]) => name!), pieces = names.length;
        expect(pieces).toBeGreaterThan(50);
        const cut = { ...known, 'den.coffer': den.replace('  grid {', '  measured {\n    cut  16\' of pine-1x8 into band-north left 2\'\n  }\n\n  grid {') };
        const listed = folderWith(cut), told = await cofferwright(listed, ['cut-list']), rows = await cofferwright(listed, ['cut-list', '--format', 'csv']);
        expect(told.out).toContain('Already cut, as the job says: band-north.');
        expect(Papa.parse<Record<string, string>>(rows.out, { header: true }).data.filter(row => row['cut'] === 'yes').map(({ id }) => id)).toEqual(['den.band-north']);
        const { out } = await run(cut, '--format', 'human');
        const [, one, all] = /(\d+) of (\d+) pieces of den are cut\./.exec(out)!;
        expect([Number(one), Number(all)]).toEqual([1, pieces]);
        expect(out).toMatch(new RegExp(`Work in the shop +\\$3,200\\.00 +${Math.floor(100 / pieces)} %`));
        const refused = await run({ ...known, 'den.coffer': den.replace('  grid {', '  fixture drop soffit on east width 3\'\n\n  grid {') });
        expect([refused.code, refused.err.includes('a phase is known by its pieces, and not every room could be laid out')]).toEqual([1, true]);
    });

    describe('what was cut for the contract, after the ceiling was changed', () => {
        const byCut = (commit: string, more = ''): string => signedJob.replace('5b1f0c7', commit).replace('share 40% done 100%', 'share 40% known-by cut').replace(/ {4}change .*\n/, more)
            .replace('payment    800 USD', 'payment    1 USD');
        const cutAs = (bottom: string): string => den.replace('use pine-1x8', 'use pine-1x6, pine-1x8').replace('  grid {', `  measured {\n    cut  12' of pine-1x6 into bottom-2 at ${bottom}\n    cut  16' of pine-1x8 into band-north left 2'\n  }\n\n  grid {`);
        const changed = (text: string): string => text.replace('coffers-north  3', 'coffers-north  2');
        const lengths = async () => (JSON.parse((await cofferwright(folderWith(house), ['cut-list', '--format', 'json'])).out) as { pieces: { id: string; face: { text: string } }[] }).pieces;
        const shop = (out: string): string | undefined => /Work in the shop +\$3,200\.00 +(\d+ %)/.exec(out)?.[1];

        test('is billed as it was, by the cut list of the drawings that were signed, which the bill says', async () => {
            const pieces = await lengths(), bottom = pieces.find(({ id }) => id === 'den.bottom-2')!, cut = cutAs(bottom.face.text);
            const cwd = repositoryOf([house]), commit = git(cwd, ['rev-parse', '--short', 'HEAD']).trim(), bill = (format: string) => cofferwright(cwd, ['invoice', '--number', '3', '--format', format]);
            write(cwd, { 'job.coffer': byCut(commit), 'den.coffer': cut });
            const before = await bill('human');
            expect(before.out).toContain(`2 of ${pieces.length} pieces of den are cut.`);
            write(cwd, { 'den.coffer': changed(cut) });
            const after = await bill('human');
            expect(after.out).toContain(`2 of ${pieces.length} pieces of den are cut, by the cut list of the drawings at ${commit}.`);
            expect([shop(before.out), shop(after.out)]).toEqual(['2 %', '2 %'].map(() => `${Math.floor(200 / pieces.length)} %`));
            expect([before.code, after.code]).toEqual([0, 1]);
            // cut neither as it was signed nor as it is drawn
            write(cwd, { 'den.coffer': changed(cutAs('9\' 1"')) });
            const lost = await bill('html'), page = readFileSync(join(cwd, 'invoices/invoice-3-plum-street-4.html'), 'utf8');
            expect([lost.code, page.includes(`1 piece recorded as cut is not in the cut list of the drawings at ${commit}, nor in the present one, as it was cut, so it is not counted as done.`)]).toEqual([1, true]);
        });

        test.each([['is in no repository', folderWith], ['is at a commit that is not there', (files: Readonly<Record<string, string>>) => repositoryOf([files])]])('is told at the head of the bill where the contract %s: 1', async (_, make) => {
            const pieces = await lengths(), bottom = pieces.find(({ id }) => id === 'den.bottom-2')!;
            const files = { ...house, 'job.coffer': byCut('5b1f0c7'), 'den.coffer': changed(cutAs(bottom.face.text)) }, cwd = make(files);
            const words = '1 piece recorded as cut is not in the present cut list as it was cut, so it is not counted as done.';
            for (const format of ['human', 'json', 'csv']) {
                const { out, code } = await cofferwright(cwd, ['invoice', '--number', '3', '--format', format]);
                expect([code, out.slice(0, out.indexOf('deposit')).replace(/\s+/g, ' ').includes(words)], format).toEqual([1, true]);
            }
            // nothing due is none of what is right then
            writeFileSync(join(cwd, 'job.coffer'), byCut('5b1f0c7').replace('payment    1 USD', 'payment    5,000 USD'));
            const none = await cofferwright(cwd, ['invoice', '--number', '3']);
            expect([none.code, none.err.includes(words)]).toEqual([1, true]);
        });
    });

    describe('what was put up for the contract, after the ceiling was changed', () => {
        const byUp = (commit: string, more = ''): string => signedJob.replace('5b1f0c7', commit).replace('share 45% done 50%', 'share 45% known-by put-up').replace(/ {4}change .*\n/, more).replace('payment    800 USD', 'payment    1 USD');
        const up = (names: string, text = den): string => text.replace('  grid {', `  put-up {\n    up  ${names}\n  }\n\n  grid {`);
        const finer = (text: string): string => text.replace('coffers-north  3', 'coffers-north  5');
        const beams = (out: string): string | undefined => /Beams up +\$3,600\.00 +(\d+ %)/.exec(out)?.[1];

        test('is billed as it was, though the present cut list is longer, and nothing of it is unknown', async () => {
            const cwd = repositoryOf([house]), commit = git(cwd, ['rev-parse', '--short', 'HEAD']).trim(), bill = () => cofferwright(cwd, ['invoice', '--number', '3', '--format', 'human']);
            write(cwd, { 'job.coffer': byUp(commit), 'den.coffer': up('blocking, line-1') });
            const before = await bill();
            write(cwd, { 'den.coffer': finer(up('blocking, line-1')) });
            const after = await bill();
            expect([beams(after.out), after.code]).toEqual([beams(before.out), 0]);
            expect(after.out).toMatch(new RegExp(`\\d+ of \\d+ pieces of den are up, by the cut list of the drawings at ${commit}\\.`));
            // without the commit it would be less
            write(cwd, { 'job.coffer': byUp('0123456') });
            expect(beams((await bill()).out)).not.toBe(beams(before.out));
        });

        test('does not fall when the change is accepted, which has a line of its own', async () => {
            const cwd = repositoryOf([house, { ...house, 'den.coffer': finer(den) }]), [one, two] = ['one', 'two'].map(name => git(cwd, ['rev-parse', '--short', name]).trim());
            const bill = () => cofferwright(cwd, ['invoice', '--number', '3', '--format', 'human']), all = 'blocking, spacers, sides, cleats, bottoms, band';
            write(cwd, { 'job.coffer': byUp(one!), 'den.coffer': up(all) });
            const before = await bill();
            expect(beams(before.out)).toBe('100 %');
            const change = `    change     1 adds 900 USD on 2026-03-02 at "${two!}" for "A finer grid" done 0%\n`;
            write(cwd, { 'job.coffer': byUp(one!, change), 'den.coffer': finer(up(all.replace('sides, ', ''))) });
            const fewer = await bill();
            write(cwd, { 'job.coffer': byUp(one!, change), 'den.coffer': finer(up(all)) });
            const after = await bill();
            expect([beams(after.out), beams(fewer.out) === '100 %']).toEqual(['100 %', false]);
            expect(after.out).toMatch(/Change 1: A finer grid +\$900\.00 +0 %/);
        });

        test('and what is up under a name that nothing has any more is told', async () => {
            const cwd = repositoryOf([house]), { out, code } = await (async () => {
                write(cwd, { 'job.coffer': byUp('0123456'), 'den.coffer': up('line-1, line-2').replace('coffers-north  3', 'coffers-north  2') });
                return cofferwright(cwd, ['invoice', '--number', '3', '--format', 'human']);
            })();
            expect([code, out.replace(/\s+/g, ' ').includes('line-2, recorded as up, is not in the present cut list, so it is not counted as done.')]).toEqual([1, true]);
        });
    });

    test('a phase that is known by what is put up is done as far as that, and the steps say it', async () => {
        const known = signed('"Beams up" share 45% done 50%', '"Beams up" share 45% known-by put-up'), up = { ...known, 'den.coffer': den.replace('  grid {', '  put-up {\n    up  blocking, line-1\n  }\n\n  grid {') };
        const pieces = (JSON.parse((await cofferwright(folderWith(house), ['cut-list', '--format', 'json'])).out) as { pieces: { part: string; line: string | null }[] }).pieces;
        const done = pieces.filter(({ part, line }) => part === 'blocking' || line === '1').length;
        expect([done > 5, done < pieces.length]).toEqual([true, true]);
        const { out } = await run(up, '--format', 'human');
        expect(out).toContain(`${done} of ${pieces.length} pieces of den are up.`);
        // 45 % of 8,000, as far as whole hundredths are up
        expect(out).toContain(`$${(36 * Math.floor(100 * done / pieces.length)).toLocaleString('en-US')}.00`);
        const steps = await cofferwright(folderWith(up), ['put-up']);
        expect(steps.out).toMatch(/^ *1 .*blocking.*, up /m);
        const wrong = await cofferwright(folderWith({ ...up, 'den.coffer': up['den.coffer'].replace('line-1\n', 'line-7\n') }), ['check']);
        expect(wrong.out).toMatch(/order-names-nothing[^]*Nothing in this room is called line-7/);
    });

    test('of two houses, one without a contract, is told and takes nothing from the other', async () => {
        const both = Object.fromEntries(Object.entries(house).flatMap(([name, text]) => [[`first/${name}`, signedHouse[name as keyof typeof house]], [`second/${name}`, text]]));
        const { code, err, cwd } = await run(both);
        expect(code).toBe(0);
        expect(err).toContain('its job has no contract');
        expect(readdirSync(join(cwd, 'invoices')).filter(name => !name.startsWith('.'))).toEqual(['invoice-3-plum-street-4.pdf']);
    });

    test('has a number, which is asked for', async () => {
        const { code, err } = await cofferwright(folderWith(signedHouse), ['invoice']);
        expect([code, err.includes('--number')]).toEqual([2, true]);
    });
});
