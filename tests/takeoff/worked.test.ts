import { readdirSync, readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { layOut } from '../../src/ceiling/layout.ts';
import type { Ceiling } from '../../src/ceiling/model.ts';
import { dryFit } from '../../src/dryfit/dry-fit.ts';
import type { Fault } from '../../src/dryfit/model.ts';
import { readFile } from '../../src/language/read-file.ts';
import { inspectClosely } from '../../src/pipeline/inspect-closely.ts';
import { inspect } from '../../src/pipeline/inspect.ts';
import { TICKS_PER_INCH } from '../../src/quantity/ticks.ts';
import { miterAt } from '../../src/takeoff/ends.ts';
import type { Piece } from '../../src/takeoff/model.ts';
import { takeOff } from '../../src/takeoff/take-off.ts';
import { number, workedRooms, type WorkedPiece, type WorkedRoom } from '../arrangement/worked.ts';
import { told } from '../dryfit/told.ts';
import { TestWorkspace } from '../support/workspace.ts';

/**
 * The rooms of tests/arrangement/worked.json as jobs, all the way from the text to the cut list: every piece with both edges, what it takes of a
 * board, both ends with their angles, and the hand. The figures there come from an independent model of the same definitions.
 */
const FOLDER = new URL('worked/', import.meta.url), FILES = readdirSync(FOLDER).sort();
const LINES: Readonly<Record<string, string>> = { ash: '1', beech: '2', cedar: '3', elm: 'elm', fir: 'fir', hazel: 'hazel', finch: 'A', heron: 'B', kite: 'C' };
/** Ticks. Lengths are whole ones, and slanted corners are rounded to one. */
const NEAR = 3, DEGREES = 0.001;

let workspace: TestWorkspace;
beforeAll(async () => { workspace = await TestWorkspace.open(Object.fromEntries(FILES.map(file => [file, readFileSync(new URL(file, FOLDER), 'utf8')]))); });

function laidOut(file: string): { ceiling: Ceiling; worked: WorkedRoom } {
    const [room] = readFile(workspace.document(file)).rooms, { ceiling, troubles } = layOut(room!);
    expect(troubles).toEqual([]);
    return { ceiling: ceiling!, worked: workedRooms.find(({ name }) => name === room!.title)! };
}

describe.each(FILES)('%s', file => {
    test('piece for piece', () => {
        const { ceiling, worked } = laidOut(file), made = takeOff(ceiling).pieces.filter(({ part }) => part !== 'spacer');
        const left = worked.pieces.flatMap(piece => piece.at.map(at => ({ piece, place: placeOf(piece, at) })));
        expect(made.map(placeMade).sort()).toEqual(left.map(({ place }) => place).sort());
        for (const piece of made) {
            const fit = left.findIndex(each => each.place === placeMade(piece) && agrees(piece, each.piece, ceiling));
            expect(fit, `${piece.id}: ${inInches(piece)} for ${JSON.stringify(left.filter(({ place }) => place === placeMade(piece)).map(each => each.piece))}`).toBeGreaterThanOrEqual(0);
            left.splice(fit, 1);
        }
    });

    test('put together it touches where it should, and nothing is in anything else', () => {
        const { ceiling } = laidOut(file), off = takeOff(ceiling), { faults, looked } = dryFit(ceiling, off);
        // where nothing runs along the compass, lengths are on no mark of the tape, and what that opens is told
        const rounded = (fault: Fault): boolean => !ceiling.square && fault.kind === 'misfit' && fault.causes.length === 0 && fault.clashes.every(({ kind }) => kind === 'rounded');
        expect(faults.filter(fault => !rounded(fault)).map(told)).toEqual([]);
        expect(looked.pieces).toBe(off.pieces.length);
    });

    test('nothing is found in it, but joints that the tape cannot close where nothing runs along the compass', () => {
        const read = readFile(workspace.document(file)), found = [...inspect(read).findings, ...inspectClosely(read)];
        const unmeant = found.filter(({ rule, severity, allowed }) => !allowed && (rule !== 'joint-opens' || severity !== 'warning'));
        expect(unmeant.map(({ rule, message }) => `${rule}: ${message}`)).toEqual([]);
    });

    test('every length is told by terms that add up to it', () => {
        const { ceiling } = laidOut(file);
        for (const { id, back, why } of takeOff(ceiling).pieces) expect(why.terms.reduce((sum, { times, ticks }) => sum + times * ticks, 0), id).toBe(back);
    });
});

const nameOf = (word: string): string => LINES[word] ?? word.replace(/ wall$/, '').replaceAll(' ', '-');

function placeOf({ part, of }: WorkedPiece, at: readonly (string | number)[]): string {
    const [first, ...between] = at;
    switch (part) {
        case 'trim': return `trim ${first} ${String(between[0])}`;
        case 'side': case 'cleat': return [part, nameOf(of!), LINES[of!] ? first : '', ...between.map(each => nameOf(String(each))).sort()].join(' ');
        case 'wall-cleat': return `cleat ${nameOf(of!)} on the wall`;
        default: return [part, nameOf(of!), ...at.map(each => nameOf(String(each))).sort()].join(' ');
    }
}

function placeMade({ part, line, coffer, on, meets, id }: Piece): string {
    const met = meets.map(String).sort();
    switch (part) {
        case 'trim': return `trim ${coffer} ${on}`;
        case 'side': case 'cleat': return part === 'cleat' && line === null && id.endsWith('-wall') ? `cleat ${on} on the wall`
            : [part, line ?? on, line === null ? '' : on, ...met].join(' ');
        case 'band': return `band ${on}`;
        default: return [part, line ?? on, ...line === null ? [] : met].join(' ');
    }
}

/** Worked pieces are told from left to right, first edge first; the cut list tells the west or north end first. */
function agrees(piece: Piece, { part, edges, angles, hand, width, overall }: WorkedPiece, { lines }: Ceiling): boolean {
    const near = (got: number, inches: string): boolean => Math.abs(got - number(inches)) <= NEAR;
    const line = lines.find(({ name }) => name === piece.line), eastWest = line?.runs === 'east-west';
    // of what lies in a beam the left edge comes first, and the back is the one to the west or north; of a band the wall
    const backIsFirst = part === 'band' || part === 'wall-cleat' || part === 'bottom' && line === undefined || part === 'blocking' && line === undefined
        || (part === 'bottom' || part === 'blocking') && eastWest;
    const [back, face] = backIsFirst ? edges : [edges[1], edges[0]], sign = backIsFirst ? -1 : 1;
    const leans = piece.ends.map(({ degrees = 0 }) => degrees), wanted = angles.map(angle => sign * angle + 0);
    const alike = (some: readonly number[]): boolean => some.every((angle, i) => Math.abs(angle - leans[i]!) <= DEGREES);
    const longest = number(edges[0]) > number(edges[1]) ? edges[0] : edges[1];
    return (part === 'cleat' || near(piece.face, face)) && near(piece.back, back) && near(piece.overall, overall ?? longest)
        && (alike(wanted) || alike([...wanted].reverse())) && (hand === undefined || part !== 'side' || miterAt(piece) === hand)
        && (width === undefined || part !== 'bottom' && part !== 'blocking' || near(piece.width, width));
}

function inInches(piece: Piece): string {
    const { face, back, overall, ends, meets } = piece;
    const [inFace, inBack, inAll] = [face, back, overall].map(ticks => ticks / TICKS_PER_INCH);
    return JSON.stringify({ face: inFace, back: inBack, overall: inAll, ends, miterAt: miterAt(piece), meets });
}
