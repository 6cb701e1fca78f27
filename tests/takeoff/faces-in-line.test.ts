import { beforeAll, describe, expect, test } from 'vitest';
import { inspect, takeOffOf } from '../../src/pipeline/inspect.ts';
import { readFile } from '../../src/language/read-file.ts';
import { arrangedOf } from '../../src/ceiling/plan.ts';
import type { Piece } from '../../src/takeoff/model.ts';
import { TestWorkspace } from '../support/workspace.ts';
import { CeilingHouse } from './look-at-ceiling.ts';
import { YARD } from './random-ceilings.ts';

/**
 * Beams whose faces lie exactly in line with, or against, what runs along another wall: no side is cut that nobody would see, and what stands
 * beside it closes the corner.
 */
const room = (walls: string, grid: string, perimeter: string): string => `edition 1
from "./yard.coffer" use board-8, low, low-butted, deep, deep-butted

room den {
${walls.trim().split('\n').map(wall => `  wall ${wall.trim()}`).join('\n')}
  grid {
    ${grid}
    through north-south
    splices never
    perimeter { ${perimeter} }
  }
}
`;
const L = room(`
    w1 140" heading east
    w2 106.25" heading south
    w3 15" heading west
    w4 13.75" heading south
    w5 125" heading west
    w6 120" heading north`, 'lines-north 15.5"\n    lines-east 106.625"\n    beams deep', 'kind half-beam; width 2.375"; splices never');
const BREAST = room(`
    w1 152.625" heading east
    w2 120" heading south
    w3 60" heading west
    w4 12" heading north
    w5 32.625" heading west
    w6 12" heading south
    w7 60" heading west
    w8 120" heading north`, 'lines-north 50.875"\n    lines-east 13.375"\n    beams deep', 'kind half-beam; width 4.875"; splices never');
const NICHE = room(`
    w1 140" heading east
    w2 120" heading south
    w3 62.5" heading west
    w4 6" heading south
    w5 15" heading west
    w6 6" heading north
    w7 62.5" heading west
    w8 120" heading north`, 'coffers-north 2\n    lines-east 13.375"\n    beams deep', 'kind half-beam; width 3.25"; splices never');
const BANDS = room(`
    w1 140" heading east
    w2 141.625" heading south
    w3 59.5" heading west
    w4 58.75" heading north
    w5 21" heading west
    w6 58.75" heading south
    w7 59.5" heading west
    w8 141.625" heading north`, 'lines-north 62.25"\n    lines-east 78.625"\n    beams deep', 'kind band; stock board-8; splices never');

let house: CeilingHouse;
beforeAll(async () => { house = await CeilingHouse.open(); });

async function pieces(text: string): Promise<{ of(id: string): Piece | undefined; coffers: string[]; joints: string[]; told: string[] }> {
    const { ceiling, refused } = await house.look({ text, shape: 'L' });
    expect(refused).toEqual([]);
    const off = takeOffOf(ceiling!), workspace = await TestWorkspace.open({ 'yard.coffer': YARD, 'room.coffer': text });
    return {
        of: id => off.pieces.find(piece => piece.id === `den.${id}`),
        coffers: arrangedOf(ceiling!).exact.coffers.map(({ edges }) => edges.map(({ along }) => along.join('+')).join(' ')),
        joints: off.joints.filter(({ kind }) => kind === 'corner').map(joint => joint.pieces.map(id => id.slice(4)).join(' ')),
        told: inspect(readFile(workspace.document('room.coffer'))).findings.filter(({ severity }) => severity === 'error').map(({ rule }) => rule),
    };
}
const inches = (ticks: number | undefined): number => ticks! / 16256;
const how = (piece: Piece | undefined): unknown => piece?.ends.map(end => end.how);

describe.each([['butted', L.replace('beams deep', 'beams deep-butted')], ['mitered', L]])('a beam in line with a half beam round an outside corner, %s', (_, text) => {
    test('has the half beam\'s side beside its own, both square at the back of the half beam that it ends at', async () => {
        const { of, coffers, joints, told } = await pieces(text);
        const [beam, half] = [of('side-A-2-north'), of('side-w3-1')];
        // the back of the half beam along w4 stands 125" - 2 3/8" from the west
        expect(beam!.corners[1].x / 16256).toBe(122.625);
        expect(half!.corners[0].x / 16256).toBe(122.625);
        expect([beam!.ends[1], half!.ends[0]]).toEqual([{ cut: 'square', how: 'past' }, { cut: 'square', how: 'past' }]);
        expect(of('side-w4-1')!.where).toContain('w4');
        expect(of('side-w4-2')).toBeUndefined();
        expect(coffers[1]).toBe('w1 w2 w3+A 1');
        expect(joints.some(both => both.includes('side-w3-1') && both.includes('side-A-2-north'))).toBe(true);
        expect(told).toEqual([]);
    });
});

test('a beam that stands against the half beam of a chimney breast: both run to the back of the side that has no place', async () => {
    const { of, coffers, told } = await pieces(BREAST);
    expect(how(of('side-1-2-east'))).toEqual(['miter', 'past']);
    expect(how(of('side-w6-1'))).toEqual(['outside-miter', 'past']);
    // from line A's back, 16 1/8", and from its face, 16 7/8", to the back of the half beam along w7, 120" - 4 7/8"
    expect([inches(of('side-1-2-east')!.back), inches(of('side-1-2-east')!.face)]).toEqual([99, 98.25]);
    expect(of('side-w7-2')).toBeUndefined();
    // the coffer ends where the breast's half beam begins
    expect(coffers[3]).toBe('A w2 w3 w4 w5 1');
    expect(told).toEqual([]);
});

test('a beam as wide as the niche that it runs into has no sides across the niche', async () => {
    const { of, coffers, told } = await pieces(NICHE);
    expect([of('side-w5-1'), of('side-w5-2')]).toEqual([undefined, undefined]);
    expect(coffers.slice(2)).toEqual(['A 1 w7 w8', 'A w2 w3 1']);
    expect(told).toEqual([]);
});

test('a beam along the band of a breast runs past the one that would have nothing beyond it', async () => {
    const { of, told } = await pieces(BANDS);
    expect(how(of('side-A-1-south'))).toEqual(['dies', 'past']);
    expect(of('side-A-1-south')).toMatchObject({ face: of('side-A-1-south')!.back });
    expect([of('side-1-2-west'), of('side-1-2-east')]).toEqual([undefined, undefined]);
    expect(told).toEqual([]);
});

test('a side too near to an outside corner to end against another runs past it instead', async () => {
    const near = L.replace('106.25"', '106.125"').replace('13.75"', '13.875"').replace('beams deep', 'beams deep-butted');
    const { of, told } = await pieces(near);
    // 1/8" from the corner to the face of line A, and a side's thickness past it
    expect(inches(of('side-w4-1')!.face)).toBe(0.875);
    expect(inches(of('side-w4-1')!.back)).toBe(0.125);
    expect(how(of('side-A-2-north'))).toEqual(['past', 'butt']);
    expect(told).toEqual(['part-vanishes']);
});

test('a beam at 45 degrees over the corner of a half beam whose wall it just clears is told', async () => {
    const over = NICHE.replace('coffers-north 2\n    lines-east 13.375"\n    beams deep', 'lines-north 46.625"\n    lines-east 13.375"\n    beams low')
        .replace('through north-south', 'through falling\n    lay-north-south falling\n    lay-east-west rising').replace('width 3.25"', 'width 2.875"')
        .replace('w3 62.5"', 'w3 62.375"').replace('w7 62.5"', 'w7 62.375"').replace('w4 6"', 'w4 15.25"').replace('w6 6"', 'w6 15.25"').replace('w5 15"', 'w5 15.25"');
    expect((await house.look({ text: over, shape: 'bay' })).refused).toEqual(['line-goes-nowhere']);
});

test('a beam at 45 degrees that leaves no room for the trim round an outside corner is told, and how much it wants', async () => {
    const crowded = `edition 1
from "./yard.coffer" use board-8, low, low-butted, deep, deep-butted

room den {
  wall w1 183.25" heading east
  wall w2 120" heading south
  wall w3 82.875" heading west
  wall w4 6" heading south
  wall w5 17.5" heading west
  wall w6 6" heading north
  wall w7 82.875" heading west
  wall w8 120" heading north
  grid {
    lines-north 61.125"
    lines-east 40"
    beams low
    through falling
    splices never
    lay-north-south falling
    lay-east-west rising
    perimeter { kind none }
  }
}
`;
    // trim of 3/4" along the face, and round the corner 3/4" x sqrt 2, which is 1 13/16" in all
    expect((await house.look({ text: crowded, shape: 'bay' })).refused).toEqual(['line-goes-nowhere']);
    const farther = crowded.replace('w5 17.5"', 'w5 25.5"').replaceAll('82.875"', '78.875"');
    expect((await house.look({ text: farther, shape: 'bay' })).refused).toEqual([]);
});

const COURT = room(`
    w1 140" heading east
    w2 156.25" heading south
    w3 59.5" heading west
    w4 47.875" heading north
    w5 21" heading west
    w6 47.875" heading south
    w7 59.5" heading west
    w8 156.25" heading north`, 'lines-north 62.25"\n    lines-east 104.125"\n    beams deep-let-in', 'kind band; stock board-8; splices never').replace('deep-butted', 'deep-let-in');

test('sides beside a place without one leave room for the bottom that would be let into it', async () => {
    const { of, told } = await pieces(COURT);
    // line 1's bottom is 6 7/32" wide with 1/32" of play: half of 5 1/2" and 3/8" less 1/64" from its center at 62 1/4"
    expect(inches(of('side-A-1-south')!.corners[1].x)).toBeCloseTo(62.25 - 2.75 - 0.375 + 1 / 64, 3);
    expect(told).toEqual([]);
});

const ELL = room(`
    w1 149" heading east
    w2 108" heading south
    w3 62" heading west
    w4 12" heading south
    w5 87" heading west
    w6 120" heading north`, 'lines-north 82.75"\n    coffers-east 1\n    beams deep-under', 'kind band; stock board-8; splices never').replace('deep-butted', 'deep-under');

const HALF_BEAMS = ELL.replace('w4 12"', 'w4 16"').replace('w2 108"', 'w2 104"').replace('lines-north 82.75"', 'lines-north 79.5"')
    .replace('kind band; stock board-8', 'kind half-beam; width 3.25"');

test.each([['a band', ELL], ['half beams', HALF_BEAMS]])(
    'a bottom under the sides that stands out over the corner of %s, with whose face its beam is in line, is told', async (_, text) => {
        expect((await house.look({ text, shape: 'L' })).refused).toEqual(['line-goes-nowhere']);
        const clear = text.replace(/lines-north ([\d.]+)/, (__, at: string) => `lines-north ${Number(at) - 2.5}`);
        expect((await house.look({ text: clear, shape: 'L' })).refused).toEqual([]);
    });
