import { describe, expect, test } from 'vitest';
import type { ChangesJson } from '../../src/report/changes/shape.ts';
import { house } from './house.ts';
import { repositoryOf, type Files } from './repository.ts';
import { cofferwright } from './world.ts';

type House = Readonly<Record<keyof typeof house, string>>;
const changed = (name: keyof House, change: (text: string) => string, from: House = house): House => ({ ...from, [name]: change(from[name]) });

/** What is said otherwise, what rooms were called, how many pieces are otherwise, what becomes of what is cut. */
async function compared(before: Files, after: Files) {
    const cwd = repositoryOf([before, after]), { out } = await cofferwright(cwd, ['compare', 'one', 'two', '--quick', '--format', 'json']);
    const { said, houses } = JSON.parse(out) as ChangesJson;
    return {
        cwd, said: said.map(({ what, renamedFrom, before: was, after: is }) => `${renamedFrom ?? ''}|${what.join(' ')}|${was?.value ?? '-'}|${is?.value ?? '-'}`),
        houses: houses.length, rooms: houses[0]!.rooms.map(({ name, renamedFrom, in: where }) => [name, renamedFrom, where]),
        otherwise: houses.map(({ pieces: { moved, from, fresh, gone } }) => moved.length + from.length + fresh.length + gone.length),
        cut: houses.flatMap(({ cut }) => cut.map(({ id, fate }) => [id, fate])), price: houses[0]!.price?.total.amount,
        findings: houses.flatMap(({ findings: { come, gone } }) => [...come, ...gone]),
    };
}
const study = (text: string): string => text.replace('room den', 'room study');

describe('a room that is called otherwise', () => {
    test('is told once, and what is said otherwise in it line by line', async () => {
        const after = changed('den.coffer', text => study(text).replace('coffers-north  3', 'coffers-north  4'));
        const { said, cwd } = await compared(house, after);
        expect(said).toEqual(['room den|room study||', '|room study grid coffers-north|3|4']);
        for (const [format, words] of [['human', 'room study: room den → room study\n'], ['markdown', '| room study | room den | room study | den.coffer:5 |']] as const) {
            expect((await cofferwright(cwd, ['compare', 'one', 'two', '--quick', '--format', format])).out).toContain(words);
        }
    });

    test('keeps what is cut for it, and an alternate goes on to speak of it; nothing of it costs anything', async () => {
        const record = `\n  measured {\n    cut  12' of pine-1x6 into bottom-1 at 10' 0 1/2"\n  }\n}\n`;
        const before: Files = { ...changed('den.coffer', text => text.replace(/\n}\n$/, record).replace('use pine-1x8', 'use pine-1x8, pine-1x6')), 'other.coffer': 'edition 1\nalternate fewer "Two coffers" { den.grid.coffers-north 2 }\n' };
        const after: Files = { ...before, 'den.coffer': study(before['den.coffer']!), 'other.coffer': before['other.coffer']!.replace('den.', 'study.') };
        const { said, cut, otherwise, price, rooms } = await compared(before, after);
        expect(said).toEqual(['room den|room study||']);
        expect(rooms).toEqual([['study', 'den', 'both']]);
        expect([cut, otherwise, price]).toEqual([[['study.bottom-1', 'keep']], [0], '0.00']);
    });

    test('is followed where its file is called otherwise too', async () => {
        const { 'den.coffer': text, ...rest } = house, { said, rooms, otherwise } = await compared(house, { ...rest, 'study.coffer': study(text) });
        expect([said, rooms, otherwise]).toEqual([['room den|room study||'], [['study', 'den', 'both']], [0]]);
    });

    test('is told from others of its file by its walls', async () => {
        const second = house['den.coffer'].slice(house['den.coffer'].indexOf('room den')), attic = (text: string, name: string): string => `${text}\n${second.replace('room den', `room ${name}`).replace(`10' 2"`, `11' 5"`)}`;
        const before = changed('den.coffer', text => attic(text, 'attic')), after = changed('den.coffer', text => attic(study(text), 'loft'));
        const { said, rooms, otherwise } = await compared(before, after);
        expect(rooms).toEqual([['study', 'den', 'both'], ['loft', 'attic', 'both']]);
        expect([said, otherwise]).toEqual([['room den|room study||', 'room attic|room loft||'], [0]]);
    });

    test('is followed without a job, and where both its walls and its name are otherwise', async () => {
        const { 'job.coffer': _, ...rest } = house, { houses, rooms } = await compared(rest, { ...rest, 'den.coffer': study(house['den.coffer']).replace(`10' 2"`, `10' 6"`) });
        expect([houses, rooms]).toEqual([1, [['study', 'den', 'both']]]);
    });

    test('with a finding in it that was there before: nothing is found now and not before', async () => {
        const wrong = changed('den.coffer', text => text.replace('coffers-north  3', 'coffers-north  12'));
        const { findings } = await compared(wrong, changed('den.coffer', study, wrong));
        expect(findings).toEqual([]);
    });
});

describe('boards that are called otherwise', () => {
    const renamed = Object.fromEntries(Object.entries(house).map(([name, text]) => [name, text.replaceAll('pine-1x8', 'shelf-1x8')])) as House;

    test('are the same wood: no piece is new, nothing that was cut is lost', async () => {
        const record = (files: House, wood: string): House => changed('den.coffer', text => text.replace(/\n}\n$/, `\n  measured {\n    cut  12' of ${wood} into band-north-a at 11'\n  }\n}\n`), files);
        const { said, otherwise, price } = await compared(record(house, 'pine-1x8'), record(renamed, 'shelf-1x8'));
        expect(said).toContain('stock pine-1x8|stock shelf-1x8||');
        expect(said.filter(line => line.includes('lengths') || line.includes('price'))).toEqual([]);
        expect([otherwise, price]).toEqual([[0], '0.00']);
    });

    test('are not the same where both are there, and only another one is used', async () => {
        const both = changed('yard.coffer', text => `${text}${text.slice(text.indexOf('stock pine-1x8'), text.indexOf('stock strip')).replace('pine-1x8', 'shelf-1x8')}`);
        const { otherwise } = await compared(both, { ...both, 'box.coffer': renamed['box.coffer'] });
        expect(otherwise[0]).toBeGreaterThan(0);
    });
});
