import { expect, test } from 'vitest';
import type { Ceiling, Layout, Line } from '../../src/ceiling/model.ts';
import type { Clash, Fault, Miscount, Misfit } from '../../src/dryfit/model.ts';
import { inches } from '../../src/quantity/rational.ts';
import { cofferWords } from '../../src/rules/coffer-off-size.ts';
import { isRounded, jointWords } from '../../src/rules/joint-opens.ts';
import { notSupportedLayout } from '../../src/rules/not-supported-layout.ts';
import { countWords, isMiscount } from '../../src/rules/piece-miscounted.ts';
import { overlapWords } from '../../src/rules/pieces-overlap.ts';
import { explainRule } from '../../src/rules/reference.ts';
import { ruleNamed } from '../../src/rules/index.ts';
import type { Found } from '../../src/rules/rule.ts';
import { bottomsNamed, remaining, turnedWords, turning } from '../../src/rules/support/closing-words.ts';
import { FAULT_OF_THE_LIST } from '../../src/rules/support/fit-words.ts';
import { placeSaidOf } from '../../src/rules/support/line-places.ts';
import { rowFound } from '../../src/rules/support/row-words.ts';
import { sizesOf } from '../../src/rules/support/words.ts';
import { tooManyCoffers } from '../../src/rules/too-many-coffers.ts';
import { undersideWords } from '../../src/rules/underside-not-flush.ts';
import { given, job, nowhere, piece, stock } from '../cutting/samples.ts';

/** What is said of lists that are wrong: no job makes them, so faults are made up, one of each kind. */
const side = piece('den.side-A-1-north', stock(), inches(50), { part: 'side' }), other = piece('den.side-1-2-west', stock(), inches(50), { part: 'side' });
const size = sizesOf(job());
const misfit = (clashes: readonly Partial<Clash>[], alike = 0): Misfit =>
    ({ kind: 'misfit', piece: side, causes: [], clashes: clashes.map(clash => ({ other, ticks: 0, ...clash })) as Clash[], alike: Array.from({ length: alike }, () => other) });

test('a row that does not add up: by how much, which way, and where', () => {
    const row = (sum: string, of: Partial<typeof side>) => rowFound({ part: 'side', pieces: [{ ...side, ...of }], sum: inches(sum), room: inches(113), longer: 0, shorter: 0 }, job());
    expect(row('113 1/8', { line: 'A', on: 'north' })).toEqual({
        at: side.source, severity: 'error', message: `The sides of line A, north side, with what stands between the pieces come to 9' 5 1/8", and there are 9' 5": 1/8" too long. ${FAULT_OF_THE_LIST}`,
    });
    expect(row('112 3/4', { line: '1', on: null }).message).toContain('The sides of line 1 with what stands between the pieces come to 9\' 4 3/4", and there are 9\' 5": 1/4" too short.');
    expect(row('112 3/4', { line: null, on: 'north' }).message).toContain('The sides on the north wall with');
});

test('joints that do not close, each kind in its words', () => {
    const words = (...clashes: Partial<Clash>[]): string => jointWords(misfit(clashes), size);
    expect(words({ kind: 'apart', ticks: inches('1/8') })).toBe('Side A-1-north does not meet side 1-2-west (1/8" open). The list joins them, but they do not touch where they stand.');
    expect(words({ kind: 'gap', ticks: inches('1/8') })).toContain('side 1-2-west (the gap is 1/8" wider than planned).');
    expect(words({ kind: 'area', touches: 1.256, wanted: 4.125 })).toContain('(over 1.26 square inches instead of 4.13).');
    expect([words({ kind: 'area', wanted: 4 }), words({ kind: 'area', touches: 4 })].map(each => each.includes('side 1-2-west (nowhere).'))).toEqual([true, true]);
    const tape = 'Their lengths fall between the marks of the tape: use a finer `cut-to`.';
    expect([words({ kind: 'rounded', ticks: inches('1/32') }), words({ kind: 'rounded', ticks: -inches('1/32') })]).toEqual([
        `Side A-1-north does not meet side 1-2-west (1/32" open). ${tape}`, `Side A-1-north does not meet side 1-2-west (1/32" too tight). ${tape}`,
    ]);
    expect(words()).toBe('Side A-1-north can be cut in two ways, and fits in one. ');
    expect([misfit([]), misfit([{ kind: 'rounded' }]), misfit([{ kind: 'rounded' }, { kind: 'apart' }])].map(isRounded)).toEqual([false, true, false]);
});

test('pieces in each other, undersides and coffers that are off', () => {
    expect(overlapWords(misfit([{ kind: 'overlap', ticks: inches('1/8') }, { kind: 'apart', ticks: inches(2) }], 1), size))
        .toBe('Side A-1-north runs into side 1-2-west by 1/8". The list follows what is written: change one of the two parts. The same goes for 1 other side.');
    const off = (ticks: number, alike: number): string => undersideWords({ kind: 'underside', piece: side, ticks, alike: Array.from({ length: alike }, () => other) }, size);
    expect([off(inches('1/8'), 0), off(-inches('1/8'), 1), off(-1016, 2)]).toEqual([
        'Side A-1-north ends 1/8" above the undersides of the beams, where its neighbors end.',
        'Side A-1-north ends 1/8" below the undersides of the beams, where its neighbors end. So does 1 other side.',
        'Side A-1-north ends 1/16" below the undersides of the beams, where its neighbors end. So do 2 other sides.',
    ]);
    const coffer = (planned: boolean, alike: readonly number[]): string =>
        cofferWords({ kind: 'coffer', coffer: 3, along: 'east-west', is: inches(47), wanted: inches(48), planned, pieces: [], alike }, job());
    expect(coffer(false, [])).toBe(`Coffer 3 comes out 3' 11" along the north wall, but should be 4'. ${FAULT_OF_THE_LIST}`);
    expect(coffer(true, [4])).toBe('Coffer 3 comes out 3\' 11" along the north wall, but is laid out at 4\'. The same goes for 1 other. Lengths are cut to 1/32": use a finer `cut-to`, or set the lines to its marks.');
});

test('a place without its piece, a piece twice, a piece without a place', () => {
    const words = (of: Partial<Miscount>): string => countWords({ kind: 'missing', id: 'den.trim-1-north', part: 'trim', piece: undefined, count: 0, noRoom: false, alike: [], ...of });
    const names = ['den.trim-1-south', 'den.trim-1-east', 'den.trim-1-west'];
    expect((['missing', 'doubled', 'no-place', 'misfit', 'underside', 'coffer'] as const).map(kind => isMiscount({ kind } as Fault))).toEqual([true, true, true, false, false, false]);
    expect(words({})).toBe(`Trim 1-north is missing in the cut list: the layout has a place for it. ${FAULT_OF_THE_LIST}`);
    expect(words({ alike: names.slice(0, 2), noRoom: true })).toBe('Trim 1-north, trim 1-south and trim 1-east are missing in the cut list: the layout has a place for them. '
        + 'Between lines that stand so close there is no room for any: set them farther apart.');
    expect(words({ alike: names })).toContain('Trim 1-north, trim 1-south and 2 other trims are missing');
    expect(words({ kind: 'doubled', count: 2 })).toBe(`Trim 1-north is in the cut list 2 times, and the layout has one place for it. ${FAULT_OF_THE_LIST}`);
    expect(words({ kind: 'no-place', count: 1 })).toBe(`Trim 1-north is in the cut list, and the layout has no place for it. ${FAULT_OF_THE_LIST}`);
});

test('bottoms by their lines, crossings that are turned, and what remains', () => {
    const bottom = (line: string | null, bay: number | null, on: 'north' | null = null) => piece(`den.bottom-${line ?? on!}-${bay ?? ''}`, stock(), 1, { part: 'bottom', line, bay, on });
    expect(bottomsNamed([bottom('A', 2), bottom('1', null), bottom('A', 3), bottom('B', 1), bottom(null, null, 'north')]))
        .toBe('line A, bays 2 and 3, line 1, line B, bay 1 and the half beam along the north wall');
    const turned = [['A', 'A2'], ['1', 'B1'], ['A', 'A3']].map(([through, crossing]) => ({ through: through!, crossing: crossing! }));
    expect(turnedWords(turned as unknown as Parameters<typeof turnedWords>[0])).toBe('line A through at A2 and A3 and line 1 at B1');
    expect([remaining(0), remaining(1), remaining(3)]).toEqual(['no closing piece', '1 closing piece', '3 closing pieces']);
});

// in a room of 154" x 113" a beam of 5" whose low face is at 48" has its center at 50 1/2", and 103 1/2" from the other side
test('the words that say where a line stands, and which way moving it to the east or south takes them', () => {
    const section = { innerWidth: { ticks: inches('3 1/2') }, sideThickness: { ticks: inches('3/4') } };
    const said = (runs: Line['runs'], room: unknown): [number, number] | undefined => {
        const found = placeSaidOf({ name: '1', runs, low: inches(48), section } as unknown as Line, { room: { lines: [], ...room as object }, width: inches(154), length: inches(113) } as unknown as Ceiling);
        return found && [found.given.value, found.sign];
    };
    const lines = (...centers: string[]) => ({ by: 'lines', centers: centers.map(center => given(inches(center))) });
    expect(said('north-south', { grid: { north: lines('20', '50 1/2') } })).toEqual([inches('50 1/2'), 1]);
    expect(said('north-south', { grid: { north: lines('103 1/2') } })).toEqual([inches('103 1/2'), -1]);
    // the center of one that runs east-west is 62 1/2" from the south
    expect(said('east-west', { grid: { north: lines('50 1/2'), east: lines('62 1/2') } })).toEqual([inches('62 1/2'), -1]);
    // where nobody says it, or in other figures, or by its coffers: nothing
    expect([said('north-south', { grid: { north: lines('50') } }), said('north-south', { grid: {} }), said('north-south', { grid: { north: { by: 'number', coffers: given(3) } } })]).toEqual([undefined, undefined, undefined]);
    // what is said of the line itself goes before the grid's, the last of it; a line of another name says nothing
    const own = (name: string, at: string) => ({ name, place: { by: given(inches(at)) } });
    expect(said('north-south', { grid: { north: lines('50 1/2') }, lines: [own('1', '50 1/2'), own('1', '103 1/2'), own('2', '50 1/2')] })).toEqual([inches('103 1/2'), -1]);
    expect(said('north-south', { grid: { north: lines('50 1/2') }, lines: [own('1', '40')] })).toBeUndefined();
});

test('more than is laid out in one file: of its rooms, or of what its alternates make', () => {
    const said = (of: 'rooms' | 'alternates'): string[] => {
        const found: Found[] = [];
        tooManyCoffers.check.room!({ layout: { troubles: [{ kind: 'too-much-in-file', of, what: 'coffers', count: 420, most: 400, at: nowhere }] } as unknown as Layout, job: job(), pieces: () => [] }, one => found.push(one));
        return found.map(({ message }) => message);
    };
    expect(said('rooms')).toEqual(['With this one, the rooms of this file have 420 coffers, and 400 is the limit: this room is not laid out. Split the file into files that use each other.']);
    expect(said('alternates')).toEqual(['With this one, the rooms that alternates of this file change have 420 coffers, and 400 is the limit: this room is not laid out. Say some of the alternates in another file.']);
});

test('the text of crossings that are turned: where the room has a block of its own in its file', () => {
    const body = { ...nowhere, range: { start: { line: 2, character: 9 }, end: { line: 8, character: 1 } } }, turned = [{ crossing: 'A2', through: 'A' }] as unknown as Parameters<typeof turning>[0];
    const written = (of: object) => turning(turned, { at: nowhere, ...of } as Parameters<typeof turning>[1])?.map(({ range: { start }, text }) => `${start.line}:${start.character} ${text}`);
    expect(written({ body })).toEqual(['8:0   crossing A2 { through A }\n']);
    expect(written({ body: { ...body, range: { ...body.range, end: { line: 8, character: 4 } } } })).toEqual(['8:3 \n  crossing A2 { through A }\n']);
    expect(written({ body: { ...body, range: { ...body.range, end: { line: 2, character: 40 } } } })).toEqual(['2:39 \n  crossing A2 { through A }\n']);
    expect([written({}), written({ body: { ...body, uri: 'file:///other.coffer' } })]).toEqual([undefined, undefined]);
    const through = (of: object) => [{ crossing: 'A2', through: '2', spec: { through: { ...given('A'), ...of } } }] as unknown as Parameters<typeof turning>[0];
    const replaced = (of: object) => turning(through(of), { at: nowhere } as Parameters<typeof turning>[1])?.map(({ text }) => text);
    expect([replaced({}), replaced({ said: false }), replaced({ via: [nowhere] }), replaced({ via: [] })]).toEqual([['2'], undefined, undefined, ['2']]);
});

test('the mended lines of an example: what is between the lines that stay, or that something was taken away', () => {
    const mended = (wrong: string, right: string): string => /Fixed:\n\n(.*)\n\nWhere the figures/s.exec(explainRule({ ...ruleNamed('headroom')!, wrong, right }))![1]!;
    expect(mended('a\nb\nc\nd\n', 'a\nB\nC\nd\n')).toBe('    B\n    C');
    expect(mended('a\nb\nb\nc\n', 'a\nb\nc\n')).toBe('      // nothing there');
    expect(mended('a\nb\n', 'a\nb\nc\n')).toBe('    c');
    expect(mended('a\nb\n', 'x\na\nb\n')).toBe('    x');
    expect(mended('a\na\n', 'a\na\na\n')).toBe('    a');
});

// what nothing is computed from makes every figure of the beam wrong; one place of a profile is told
test('a profile that says what is not computed is told where it says it, of the grid and of a line', () => {
    const at = (line: number) => ({ ...nowhere, range: { start: { line, character: 0 }, end: { line, character: 5 } } });
    const said = (places: readonly number[]) => ({ value: { notComputed: places.map(at) } }), found: Found[] = [];
    const room = { grid: { beams: said([3, 4]) }, lines: [{ beams: said([7]) }, { beams: said([]) }, {}] };
    notSupportedLayout.check.room!({ layout: { room, troubles: [] } as unknown as Layout, job: job(), pieces: () => [] }, one => found.push(one));
    expect(found).toEqual([at(3), at(7)].map(place => ({ at: place, message: 'Not computed yet: what this part does to the beam. What can be computed: the beam without it.' })));
});

test('how far off on the plan: what no rule has at the next mark of the tape above, and never nothing', () => {
    expect(['1/64', '1 5/6', '2 1/4'].map(text => size.off(text === '1 5/6' ? Math.round(16256 * 11 / 6) : inches(text)))).toEqual(['1/64"', '1 27/32"', '2 1/4"']);
    expect(size.off(1)).toBe('1/32"');
});
