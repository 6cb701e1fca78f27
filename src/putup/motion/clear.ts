import { blockOf, separation, type Block } from '../../dryfit/block.ts';
import { NEAR } from '../../dryfit/meetings.ts';
import { hull } from '../../plane/hull.ts';
import type { Move, Pose } from '../model.ts';
import { clash, FAR_BELOW, RIGHT_UNDER, type Stood } from '../stood.ts';
import { placeIn, poseAt, type Frame } from './pose.ts';
import { frameIn, GIVES, slicesOf, type Met } from './slices.ts';
import { isSeenIn, runsInto } from './sweep.ts';

/** What a piece runs into on the first of its moves on which it runs into anything; they come from far below. */
export function hitOn(piece: Stood, moves: readonly Move[], met: readonly Met[]): Met[] {
    const frame = frameIn(piece);
    for (const [i, move] of moves.entries()) {
        const isNear = nearTo(piece, frame, move), near = met.filter(other => other.blocks.some(isNear));
        for (const runs of passing(piece, frame, move, i === 0)) {
            const hit = near.filter(runs);
            if (hit.length > 0) return hit;
        }
    }
    return [];
}

type Runs = (other: Met) => boolean;

/** Whether it runs into something, looked at one after the other: what swings at a glance first. */
function passing(piece: Stood, frame: Frame, move: Move, isFirst: boolean): Runs[] {
    if (move.from.shape === 'tipped') return move.kind === 'lift' ? [tipsInto(piece, move, runsInto)] : [tipsInto(piece, move, isSeenIn), tipsInto(piece, move, runsInto)];
    if (move.kind === 'turn') return [turnsInto(piece, frame, move)];
    const swept = sweptBy(piece, frame, move, isFirst);
    return [other => clash(swept, other.blocks, other.allowed + piece.push)];
}

/** Whether something reaches into the box of all that a piece may come to in a move, on the plan. */
function nearTo({ box }: Stood, { middle, thickness }: Frame, { from, to }: Move): (block: Block) => boolean {
    const far = from.shape === 'turned' ? Math.hypot(box.east - box.west, box.south - box.north) / 2 : 0, more = from.shape === 'tipped' ? thickness : 0;
    const [west, east, north, south] = [Math.min(box.west - more, middle.x - far), Math.max(box.east + more, middle.x + far),
        Math.min(box.north - more, middle.y - far), Math.max(box.south + more, middle.y + far)];
    const { x, y } = from.aside, { x: toX, y: toY } = to.aside;
    return block => block.west < east + Math.max(x, toX) && block.east > west + Math.min(x, toX)
        && block.north < south + Math.max(y, toY) && block.south > north + Math.min(y, toY);
}

/** All that it passes through on a lift or a level push; turned on the plan or not. */
function sweptBy({ blocks }: Stood, frame: Frame, { kind, from, to }: Move, isFirst: boolean): Block[] {
    return blocks.map(({ prism: { outline, top, foot } }) => (kind === 'lift'
        ? blockOf({ outline: outlineIn(outline, to, frame), top: top + to.below, foot: isFirst ? FAR_BELOW : foot + from.below })
        : blockOf({ outline: hull([...outlineIn(outline, from, frame), ...outlineIn(outline, to, frame)]), top: top + to.below, foot: foot + to.below })));
}

function outlineIn(outline: Block['prism']['outline'], pose: Pose, frame: Frame): Block['prism']['outline'] {
    return outline.map(([x, y]) => { const place = placeIn({ x, y, z: 0 }, pose, frame); return [Math.round(place.x), Math.round(place.y)] as const; });
}

/** Turned level about its middle, in steps as long as the two are apart, and of a hair where they touch: nothing is stepped over. */
function turnsInto({ blocks, push }: Stood, frame: Frame, move: Move): Runs {
    const { below } = move.to, { middle } = frame;
    const far = Math.max(...blocks.flatMap(({ prism }) => prism.outline.map(([x, y]) => Math.hypot(x - middle.x, y - middle.y))));
    const speed = Math.max(1, far * Math.abs(move.from.angle - move.to.angle));
    const comesInto = (own: Block, block: Block, allowed: number): boolean => {
        if (own.top + below >= block.foot || block.top >= own.foot + below) return false;
        for (let share = 0; ; share = Math.min(1, share)) {
            const outline = outlineIn(own.prism.outline, poseAt(move, share), frame);
            const apart = separation(blockOf({ outline, top: own.top + below, foot: own.foot + below }), block);
            if (apart < -(allowed + NEAR)) return true;
            if (share >= 1) return false;
            share += Math.max(NEAR, apart + allowed) / speed;
        }
    };
    return other => blocks.some(own => other.blocks.some(block => comesInto(own, block, other.allowed + push + GIVES)));
}

/** One end first: from there on it is looked at as if its place were where it is swung up to. */
function tipsInto(piece: Stood, move: Move, into: typeof runsInto): Runs {
    const { aside } = move.to, home = { ...move, from: { ...move.from, aside: RIGHT_UNDER }, to: { ...move.to, aside: RIGHT_UNDER } };
    const blocks = piece.blocks.map(({ prism: { outline, top, foot } }) =>
        blockOf({ outline: outline.map(([x, y]) => [Math.round(x + aside.x), Math.round(y + aside.y)] as const), top, foot }));
    const there = { ...piece, blocks }, frame = frameIn(there);
    // its corners on the plan are those of its place, and only tell which way it runs
    return other => slicesOf(there, frame, [other]).some(({ own: [from, to], fast, allowed }) =>
        into([[from, 0], [to, 0], [to, frame.thickness], [from, frame.thickness]], { move: home, bar: frame }, fast, allowed));
}
