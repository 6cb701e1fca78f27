import { centerOf } from '../ceiling/bays.ts';
import type { Line } from '../ceiling/model.ts';
import type { Biscuits } from '../job/model.ts';
import { term } from '../provenance/why.ts';
import type { Piece } from './model.ts';
import { pieceOf } from './piece.ts';
import { longer, stretchesOf, type Stretch } from './runs.ts';
import { endsOf, type Setting } from './setting.ts';
import type { Work } from './work.ts';

/** Blocking of a line: flat against the ceiling, as wide as the channel between the sides. */
export function blockingOf(line: Line, setting: Setting): Piece[] {
    const { section } = line, blocking = section.profile.blocking;
    if (!blocking) return [];
    return stretchesOf(setting, line, 'blocking').flatMap(stretch => pieceOf({
        part: 'blocking', line: line.name, bay: stretch.bay, nth: stretch.letter, stock: blocking.stock,
        ...stretch.lengths, ends: stretch.lie.ends, why: stretch.why,
        width: section.blockingWidth.ticks, thickness: section.blockingThickness.ticks, fence: blocking.ripWith?.value,
        where: whereOf(line, stretch), source: blocking.at,
        corners: stretch.lie.corners, meets: stretch.lie.meets, heights: [0, section.blockingThickness.ticks],
    }, setting));
}

/**
 * Bottoms of a line, pressed against the cleats. `press` makes each longer than the opening it goes into; its place
 * is the opening, where it stands once it is in.
 */
export function bottomsOf(line: Line, setting: Setting): Piece[] {
    const { section } = line, bottom = section.profile.bottom;
    if (!bottom) return [];
    const press = bottom.press?.value ?? 0;
    return stretchesOf(setting, line, 'bottom').flatMap(stretch => pieceOf({
        part: 'bottom', line: line.name, bay: stretch.bay, nth: stretch.letter, stock: bottom.stock,
        ...longer(stretch.lengths, press), ends: stretch.lie.ends,
        why: [...stretch.why, term('press', 1, press, bottom.press?.at)],
        width: section.bottomWidth.ticks, thickness: section.bottomThickness.ticks,
        work: [bottom.ease && { kind: 'ease', by: bottom.ease.value }, ...slots(line, stretch, setting)], fence: bottom.ripWith?.value,
        where: whereOf(line, stretch), source: bottom.at,
        corners: stretch.lie.corners, meets: stretch.lie.meets, heights: [section.bottomTop.ticks, section.depth.ticks],
    }, setting));
}

function whereOf(line: Line, { bay, letter }: Stretch): string {
    if (bay !== null) return `line ${line.name}, bay ${bay}`;
    return letter ? `line ${line.name}, piece ${letter} from the ${endsOf(line.runs)[0]}` : `line ${line.name}, through`;
}

/** Slots for biscuits: in the ends that butt or are spliced, and in the edges where the pieces cut between meet it. */
function slots(line: Line, { lie, from, to, bay }: Stretch, setting: Setting): Work[] {
    const own = line.section.profile.bottom?.biscuits?.value;
    const ends = endsOf(line.runs);
    const cut = ({ count, size }: Biscuits, places: number, where: string): Work => ({ kind: 'slots', count, size, places, where });
    if (bay !== null) {
        const butts = ends.filter((_, i) => lie.cuts[i] === 'between');
        return own && butts.length > 0 ? [cut(own, butts.length, `in the ${butts.join(' and the ')} end`)] : [];
    }
    const splices = ends.filter((_, i) => lie.cuts[i] === 'splice');
    const crossing = (line.runs === 'east-west' ? setting.ceiling.across : setting.ceiling.down).lines;
    const edges = crossing.flatMap(other => {
        const biscuits = other.section.profile.bottom?.biscuits?.value;
        const middle = centerOf(other);
        if (!biscuits || other.high <= from || other.low >= to) return [];
        const whole = other.low >= from && other.high <= to;
        return [cut(biscuits, 2, whole ? `in both edges, centered ${setting.size(middle - from)} from the ${ends[0]} end`
            : `in both edges at line ${other.name}, once the splice there is together`)];
    });
    return [...own && splices.length > 0 ? [cut(own, splices.length, `in the ${splices.join(' and the ')} end`)] : [], ...edges];
}
