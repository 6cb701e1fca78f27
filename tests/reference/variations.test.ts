import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { cofferwright } from '../cli/world.ts';
import { heldByHand, type ByHand, type PieceJson } from './by-hand.ts';

const FOLDER = 'tests/reference/variations';
/** Worked out by plane trigonometry, outside of the program: by_hand.py shares no code, data or constant with it. */
const BY_HAND = JSON.parse(readFileSync(new URL('variations/by_hand.json', import.meta.url), 'utf8')) as ByHand;

test('rooms that have several kinds of things at once have nothing wrong, and come to what somebody else works out', async () => {
    const { findings } = JSON.parse((await cofferwright(FOLDER, ['check', '--format', 'json'])).out) as { findings: { severity: string; rule: string; message: string }[] };
    expect(findings.filter(({ severity }) => severity === 'error').map(({ rule, message }) => `${rule} ${message}`)).toEqual([]);
    const { pieces } = JSON.parse((await cofferwright(FOLDER, ['cut-list', '--format', 'json'])).out) as { pieces: PieceJson[] };
    expect(heldByHand(pieces, BY_HAND)).toBeGreaterThan(100);
});
