import { readdirSync, rmSync, statSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import type { ChangesJson } from '../../src/report/changes/shape.ts';
import { strictSchema } from '../report/samples.ts';
import { plant } from '../git/plant.ts';
import { house, tooWide } from './house.ts';
import { git, repositoryOf, temporaryFolder, write, type Files } from './repository.ts';
import { cofferwright } from './world.ts';

const wider: Files = { ...house, 'den.coffer': house['den.coffer'].replace(`wall north  12' 3 1/2"`, `wall north  12' 6"`) };
const finer: Files = { ...house, 'den.coffer': house['den.coffer'].replace('coffers-north  3', 'coffers-north  4') };

async function compare(cwd: string, ...argv: readonly string[]): Promise<{ code: number; json: ChangesJson; err: string }> {
    const { code, out, err } = await cofferwright(cwd, ['compare', ...argv, '--quick', '--format', 'json']);
    return { code, json: JSON.parse(out || 'null') as ChangesJson, err };
}

async function refused(cwd: string, ...argv: readonly string[]): Promise<string> {
    const { code, out, err } = await cofferwright(cwd, ['compare', ...argv, '--quick']);
    expect([code, out]).toEqual([2, '']);
    return err.trim();
}

describe('two states', () => {
    test('a grid that is changed: said, lines matched by their places, every piece once, money as the estimates have it', async () => {
        const cwd = repositoryOf([house, finer]), { code, json } = await compare(cwd, 'one', 'two');
        expect(strictSchema('changes')(json)).toBe(true);
        expect(code).toBe(0);
        expect([json.before.revision, json.before.date, json.before.subject, json.after.subject]).toEqual(['one', '2026-03-02', 'State one', 'State two']);
        expect(json.said).toEqual([{ what: ['room den', 'grid', 'coffers-north'], file: 'den.coffer', movedFrom: null, renamedFrom: null, before: { value: '3', line: 10 }, after: { value: '4', line: 10 } }]);
        const [den] = json.houses;
        // lines 1 and 2 of three coffers are the nearest of those of four; the third is new
        expect(den!.rooms[0]!.lines.map(({ before, after }) => [before?.name ?? null, after?.name ?? null])).toEqual([['1', '1'], [null, '2'], ['2', '3']]);
        expect(den!.rooms[0]!.coffers!.before.count).toBe(6);
        expect(den!.rooms[0]!.coffers!.after.count).toBe(8);
        for (const [tag, side] of [['one', 'before'], ['two', 'after']] as const) {
            git(cwd, ['checkout', '-q', tag]);
            const list = JSON.parse((await cofferwright(cwd, ['cut-list', '--format', 'json'])).out) as { pieces: { id: string }[] };
            const { same, moved, from, fresh, gone } = den!.pieces, own = [...moved, ...from].map(pair => pair[side].id).concat((side === 'before' ? gone : fresh).map(piece => piece.id));
            expect(new Set(own).size).toBe(own.length);
            expect(own.every(id => list.pieces.some(piece => piece.id === id))).toBe(true);
            expect(same + own.length).toBe(list.pieces.length);
            const priced = JSON.parse((await cofferwright(cwd, ['estimate', '--quick', '--format', 'json'])).out) as { houses: { estimate: { sums: { total: { exact: string } } } }[] };
            expect(den!.total![side].exact).toBe(priced.houses[0]!.estimate.sums.total.exact);
        }
        expect(den!.pieces.proved).toBe(true);
    });

    test('a table that a job names is read as it was then', async () => {
        const den = house['den.coffer'].replace('  grid {', '  survey { readings "./den.csv" in millimeters }\n  grid {');
        const tables = ['x,y,reading\n0,0,350\n3000,0,350\n0,2400,350\n', 'x,y,reading\n0,0,350\n3000,0,none\n0,2400,350\n'];
        const cwd = repositoryOf(tables.map(table => ({ ...house, 'den.coffer': den, 'den.csv': table, 'unread.csv': '' })));
        const found = async (...states: string[]): Promise<unknown> => (await compare(cwd, ...states)).json.houses.map(({ findings }) => [findings.come, findings.gone].map(each => each.map(({ rule }) => rule).filter(rule => rule === 'readings-unread')));
        expect(await found('one', 'two')).toEqual([[['readings-unread'], []]]);
        // row by row, where both states have it
        expect((await compare(cwd, 'one', 'two')).json.said).toEqual([{ what: ['row'], file: 'den.csv', movedFrom: null, renamedFrom: null, before: { value: '3000,0,350', line: 3 }, after: { value: '3000,0,none', line: 3 } }]);
        expect(await found('two', 'one')).toEqual([[[], ['readings-unread']]]);
        // the files lie as in the second
        expect(await found('two')).toEqual([[[], []]]);
        write(cwd, { 'den.csv': tables[0]! });
        expect(await found('two')).toEqual([[[], ['readings-unread']]]);
    });

    test('the last commit and the files as they lie, where nothing is said; nothing changed, 0', async () => {
        const cwd = repositoryOf([house]), same = await compare(cwd);
        expect(same.json.said).toEqual([]);
        expect(same.json.houses.map(({ pieces }) => [pieces.from.length, pieces.fresh.length, pieces.gone.length])).toEqual([[0, 0, 0]]);
        expect((await cofferwright(cwd, ['compare', '--quick'])).out).toContain('Nothing changed: every piece, board, hour and sum is as it was.');
        write(cwd, wider);
        const { json } = await compare(cwd);
        expect(json.after.revision).toBeNull();
        expect(json.houses[0]!.rooms[0]!.walls).toMatchObject([{ name: 'north', before: { text: `12' 3 1/2"` }, after: { text: `12' 6"` } }, { name: 'south' }]);
    });

    test('findings that come and go, and what stands wrong at the head of every format, 1', async () => {
        const cwd = repositoryOf([house, tooWide]), { code, json } = await compare(cwd, 'one', 'two');
        expect(code).toBe(1);
        expect(json.after.standing.sound).toBe(false);
        expect(json.houses[0]!.findings.come.map(({ rule }) => rule)).toContain('bottom-wont-fit');
        expect((await compare(cwd, 'two', 'one')).json.houses[0]!.findings.gone.map(({ rule }) => rule)).toContain('bottom-wont-fit');
        for (const format of ['human', 'markdown', 'csv']) {
            const { out } = await cofferwright(cwd, ['compare', 'one', 'two', '--quick', '--format', format]);
            expect(out).toContain('Not to be built from as it stands');
        }
    });

    test('as Markdown nothing that somebody wrote is more than words', async () => {
        const evil = { ...house, 'den.coffer': house['den.coffer'].replace('room den {', 'room den "<img src=x> [a](http://b) | c" {') };
        const { out } = await cofferwright(repositoryOf([house, evil]), ['compare', 'one', 'two', '--quick', '--format', 'markdown']);
        expect(out).toContain('&lt;img src=x&gt; \\[a\\](http\\://b) \\| c');
    });

    test('as Markdown a comment that GitHub takes, however much is changed, and it says that it is not all', async () => {
        const rooms = (coffers: number, name = (i: number): string => `room-${'long-'.repeat(600)}${i}`): Files => ({ ...house, 'den.coffer': Array.from({ length: 12 }, (_, i) => house['den.coffer'].replace('room den {', `room ${name(i)} {`)
            .replace('coffers-north  3', `coffers-north  ${coffers}`).replace(i === 0 ? /$/ : /^.*\n.*\n.*\n/, '').replace(`12' 3 1/2"`, `${11 + i % 5}' ${i % 12} 1/2"`)).join('') });
        const told = async (...states: Files[]): Promise<string> => (await cofferwright(repositoryOf(states), ['compare', 'one', 'two', '--quick', '--format', 'markdown'])).out;
        const many = await told(rooms(3), rooms(4));
        expect([many.length <= 65_536, many.length > 20_000]).toEqual([true, true]);
        expect(many).toContain('Shortened, so that it fits into a review');
        expect(many).toMatch(/^and \d+ more lines$/m);
        expect(many).toContain('the change costs');
        expect(many.match(/<details>/g)?.length).toBe(many.match(/<\/details>/g)?.length);
        // one that fits is whole
        expect(await told(house, finer)).not.toContain('Shortened');
    });

    test('as CSV a row for each piece that is not the same', async () => {
        const cwd = repositoryOf([house, finer]), { json } = await compare(cwd, 'one', 'two'), { from, moved, fresh, gone } = json.houses[0]!.pieces;
        const { data } = Papa.parse<Record<string, string>>((await cofferwright(cwd, ['compare', 'one', 'two', '--quick', '--format', 'csv'])).out, { header: true, skipEmptyLines: true });
        expect(data).toHaveLength(from.length + moved.length + fresh.length + gone.length);
        expect(data.filter(row => row['what'] === 'new').map(row => row['after'])).toEqual(fresh.map(piece => piece.id));
    });
});

describe('what is cut already', () => {
    // a board of 16' that two sides and a bottom came out of
    const record = `measured {
    cut  16' of pine-1x8 into side-A-1-north at 4' 0" mitered 45 deg, 45 deg into side-A-2-north at 3' 9" mitered 45 deg, 45 deg left 6'
  }
`;
    const inDen = (files: Files, words: string): Files => ({ ...files, 'den.coffer': files['den.coffer']!.replace(/\n}\n$/, `\n  ${words}}\n`).replace(/from "yard.coffer" use pine-1x8/, 'from "yard.coffer" use pine-1x8') });

    test('is trimmed to what is wanted, or kept, or lost, with what its wood cost and what of it is saved', async () => {
        const { json } = await compare(repositoryOf([inDen(house, record), inDen(finer, record)]), 'one', 'two'), [den] = json.houses;
        expect(den!.cut.map(({ id, fate }) => [id, fate])).toEqual([['den.side-A-1-north', 'trim'], ['den.side-A-2-north', 'trim']]);
        expect(den!.cutProved).toBe(true);
        // 3.25 USD per ft: 4' and 3' 9" at their whole width, less the kerf of nothing; 13.00 and 12.1875, to the cent
        expect(den!.cut.map(({ worth }) => worth!.exact)).toEqual(['13', '1219/100']);
        const saved = den!.cut.map(one => Number(one.saved!.amount)), worth = den!.cut.map(one => Number(one.worth!.amount));
        expect(saved.every((each, i) => each > 0 && each < worth[i]!)).toBe(true);
        const { difference, inVain, saved: all, total } = den!.price!;
        // whoever adds the printed lines comes to the printed sum, cent for cent
        const cents = ({ amount }: { amount: string }): number => Math.round(Number(amount) * 100);
        expect(cents(inVain)).toBe(1300 + 1219);
        expect(cents(all)).toBe(saved.reduce((sum, each) => sum + Math.round(each * 100), 0));
        expect(cents(total)).toBe(cents(difference) + cents(inVain) - cents(all));
        for (const money of [difference, inVain, all, total]) expect(exact(money.exact) * 100).toBeCloseTo(cents(money), 9);
    });

    test('with what cutting it took, where labor says it, and else with words', async () => {
        const rates = (cutting: string): Files => ({ 'rates.coffer': `edition 1\nlabor { crew 2 rate 45 USD per h; ${cutting} }\n` });
        const priceOf = async (more: Files) => (await compare(repositoryOf([{ ...inDen(house, record), ...more }, { ...inDen(finer, record), ...more }]), 'one', 'two')).json.houses[0]!.price!;
        const without = await priceOf(rates('blocking 3 min per ft')), price = await priceOf(rates('cutting 4 min per piece'));
        expect(without.workInVain).toBeNull();
        expect(without.lacks).toContain('the hours at the saw for 2 pieces cut in vain: `labor` says no `cutting`');
        // two pieces, 4 min each, at 45 USD an hour
        expect([price.workInVain!.pieces, price.workInVain!.minutes, price.workInVain!.amount.exact]).toEqual([2, 8, '6']);
        expect(exact(price.total.exact)).toBeCloseTo(exact(price.difference.exact) + exact(price.inVain.exact) - exact(price.saved.exact) + 6, 9);
        expect(price.lacks.some(words => words.startsWith('the hours'))).toBe(false);
    });

    test('what still fits stays where it is, and costs nothing', async () => {
        const list = JSON.parse((await cofferwright(repositoryOf([house]), ['cut-list', '--format', 'json'])).out) as { pieces: { id: string; cut?: unknown; overall: { text: string } }[] };
        const { overall: { text } } = list.pieces.find(({ id }) => id === 'den.bottom-1')!;
        const fits = `measured { cut 12' of pine-1x6 into bottom-1 at ${text} }\n`;
        const { json } = await compare(repositoryOf([inDen(house, fits), { ...inDen(house, fits), 'job.coffer': house['job.coffer'].replace('Plum', 'Pear') }].map(files => ({ ...files, 'den.coffer': files['den.coffer']!.replace('use pine-1x8', 'use pine-1x8, pine-1x6') }))), 'one', 'two');
        expect(json.houses[0]!.cut.map(({ fate, into }) => [fate, into])).toEqual([['keep', 'den.bottom-1']]);
        expect(json.houses[0]!.price!.inVain.exact).toBe('0');
    });
});

/** A fraction as the JSON writes it. */
function exact(text: string): number {
    const [over, under = '1'] = text.split('/');
    return Number(over) / Number(under);
}

test('what lies there and cannot be had is told, 2; that all of a house is gone is a change, 0', async () => {
    const cwd = repositoryOf([house, house]);
    symlinkSync('nowhere', join(cwd, 'attic.coffer'));
    const { code, err } = await compare(cwd);
    expect([code, err]).toEqual([2, 'attic.coffer is a link to something that is not there\n']);
    const gone = repositoryOf([{ 'house/den.coffer': house['den.coffer'].replaceAll(' "', ' "../'), 'yard.coffer': house['yard.coffer'], 'box.coffer': house['box.coffer'], 'house/job.coffer': house['job.coffer'] }]);
    for (const name of readdirSync(join(gone, 'house'))) rmSync(join(gone, 'house', name));
    const all = await compare(gone, '--in', 'house');
    expect([all.code, all.err]).toEqual([0, '']);
    expect(all.json.houses.map(({ in: where }) => where)).toEqual(['before']);
});

describe('git\'s store', () => {
    const both = [house, finer] as const;

    test('packed, loose, borrowed from another store, SHA-256: the same answer', async () => {
        const cwd = repositoryOf(both), answers = [(await compare(cwd, 'one', 'two')).json.houses];
        const loose = temporaryFolder();
        git(loose, ['init', '-q', '-b', 'main']);
        for (const files of both) {
            write(loose, files);
            git(loose, ['add', '-A']);
            git(loose, ['commit', '-q', '-m', 'state', '--allow-empty']);
        }
        answers.push((await compare(loose, 'HEAD~1', 'HEAD')).json.houses);
        const borrowed = join(temporaryFolder(), 'clone');
        git(cwd, ['clone', '-q', '--shared', cwd, borrowed]);
        answers.push((await compare(borrowed, 'one', 'two')).json.houses);
        git(cwd, ['gc', '-q']);
        answers.push((await compare(cwd, 'one', 'two')).json.houses, (await compare(repositoryOf(both, { format: 'sha256' }), 'one', 'two')).json.houses);
        for (const answer of answers) expect(answer).toEqual(answers[0]);
    });

    test('names the files that git says differ', async () => {
        const cwd = repositoryOf([house, { ...finer, 'job.coffer': house['job.coffer'].replace('1/16"', '1/32"') }]);
        const differ = git(cwd, ['diff', '--stat', '--name-only', 'one', 'two']).trim().split('\n');
        expect([...new Set((await compare(cwd, 'one', 'two')).json.said.map(({ file }) => file))]).toEqual(differ);
    });

    test('nothing that the repository configures runs', async () => {
        const cwd = repositoryOf(both), planted = plant(cwd);
        // a text that is not in this clone would be fetched
        const blob = git(cwd, ['-c', 'protocol.allow=never', 'rev-parse', 'one:box.coffer']).trim();
        planted.forget();
        expect((await compare(cwd, 'one', 'two')).code).toBe(0);
        expect((await compare(cwd)).code).toBe(0);
        expect(blob).toMatch(/^[0-9a-f]{40}$/);
        expect(planted.hasRun()).toBe(false);
        // and it would have been seen
        planted.run();
        expect(planted.hasRun()).toBe(true);
    });

    test('a text that is not in this clone is told, and not fetched', async () => {
        const cwd = repositoryOf([house, { ...house, 'den.coffer': `${house['den.coffer']}// later\n` }]);
        const blob = git(cwd, ['rev-parse', 'one:den.coffer']).trim();
        rmSync(join(cwd, '.git/objects', blob.slice(0, 2), blob.slice(2)), { force: true });
        const { code, err } = await compare(cwd, 'one', 'two');
        expect(err).toContain('in one: den.coffer is not in this clone, which holds only a part of the files');
        expect(code).toBe(2);
    });

    test('a job file that was a link is told and not followed', async () => {
        const cwd = repositoryOf([house]);
        symlinkSync('/etc/passwd', join(cwd, 'way.coffer'));
        git(cwd, ['add', '-A']);
        git(cwd, ['commit', '-q', '-m', 'link']);
        rmSync(join(cwd, 'way.coffer'));
        const { err } = await compare(cwd, 'HEAD');
        expect(err).toContain('in HEAD: way.coffer is a link there, which is not followed');
    });

    test('is never written to, and no file is touched', async () => {
        const cwd = repositoryOf(both);
        const files = (): string[] => readdirSync(cwd, { recursive: true, withFileTypes: true })
            .filter(entry => entry.isFile()).map(({ parentPath, name }) => join(parentPath, name));
        const all = (): string[] => files().map(path => `${path} ${statSync(path).size} ${statSync(path).mtimeMs}`).sort();
        const before = all();
        expect(before.length).toBeGreaterThan(both.length);
        await compare(cwd, 'one', 'two');
        await compare(cwd);
        expect(all()).toEqual(before);
    });
});

describe('what cannot be compared', () => {
    test('no repository, no commit yet, no such name, no commit of that name', async () => {
        expect(await refused(temporaryFolder())).toMatch(/is in no git repository: there is no earlier state to compare with$/);
        const empty = temporaryFolder();
        git(empty, ['init', '-q']);
        expect(await refused(empty)).toContain('Nothing is committed yet in this repository');
        const cwd = repositoryOf([house]);
        expect(await refused(cwd, 'nowhere')).toContain('There is no commit, tag or branch nowhere here');
        expect(await refused(cwd, 'one:den.coffer')).toContain('one:den.coffer is no commit: name a commit, a tag or a branch');
        expect(await refused(cwd, '--', '--upload-pack=x')).toContain('There is no commit, tag or branch --upload-pack=x here');
        expect(await refused(cwd, '')).toContain('The name of a commit is empty');
        expect(await refused(cwd, '--in', 'nowhere.txt')).toContain('There is no job file in nowhere.txt, neither in HEAD nor in the files as they lie');
    });

    test('a shallow clone says that there is more history', async () => {
        const cwd = repositoryOf([house, finer]), clone = join(temporaryFolder(), 'clone');
        git(cwd, ['clone', '-q', '--depth', '1', `file://${cwd}`, clone]);
        expect(await refused(clone, 'HEAD~1')).toContain('git fetch --unshallow brings the rest');
    });

    test('a name that may be two commits', async () => {
        const cwd = repositoryOf([house]), who = 'Nora <nora@example.org> 1772442000 +0100';
        git(cwd, ['fast-import', '--quiet'], Array.from({ length: 600 }, (_, i) => `commit refs/heads/notes\ncommitter ${who}\ndata <<E\nnote ${i}\nE\n\n`).join(''));
        const starts = git(cwd, ['rev-list', '--all']).trim().split('\n').map(hash => hash.slice(0, 4)), short = starts.find((start, i) => starts.indexOf(start) !== i);
        expect(short).toMatch(/^[0-9a-f]{4}$/);
        expect(await refused(cwd, short!)).toContain(`${short} is the beginning of more than one commit`);
    });

    test('files in which both sides of a merge stand', async () => {
        const cwd = repositoryOf([house]);
        git(cwd, ['checkout', '-q', '-b', 'other']);
        write(cwd, wider);
        git(cwd, ['commit', '-q', '-a', '-m', 'wider']);
        git(cwd, ['checkout', '-q', 'main']);
        write(cwd, { 'den.coffer': house['den.coffer'].replace(`12' 3 1/2"`, `12' 4"`) });
        git(cwd, ['commit', '-q', '-a', '-m', 'a little wider']);
        expect(() => git(cwd, ['merge', '-q', 'other'])).toThrow();
        expect(await refused(cwd)).toContain('A merge is not finished here, and both sides stand in den.coffer');
        expect((await compare(cwd, 'main', 'other')).code).toBe(0);
    });
});

describe('houses and files that come and go', () => {
    test('a house in one state only', async () => {
        const { 'den.coffer': den, ...rest } = house, cwd = repositoryOf([rest, house]);
        const { json } = await compare(cwd, 'one', 'two');
        expect(json.houses.map(one => one.in)).toEqual(['after']);
        expect(json.houses[0]!.pieces.fresh.length).toBeGreaterThan(0);
        expect((await compare(cwd, 'two', 'one')).json.houses.map(one => one.in)).toEqual(['before']);
        expect(den).toContain('room den');
    });

    test('a file that was moved or renamed is followed, room and pieces stay the same', async () => {
        const { 'den.coffer': den, ...rest } = house, moved = { ...rest, 'rooms/study.coffer': den.replace(/from "/g, 'from "../') };
        const { json } = await compare(repositoryOf([house, moved]), 'one', 'two');
        expect(json.said.map(({ what }) => what[0]!.split(' ')[0])).toEqual(['from', 'from', 'from', 'from']);
        expect(json.houses.map(one => [one.in, one.pieces.fresh.length, one.pieces.gone.length, one.rooms[0]!.same])).toEqual([['both', 0, 0, true]]);
    });

    test('a room that was renamed is the same room', async () => {
        const { json } = await compare(repositoryOf([house, { ...house, 'den.coffer': house['den.coffer'].replace('room den', 'room study') }]), 'one', 'two'), [den] = json.houses;
        expect(den!.rooms).toMatchObject([{ name: 'study', renamedFrom: 'den', same: true }]);
        expect([den!.pieces.fresh.length, den!.pieces.gone.length, den!.pieces.from.length]).toEqual([0, 0, 0]);
    });

    test('a file that is broken in one state: the other is told, and that it cannot be laid out', async () => {
        const broken = { ...house, 'den.coffer': house['den.coffer'].replace('coffers-north  3', 'coffers-north  ???') };
        const { code, json } = await compare(repositoryOf([broken, house]), 'one', 'two');
        expect(code).toBe(1);
        expect(json.before.standing.sound).toBe(false);
        const [den] = json.houses;
        expect([den!.price, den!.total, den!.pieces.same, den!.pieces.gone, den!.pieces.fresh]).toEqual([null, null, 0, [], []]);
        // nothing of it is called new or gone: nobody knows
        expect(den!.rooms).toMatchObject([{ same: false, walls: [], lines: [], coffers: null }]);
    });

    test('what is cut becomes in the finding what it becomes here, and is not called spoiled', async () => {
        const cwd = repositoryOf([house]), cut = `  measured {\n    cut  12' of pine-1x6 into bottom-2 at 10' 0 1/2"\n  }\n\n  grid {`;
        const den = house['den.coffer'].replace('use pine-1x8', 'use pine-1x6, pine-1x8').replace('  grid {', cut).replace(`wall east   10' 2"`, `wall east   11' 2"`);
        write(cwd, { 'den.coffer': den });
        const { json } = await compare(cwd, 'one'), [wood] = json.houses[0]!.cut, becomes = wood!.into!.replace('den.', '');
        expect(wood).toMatchObject({ id: 'den.bottom-2', fate: 'trim' });
        const { out } = await cofferwright(cwd, ['check', '--format', 'concise']);
        expect(out).toContain(`It is 1' too short, so it has to be cut again. Recut to `);
        expect(out).toContain(` it becomes ${becomes}, which keeps the most of the wood`);
        expect(out).not.toContain('spoiled');
        // and the comparison says it once, at its head, and that it is new there
        for (const [format, words] of [['human', /FOUND NOW, AND NOT BEFORE\n {2}1 error of those at the head: cut-no-longer-fits$/m], ['markdown', /^- 1 error of those at the head: cut-no-longer-fits$/m]] as const) {
            const told = (await cofferwright(cwd, ['compare', 'one', '--quick', '--format', format])).out.replaceAll(/\s*\n {4,}/g, ' ');
            expect(told.match(/It is 1' too short/g)).toHaveLength(1);
            expect(told).toMatch(words);
        }
    });

    test('a finding of which a figure alone is another is neither new nor gone', async () => {
        const low = (height: string): Files => ({ ...house, 'den.coffer': house['den.coffer'].replace('  wall north', `  ceiling { height ${height} }\n  wall north`) });
        const cwd = repositoryOf([low(`7' 4"`), low(`7' 5"`)]), { json } = await compare(cwd, 'one', 'two');
        const told = async (): Promise<string> => (await cofferwright(cwd, ['check', '--format', 'concise'])).out;
        const now = await told();
        git(cwd, ['checkout', '-q', 'one']);
        const then = await told(), heads = [then, now].map(out => out.split('\n').find(line => line.includes('[headroom]')));
        expect(heads[0]).toBeDefined();
        expect(heads[0]).not.toBe(heads[1]);
        expect([json.houses[0]!.findings.come, json.houses[0]!.findings.gone].map(all => all.filter(({ rule }) => rule === 'headroom'))).toEqual([[], []]);
    });
});
