import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bottomHigh, bottomLow, channelLow } from '../../src/ceiling/bays.ts';
import { layOut } from '../../src/ceiling/layout.ts';
import { playOf } from '../../src/ceiling/section.ts';
import type { Ceiling, Line } from '../../src/ceiling/model.ts';
import type { Room } from '../../src/job/model.ts';
import { tooLongForBoards } from '../../src/rules/longer-than-the-board.ts';
import { sumOf } from '../../src/provenance/why.ts';
import type { Box, Piece, TakeOff } from '../../src/takeoff/model.ts';
import { takeOff } from '../../src/takeoff/take-off.ts';
import { areaOf, board, metAt, rectangle, scanLines, turned, type Shape } from '../support/plan-view.ts';
import { randomRooms } from '../support/random-rooms.ts';
import { runs } from '../support/full.ts';

/** Properties of the pieces of any ceiling. The rooms are random, and the same at every run. */
const RUNS = { seed: 41, numRuns: runs(160) };
interface Built { ceiling: Ceiling; off: TakeOff; press: number }

let tried = 0, built = 0;
/** Each random room is built for the first property that is asked of it; the next ones are asked of what it came to. null: it is not laid out. */
const known = new Map<string, Built | null>();
function forEveryCeiling(check: (built: Built) => void): void {
    fc.assert(fc.property(randomRooms, random => {
        tried++;
        const key = random[fc.toStringMethod](), made = known.get(key) ?? build(random);
        known.set(key, made);
        if (!made) return;
        built++;
        check(made);
    }), RUNS);
}
function build({ room, press }: { readonly room: Room; readonly press: number }): Built | null {
    const { ceiling, troubles } = layOut(room);
    // a room about which everything is said is laid out, or it is said why not
    if (!ceiling) expect(troubles.length).toBeGreaterThan(0);
    return ceiling ? { ceiling, off: takeOff(ceiling), press } : null;
}
const of = ({ off }: Built, ...parts: Piece['part'][]): Piece[] => off.pieces.filter(piece => parts.includes(piece.part));
const runsEast = (piece: Piece): boolean => !/\d/.test(piece.line ?? 'A');
const extent = ({ box }: Piece, alongX: boolean): number => alongX ? box.east - box.west : box.south - box.north;

/**
 * What one looks up at: band, sides, bottoms and the open coffers; or, a little higher, blocking instead of bottoms. Where bottoms lie under
 * the sides or are let into them, and where a box is wider than its blocking, the channel between the sides is filled.
 */
function seenFromBelow(all: Built, middle: 'bottom' | 'blocking'): Shape[] {
    return [
        ...of(all, 'band').map(piece => rectangle(piece.id, piece.box)),
        ...of(all, middle).map(piece => inChannel(all, piece)),
        ...of(all, 'side').map(piece => board(piece, piece.on!)),
        ...all.ceiling.coffers.map(coffer => rectangle(`coffer ${coffer.number}`, coffer)),
    ];
}
function inChannel({ ceiling }: Built, piece: Piece): Shape {
    const widened = (line: Line): number => line.section.innerWidth.ticks - (piece.part === 'bottom' ? line.section.bottomWidth.ticks + fit(line) : line.section.blockingWidth.ticks);
    const line = ceiling.lines.find(one => one.name === piece.line)!, aside = widened(line) / 2;
    const crossing = (line.runs === 'east-west' ? ceiling.across : ceiling.down).lines;
    // at an end between others: what those are wider or narrower than their channels
    const [before, after] = piece.bay === null
        ? [0, 0]
        : [crossing[piece.bay - 2], crossing[piece.bay - 1]].map(other => (other ? 0 - widened(other) / 2 : 0)) as [number, number];
    const { west, east, north, south } = piece.box;
    const to = line.runs === 'east-west' ? { west: west - before, east: east + after, north: north - aside, south: south + aside }
        : { west: west - aside, east: east + aside, north: north - before, south: south + after };
    return rectangle(piece.id, { ...piece.box, ...to });
}
function isLetIn({ ceiling }: Built, { line }: Piece): boolean {
    return ceiling.lines.find(one => one.name === line)!.section.profile.bottom!.place.value === 'in-rabbets';
}
const total = (shapes: readonly Shape[]): number => shapes.reduce((sum, shape) => sum + areaOf(shape), 0);
const channelHigh = (line: Line): number => line.high - line.section.sideThickness.ticks;
const fit = (line: Line): number => playOf(line.section);
/** Blocking that is cut between other lines is 1/16" short, or 1.5 mm; in the plan that leaves a gap as wide as the channel, which `inChannel` fills. */
const relief = ({ ceiling: { room } }: Built): number => room.job.show.value === 'millimeters' ? 960 : 1016;
function reliefPieces(all: Built): Piece[] {
    const meetsOthers = (piece: Piece): boolean => (runsEast(piece) ? all.ceiling.across : all.ceiling.down).lines.length > 0;
    return of(all, 'blocking').filter(piece => piece.bay !== null && meetsOthers(piece));
}
const reliefs = (all: Built, { name }: Line): number => reliefPieces(all).filter(piece => piece.line === name).length * relief(all);
function reliefArea(all: Built): number {
    const inner = (piece: Piece): number => all.ceiling.lines.find(line => line.name === piece.line)!.section.innerWidth.ticks;
    return reliefPieces(all).reduce((sum, piece) => sum + relief(all) * inner(piece), 0);
}

/** Area of the play beside the bottoms, from the section's figures alone. */
function gapArea({ ceiling: { lines, crossings, across, down } }: Built): number {
    let area = 0;
    for (const line of lines) {
        if (line.through) { area += fit(line) * (line.end - line.start); continue; }
        const crossing = (line.runs === 'east-west' ? across : down).lines;
        const channels = crossing.reduce((sum, other) => sum + channelHigh(other) - channelLow(other), 0);
        area += fit(line) * (line.end - line.start - channels);
    }
    for (const { ns, ew } of crossings) {
        const [on, cut] = ns.through ? [ns, ew] : [ew, ns];
        area -= fit(on) * (cut.section.innerWidth.ticks - fit(cut));    // the pieces cut between cross the play to the one they butt against
    }
    return area;
}

describe('the pieces tile the room', () => {
    test('plan areas: band, sides, bottoms, the play beside them and the coffers are the room', () => {
        forEveryCeiling(all => {
            expect(total(seenFromBelow(all, 'bottom')) + gapArea(all)).toBe(all.ceiling.width * all.ceiling.length);
            expect(total(seenFromBelow(all, 'blocking')) + reliefArea(all)).toBe(all.ceiling.width * all.ceiling.length);
        });
    });

    test('along any straight line, in both directions, parts and play follow each other without overlap from wall to wall', () => {
        forEveryCeiling(all => {
            const { ceiling } = all;
            const shapes = seenFromBelow(all, 'bottom');
            follow(shapes, ceiling.width, ceiling.across.lines, ceiling.down.lines);
            follow(shapes.map(turned), ceiling.length, ceiling.down.lines, ceiling.across.lines);
        });
    });

    test('nothing else is in the place of something else', () => {
        forEveryCeiling(all => {
            const pieces = of(all, 'blocking', 'spacer', 'cleat', 'bottom', 'side', 'band');
            const corners = (a: Piece, b: Piece): boolean => a.part === 'side' && b.part === 'side';   // mitered: their boxes cross, they do not
            // a bottom that is let into its sides stands in their boxes, where their rabbets are
            const letIn = (a: Piece, b: Piece): boolean => [a, b].some(piece => piece.part === 'side') && [a, b].some(piece => piece.part === 'bottom' && isLetIn(all, piece));
            const wrong = overlapping(pieces).filter(([a, b]) => !corners(a, b) && !letIn(a, b)).map(([a, b]) => `${a.id} ${b.id}`);
            expect(wrong).toEqual([]);
            const trims = of(all, 'trim');
            const inCoffers = overlapping([...trims, ...pieces]).filter(([a, b]) => (a.part === 'trim') !== (b.part === 'trim'));
            expect(inCoffers).toEqual([]);
        });
    });
});

/** Where the play beside a bottom ends, as if it stood between the sides. */
const playLow = (line: Line): number =>
    channelLow(line) + Math.max(0, bottomLow(line) - channelLow(line) + (line.section.bottomWidth.ticks + fit(line) - line.section.innerWidth.ticks) / 2);
const playHigh = (line: Line): number =>
    channelHigh(line) - Math.max(0, channelHigh(line) - bottomHigh(line) + (line.section.bottomWidth.ticks + fit(line) - line.section.innerWidth.ticks) / 2);

/** Holds one direction: every uncovered stretch is the play beside a bottom, and its length is that play's. */
function follow(shapes: readonly Shape[], room: number, crossed: readonly Line[], along: readonly Line[]): void {
    const near = 1e-6;
    const strips = crossed.flatMap(line => [[channelLow(line), playLow(line)], [playHigh(line), channelHigh(line)]] as const);
    for (const y of scanLines(shapes)) {
        const inPlay = along.some(line => (y > channelLow(line) && y < playLow(line)) || (y > playHigh(line) && y < channelHigh(line)));
        let at = 0;
        for (const { id, from, to } of [...metAt(shapes, y), { id: 'wall', from: room, to: room }]) {
            if (Math.abs(from - at) > near) {
                const open = from > at && (inPlay || strips.some(([low, high]) => Math.abs(low - at) < near && Math.abs(high - from) < near));
                if (!open) throw new Error(`${id} begins at ${from}, and what is before it ends at ${at} (line at ${y})`);
            }
            at = Math.max(at, to);
        }
        expect(Math.abs(at - room)).toBeLessThan(near);
    }
}

function overlapping(pieces: readonly Piece[]): [Piece, Piece][] {
    const apart = (a: Box, b: Box): boolean => a.east <= b.west || b.east <= a.west
        || a.south <= b.north || b.south <= a.north || a.foot <= b.top || b.foot <= a.top;
    const found: [Piece, Piece][] = [];
    pieces.forEach((a, i) => { for (let j = i + 1; j < pieces.length; j++) if (!apart(a.box, pieces[j]!.box)) found.push([a, pieces[j]!]); });
    return found;
}

describe('the sum rule, by the lengths of the pieces', () => {
    test('bottoms and blocking of every line, with what crosses them and the band, less the presses, are the room', () => {
        forEveryCeiling(all => {
            const { ceiling, press } = all;
            for (const line of ceiling.lines) {
                const alongX = line.runs === 'east-west';
                const room = alongX ? ceiling.width : ceiling.length, band = 2 * (ceiling.band?.thickness.ticks ?? 0);
                const crossed = line.through ? [] : (alongX ? ceiling.across : ceiling.down).lines;
                const mine = (part: Piece['part']): Piece[] => of(all, part).filter(piece => piece.line === line.name);
                const lengths = (part: Piece['part']): number => mine(part).reduce((sum, piece) => sum + piece.back, 0);
                const sum = (width: (other: Line) => number): number => crossed.reduce((sum, other) => sum + width(other), 0);
                expect(lengths('bottom') - press * mine('bottom').length + sum(other => other.section.bottomWidth.ticks) + band).toBe(room);
                expect(lengths('blocking') + reliefs(all, line) + sum(other => other.section.blockingWidth.ticks) + band).toBe(room);
            }
        });
    });

    test('in the corners of a coffer mitered sides show no more than the coffer, and of two butted ones one runs past', () => {
        forEveryCeiling(({ ceiling, off }) => {
            const byId = new Map(off.pieces.map(piece => [piece.id, piece]));
            const past = (piece: Piece): number => {
                const run = runsEast(piece) ? ceiling.across : ceiling.down;
                return piece.face - run.coffers[piece.bay! - 1]!;
            };
            let runningPast = 0;
            for (const { kind, pieces } of off.joints) {
                if (kind !== 'corner') continue;
                const [a, b] = pieces.map(id => byId.get(id)!) as [Piece, Piece];
                if (a.ends.some(end => end.cut === 'miter')) expect([past(a), past(b)]).toEqual([0, 0]);
                else expect(past(a) > 0).toBe(!(past(b) > 0));
                runningPast += past(a) > 0 ? b.thickness : past(b) > 0 ? a.thickness : 0;
            }
            expect(of({ ceiling, off, press: 0 }, 'side').reduce((sum, side) => sum + past(side), 0)).toBe(runningPast);
        });
    });
});

describe('every piece', () => {
    test('has a name of its own, and a why that adds up to its length', () => {
        forEveryCeiling(({ off }) => {
            expect(new Set(off.pieces.map(piece => piece.id)).size).toBe(off.pieces.length);
            for (const piece of off.pieces) expect(`${piece.id} ${sumOf(piece.why)}`).toBe(`${piece.id} ${piece.back}`);
        });
    });

    test('is longer at the back by what its miters take, and fills its box', () => {
        forEveryCeiling(all => {
            for (const piece of all.off.pieces) {
                const { part, ends, back, face, thickness, box } = piece;
                const mitered = ends.reduce((sum, end) => sum + (end.cut === 'miter' ? thickness * Math.tan(end.degrees! * Math.PI / 180) : 0), 0);
                expect(Math.abs(back - face - mitered)).toBeLessThan(1e-3);
                const alongX = piece.line === null ? piece.on === 'north' || piece.on === 'south' : runsEast(piece);
                const along = part === 'spacer' ? box.foot - box.top : extent(piece, alongX);
                expect(along).toBe(part === 'bottom' ? back - all.press : back);
                const across = part === 'spacer' || part === 'blocking' || part === 'bottom' ? piece.width : thickness;
                expect(extent(piece, !alongX)).toBe(across);
                if (part !== 'spacer') expect(box.foot - box.top).toBe(part === 'blocking' || part === 'bottom' ? thickness : piece.width);
            }
        });
    });

    test('has a hand exactly where it is rabbeted and one end is mitered', () => {
        forEveryCeiling(all => {
            for (const { part, machining, ends, hand } of all.off.pieces) {
                const rabbeted = machining.some(words => words.startsWith('rabbet'));
                const miters = ends.filter(end => end.cut === 'miter').length;
                expect(hand !== null).toBe(part === 'side' && rabbeted && miters === 1);
            }
        });
    });

    test('is cut to the tape: equal pieces equal, never more than the coffers are cut to, and less by under a step', () => {
        forEveryCeiling(({ ceiling, off }) => {
            const step = ceiling.room.job.cutTo.value;
            const cuts = new Map<string, string>();
            for (const piece of off.pieces) {
                const run = piece.part === 'trim' ? (piece.on === 'north' || piece.on === 'south' ? ceiling.across : ceiling.down) : runsEast(piece) ? ceiling.across : ceiling.down;
                const coffer = piece.coffer === null ? undefined : ceiling.coffers[piece.coffer - 1];
                const bay = piece.part === 'trim' ? (run === ceiling.across ? (coffer!.number - 1) % run.coffers.length + 1 : Math.floor((coffer!.number - 1) / ceiling.across.coffers.length) + 1) : piece.part === 'spacer' ? null : piece.bay;
                const shift = bay === null ? 0 : run.residue.cutCoffers[bay - 1]! - run.coffers[bay - 1]!;
                expect(piece.cutBack % step).toBe(0);
                expect(piece.cutFace % step).toBe(0);
                for (const off of [piece.cutBack - piece.back - shift, piece.cutFace - piece.face - shift]) {
                    expect(off).toBeLessThanOrEqual(1);                                         // the play beside a bottom may be an odd tick
                    expect(off).toBeGreaterThan(-step - 1);
                }
                // the same part of the same beams, in coffers cut alike: one setting of the stop
                const reaches = piece.ends.map((end, i) => `${end.cut}${bay === null ? piece.back : i === 0 ? Math.min(bay - 1, 1) : Math.min(run.coffers.length - bay, 1)}`);
                if (ceiling.room.lines.length > 0 && bay !== null) continue;                  // crossing lines may differ
                const key = [piece.part, piece.line === null, run.along, bay === null ? '' : run.residue.cutCoffers[bay - 1], reaches.sort()].join();
                expect(`${key} ${cuts.get(key) ?? `${piece.cutFace} ${piece.cutBack}`}`).toBe(`${key} ${piece.cutFace} ${piece.cutBack}`);
                cuts.set(key, `${piece.cutFace} ${piece.cutBack}`);
            }
        });
    });

    test('is no longer than the boards, or it is said which', () => {
        forEveryCeiling(({ ceiling, off }) => {
            const told = new Set(tooLongForBoards(off.pieces, ceiling.room.job).map(({ piece }) => piece.part));
            for (const { part, stock, back } of off.pieces) {
                const longest = Math.max(...stock.lengths.map(length => length.value)) - ceiling.room.job.endTrim.value;
                if (back > longest) expect([...told]).toContain(part);
            }
        });
    });
});

test('joints: two butts and four corners a crossing, four trim corners a coffer, four corners of the band', () => {
    forEveryCeiling(({ ceiling, off }) => {
        const count = (kind: string): number => off.joints.filter(joint => joint.kind === kind).length;
        const trimmed = off.pieces.some(piece => piece.part === 'trim');
        expect(count('butt')).toBe(2 * ceiling.crossings.length);
        expect(count('corner')).toBe(4 * ceiling.crossings.length);
        expect(count('trim-corner')).toBe(trimmed ? 4 * ceiling.coffers.length : 0);
        expect(count('band-corner')).toBe(ceiling.band ? 4 : 0);
        expect(count('splice')).toBe(ceiling.lines.reduce((sum, line) => sum + line.splices.length, 0));
        const ids = new Set(off.pieces.map(piece => piece.id));
        for (const joint of off.joints) for (const id of joint.pieces) expect(ids.has(id)).toBe(true);
        for (const { at, pieces: [a, b] } of off.joints) expect(`${at}: ${touch(off, a, b)}`).toBe(`${at}: true`);
    });
});

/** Two pieces of a joint stand against each other, or cross in their corner. */
function touch({ pieces }: TakeOff, a: string, b: string): boolean {
    const [one, other] = [a, b].map(id => pieces.find(piece => piece.id === id)!.box) as [Box, Box];
    return one.west <= other.east && other.west <= one.east && one.north <= other.south && other.north <= one.south
        && one.top < other.foot && other.top < one.foot;
}

test('most of the random rooms could be laid out', () => {
    expect(built).toBeGreaterThan(tried * 0.6);
    expect(tried).toBeGreaterThan(runs(1000));
});
