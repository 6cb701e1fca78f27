import { describe, expect, test } from 'vitest';
import { SOUND } from '../../src/pipeline/standing.ts';
import { suggestionsFor } from '../../src/suggest/suggestions.ts';
import type { Offer, Suggestions } from '../../src/suggest/model.ts';
import { blockingMissesJoist } from '../../src/rules/blocking-misses-joist.ts';
import { errorsIn, faultsIn, read, roomOf, suggestionsOf, takenOver } from './room-with.ts';

const inches = (length: number): number => length * 16256;
const grids = (offers: readonly Offer[]): string[] => offers.map(({ across, down, through }) => `${across.coffers} by ${down.coffers} ${through}`);

/** 18' 4" by 15' 2": 218 1/2" by 180 1/2" inside a band of 3/4". Beams are 7" wide. */
const PARLOR = roomOf(`18' 4"`, `15' 2"`, 'coffers-north 4\n    coffers-east 3');
let made: Promise<Suggestions> | undefined;
const ofParlor = (): Promise<Suggestions> => made ??= suggestionsOf(PARLOR);

describe('ranking, by hand', () => {
    test('five coffers by four are the most square: (218 1/2 - 28)/5 = 38.1", (180 1/2 - 21)/4 = 39.875"', async () => {
        const { offers: [best, ...rest], present } = await ofParlor();
        // 4 by 3: (218 1/2 - 21)/4 = 49 3/8", (180 1/2 - 14)/3 = 55 1/2"
        const exactly = (size: number): object => ({ least: inches(size), most: inches(size) });
        expect(present).toMatchObject({ across: 4, down: 3, coffers: 12, unequal: 0, errors: 0, width: exactly(49.375), length: exactly(55.5) });
        expect(present!.offSquare).toBeCloseTo(55.5 / 49.375 - 1, 6);
        expect([best!.across.coffers, best!.down.coffers]).toEqual([5, 4]);
        expect(Math.abs(best!.figures.width.least - inches(38.1))).toBeLessThan(2);
        expect(best!.figures.offSquare).toBeCloseTo(39.875 / 38.1 - 1, 4);
        expect(best!.says).toEqual(expect.arrayContaining(['coffers-north 5', 'coffers-east 4']));
        const grade = ({ figures }: Offer): number => Math.floor((figures.unequal + figures.offSquare) / 0.05);
        expect(rest.map(grade)).toEqual(rest.map(grade).sort((a, b) => a - b));
        expect(grids(rest)).not.toContain('4 by 3 north-south');
    });
    test('no coffer is under half as big as now, over twice as big, or under three times a beam', async () => {
        const { offers, tried: { least, most } } = await ofParlor();
        expect([least, most]).toEqual([inches(52.4375) / 2, inches(52.4375) * 2]);
        for (const { figures: { width, length } } of offers) expect(Math.min(width.least, length.least)).toBeGreaterThanOrEqual(inches(26.21));
    });
    test('where the text says sizes, between these', async () => {
        const { offers, tried } = await suggestionsOf(roomOf(`18' 4"`, `15' 2"`, 'coffer-size 40" to 60"'));
        expect([tried.least, tried.most]).toEqual([inches(40), inches(60)]);
        // 4 by 3 is there already; (180 1/2 - 21)/4 is under 40"
        expect(grids(offers)).toEqual(['4 by 3 east-west']);
        expect(offers[0]!.says).toEqual(['coffers-north 4', 'coffers-east 3', 'through east-west']);
    });
    test('closing pieces: of 4 by 3, two between the lines of each of two lines, or one of each of three', async () => {
        // lines 1, 2, 3 through: A and B are cut into four, of which the two in the middle have biscuits at both ends; the band goes up last
        const { present, offers } = await suggestionsOf(PARLOR.replace('bottom { stock board-6 }', 'bottom { stock board-6; biscuits 2 x #10 }'));
        expect(present!.closing).toBe(4);
        expect((await ofParlor()).present!.closing).toBe(undefined);
        for (const { figures: { across, down, through, closing } } of offers) {
            expect(closing).toBe(through === 'north-south' ? (across - 2) * (down - 1) : (down - 2) * (across - 1));
        }
    });
    test('the same text, the same grids', async () => {
        const plain = (_: string, value: unknown): unknown => (typeof value === 'bigint' ? String(value) : value);
        const told = async (made: Promise<Suggestions>): Promise<string> =>
            JSON.stringify((await made).offers.map(({ room: _, ...offer }) => offer), plain);
        expect(await told(suggestionsOf(PARLOR))).toBe(await told(ofParlor()));
    });
});

describe('what is in the way', () => {
    // two coffers along the north wall would have line 1 at 110"; a light of 6" reaches to 113", half of the beam is 3 1/2"
    const lit = roomOf(`18' 4"`, `15' 2"`, 'coffers-north 2\n    coffers-east 2', `  fixture lamp light at 9' 2", 4' diameter 6"`);
    test('a grid that a light is in the way of is not offered; its line is moved to where it is just clear', async () => {
        const before = await read(lit), { offers, tried, present } = await suggestionsOf(lit);
        expect(errorsIn(before).join()).toContain('fixture-in-beam');
        expect(present!.errors).toBe(1);
        expect(tried.inTheWay.map(({ what }) => what)).toEqual(['lamp']);
        const moved = offers.find(({ across }) => across.coffers === 2)!;
        expect(moved.across).toMatchObject({ how: 'shifted', by: inches(6.5) });
        expect([inches(103.5), inches(116.5)]).toContain(moved.across.centers[0]);
        const after = await takenOver(moved, before);
        expect([errorsIn(after), faultsIn(after)]).toEqual([[], 0]);
    });
    test('line 1 on a joist, which it misses where it is', async () => {
        const { offers } = await suggestionsOf(blockingMissesJoist.wrong);
        expect(offers.length).toBeGreaterThan(0);
        // joists stand at 13", 29", 45", 61", 77" ...: the blocking of 3 1/2" finds one within 1 3/4" of its middle
        for (const { room, across } of offers) {
            const centers = across.how === 'equal' ? [] : across.centers;
            const off = (center: number): number => Math.min(...Array.from({ length: 10 }, (_, i) => Math.abs(center - inches(13 + 16 * i))));
            for (const center of centers) expect(off(center)).toBeLessThanOrEqual(inches(1.75));
            expect(room.grid!.north).toBeDefined();
        }
    });
    test('a light that wants the middle of a coffer: all lines move by what it is off', async () => {
        const off = roomOf(`18' 4"`, `15' 2"`, 'coffers-north 3\n    coffers-east 3', `  fixture lamp light at 9' 5", 7' 7" diameter 6" wants coffer-center`);
        const { offers } = await suggestionsOf(off), shifted = offers.find(({ across }) => across.coffers === 3 && across.how === 'shifted');
        // to the tape's next 32nd
        expect(Math.abs(shifted!.across.by - inches(3))).toBeLessThanOrEqual(inches(1 / 32));
        expect(shifted?.figures.conflicts).toBe(0);
    });
    test('lines that single words are said of stay: a grid without them is not offered', async () => {
        const { offers, notTried } = await suggestionsOf(PARLOR.replace('room hall {', 'room hall {\n  line 3 { splices never }'));
        expect(offers.length).toBeGreaterThan(0);
        for (const { across } of offers) expect(across.coffers).toBeGreaterThanOrEqual(4);
        expect(notTried.join(' ')).toContain('stays as it is');
    });
    test('one coffer stays centered where the grid says so', async () => {
        const centered = PARLOR.replace('  grid {', `  fixture lamp light at 8' 4", 7' 7" diameter 5"\n  grid {\n    centered-on lamp`), before = await read(centered);
        const { offers, notTried } = await suggestionsOf(centered);
        expect(notTried.join(' ')).toContain('A coffer stays centered on lamp');
        for (const offer of offers) expect([offer.across.how, errorsIn(await takenOver(offer, before))]).toEqual(['equal', []]);
    });
});

describe('words and changes of the text', () => {
    const written = async (grid: string, take: (offer: Offer) => boolean): Promise<{ text: string; says: readonly string[] }> => {
        const before = await read(roomOf(`18' 4"`, `15' 2"`, grid)), offer = (await suggestionsOf(before.text)).offers.find(take)!;
        const after = await takenOver(offer, before);
        expect(errorsIn(after)).toEqual([]);
        return { text: after.text, says: offer.says };
    };
    const isFiveByFour = ({ across, down }: Offer): boolean => across.coffers === 5 && down.coffers === 4;

    test('numbers, in their place', async () => {
        expect((await written('coffers-north  4\n    coffers-east   3', isFiveByFour)).text).toContain('    coffers-north  5\n    coffers-east   4\n');
    });
    test('one size for both walls becomes a number for each', async () => {
        expect((await written('coffer-size  36" to 60"', isFiveByFour)).text).toContain('    coffers-north  5\n    coffers-east  4\n');
    });
    test('lines become a number', async () => {
        expect((await written(`lines-north  54 5/8", 111", 167 3/8"\n    coffers-east  3`, isFiveByFour)).text).toContain('    coffers-north  5\n    coffers-east  4\n');
    });
    test('nothing is changed where the words stand elsewhere', async () => {
        const { offers } = await suggestionsOf(PARLOR.replace('coffers-north 4', '').replace('room hall {', 'room hall {\n  grid.coffers-north 4'));
        expect(offers.length).toBeGreaterThan(0);
        const toLines = offers.filter(({ across }) => across.how !== 'equal');
        expect(toLines.flatMap(({ changes }) => changes ?? [])).toEqual([]);
    });
    test('a grid on one line', async () => {
        const text = PARLOR.replace(/grid \{[^]*?\n {2}\}/, 'grid { coffer-size 36" to 60"; beams box; through north-south; perimeter { kind band; stock board-8 } }');
        const before = await read(text), offer = (await suggestionsOf(text)).offers.find(isFiveByFour)!;
        expect((await takenOver(offer, before)).text).toMatch(/grid \{ coffers-north +5; coffers-east +4; beams box/);
    });
});

describe('where nothing can be tried', () => {
    test('an error that no grid mends', async () => {
        const { nothing, offers } = await suggestionsOf(PARLOR.replace('height 5"', 'height 5 1/2"'));
        expect(offers).toEqual([]);
        expect(nothing).toMatch(/errors stand that no grid mends: .*house\.coffer/);
    });
    test('no grid', async () => {
        const { file } = await read(PARLOR.replace(/ {2}grid \{[^]*?\n {2}\}\n/, ''));
        expect(suggestionsFor(file.rooms[0]!, file, SOUND).nothing).toBe('It has no grid yet: nothing is known of its beams.');
    });
    test('a room of 400 coffers: the search ends, and says so', async () => {
        const { tried, offers } = await suggestionsOf(roomOf(`70'`, `70'`, 'coffers-north 18\n    coffers-east 18'));
        expect(tried.isCutShort).toBe(true);
        expect(tried.lookedAt).toBe(1);
        expect(offers.length).toBeLessThanOrEqual(1);
    });
});
