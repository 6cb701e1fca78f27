import { describe, expect, test } from 'vitest';
import { strictSchema } from '../report/samples.ts';
import { folderWith } from './folder.ts';
import { box, den, house, tooWide, yard } from './house.ts';
import { cofferwright } from './world.ts';

interface FitJson { rooms: {
    name: string;
    laidOut: boolean;
    errors: number;
    closes: boolean;
    looked: { pieces: number; joints: number; coffers: number } | null;
    faults: { rule: string; severity: string; message: string; pieces: string[]; clashes: { kind: string; with: string; text: string }[] }[];
}[] }

/** The den with spacers that run into the cleats, which somebody has allowed. */
const notched = { ...house, 'box.coffer': box.replace(/(height +)[^\n]*/, '$15 1/2"   // allow spacer-hits-cleat: notched on the job') };

describe('dry-fit', () => {
    test('a house that closes says so, and what was looked at: 0', async () => {
        const { code, out } = await cofferwright(folderWith(house), ['dry-fit']);
        expect(out).toMatch(/^DRY FIT {2}Plum Street 4\n\nroom den: all of it goes together\.\n/);
        expect(out).toMatch(/\d+ pieces; \d+ pairs checked for overlap/);
        expect(out.replace(/\s+/g, ' ')).toContain('It does not show what is not in the file');
        expect(code).toBe(0);
    });

    test('JSON as its schema says, with every piece of the cut list put together', async () => {
        const cwd = folderWith(house);
        const { code, out } = await cofferwright(cwd, ['dry-fit', '--format', 'json']);
        const valid = strictSchema('dry-fit'), fit = JSON.parse(out) as FitJson;
        expect(valid(fit), JSON.stringify(valid.errors)).toBe(true);
        expect(fit.rooms).toMatchObject([{ name: 'den', laidOut: true, closes: true, faults: [] }]);
        const list = JSON.parse((await cofferwright(cwd, ['cut-list', '--format', 'json'])).out) as { pieces: unknown[] };
        expect(fit.rooms[0]!.looked!.pieces).toBe(list.pieces.length);
        expect(code).toBe(0);
    });

    test('what is in each other is told with both pieces and how deep: 1', async () => {
        const cwd = folderWith(notched);
        const { code, out } = await cofferwright(cwd, ['dry-fit', '--format', 'json']);
        const valid = strictSchema('dry-fit'), fit = JSON.parse(out) as FitJson;
        expect(valid(fit), JSON.stringify(valid.errors)).toBe(true);
        expect(code).toBe(1);
        const [room] = fit.rooms;
        expect(room!.closes).toBe(false);
        expect(room!.faults.map(fault => fault.rule)).toContain('pieces-overlap');
        const fault = room!.faults.find(one => one.rule === 'pieces-overlap')!;
        expect(fault.pieces[0]).toMatch(/^den\.(cleat|spacer)-/);
        expect(fault.clashes[0]).toMatchObject({ kind: 'overlap' });
        const human = await cofferwright(cwd, ['dry-fit']);
        expect(human.out).toContain('error  pieces-overlap');
        expect(human.out.replace(/\s+/g, ' ')).toContain(fault.message.slice(0, 40));
        expect(human.code).toBe(1);
    });

    test('a room with errors is put together all the same, and they are named; one that cannot be laid out is said to be none', async () => {
        const wide = await cofferwright(folderWith(tooWide), ['dry-fit']);
        expect(wide.out).toContain('run `cofferwright check` first');
        const hall = den.replace('room den', 'room hall').replace(/wall east.*\n/, '');
        const { code, out } = await cofferwright(folderWith({ ...house, 'hall.coffer': hall }), ['dry-fit']);
        expect(out).toContain('room hall: cannot be laid out, so nothing is put together.');
        expect(code).toBe(1);
    });

    test('check tells it where detail and room stand in one file, and leaves it at what a detail of another file allows', async () => {
        const alone = (text: string): string => text.replace(/^edition 1\n|^from .*\n/gm, '');
        const one = await cofferwright(folderWith({ 'den.coffer': `edition 1\n${alone(yard)}${alone(notched['box.coffer'])}${alone(den)}` }), ['check', '--format', 'concise']);
        expect(one.out).toMatch(/error: Cleat \S+ runs into spacer .* \[pieces-overlap\]/);
        expect(one.code).toBe(1);
        const several = await cofferwright(folderWith(notched), ['check', '--format', 'concise']);
        expect(several.out).not.toContain('pieces-overlap');
    });
});
