import { arrangedOf } from '../../src/ceiling/plan.ts';
import type { Ceiling } from '../../src/ceiling/model.ts';
import type { Finding } from '../../src/findings/finding.ts';
import { dryFit } from '../../src/dryfit/dry-fit.ts';
import { readFile } from '../../src/language/read-file.ts';
import { inspect, takeOffOf } from '../../src/pipeline/inspect.ts';
import { sumOf } from '../../src/provenance/why.ts';
import type { Piece, TakeOff } from '../../src/takeoff/model.ts';
import { gapInCover, shoelace, type Corners, type Cover } from '../arrangement/cover.ts';
import { TestWorkspace } from '../support/workspace.ts';
import { YARD, type RandomCeiling } from './random-ceilings.ts';

/** A house with one room after the other in it, each looked at from its text to the dry fit. */
export class CeilingHouse {
    private constructor(private readonly workspace: TestWorkspace) {}

    static async open(yard = YARD): Promise<CeilingHouse> {
        return new CeilingHouse(await TestWorkspace.open({ 'yard.coffer': yard, 'room.coffer': 'edition 1\n' }));
    }

    /** `refused`: what was said instead of a ceiling. Throws where something does not hold. */
    async look({ text }: RandomCeiling): Promise<{ readonly ceiling?: Ceiling; readonly refused: readonly string[] }> {
        await this.workspace.edit({ 'room.coffer': text });
        const document = this.workspace.document('room.coffer'), { findings, layouts } = inspect(readFile(document));
        const said = this.workspace.published('room.coffer').filter(({ rule }) => !rule.startsWith('unused'));
        const layout = layouts[0], broken = findings.find(({ rule }) => rule === 'internal-fault');
        if (broken) throw new Error(broken.message);
        if (!layout?.ceiling || layout.troubles.length > 0) {
            // each says where
            const told = [...said.map(({ rule }) => rule), ...findings.filter(({ severity, at }) => severity === 'error' && at.range.end.line > 0).map(({ rule }) => rule)];
            if (told.length === 0) throw new Error(`No ceiling, and nothing is told: ${JSON.stringify(layout?.troubles)}`);
            return { refused: told };
        }
        // what is told of these stands at the head of every list: half beams too narrow for their cleats, moldings of which there is too little to be cut
        const isTold = ({ rule, message }: Finding): boolean => rule === 'cleats-meet-in-half-beam' || rule === 'part-vanishes' && message.includes('moldings');
        const told = findings.find(isTold);
        if (told) return { refused: [told.rule] };
        const wrong = wrongIn(layout.ceiling);
        if (wrong !== undefined) throw new Error(wrong);
        return { ceiling: layout.ceiling, refused: [] };
    }
}

/** The first thing that does not hold of a ceiling that was laid out. */
export function wrongIn(ceiling: Ceiling, off: TakeOff = takeOffOf(ceiling)): string | undefined {
    const askew = !ceiling.square;
    const twice = off.pieces.find(({ id }, i) => off.pieces.findIndex(other => other.id === id) !== i);
    if (twice) return `two pieces are called ${twice.id}`;
    for (const { id, why, back, face, overall } of off.pieces) {
        if (Math.abs(sumOf(why) - back) > (askew ? 1 : 0)) return `the why of ${id} comes to ${sumOf(why)} and its back is ${back}`;
        if (!(face > 0 && back > 0 && overall >= Math.max(face, back) - 1)) return `${id} has no length: ${face}, ${back}, ${overall}`;
    }
    const parts: Cover[] = [
        ...off.pieces.filter(({ part }) => part === 'side' || part === 'band' || part === 'bottom' || part === 'timber').map(piece => ({ name: piece.id, corners: piece.corners })),
        ...arrangedOf(ceiling).exact.coffers.flatMap(({ number, outline }) => [{ name: `coffer ${number}`, corners: outline }]),
    ];
    const holes = arrangedOf(ceiling).exact.coffers.flatMap(({ holeOutlines }) => holeOutlines);
    const room: Corners = ceiling.walls.map(({ from }) => from);
    if (!bottomsFill(ceiling)) parts.length = 0;
    if (parts.length > 0 && holes.length === 0 && !askew) {
        const gap = gapInCover(room, parts, []);
        if (gap !== undefined) return `cover: ${gap}`;
    }
    const wrong = parts.length > 0 ? uncovered(room, parts, holes) : undefined;
    if (wrong !== undefined) return wrong;
    const panels = off.pieces.filter(({ part }) => part === 'panel'), open = ceiling.beams?.profile.back?.gap.value === 0;
    const cover = panels.reduce((sum, { outline, corners }) => sum + Math.abs(shoelace(outline ?? corners)), 0);
    const short = open && cover > 0 ? shoelace(room) - cover : 0, rounded = panels.length * 4 * Math.max(ceiling.width, ceiling.length);
    if (short < -rounded || short > rounded + 2 * besideWalls(off.pieces, room)) return `panels leave ${short / 2 / INCH ** 2} square inches of the room`;
    const { faults } = dryFit(ceiling, off);
    // a sliver of a coffer that takes no trim is told, and is no fault of the list
    const thick = (ceiling.beams?.trimThickness?.ticks ?? 0) / INCH;
    const { coffers } = arrangedOf(ceiling).exact;
    const slivers = new Set(coffers.filter(({ outline, holeOutlines }) => isSliver(outline, holeOutlines, thick)).map(({ number }) => number));
    const tight = (is: Piece | string): boolean => typeof is !== 'string' && is.part === 'trim' && slivers.has(is.coffer!);
    const [fault] = faults.filter(each => !(each.kind === 'missing' && each.noRoom || each.kind === 'misfit' && each.clashes.every(({ other }) => tight(each.piece) || tight(other)))).filter(each => !(askew && each.kind === 'misfit' && each.causes.length === 0 && each.clashes.every(({ kind }) => kind === 'rounded' || kind === 'area')));
    return fault && `dry fit: ${told(fault)}`;
}

/** Where a beam runs along a wall there is no coffer between its middle and the wall, and nobody sees behind it: as much may lack a panel. Square ticks. */
function besideWalls(pieces: readonly Piece[], room: Corners): number {
    return pieces.filter(({ part }) => part === 'side').reduce((sum, { corners }) => {
        const [along, across] = [extent(corners.map(({ x }) => x)), extent(corners.map(({ y }) => y))];
        const isEastWest = along.long > across.long, steps = Math.ceil(Math.max(along.long, across.long) / INCH), own = isEastWest ? across : along;
        const beside = Array.from({ length: steps }, (_, i) => (i + 0.5) / steps).filter(part => [own.least - INCH, own.least + own.long + INCH].some(side =>
            !contains(room, isEastWest ? { x: along.least + part * along.long, y: side } : { x: side, y: across.least + part * across.long })));
        return sum + beside.length * INCH ** 2 * WIDEST / 2;
    }, 0);
}
function extent(all: readonly number[]): { readonly least: number; readonly long: number } {
    return { least: Math.min(...all), long: Math.max(...all) - Math.min(...all) };
}

/** Whether bottoms fill their channels, so that they cover the room with the sides: not under the sides, not let into them, and without any play. */
function bottomsFill({ lines, around }: Ceiling): boolean {
    const halves = Object.values(around).flatMap(own => (own?.kind === 'half-beam' ? [own] : []));
    return [...lines, ...halves].every(({ section: { profile, fit } }) => profile.solid || profile.bottom?.place.value === 'between-sides' && fit?.ticks === 0);
}

function told(fault: object): string {
    return JSON.stringify(fault, (_, value: unknown) => {
        const piece = value as Partial<Piece> | null;
        return piece && typeof piece === 'object' && 'part' in piece && 'stock' in piece ? piece.id : value;
    });
}

/** By area to a tick along every edge, and by places spread over the room, each in one part and no other. */
function uncovered(room: Corners, parts: readonly Cover[], holes: readonly Corners[]): string | undefined {
    const length = (corners: Corners): number => corners.reduce((sum, a, i) => {
        const b = corners[(i + 1) % corners.length]!;
        return sum + Math.hypot(a.x - b.x, a.y - b.y);
    }, 0);
    const area = parts.reduce((sum, { corners }) => sum + shoelace(corners), 0) - holes.reduce((sum, corners) => sum + shoelace(corners), 0);
    const may = 2 * parts.reduce((sum, { corners }) => sum + length(corners), 0);
    if (Math.abs(area - shoelace(room)) > may) return `the parts have ${area - shoelace(room)} more than the room, in half square ticks`;
    const [xs, ys] = [room.map(({ x }) => x), room.map(({ y }) => y)];
    const [west, east] = [Math.min(...xs), Math.max(...xs)], [north, south] = [Math.min(...ys), Math.max(...ys)];
    for (let i = 0; i < SPREAD; i++) {
        const at = { x: west + (east - west) * (i * 0.6180339887 % 1), y: north + (south - north) * (i + 0.5) / SPREAD };
        if ([room, ...holes, ...parts.map(({ corners }) => corners)].some(corners => nearEdge(at, corners))) continue;
        const within = parts.filter(({ corners }) => contains(corners, at)).length - holes.filter(corners => contains(corners, at)).length;
        if (within !== (contains(room, at) ? 1 : 0)) return `${within} parts are at ${at.x}, ${at.y}`;
    }
    return undefined;
}
const SPREAD = 150;
/** No beam of these rooms is wider, in inches. */
const WIDEST = 8;

function contains(corners: Corners, { x, y }: { x: number; y: number }): boolean {
    return corners.filter((a, i) => {
        const b = corners[(i + 1) % corners.length]!;
        return a.y < y !== b.y < y && a.x + (b.x - a.x) * (y - a.y) / (b.y - a.y) < x;
    }).length % 2 === 1;
}

/** Whether its trims, so many inches thick all round, come too near to each other: an edge that two miters use up, or a corner that stands close to an edge. */
function isSliver(outline: Corners, holes: readonly Corners[], thick: number): boolean {
    const near = (corner: Corners[number], of: Corners, but: readonly number[] = []): boolean =>
        of.some((a, i) => !but.includes(i) && fromEdge(corner, a, of[(i + 1) % of.length]!) < 2.7 * thick * INCH);
    return outline.some((a, i) => {
        const b = outline[(i + 1) % outline.length]!;
        const isShort = Math.hypot(b.x - a.x, b.y - a.y) < 5.4 * thick * INCH;
        return isShort || near(a, outline, [i, (i + outline.length - 1) % outline.length]) || holes.some(hole => near(a, hole));
    }) || holes.some(hole => hole.some(corner => near(corner, outline)));
}
const INCH = 16256;

/** Within a few ticks: corners are rounded. */
function nearEdge(at: Corners[number], corners: Corners): boolean {
    return corners.some((a, i) => {
        return fromEdge(at, a, corners[(i + 1) % corners.length]!) < 4;
    });
}

function fromEdge({ x, y }: Corners[number], a: Corners[number], b: Corners[number]): number {
    const dx = b.x - a.x, dy = b.y - a.y, long = dx * dx + dy * dy;
    const share = long === 0 ? 0 : Math.max(0, Math.min(1, ((x - a.x) * dx + (y - a.y) * dy) / long));
    return Math.hypot(x - a.x - share * dx, y - a.y - share * dy);
}
