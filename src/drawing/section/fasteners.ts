import { finishNail, screwShank } from '../../data/fasteners.ts';
import type { Nails, Profile, Screws } from '../../job/model.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import { group, line, polygon, type Group, type Item, type Point } from '../display-list.ts';
import { faceAt, sideAt, type Hand, type SectionShape } from './shape.ts';
import { spot, type SectionView } from './view.ts';

/** Screws and nails in their own length and thickness, where the job says which; drawn where they are usually driven. */
export function fasteners(profile: Profile, shape: SectionShape, view: SectionView): readonly Group[] {
    const { innerWidth, side, blocking, bottom, cleat, trim } = shape;
    const pairs = (id: string, title: string, draw: (hand: -1 | 1) => readonly Item[]) => group(id, { title }, [...draw(-1), ...draw(1)]);
    const inward = (hand: -1 | 1): Point => [-hand, 0];
    const outward = (hand: -1 | 1): Point => [hand, 0];
    const groups: Group[] = [];
    if (profile.blocking?.screws) {
        groups.push(pairs('screws', 'Screws through blocking and ceiling', hand => screw(profile.blocking!.screws!.value, view, [hand * blocking.width / 4, blocking.thickness])));
    }
    const nailsAt = (hand: Hand): Nails | undefined => (hand > 0 && profile.otherSide ? profile.otherSide : profile.sides)?.nails?.value;
    if ((nailsAt(-1) ?? nailsAt(1)) && !blocking.isWrapped) {
        groups.push(pairs('nails.side', 'Nails through the side into the blocking', hand => {
            const nails = nailsAt(hand), height = (Math.max(0, sideAt(shape, hand).top) + blocking.thickness) / 2;
            return nails ? nail(nails, view, [hand * faceAt(shape, hand), height], inward(hand)) : [];
        }));
    }
    if (cleat && profile.cleats?.nails) {
        const height = (cleat.top + cleat.foot) / 2;
        groups.push(pairs('nails.cleat', 'Nails through the cleat into the side', hand => nail(profile.cleats!.nails!.value, view, [hand * (innerWidth / 2 - cleat.thickness), height], outward(hand))));
    }
    if (profile.bottom?.nails && bottom.place !== 'between-sides') {
        // into the edge of the side over it, or the shoulder of its rabbet
        groups.push(pairs('nails.bottom', 'Nails through the bottom into the side', hand => {
            const edge = bottom.place === 'under-sides' ? faceAt(shape, hand) : bottom.width / 2 + hand * bottom.aside;
            return nail(profile.bottom!.nails!.value, view, [hand * (innerWidth / 2 + edge) / 2, bottom.top + bottom.thickness], [0, -1]);
        }));
    } else if (cleat && profile.bottom?.nails) {
        groups.push(pairs('nails.bottom', 'Nails through the bottom into the cleat', hand => nail(profile.bottom!.nails!.value, view, [hand * (innerWidth - cleat.thickness) / 2, bottom.top + bottom.thickness], [0, -1])));
    }
    if (trim && profile.trim?.nails) {
        const height = (Math.max(0, side.top) + trim.height) / 2;
        groups.push(pairs('nails.trim', 'Nails through the trim into the side', hand => nail(profile.trim!.nails!.value, view, [hand * (faceAt(shape, hand) + trim.thickness), height], inward(hand))));
    }
    return groups;
}

/** From its head at `at` (ticks) in the direction given. Wire of a gauge without a published diameter is one dashed line. */
function nail(nails: Nails, view: SectionView, at: Point, direction: Point): readonly Item[] {
    const [headX, headY] = spot(view, at[0], at[1]);
    const length = nails.length * view.pointsPerTick;
    const wire = finishNail(nails.gauge);
    const along = (distance: number, aside: number): Point =>
        [headX + direction[0] * distance - direction[1] * aside, headY + direction[1] * distance + direction[0] * aside];
    if (wire === undefined) return [line(along(0, 0), along(length, 0), 'nail')];
    const half = wire.ticks * view.pointsPerTick / 2;
    const head = 1.5 * half;
    const tip = Math.min(length, 4 * half);
    return [polygon([along(0, -head), along(0, head), along(half, half), along(length - tip, half), along(length, 0), along(length - tip, -half), along(half, -half)], 'fine', 'paper')];
}

/** Head let into the blocking's underside; it goes up, and ends in a break where the sheet shows no more of the wood above. */
function screw(screws: Screws, view: SectionView, at: Point): readonly Item[] {
    const [x, y] = spot(view, at[0], at[1]);
    const shank = screwShank(screws.gauge);
    const tipY = y - screws.length * view.pointsPerTick;
    const broken = tipY < view.top + BREAK_CLEARANCE;
    const endY = broken ? view.top + BREAK_CLEARANCE : tipY;
    if (shank === undefined) return [line([x, y], [x, endY], 'nail')];
    const half = shank.ticks * view.pointsPerTick / 2;
    const head = 2 * half; // common practice, no source: a flat head is about twice as wide as its shank
    const point = broken
        ? [[x + half, endY - 1.5], [x - half, endY + 1.5]] as const
        : [[x + half, tipY + 4 * half], [x, tipY], [x - half, tipY + 4 * half]] as const;
    return [
        polygon([[x - head, y], [x + head, y], [x + half, y - head], ...point, [x - half, y - head]], 'thin', 'paper'),
        ...threads(x, half, endY + (broken ? 3 : 4 * half), y - Math.max(head, (y - tipY) / 3)),
    ];
}
const BREAK_CLEARANCE = 8;

/** The upper two thirds of a wood screw carry the thread. */
function threads(x: number, half: number, from: number, to: number): readonly Item[] {
    const pitch = Math.max(2.2, half * 0.9);
    const turns = Math.max(0, Math.floor((to - from) / pitch));
    return Array.from({ length: turns }, (_, i) => line([x - half, from + i * pitch + half * 0.5], [x + half, from + i * pitch - half * 0.5], 'fine'));
}

/** How far the longest screw reaches above the ceiling, in ticks. */
export function screwAbove(profile: Profile, shape: SectionShape): Ticks {
    const screws = profile.blocking?.screws?.value;
    return screws === undefined ? 0 : Math.max(0, screws.length - shape.blocking.thickness);
}
