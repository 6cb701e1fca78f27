import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { kindPages, KINDS_FOLDER } from '../../src/build/kinds.ts';
import { TICKS_PER_INCH } from '../../src/quantity/ticks.ts';
import { cofferwright } from '../cli/world.ts';

interface EndJson { angle: number; how?: string; flat?: { miter: number; bevel: number } }
interface PieceJson {
    id: string; room: string; part: string;
    face: { ticks: number }; back: { ticks: number }; overall: { ticks: number }; long?: { ticks: number }; short?: { ticks: number };
    ends: EndJson[]; left: EndJson; right: EndJson; hand: string | null; meets: (string | null)[];
}
type Figures = Partial<Record<'face' | 'back' | 'overall' | 'left' | 'right' | 'miter' | 'bevel', number>>;

/** Worked out by plane trigonometry, outside of the program: by_hand.py shares no code, data or constant with it. */
const BY_HAND = JSON.parse(readFileSync(new URL('kinds/by_hand.json', import.meta.url), 'utf8')) as Record<string, Record<string, Figures>>;

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
        const found = new Map(pieces.map(piece => [piece.id, piece]));
        let figures = 0;
        for (const [job, own] of Object.entries(BY_HAND)) for (const [name, wanted] of Object.entries(own)) {
            const piece = found.get(`${job}.${name}`)!, what = `${job}.${name}`;
            expect(piece, what).toBeDefined();
            for (const [key, value] of Object.entries(wanted) as [keyof Figures, number][]) {
                const isLength = key === 'face' || key === 'back' || key === 'overall';
                const is = isLength ? piece[key].ticks / TICKS_PER_INCH : key === 'left' || key === 'right' ? piece[key].angle : piece.left.flat![key];
                // a corner that is off the ticks is rounded to one; an angle follows from two of them
                expect(Math.abs(is - value), `${what} ${key}: ${is}, by hand ${value}`).toBeLessThan(isLength ? 3 / TICKS_PER_INCH : 0.02);
                figures++;
            }
        }
        expect(figures).toBeGreaterThan(200);
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
