import { inches } from '../quantity/rational.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Surveyed, SurveyedSide } from './survey.ts';

/** A stretch of a side that is scribed, with a little to lay it on by at either end. */
export interface Template {
    readonly side: SurveyedSide;
    /** Along the face, from its west or north end. */
    readonly from: Ticks; readonly to: Ticks;
    /** The line to cut to: how far below the upper edge of the side, from place to place; straight between. */
    readonly cut: readonly { readonly along: number; readonly depth: number }[];
    readonly deepest: Ticks;
    /** Seen from the room, its west or north end is at the left. */
    readonly beginsLeft: boolean;
}

/** What a template is longer than the stretch at either end, where the side has as much. */
const BESIDE: Ticks = inches(1);

/** A template for every stretch of every side that has to be scribed; stretches so near to each other that they would overlap are one. */
export function templatesOf({ sides }: Surveyed): Template[] {
    return sides.flatMap(side => {
        const { scribes, under: { length } } = side, groups: SurveyedSide['scribes'][] = [];
        for (const scribe of scribes) {
            const last = groups.at(-1);
            if (last && scribe.from - last.at(-1)!.to < 2 * BESIDE) groups[groups.length - 1] = [...last, scribe];
            else groups.push([scribe]);
        }
        return groups.map((group): Template => {
            const from = Math.max(0, group[0]!.from - BESIDE), to = Math.min(Math.round(length), group.at(-1)!.to + BESIDE);
            const deepest = Math.max(...group.map(scribe => scribe.deepest.ticks));
            return { side, from, to, cut: cutOf(side, group, from, to), deepest, beginsLeft: beginsLeft(side) };
        });
    });
}

/** Beside the stretches the upper edge stays as it is. */
function cutOf({ profile }: SurveyedSide, scribes: SurveyedSide['scribes'], from: Ticks, to: Ticks): Template['cut'] {
    const places = scribes.flatMap(scribe => {
        const inside = profile.filter(({ along }) => along > scribe.from && along < scribe.to).map(({ along, gap }) => ({ along, depth: Math.max(0, -gap) }));
        const depthAt = (end: Ticks): number => Math.max(0, -(profile.find(({ along }) => Math.abs(along - end) <= 1)?.gap ?? 0));
        return [{ along: scribe.from, depth: depthAt(scribe.from) }, ...inside, { along: scribe.to, depth: depthAt(scribe.to) }];
    });
    return [...from < places[0]!.along ? [{ along: from, depth: 0 }] : [], ...places, ...to > places.at(-1)!.along ? [{ along: to, depth: 0 }] : []];
}

/** Who looks at the face of a side looks against the way it faces; on his right is what lies clockwise of that on the plan. */
function beginsLeft({ under: { piece: { corners: [back, , last, first] } } }: SurveyedSide): boolean {
    const faces = { x: first.x - back.x, y: first.y - back.y }, right = { x: faces.y, y: -faces.x };
    return (last.x - first.x) * right.x + (last.y - first.y) * right.y > 0;
}
