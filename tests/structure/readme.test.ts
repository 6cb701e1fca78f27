import { SOUND } from '../../src/pipeline/standing.ts';
import { describe, expect, test } from 'vitest';
import type { Finding } from '../../src/findings/finding.ts';
import { readFile } from '../../src/language/read-file.ts';
import { inspect, takeOffOf, type Inspection } from '../../src/pipeline/inspect.ts';
import { humanCutList } from '../../src/report/cut-list/human.ts';
import { noPaint } from '../../src/report/look.ts';
import { TestWorkspace } from '../support/workspace.ts';
import { read } from './files.ts';

const readme = read('README.md');
const tour = [...readme.matchAll(/^```coffer\n(.*?)^```$/gms)].map(([, text]) => text).join('\n');

async function inspected(text: string): Promise<Inspection> {
    const workspace = await TestWorkspace.open({ 'tour.coffer': text });
    return inspect(readFile(workspace.document('tour.coffer')));
}
const findingsOf = async (text: string): Promise<readonly Finding[]> => (await inspected(text)).findings;

describe('the tour in the README', () => {
    test('its blocks, one after the other in one file, are a job without a mistake', async () => {
        expect(tour).toContain('room dining');
        expect((await findingsOf(tour)).filter(({ severity }) => severity !== 'hint').map(({ message }) => message)).toEqual([]);
    });

    test('the lines of its cut list are those that the list has, one below the other', async () => {
        const [, excerpt] = /^\*\*5\. .*\n\n((?: {4}.*\n)+)/m.exec(readme)!;
        const rooms = (await inspected(tour)).layouts.map(({ room, ceiling }) => ({ room, standing: SOUND, takeOff: takeOffOf(ceiling!) }));
        const list = humanCutList([{ job: rooms[0]!.room.job, rooms, alternates: [] }], noPaint);
        const lines = (text: string): string => text.trim().split('\n').map(line => line.trim().replaceAll(/ {2,}/g, '  ')).join('\n');
        expect(lines(excerpt!).split('\n').length).toBeGreaterThan(3);
        expect(lines(list)).toContain(lines(excerpt!));
    });

    test('what it says of boards that are cut is a part of that room without a mistake', async () => {
        const [, measured] = /^((?: {4}measured \{\n)(?: {4}.*\n)+? {4}\}\n)/m.exec(readme)!;
        const inWork = tour.replace(/\n\}\n(?=\n*labor \{)/, `\n${measured!}}\n`);
        expect(inWork).not.toBe(tour);
        const { findings, layouts } = await inspected(inWork);
        expect(findings.filter(({ severity }) => severity !== 'hint').map(({ message }) => message)).toEqual([]);
        expect(layouts.flatMap(({ room }) => [room.cutBoards.length, room.spoiled.length])).toEqual([1, 1]);
    });

    test('the mistake it makes is told in the words that it shows', async () => {
        const wrong = tour.replace('height 5"', 'height 5 1/2"');
        expect(wrong).not.toBe(tour);
        const shown = readme.replaceAll(/\s+/g, ' ');
        const errors = (await findingsOf(wrong)).filter(({ severity }) => severity === 'error');
        expect(errors.map(({ rule }) => rule)).toEqual(['spacer-hits-cleat']);
        for (const { message, fixes } of errors) {
            expect(shown).toContain(message);
            expect(fixes.map(({ title }) => shown.includes(`fix: ${title}`))).toEqual([true]);
        }
    });
});
