import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { kindPages, KINDS_FOLDER } from '../../src/build/kinds.ts';
import { cofferwright } from '../cli/world.ts';
import { heldByHand, type ByHand, type PieceJson } from './by-hand.ts';

/** Worked out by plane trigonometry, outside of the program: by_hand.py shares no code, data or constant with it. */
const BY_HAND = JSON.parse(readFileSync(new URL('kinds/by_hand.json', import.meta.url), 'utf8')) as ByHand;

describe('an example of each kind', () => {
    test('the page and its pictures are what the program makes of them', async () => {
        const pages = await kindPages();
        const stale = [...pages].filter(([file, text]) => text !== read(file)).map(([file]) => file);
        expect(stale, 'stale: run `npm run reference`').toEqual([]);
    });

    test('has nothing wrong but what it shows, and a cut list with every piece', async () => {
        const { out } = await cofferwright(KINDS_FOLDER, ['check', '--format', 'json']);
        const { findings } = JSON.parse(out) as { findings: { severity: string; rule: string; file: string }[] };
        expect(findings.filter(({ severity }) => severity === 'error').map(({ rule, file }) => `${file} ${rule}`)).toEqual(['two-diagonals.coffer tape-doesnt-close']);
    });

    test('comes to what somebody else works out, and every piece says how its ends are cut and what they meet', async () => {
        const { pieces } = JSON.parse((await cofferwright(KINDS_FOLDER, ['cut-list', '--format', 'json'])).out) as { pieces: PieceJson[] };
        expect(heldByHand(pieces, BY_HAND)).toBeGreaterThan(400);
        for (const { id, part, ends, left, right, meets, face, back, long, short, hand } of pieces) {
            if (part === 'spacer') continue;
            expect(ends.every(end => typeof end.angle === 'number'), id).toBe(true);
            expect([[left.angle, right.angle], [right.angle, left.angle]], id).toContainEqual(ends.map(end => end.angle));
            expect(meets.every((name, i) => name !== null || ends[i]!.how === 'splice'), id).toBe(true);
            expect(long && short ? long.ticks > short.ticks : face.ticks === back.ticks, id).toBe(true);
            expect(hand === null || Math.abs(left.angle) > 0 || Math.abs(right.angle) > 0, id).toBe(true);
        }
    });
});

function read(file: string): string | undefined {
    try { return readFileSync(file, 'utf8'); } catch { return undefined; }
}
