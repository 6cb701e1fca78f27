import { bottomReachAt, sectionAt, type Flank } from '../ceiling/flanks.ts';
import type { Ceiling, Line } from '../ceiling/model.ts';
import { atKey } from '../plain/at-key.ts';
import { roundDown } from '../quantity/round.ts';
import { lengthOf, type Point, type Vector } from '../plane/point.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { idOf } from '../takeoff/ids.ts';
import { marksOf, onceCoped, pairsOf, placeAlong, type Lie, type Pair, type Pairs } from '../takeoff/lie.ts';
import { grouped } from '../plain/groups.ts';
import { blankOf, shapeOf } from '../takeoff/panels.ts';
import { isPooled, shorterBy } from '../takeoff/pooled.ts';
import { sideBehind } from '../takeoff/sides-and-cleats.ts';
import type { Piece, TakeOff } from '../takeoff/model.ts';
import { formAt, type Board } from './boards.ts';
import type { Place, Spot } from './place.ts';
import { seatOf, type Seat } from './stand.ts';

export interface Plan { readonly ceiling: Ceiling; readonly places: readonly Place[] }

/**
 * Where every piece belongs, and the form it has there: corners of the arrangement, with every coffer at the size it is cut to, and sizes of
 * the sections; nothing that the take-off works out of them but names. The lengths of the list come from the same arrangement, so what is held here is that
 * it goes together: nothing in each other, all that should touch touching, and every line of the list filling its place. Along a line the layout does
 * not say where its spacers stand: that is looked up in the list, and `spacers.ts` judges it.
 */
export function planOf(ceiling: Ceiling, takeOff: TakeOff): Plan {
    const step = ceiling.room.job.cutTo.value, pairs = pairsOf(ceiling);
    const listed = grouped(takeOff.pieces.filter(({ part }) => part === 'spacer'), ({ line }) => line);
    const spots = [
        ...pairs.groups().flatMap(group => spotsOf(group, pairs, ceiling, step)),
        ...ceiling.lines.flatMap(line => spacers(line, pairs, listed.get(line.name) ?? [])),
    ];
    const places = spots.flatMap(spot => placed(spot, ceiling.room.name, step).map(place => ({ place, named: spot.named })));
    return { ceiling, places: pooled(places, ceiling) };
}

/** The places of the pieces of one part of a line, a wall, or the trim; none of a part that the text says nothing of, or not enough. */
function spotsOf(group: readonly Pair[], pairs: Pairs, ceiling: Ceiling, step: Ticks): Spot[] {
    if (group[0]!.exact.strip.part === 'panel') return group.flatMap(pair => panelSpot(pair, formAt(pair.cut.strip, ceiling), step));
    const mark = group[0]!.through ? marksOf(group, step) : undefined, boards = new Map<Flank | undefined, Board | undefined>();
    return group.flatMap(pair => {
        const { strip } = pair.exact, board = atKey(boards, strip.flank, () => formAt(strip, ceiling));
        return board ? [spotOf(pair, board, mark, pairs, ceiling)] : [];
    });
}

/** A panel is as wide as its own place. One that is cut to a shape may be off by a step of the tape, both ways. */
function panelSpot({ cut, named }: Pair, board: Board | undefined, step: Ticks): Spot[] {
    if (!board) return [];
    const { part, across, high, down } = board, seat = seatOf(cut, true, down);
    if (!cut.strip.shape) return [{ part, named, seat, form: { along: cut.back, across, high } }];
    // corners are counted from one of the rectangle, which is a hair larger than its place: that one stands where it belongs
    const along = blankOf(cut.back, step), aside = seat.looks * (across - cut.strip.width) / 2, { x, y } = seat.way, long = lengthOf({ x, y });
    const at = movedAlong({ ...seat, at: { x: seat.at.x - y / long * aside, y: seat.at.y + x / long * aside } }, (along - cut.back) / 2);
    return [{ part, named, seat: at, give: step, form: { along, across, high, shape: shapeOf(cut, step) } }];
}

/** `mark`: of what runs through, where its pieces meet. */
function spotOf(pair: Pair, board: Board, mark: ReturnType<typeof marksOf> | undefined, pairs: Pairs, ceiling: Ceiling): Spot {
    const { strip } = pair.exact;
    const { across, high, rabbet, down, press = 0 } = board, lie = pair.through && !board.centered ? pair.exact : pair.cut;
    const stands = { corners: onceCoped(pair.cut), way: pair.cut.way }, seat = seatOf(strip.part === 'trim' ? stands : lie, board.centered, down);
    const shared = { part: board.part, named: pair.named, press }, form = { across, high, off: strip.part === 'cleat' ? nipped(pair, pairs, across, ceiling) : offOf(stands), ...rabbet && { rabbet } };
    if (!mark) {
        const coped = pair.cut.back - (placeAlong(stands.way, stands.corners[1]) - placeAlong(stands.way, stands.corners[0]));
        return { ...shared, seat, form: { ...form, along: pair.cut.back }, ...coped > 1 && { coped: Math.round(coped) } };
    }
    const { from, to, back } = pair.exact, starts = mark(from) - from, ends = mark(to) - to;
    // a back is as much longer or shorter as the whole piece
    const drawn = seatOf(pair.exact, board.centered, down), moved = placeAlong(seat.way, drawn.at) - placeAlong(seat.way, seat.at);
    return { ...shared, seat: movedAlong(seat, moved + (starts + ends) / 2), form: { ...form, along: back + ends - starts } };
}

/** What is taken off the corners of a cleat, where its side ends along something that leans away from the face: as far as that leans over the cleat. */
function nipped({ exact }: Pair, pairs: Pairs, across: Ticks, { lines, around }: Ceiling): readonly [Ticks, Ticks] {
    const { strip, cuts } = exact, side = sideBehind(exact, pairs.of('side', strip.of)), own = around[strip.of];
    const line = lines.find(({ name }) => name === strip.of), section = line ? sectionAt(line, strip.flank!) : (own?.kind === 'half-beam' ? own.section : undefined);
    const short = section?.profile.cleats?.shortEachEnd.value ?? 0, thick = section?.sideThickness.ticks ?? across;
    const [first, last] = (side ? offOf(side.exact) : [0, 0]).map((off, i) => (cuts[i] === 'splice' ? 0 : Math.ceil(-off * across / thick)));
    return [first! > short ? first! : 0, last! > short ? last! : 0];
}

/** What the ends take off the face. */
function offOf({ corners: [back, backEnd, faceEnd, face], way }: Pick<Lie, 'corners' | 'way'>): readonly [Ticks, Ticks] {
    return [Math.round(placeAlong(way, face) - placeAlong(way, back)), Math.round(placeAlong(way, backEnd) - placeAlong(way, faceEnd))];
}

function movedAlong(seat: Seat, by: number): Seat {
    const { x, y } = seat.way, length = lengthOf({ x, y });
    return { ...seat, at: { x: seat.at.x + x * by / length, y: seat.at.y + y * by / length } };
}

/** Where along the line each stands is the list's own; they hang under the blocking, in the middle of the channel. */
function spacers(line: Line, pairs: Pairs, listed: readonly Piece[]): Spot[] {
    const { spacerThickness, spacerWidth, blockingThickness, innerWidth, profile } = line.section;
    const height = profile.spacers?.height?.value.ticks;
    if (!profile.spacers?.stock || !spacerThickness || !spacerWidth || !height) return [];
    const most = (profile.bottom?.gap.value.most ?? 0) / 2;
    const tight = (spacerWidth.ticks - innerWidth.ticks) / 2;
    const sides = pairs.of('side', line.name), middle = middleOf(line, pairs);
    return listed.flatMap((piece): Spot[] => {
        const way = middle.way, [low, high] = spanOf(piece, way), center = (low + high) / 2;
        // it may stand across a splice
        const beside = sides.find(({ exact: { from, to } }) => from - 1 <= center && center <= to + 1);
        if (!beside || piece.bay === null) return [];
        // where the bay has come to stand with its coffer as it is cut
        const along = center + placeAlong(way, beside.cut.corners[3]) - placeAlong(way, beside.exact.corners[3]);
        return [{
            part: 'spacer', named: { line: line.name, bay: piece.bay, nth: Number(piece.id.split('-').at(-1)) }, give: tight <= most ? tight : 0,
            seat: { at: pointAlong(middle, along), way, looks: 1, centered: true, down: { top: blockingThickness.ticks } },
            form: { along: spacerThickness.ticks, across: spacerWidth.ticks, high: height },
        }];
    });
}

/** Hidden places that are filled by pieces of one length, where the job says so. */
function pooled(places: readonly { readonly place: Place; readonly named: Spot['named'] }[], { lines, around, room: { job: { poolHidden } } }: Ceiling): Place[] {
    if (!poolHidden) return places.map(({ place }) => place);
    const profileOf = ({ line, wall = '' }: Spot['named']) => {
        const own = around[wall];
        return line === undefined ? own?.kind === 'half-beam' ? own.section.profile : undefined : lines.find(({ name }) => name === line)?.section.profile;
    };
    const able = places.filter(({ place: { part, form }, named }) =>
        isPooled({ part, bay: named.bay }, poolHidden, profileOf(named)) && form.off.every(off => off === 0)).map(({ place }) => place);
    const longOf = ({ part, form }: Place): Ticks => (part === 'spacer' ? form.high : form.along);
    const shorter = shorterBy(able, ({ part, form }) => `${part} ${form.across} ${part === 'spacer' ? form.along : form.high}`, longOf, poolHidden.value.slack);
    return places.map(({ place }) => {
        const by = shorter.get(place) ?? 0, { part, form, rounded } = place;
        if (by === 0) return place;
        if (part === 'spacer') return { ...place, form: { ...form, high: form.high - by } };
        return { ...place, form: { ...form, along: form.along - by }, rounded: rounded - by / 2 };
    });
}

/** A point in the middle of a line as it has come to stand, and the way it runs. */
interface Middle { readonly at: Point; readonly way: Vector }

function middleOf(line: Line, pairs: Pairs): Middle {
    const [blocking] = pairs.of('blocking', line.name), { corners: [a, , , d], way } = (blocking ?? pairs.of('bottom', line.name)[0]!).cut;
    // unlike sides have a bottom out of the middle
    const aside = blocking ? 0 : bottomReachAt(line, 'right') - bottomReachAt(line, 'left'), across = (placeAcross(way, d) - placeAcross(way, a) - aside) / 2;
    return { at: { x: a.x - way.y / lengthOf(way) * across, y: a.y + way.x / lengthOf(way) * across }, way };
}

function pointAlong({ at, way }: Middle, along: number): Point {
    const by = (along - placeAlong(way, at)) / lengthOf(way);
    return { x: at.x + way.x * by, y: at.y + way.y * by };
}

function placeAcross({ x, y }: Vector, point: Point): number {
    return placeAlong({ x: 0 - y, y: x }, point);
}

/** From where to where along a direction a piece stands. */
export function spanOf({ corners }: Pick<Piece, 'corners'>, way: Vector): readonly [number, number] {
    const places = corners.map(corner => placeAlong(way, corner));
    return [Math.min(...places), Math.max(...places)];
}

/** Cut lengths are whole steps of the tape, never more than the place; what that leaves open is planned. A spacer's length stands upright. */
function placed({ part, named, seat, form, press = 0, give = 0, coped = 0 }: Spot, room: string, step: Ticks): Place[] {
    const upright = part === 'spacer';
    const length = (upright ? form.high : form.along) + press;
    if (!(length > 0)) return [];
    const cut = roundDown(length, step);
    return [{
        id: idOf(room, part, named), part, seat, give: Math.max(0, give),
        form: { ...form, off: form.off ?? [0, 0], along: upright ? form.along : cut - coped, high: upright ? cut : form.high },
        rounded: upright ? 0 : (cut - length) / 2, pressed: press / 2,
    }];
}
