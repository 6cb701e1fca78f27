import { scribeCuts, type ScribeCut } from '../plane/scribe-cuts.ts';
import { inches } from '../quantity/rational.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Surveyed, SurveyedSide } from './survey.ts';

/** A stretch of a side that is scribed: places along the face from its west or north end, depths below the upper edge of the side. */
interface Template extends ScribeCut {
    readonly side: SurveyedSide;
    /** Seen from the room, its west or north end is at the left. */
    readonly beginsLeft: boolean;
}

/** What a template is longer than the stretch at either end, where the side has as much. */
const BESIDE: Ticks = inches(1);

/** A template for every stretch of every side that has to be scribed; stretches so near to each other that they would overlap are one. */
export function templatesOf({ sides }: Surveyed): Template[] {
    return sides.flatMap(side => scribeCuts(side.profile.map(({ along, gap }) => ({ along, depth: -gap })), side.scribes, side.under.length, BESIDE)
        .map((cut): Template => ({ ...cut, side, beginsLeft: beginsLeft(side) })));
}

/** Who looks at the face of a side looks against the way it faces; on his right is what lies clockwise of that on the plan. */
function beginsLeft({ under: { piece: { corners: [back, , last, first] } } }: SurveyedSide): boolean {
    const faces = { x: first.x - back.x, y: first.y - back.y }, right = { x: faces.y, y: -faces.x };
    return (last.x - first.x) * right.x + (last.y - first.y) * right.y > 0;
}
