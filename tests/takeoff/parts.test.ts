import { describe, expect, test } from 'vitest';
import { layOut } from '../../src/ceiling/layout.ts';
import { tapeOf } from '../../src/job/tape.ts';
import { whyText } from '../../src/provenance/why-text.ts';
import { printInches } from '../../src/quantity/print-length.ts';
import { idOf, spliceLetter } from '../../src/takeoff/ids.ts';
import type { Piece, TakeOff } from '../../src/takeoff/model.ts';
import { spacerStarts } from '../../src/takeoff/spacers.ts';
import { takeOff } from '../../src/takeoff/take-off.ts';
import { exampleRoom } from '../support/example-room.ts';
import { jobBuilder, ticksOf, type ProfileWords, type RoomWords } from '../support/job-builder.ts';

const { stock, said, settings } = jobBuilder('file:///yard.coffer');
const six = stock('six', { thickness: '3/4"', width: '5 1/2"', lengths: ["16'"] });
const eight = stock('eight', { thickness: '3/4"', width: '7 1/4"', lengths: ["16'"] });
function off(words: RoomWords = {}, beam: ProfileWords = {}): TakeOff & { find(id: string): Piece } {
    const layout = layOut(exampleRoom(words, beam));
    expect(layout.ceiling, JSON.stringify(layout.troubles)).toBeDefined();
    const taken = takeOff(layout.ceiling!);
    return { ...taken, find: id => taken.pieces.find(piece => piece.id === `parlor.${id}`)! };
}
const backs = (pieces: readonly Piece[]): string[] => [...new Set(pieces.map(piece => printInches(piece.back)))].sort();

describe('spacers', () => {
    const starts = (coffer: string, every = '24"', fromEnd = '6"') =>
        spacerStarts({ start: 0, end: ticksOf(coffer), leans: [0, 0] }, { thickness: ticksOf('3/4"'), width: ticksOf('5 1/2"') }, { every: said(ticksOf(every)), fromEnd: said(ticksOf(fromEnd)) }).map(start => printInches(start + ticksOf('3/8"')));
    test('first and last at 6", the others equally between, at most 24" apart', () => {
        expect(starts('49 3/8"')).toEqual(['6"', '24 11/16"', '43 3/8"']);
        expect(starts('60"')).toEqual(['6"', '30"', '54"']);
        expect(starts('60 1/32"')).toHaveLength(4);
    });
    test('one in the middle where it serves both ends', () => {
        expect(starts('12"')).toEqual(['6"']);
        expect(starts('12 1/2"')).toEqual(['6 1/4"']);
        expect(starts('12 3/4"')).toEqual(['6"', '6 3/4"']);
    });
    test('none in a bay narrower than a spacer; never one in the place of another', () => {
        expect(starts('1/2"')).toEqual([]);
        expect(starts('15"', '1/8"')).toHaveLength(5);
        expect(starts('15"', '1/8"', '0"').at(0)).toBe('3/8"');
    });
});

test('every part hangs at its height, down from the ceiling', () => {
    const { find } = off();
    const height = (id: string): string => [find(id).box.top, find(id).box.foot].map(printInches).join(' to ');
    expect(['blocking-2', 'spacer-2-1-1', 'side-2-1-west', 'cleat-2-1-west', 'bottom-2', 'band-west', 'trim-1-west'].map(height)).toEqual([
        '0" to 3/4"', '3/4" to 5 3/4"', '1/4" to 7 1/2"', '6" to 6 3/4"', '6 3/4" to 7 1/2"', '1/2" to 7 3/4"', '0" to 1 1/2"',
    ]);
});

describe('butted corners', () => {
    const corners: ProfileWords = { sides: { stock: eight, corners: 'butted' } };
    test('where nothing is said, the sides of the lines that run through run past', () => {
        const { pieces, joints } = off({}, corners);
        const sides = pieces.filter(piece => piece.part === 'side');
        expect(sides.every(({ ends, hand }) => ends.every(end => end.cut === 'square') && hand === null)).toBe(true);
        expect(backs(sides.filter(({ line }) => line === 'A'))).toEqual(['49 3/8"']);
        expect(sides.filter(({ line }) => line === '1').map(({ face, back }) => [face, back].map(printInches).join())).toEqual(
            ['56 1/4",56 1/4"', '56 1/4",56 1/4"', '57",57"', '57",57"', '56 1/4",56 1/4"', '56 1/4",56 1/4"']);
        expect(joints.filter(joint => joint.kind === 'corner')).toHaveLength(24);
    });
    test('or those that the job names', () => {
        const { pieces } = off({}, { sides: { ...corners.sides, past: 'east-west' } });
        const of = (line: string) => backs(pieces.filter(piece => piece.part === 'side' && piece.line === line));
        expect([of('A'), of('1')]).toEqual([['50 1/8"', '50 7/8"'], ['55 1/2"']]);
    });
    test('cleats are as the back of their side, 1/4" short at each end', () => {
        expect(backs(off({}, corners).pieces.filter(({ part, line }) => part === 'cleat' && line === 'A'))).toEqual(['48 7/8"']);
    });
});

test('sides of two thicknesses meet in a miter that is no 45', () => {
    const { profile } = jobBuilder('file:///thin.coffer');
    const thin = profile('thin-box', { blocking: { stock: six }, sides: { stock: stock('thin', { thickness: '1/2"', width: '7 1/4"' }) }, bottom: { stock: six } });
    const { find } = off({ lines: { A: { beams: thin } } });
    const [a, one] = [find('side-A-2-north'), find('side-1-1-west')];
    // A's side is 1/2" thick and meets 3/4": it reaches 3/4" past the coffer at each end
    expect([a.back - a.face, one.back - one.face].map(printInches)).toEqual(['1 1/2"', '1/2"']);
    expect(a.ends.map(end => end.cut === 'miter' ? Math.round(end.degrees! * 100) / 100 : 0)).toEqual([56.31, 56.31]);
    expect(one.ends.map(end => end.cut === 'miter' ? Math.round(end.degrees! * 100) / 100 : 0)).toEqual([0, 33.69]);
});

describe('blocking', () => {
    test('between other lines it is cut a relief shorter, half of it at each end, also where one of them is the band; what runs through is not', () => {
        const { find } = off();
        expect(['blocking-A-2', 'blocking-A-1'].map(id => whyText(find(id).why, find(id).cutBack, tapeOf(settings())))).toEqual([
            `coffer 4' 1 3/8" + 2 x side 3/4" - relief 1/16" = 4' 2 13/16"`, `coffer 4' 1 3/8" + side 3/4" - relief 1/16" = 4' 2 1/16"`,
        ]);
        const [bottom, blocking] = [find('bottom-A-2').box, find('blocking-A-2').box];
        expect([blocking.west - bottom.west, bottom.east - blocking.east]).toEqual([ticksOf('1/32"'), ticksOf('1/32"')]);
        expect(find('blocking-2').back).toBe(find('bottom-2').back);
    });
    test('as the profile says it, or 1.5 mm where lengths are in millimeters', () => {
        const said = off({}, { blocking: { stock: six, relief: '1/8"' } });
        expect(said.find('blocking-A-2').back).toBe(ticksOf('50 3/4"'));
        const metric = off({ job: settings({ show: 'millimeters', cutTo: ticksOf('0.5 mm') }) });
        expect(metric.find('bottom-A-2').back - metric.find('blocking-A-2').back).toBe(ticksOf('1.5 mm'));
        expect(off({}, { blocking: { stock: six, relief: '0"' } }).find('blocking-A-2').back).toBe(ticksOf('50 7/8"'));
    });
});

describe('bottoms', () => {
    test('with play they reach across it to the bottom they butt against', () => {
        const { find } = off({}, { bottom: { stock: six, rip: '5 15/32"', biscuits: [1, '#20'] } });
        expect([find('bottom-A-2'), find('bottom-A-1')].map(({ cutBack, why }) => whyText(why, cutBack, tapeOf(settings())))).toEqual([
            `coffer 4' 1 3/8" + 2 x side 3/4" + gap beside the line 1 bottom 1/64" + gap beside the line 2 bottom 1/64" = 4' 2 29/32"`,
            `coffer 4' 1 3/8" + side 3/4" + gap beside the line 1 bottom 1/64" - rounding 1/64" = 4' 2 1/8"`,
        ]);
        expect(find('bottom-2')).toMatchObject({ ripped: true, width: ticksOf('5 15/32"'), machining: expect.arrayContaining(['rip to 5 15/32"']) });
        expect(find('blocking-A-2').back).toBe(ticksOf('50 13/16"'));   // and the relief
    });
    test('pressed, each is cut long by it, and stands in its opening', () => {
        const { find } = off({}, { bottom: { stock: six, press: '1/32"' } });
        const { back, box, why } = find('bottom-A-2');
        expect([back, box.east - box.west].map(printInches)).toEqual(['50 29/32"', '50 7/8"']);
        expect(whyText(why, back, tapeOf(settings()))).toBe(`coffer 4' 1 3/8" + 2 x side 3/4" + press 1/32" = 4' 2 29/32"`);
        expect(printInches(find('bottom-2').back)).toBe('180 17/32"');
    });
});

test('without a band everything runs to the walls, square', () => {
    const { pieces, joints, find } = off({ band: null, splices: 'where-said' });
    expect(pieces.some(piece => piece.part === 'band')).toBe(false);
    expect(joints.some(joint => joint.kind === 'band-corner')).toBe(false);
    expect([find('bottom-1'), find('side-A-1-north'), find('bottom-A-1')].map(({ back }) => printInches(back))).toEqual(['182"', '50 1/2"', '50 1/2"']);
    expect(find('side-A-1-north').box.west).toBe(0);
    expect(find('bottom-1').why.terms.map(term => term.what)).toEqual(['room']);
});

describe('residue', () => {
    const walls = { width: `18' 4 1/32"` };
    test('the outer coffers take it, and all that runs along them', () => {
        const { find } = off({ ...walls, residue: 'outer-coffers' });
        expect(['side-A-1-north', 'side-A-2-north', 'side-A-4-north'].map(id => [find(id).cutFace, find(id).cutBack].map(printInches))).toEqual([
            ['49 13/32"', '50 5/32"'], ['49 3/8"', '50 7/8"'], ['49 3/8"', '50 1/8"'],
        ]);
        expect(printInches(find('trim-1-north').cutBack)).toBe('49 13/32"');
    });
    test('the band takes it, and equal pieces stay equal', () => {
        const { find } = off({ ...walls, residue: 'band' });
        expect([1, 2, 3, 4].map(coffer => printInches(find(`trim-${coffer}-north`).cutBack))).toEqual(['49 3/8"', '49 3/8"', '49 3/8"', '49 3/8"']);
    });
});

test('hands: a rabbet on an upper edge is looked at upside down', () => {
    const hands = (edge: 'lower-back' | 'upper-back'): unknown[] => {
        const { find } = off({}, { sides: { stock: eight, rabbet: ['1/4"', '1/4"'], edge } });
        // the first bays, mitered at the east or south end, then the last, then one in the middle
        return ['side-A-1-south', 'side-A-1-north', 'side-1-1-west', 'side-1-1-east', 'side-A-4-south', 'side-1-3-west', 'side-A-2-south'].map(id => find(id).hand);
    };
    expect(hands('lower-back')).toEqual(['right', 'left', 'right', 'left', 'left', 'left', null]);
    expect(hands('upper-back')).toEqual(['left', 'right', 'left', 'right', 'right', 'right', null]);
});
test('without a rabbet a side with one miter fits either way round', () => {
    expect(off({}, { sides: { stock: eight } }).pieces.some(piece => piece.hand !== null)).toBe(false);
});

test('names are words of the language, made from the place alone', () => {
    expect(idOf('attic', 'spacer', { line: 'B', bay: 3, nth: 2 })).toBe('attic.spacer-B-3-2');
    expect([0, 25, 26].map(index => spliceLetter(index, 30))).toEqual(['a', 'z', 'aa']);
    const before = off().pieces, after = off({ length: `30'`, east: { coffers: 5 } }).pieces;
    // two more rows in the south: what was there keeps its name
    const names = new Set(after.map(piece => piece.id));
    const kept = before.filter(piece => piece.part !== 'bottom' && piece.part !== 'blocking' && piece.part !== 'band');
    expect(kept.filter(piece => !names.has(piece.id) && piece.part !== 'spacer').map(piece => piece.id)).toEqual([]);
    for (const { id } of before) expect(id).toMatch(/^parlor\.[a-z]+(-\w+)*$/);
});

test('what is narrower than its board is ripped, and says so first', () => {
    const { find } = off({}, { trim: { stock: six, rip: '2"' } });
    expect([find('trim-1-west').machining[0], find('blocking-2').work.some(({ kind }) => kind === 'rip')]).toEqual(['rip to 2"', false]);
});

describe('trim round a coffer', () => {
    // coffers of 49 3/8" by 57": miters at the ends of a piece take its thickness off its face at either end
    const around = (thickness: string): string[] => off({}, { trim: { stock: stock('thick', { thickness, width: '1 1/2"', lengths: ["16'"] }) } }).pieces
        .filter(({ part, coffer }) => part === 'trim' && coffer === 6).map(({ on, face }) => `${on} ${printInches(face)}`).sort();
    test('is none where the miters at its ends would meet before they come to the face', () => {
        const { pieces } = off(), [first] = pieces.filter(({ part, coffer, on }) => part === 'trim' && coffer === 6 && on === 'north');
        const long = first!.back, half = (ticks: number): string => `${ticks / 2 / ticksOf('1"')}"`;
        expect(around('3/4"')).toHaveLength(4);
        expect(around(half(long)).map(words => words.split(' ')[0])).toEqual(['east', 'west']);
        expect(around(half(long - 2 * ticksOf('1"'))).filter(words => words.startsWith('north'))).toEqual(['north 2"']);
    });
});

test('a corner names the piece that lies east-west before the one that lies north-south', () => {
    const { joints, pieces } = off(), lineOf = new Map(pieces.map(({ id, line }) => [id, line]));
    for (const { pieces: [level, upright], at } of joints.filter(({ kind }) => kind === 'corner')) {
        expect([lineOf.get(level), lineOf.get(upright)]).toEqual([expect.stringMatching(/^[A-Z]$/), expect.stringMatching(/^\d$/)]);
        expect(at).toMatch(/^crossing [A-Z]\d, /);
    }
});

describe('what is counted', () => {
    const counts = (words: RoomWords = {}, beam: ProfileWords = {}) => Object.fromEntries(off(words, beam).consumables.map(({ what, count, unit }) => [what, `${count} ${unit}`]));
    test('by stated rules, each with its basis', () => {
        expect(counts()).toEqual({
            '#10 biscuits': '24 pieces',
            // 3 at 180 1/2": 13 places; 8 at 50 1/8" and 50 7/8": 5 places; two screws in each
            '#8 x 2 1/2" screws, blocking': `${2 * (3 * 13 + 8 * 5)} pieces`,
            '1 1/4" pocket screws, spacers': '102 pieces',
            // along 16 sides at about 50": 6; along 18 at about 57": 6; 51 spacers, two nails from each of two sides
            '16 ga x 2" nails, sides': `${34 * 6 + 51 * 4} pieces`,
            // 8 at 49 5/8", 8 at 50 3/8": 8; 18 at 55 3/4" and 56 1/2": 8, and one more over 56"
            '18 ga x 1 1/4" nails, cleats': `${16 * 8 + 12 * 8 + 6 * 9} pieces`,
            '18 ga x 1 1/4" nails, bottoms': `${2 * (3 * 17 + 8 * 6)} pieces`,
            '16 ga x 2 1/2" nails, band': `${2 * (4 * 8 + 2 * 13)} pieces`,
            '18 ga x 2" nails, trim': `${24 * 6 + 24 * 6} pieces`,
            'wood glue': '6 fl oz', 'wood filler': '11 fl oz',
            // 300 mL run out as a round bead of 3/16" (4.7625 mm), 17.814 mm2 in section, are 16.84 m
            'painter\'s caulk': '11 tubes',
        });
        for (const { by, basis } of off().consumables) { expect(by.length).toBeGreaterThan(10); expect(basis).toContain('common practice, no source'); }
    });
    test('one row of screws in blocking up to 3" wide, two in wider', () => {
        const screws = (width: string): number => Number(Object.entries(counts({}, { blocking: { stock: stock('narrow', { thickness: '3/4"', width, lengths: ["16'"] }), screws: { gauge: 8, length: '2 1/2"', every: '16"' } } }))
            .find(([what]) => what.includes('screws, blocking'))![1].split(' ')[0]);
        const [three, more] = [screws('3"'), screws('3 1/32"')];
        expect(more).toBe(2 * three);
    });
    test('what the job does not say how to fasten is not counted', () => {
        const plain = counts(
            { band: { stock: eight } },
            { blocking: { stock: six }, sides: { stock: eight }, bottom: { stock: six }, spacers: null, cleats: null, trim: null },
        );
        expect(Object.keys(plain)).toEqual(['wood glue', 'painter\'s caulk']);
    });
    test('in metric where the job shows millimeters', () => {
        const metric = { ...settings(), show: said('millimeters' as const), cutTo: said(ticksOf('0.5 mm')) };
        const { consumables, find } = off({ job: metric, splices: 'on-crossings' });
        expect(consumables.find(({ what }) => what === 'wood glue')).toMatchObject({ unit: 'mL', by: expect.stringContaining('160 mL a square meter') });
        expect(find('side-A-2-north').machining).toEqual(['rabbet ~6.5 mm x ~6.5 mm on the lower back edge']);
        expect(find('side-A-2-north').cutBack % ticksOf('0.5 mm')).toBe(0);
    });
});

describe('against a cabinet', () => {
    const parts = ['blocking', 'side', 'cleat', 'bottom', 'band', 'trim'] as const;
    const { pieces, leftOut, joints } = off({ notComputed: [{ at: said(0).at, words: 'what is against it', spoils: { parts, wall: 'east' } }] });
    test('nothing that runs along its wall or ends there is in the list; all the rest is', () => {
        // coffers 4, 8 and 12 lie at the east wall, lines A and B end there, so do the bands north and south
        expect(new Set(leftOut.filter(({ part }) => part === 'band').map(({ on }) => on))).toEqual(new Set(['east', 'north', 'south']));
        expect([...new Set(leftOut.filter(({ part }) => part === 'trim').map(({ coffer }) => coffer))]).toEqual([4, 8, 12]);
        expect([...new Set(leftOut.filter(({ line }) => line !== null).map(({ line, bay }) => `${line}-${bay}`))].sort()).toEqual(['A-4', 'B-4']);
        expect(pieces.length + leftOut.length).toBe(off().pieces.length);
        // blocking, bottom, two sides and two cleats in each of two bays; three bands; four trims in each of three coffers
        expect(leftOut).toHaveLength(2 * 6 + 3 + 3 * 4);
    });
    test('no joint is told of a piece that is in no list, all others are', () => {
        const count = (kind: string): number => joints.filter(joint => joint.kind === kind).length;
        // of 12 butts two are in the last bays, of 24 corners four; of 48 of the trim those of coffers 4, 8 and 12; of the band the east and what it meets
        expect(['butt', 'corner', 'trim-corner', 'band-corner', 'band-splice'].map(count)).toEqual([10, 20, 36, 2, 0]);
        const listed = new Set(pieces.map(({ id }) => id));
        expect(joints).toEqual(off().joints.filter(joint => joint.pieces.every(id => listed.has(id))));
    });
});

// 20' less two bands of 3/4" and two beams of 7" are three coffers of 74 5/6": lines A and B stand at 79 1/12" and 160 11/12"; boards are 16' long
describe('splices', () => {
    const spliced = (words: RoomWords = {}) => off({ width: `9'`, length: `20'`, north: { coffers: 2 }, east: { coffers: 3 }, ...words }).joints
        .filter(({ kind }) => kind === 'splice' || kind === 'band-splice').map(({ kind, at, pieces, biscuits }) => [kind, at, ...pieces.map(id => id.slice('parlor.'.length)), biscuits?.count ?? 0]);
    test('are told by the line or the wall and where they stand on it', () => {
        expect(spliced()).toEqual([
            ['splice', 'line 1, on line A', 'bottom-1-a', 'bottom-1-b', 2],
            ['band-splice', 'east wall, on line A', 'band-east-a', 'band-east-b', 0], ['band-splice', 'west wall, on line A', 'band-west-a', 'band-west-b', 0],
        ]);
    });
    test('each by its own place where there are several', () => {
        expect(spliced({ lines: { 1: { splices: ['200"', '100"'] } } }).slice(0, 2)).toEqual([
            ['splice', 'line 1, in bay 2', 'bottom-1-a', 'bottom-1-b', 2], ['splice', 'line 1, in bay 3', 'bottom-1-b', 'bottom-1-c', 2],
        ]);
    });
});

test('a coffer in a sum is found at the words that divide its own direction', () => {
    const room = exampleRoom(), places = (spacing: NonNullable<typeof room.grid>['north']): unknown => spacing?.by === 'number' && spacing.coffers.at;
    const { pieces } = takeOff(layOut(room).ceiling!);
    const coffersOf = (ids: string): unknown[] => pieces.filter(({ id }) => id.startsWith(ids)).flatMap(({ why }) => why.terms.filter(({ what }) => what === 'coffer').map(({ at }) => at));
    const [across, down] = [coffersOf('parlor.side-A-'), coffersOf('parlor.side-1-')];
    expect([across.length > 0, down.length > 0, places(room.grid!.north)]).not.toContain(false);
    expect(across).toEqual(across.map(() => places(room.grid!.north)));
    expect(down).toEqual(down.map(() => places(room.grid!.east)));
});
