import type { Diagonal, Fixture, Room, RoomWall } from '../job/model.ts';
import { isAsGood, knownOf, knownWords, type Known, type Recorded, type Status } from '../job/status.ts';
import type { Source } from '../provenance/source.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { grouped } from '../plain/groups.ts';
import { beamsOf } from '../job/perimeters.ts';
import { boardsAtHand, crownsSaid } from './lengths-at-hand.ts';
import { stocksKnown } from './boards-known.ts';

/** A dimension of a room, as far as the tape has to do with it, with how it is known. */
export interface Dimension {
    readonly kind: 'wall' | 'diagonal' | 'at-wall' | 'fixture' | 'height' | 'joists' | 'covering' | 'wraps' | 'survey' | 'stock' | 'on-hand' | 'board' | 'crown' | 'straight' | 'plumb' | 'board-in' | 'piece-in';
    /** The wall (of how straight and how plumb it is, too), the fixture, `north-west to south-east`, the stock, the profile that wraps it. */
    readonly name: string;
    readonly ticks?: Ticks;
    /**
     * Of a stock, and of what a beam wraps: its width, and its thickness or height, as far as anything follows from it. Of boards on hand their length, then
     * what else is said; of a crown what it projects and drops.
     */
    readonly sizes?: readonly Ticks[];
    /** Of boards on hand: how many are alike. */
    readonly count?: number;
    /** Of a survey, and of how straight a wall is: how many readings are known so. */
    readonly readings?: number;
    /** The words that say it. */
    readonly at: Source;
    readonly known: Known;
    /** Of boards, of what is wrapped and of what gets into the house, which are said for all rooms: it says itself how it is known. */
    readonly says?: boolean;
    readonly on?: string; readonly by?: string;
    /** Whether lengths of pieces follow from it. */
    readonly cuts: boolean;
    /** Of an assumed wall: the wall that it is taken to be as long as. */
    readonly like?: string;
    readonly fixture?: Fixture;
}

/**
 * Every dimension of the room, in the order of the text: walls, diagonals, what stands at the walls, what the ceiling holds, height, joists; then how
 * straight and how plumb walls are, the covering, what beams wrap, the survey, what gets there at all, the boards that pieces are cut from, crowns, and
 * boards on hand.
 */
export function dimensionsOf(room: Room): Dimension[] {
    const { walls, diagonals, fixtures, height, joists, grid } = room;
    return [
        ...walls.flatMap(wall => ofWall(wall, walls)),
        ...diagonals.map(ofDiagonal),
        ...diagonals.length === 0 && walls.length > 2 ? [{ kind: 'diagonal' as const, name: '', at: room.at, known: 'assumed' as const, cuts: true }] : [],
        ...fixtures.flatMap((fixture): Dimension[] => {
            const { name, at, known, atWall, x, y } = fixture;
            if (!atWall && (x === undefined || y === undefined)) return [];
            const isCenter = grid?.centeredOn?.value.name === name;
            return [{ kind: atWall ? 'at-wall' : 'fixture', name, at, ...knownOf(known), cuts: atWall !== undefined || isCenter, fixture }];
        }),
        ...height ? [{ kind: 'height' as const, name: '', ticks: height.value, at: height.at, ...knownOf(height), cuts: false }] : [],
        ...joists ? [{ kind: 'joists' as const, name: joists.size, ...joists.first && { ticks: joists.first.value }, at: joists.at, ...knownOf(joists), cuts: false }] : [],
        ...walls.flatMap(({ name }) => ofBow(room, name)), ...ofCovering(room), ...wrapped(room), ...ofSurvey(room), ...whatGetsIn(room),
        ...stocksKnown(room).map(({ stock: { name }, ...known }): Dimension => ({ kind: 'stock', name, ...known, cuts: true })),
        ...crownsIn(room), ...atHand(room),
    ];
}

/** Only screws go by it. */
function ofCovering({ covering }: Room): Dimension[] {
    if (!covering?.thickness) return [];
    const { kind, thickness: { value, at } } = covering;
    return [{ kind: 'covering', name: kind.value, ticks: value, at, ...knownOf(covering), cuts: false }];
}

function wrapped(room: Room): Dimension[] {
    const each = new Map(beamsOf(room).map(given => [given.value.key, given]));
    return [...each.values()].flatMap(({ value: { name, wraps }, at }): Dimension[] => {
        if (!wraps) return [];
        const { value: { width, height }, status } = wraps;
        return [{ kind: 'wraps', name, sizes: [width.ticks, height.ticks], at, ...knownOf(wraps), says: status?.said === true, cuts: true }];
    });
}

function crownsIn(room: Room): Dimension[] {
    return crownsSaid(room).map(({ of, sizes, at, record }): Dimension => ({ kind: 'crown', name: of, sizes, at, ...knownOf(record), says: record.status?.said === true, cuts: true }));
}

function atHand(room: Room): Dimension[] {
    return boardsAtHand(room).map(({ stock: { name }, board, count, sizes, at, record }): Dimension => ({
        kind: board === undefined ? 'on-hand' : 'board', name: board ?? name, ...board === undefined && { count }, sizes, at, ...knownOf(record),
        says: record.status?.said === true, cuts: true,
    }));
}

/** Of a wall that is not straight or not plumb: one for all readings that are known alike, and how far it leans. */
function ofBow({ bows }: Room, name: string): Dimension[] {
    const { readings = [], lean } = bows?.[name] ?? {};
    const alike = grouped(readings, reading => knownWords(knownOf(reading)));
    return [
        ...[...alike.values()].map((same): Dimension => ({ kind: 'straight', name, readings: same.length, at: same[0]!.at, ...knownOf(same[0]), cuts: true })),
        ...lean ? [{ kind: 'plumb' as const, name, ticks: Math.abs(lean.value), at: lean.at, ...knownOf(lean), cuts: true }] : [],
    ];
}

/** What is spliced goes by it. A room stands for what its house says in another file. */
function whatGetsIn({ job: { longestBoard, longestPiece }, at }: Room): Dimension[] {
    return ([['board-in', longestBoard], ['piece-in', longestPiece]] as const).flatMap(([kind, limit]): Dimension[] => (limit ? [{
        kind, name: '', ticks: limit.value, at: limit.at.uri === at.uri ? limit.at : at, ...knownOf(limit), says: limit.status?.said === true, cuts: true,
    }] : []));
}

/** One for all readings that are known alike. */
function ofSurvey({ survey }: Room): Dimension[] {
    if (!survey || survey.points.length === 0) return [];
    const each = survey.points.map(({ at, known }) =>
        ({ at: known ? at : survey.method?.at ?? survey.at, ...knownOf(known?.status ? known : { ...survey, ...known }) }));
    const alike = grouped(each, ({ known, on, by }) => [known, on, by].join(' '));
    return [...alike.values()].map((same): Dimension => ({ kind: 'survey', name: '', readings: same.length, ...same[0]!, cuts: true }));
}

function ofWall({ name, at, length, assumed }: RoomWall, walls: readonly RoomWall[]): Dimension[] {
    // one without a length is worked out from the others, and is as good as they are
    if (!length) return [];
    if (!assumed) return [{ kind: 'wall', name, ticks: length.value.ticks, at: length.at, ...knownOf(length), cuts: true }];
    const like = walls.find(other => ACROSS[name] === other.name);
    return [{ kind: 'wall', name, ticks: length.value.ticks, at, known: 'assumed', cuts: true, ...like && { like: like.name } }];
}

const ACROSS: Readonly<Record<string, string>> = { north: 'south', south: 'north', east: 'west', west: 'east' };

function ofDiagonal(diagonal: Diagonal): Dimension {
    const { from, to, ticks, at } = diagonal;
    return { kind: 'diagonal', name: `${from} to ${to}`, ticks, at, ...knownOf(diagonal), cuts: true };
}

/** How well dimensions have to be known before anything is cut. Where the job does not say it they have to be verified. */
export function leastStatus({ job }: Pick<Room, 'job'>): Status {
    return job.cutFrom?.value ?? 'verified';
}

/**
 * Whether this room is asked how its dimensions are known: the job says how well they have to be, or one of them says how it is. What a stock, a profile or
 * the house says of itself is said for all rooms, and asks none of them.
 */
export function isAsked(room: Room): boolean {
    const said = (record: Recorded | undefined): boolean => record?.status?.said === true;
    return room.job.cutFrom !== undefined || room.walls.some(({ length }) => said(length)) || room.diagonals.some(said)
        || room.fixtures.some(({ known }) => said(known)) || said(room.height) || said(room.joists)
        || Object.values(room.bows ?? {}).some(({ readings, lean }) => said(lean) || readings.some(said))
        || said(room.covering) || said(room.survey) || room.survey?.points.some(({ known }) => said(known)) === true;
}

/** What pieces are cut from and is not known as well as it has to be; of a room that is not asked, what says so itself and holds for all rooms. */
export function openOf(room: Room): Dimension[] {
    const least = leastStatus(room), asked = isAsked(room);
    return dimensionsOf(room).filter(one => one.cuts && !isKnown(one, least) && (asked || one.says));
}

/** Whether it is known as well as it has to be. */
export function isKnown({ known }: Dimension, least: Status): boolean {
    return known !== 'assumed' && known !== 'unsaid' && isAsGood(known, least);
}
