import { describe, expect, test } from 'vitest';
import { readFile } from '../../src/language/read-file.ts';
import { bowedWalls, intoAt, type BowedWall } from '../../src/measure/bowed.ts';
import { layoutOf, takeOffOf } from '../../src/pipeline/inspect.ts';
import { HALL, HALL_WITH_BAND } from '../../src/rules/support/examples.ts';
import { TestWorkspace } from '../support/workspace.ts';

const INCH = 16256;

async function wallsOf(text: string) {
    const workspace = await TestWorkspace.open({ 'hall.coffer': text }), [room] = readFile(workspace.document('hall.coffer')).rooms;
    const { ceiling } = layoutOf(room!);
    return { ceiling: ceiling!, walls: bowedWalls(ceiling!, takeOffOf(ceiling!).pieces) };
}

const shapeOf = ({ profile }: BowedWall): number[][] => profile.map(({ along, into }) => [along, into]);
const north = (words: string): string => HALL_WITH_BAND.replace(`wall north  12' 11 1/2"\n`, `wall north  12' 11 1/2" { ${words} }\n`);

describe('walls that do not stand square to each other', () => {
    /** Five walls: a corner of 135 degrees between north and north-east, and between that and east; half beams along all. */
    const bay = (east: string, more = ''): string => HALL.replace(/ {2}wall north[^\n]*\n {2}wall east[^\n]*\n/, `  wall north      10' 10"
  wall north-east 2' 9 15/16" turn 45 deg${more}
  wall east       7' 5" { ${east} }
  wall south      12' 10"
  wall west
`).replace('through        north-south\n', 'through        north-south\n    perimeter { kind half-beam; width 2 1/4"; scribe 1/4" }\n');
    const endsOf = (walls: readonly BowedWall[], name: string): Record<string, number> => Object.fromEntries(walls.find(({ wall }) => wall.name === name)!.ends
        .map(({ piece, by, at }) => [`${piece.id.replace(/^[^.]*\./, '')}${at ? ` at ${at}` : ''}`, Math.round(by / INCH * 1e3) / 1e3]));

    test('a piece that meets one slanted loses the more by that, and what runs along it gains where the next wall slants away', async () => {
        const { walls } = await wallsOf(bay('leans-in 1/4"')), ends = endsOf(walls, 'east');
        // square to it as much as it leans; at 45 degrees 1/4" x sqrt(2) = 0.354"
        expect([ends['side-A-3-north'], ends['bottom-A-3'], ends['blocking-south'], ends['side-south-3']]).toEqual([0.25, 0.25, 0.25, 0.25]);
        expect([ends['blocking-north-east'], ends['side-north-east-1'], ends['bottom-north-east']]).toEqual([0.354, 0.354, 0.354]);
        // the east wall moved 1/4" to the west meets the slanted one 1/4" farther north; the south wall is square to it
        expect([ends['blocking-east at north-east'], ends['side-east-1 at north-east'], ends['bottom-east at north-east']]).toEqual([-0.25, -0.25, -0.25]);
        expect(Object.keys(ends).filter(name => name.endsWith('at south') || name.endsWith('at north') || name.endsWith('at west'))).toEqual([]);
    });

    test('where both lean each has its share', async () => {
        const { walls } = await wallsOf(bay('leans-in 1/4"', ' { leans-in 1/8" }'));
        // along the east wall: (1/8" - 1/4" x cos 45) x sqrt(2) = -0.073"; along the slanted one: (1/4" - 1/8" x cos 45) x sqrt(2) = 0.229"
        expect([endsOf(walls, 'north-east')['side-east-1'], endsOf(walls, 'east')['side-north-east-1']]).toEqual([-0.073, 0.229]);
        // at the north wall, of which nothing is said, the slanted one gains 1/8" x cos 45 x sqrt(2) = 1/8"
        expect(endsOf(walls, 'north-east')['side-north-east-1 at north']).toBe(-0.125);
    });
});

describe('a wall that is not straight', () => {
    // a segment of a circle: R = h/2 + c^2/(8h), and its height at x from the middle of its chord sqrt(R^2 - x^2) - (R - h) (plane geometry)
    test('is scribed as deep as an arc is high, where enough of it was read', async () => {
        const chord = 155.5, h = 0.25, R = h / 2 + chord * chord / (8 * h), heightAt = (x: number): number => Math.sqrt(R * R - (x - chord / 2) ** 2) - (R - h);
        const places = Array.from({ length: 17 }, (_, i) => 8 + 8 * i + 4).filter(x => x < chord);
        const { walls: [wall] } = await wallsOf(north(places.map(x => `hump ${heightAt(x).toFixed(5)}" at ${x}"`).join('; ')));
        // straight between places no more than 16" apart: no more than 16^2/(8R) short of it
        for (let x = 0; x <= chord; x += 5) expect(Math.abs(intoAt(wall!.profile, x * INCH) / INCH - heightAt(x))).toBeLessThan(256 / (8 * R) + 1e-4);
        expect(wall!.scribes).toHaveLength(1);
        expect(wall!.scribes[0]!.deepest.ticks / INCH).toBeCloseTo(h, 3);
        expect([wall!.scribes[0]!.from, wall!.scribes[0]!.to]).toEqual([0, wall!.wall.length]);
        expect([wall!.gaps, wall!.moved]).toEqual([[], 0]);
    });

    test('from which end a place is counted, and which way the wall runs, makes no difference', async () => {
        const one = await wallsOf(north('hump 1/4" at 3\'; hollow 1/8" at 8\'')), other = await wallsOf(north('hump 1/4" at 119 1/2" from east; hollow 1/8" at 59 1/2" from east'));
        expect(shapeOf(one.walls[0]!)).toEqual(shapeOf(other.walls[0]!));
        const south = (words: string): string => HALL_WITH_BAND.replace(`wall east   9' 6 1/2"\n`, `wall east   9' 6 1/2"\n  wall south  12' 11 1/2" { ${words} }\n`);
        const { walls: [below] } = await wallsOf(south('hump 1/4" at 3\'; hollow 1/8" at 8\''));
        expect(shapeOf(below!)).toEqual(shapeOf(one.walls[0]!));
        expect(below!.scribes).toEqual(one.walls[0]!.scribes);
    });

    test('found on site it is the same, in the block of what was measured, in a line of it or at its own place; what is found overrules what was drawn', async () => {
        const found = (words: string): string => north('hump 1/2" at 2\'').replace('  grid {', `  measured { ${words} }\n  grid {`);
        const [drawn] = (await wallsOf(north('hump 1/4" at 3\'; hump 1/8" at 6\''))).walls;
        for (const words of ['north { hump 1/4" at 3\'; hump 1/8" at 6\' }', 'north.hump 1/4" at 3\'; north.hump 1/8" at 6\'', 'north 12\' 11 1/2" { hump 1/4" at 3\'; hump 1/8" at 6\' }']) {
            expect((await wallsOf(found(words))).walls.map(shapeOf)).toEqual([shapeOf(drawn!)]);
        }
    });

    test('what is scribed and what stays open are one line: where one ends the other begins', async () => {
        const { walls: [{ scribes: [scribe], gaps: [gap] }] } = await wallsOf(north('hump 1/4" at 4\'; hollow 1/4" at 8\'')) as never as { walls: [{ scribes: { from: number; to: number }[]; gaps: { from: number; to: number }[] }] };
        // from +1/4 at 4' to -1/4 at 8': nothing at 6'
        expect([scribe!.to, gap!.from]).toEqual([72 * INCH, 72 * INCH]);
    });

    test('takes just as much off what ends at it where nothing runs along it, and nothing where a straight band does', async () => {
        const bare = await wallsOf(HALL.replace(`wall north  12' 10"\n`, `wall north  12' 10" { hump 1/4" at 3'; hump 1/8" at 9' }\n`)), [wall] = bare.walls;
        expect(wall!.ends.length).toBeGreaterThan(3);
        for (const { piece, along, by } of wall!.ends) {
            expect([piece.line, piece.meets]).toEqual([expect.stringMatching(/^[12]$/), expect.arrayContaining(['north'])]);
            // the deepest over its width
            expect(by).toBeGreaterThanOrEqual(Math.round(intoAt(wall!.profile, along)) - 1);
            expect(by - intoAt(wall!.profile, along)).toBeLessThan(piece.width / 2 * 0.25 / 36 + 2);
        }
        const banded = await wallsOf(north('hump 1/4" at 3\''));
        expect(banded.walls[0]!.ends).toEqual([]);
        expect(banded.walls[0]!.bent.map(({ line }) => line)).toEqual(['1', '2']);
    });

    test('one that leans in all along moves what runs along it, and everything that ends there is shorter by that, or longer', async () => {
        for (const [words, by] of [['leans-in 3/8"', 0.375], ['leans-out 3/8"', -0.375]] as const) {
            const { walls: [wall] } = await wallsOf(north(words));
            expect([wall!.moved / INCH, wall!.scribes, wall!.gaps]).toEqual([by, [], []]);
            expect(new Set(wall!.ends.map(end => end.by / INCH))).toEqual(new Set([by]));
            expect(new Set(wall!.ends.map(({ piece }) => piece.part))).toEqual(new Set(['blocking', 'side', 'cleat', 'bottom', 'band', 'trim']));
        }
        // a hump on top of it is scribed by itself
        const { walls: [wall] } = await wallsOf(north('leans-in 3/8"; hump 1/8" at 5\''));
        expect([wall!.moved / INCH, wall!.scribes.map(({ deepest }) => deepest.ticks / INCH)]).toEqual([0.375, [0.125]]);
    });
});
