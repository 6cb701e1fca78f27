import { bayAt } from '../ceiling/bays.ts';
import type { Line } from '../ceiling/model.ts';
import { term } from '../provenance/why.ts';
import { slotsOf, type SaidWays } from './closing/slots.ts';
import type { Piece } from './model.ts';
import { pieceOf } from './piece.ts';
import { longer, stretchesOf, type Stretch } from './runs.ts';
import { endsOf, type Setting } from './setting.ts';

/** Blocking of a line: flat against the ceiling, as wide as the channel between the sides. */
export function blockingOf(line: Line, setting: Setting): Piece[] {
    return stretchesOf(setting, line, 'blocking').flatMap(stretch => {
        const { section } = line, blocking = section.profile.blocking!;
        return pieceOf({
            part: 'blocking', line: line.name, bay: stretch.bay, nth: stretch.letter, stock: blocking.stock,
            ...stretch.lengths, ends: stretch.lie.ends, why: stretch.why,
            width: section.blockingWidth.ticks, thickness: section.blockingThickness.ticks, fence: blocking.ripWith?.value,
            where: whereOf(line, stretch), source: blocking.at,
            corners: stretch.lie.corners, meets: stretch.lie.meets, heights: [0, section.blockingThickness.ticks],
        }, setting);
    });
}

/**
 * Bottoms of a line, pressed against the cleats. `press` makes each longer than the opening it goes into; its place
 * is the opening, where it stands once it is in.
 */
export function bottomsOf(line: Line, setting: Setting, said: SaidWays = new Map()): Piece[] {
    return stretchesOf(setting, line, 'bottom').flatMap((stretch, _, stretches) => {
        const { section } = line, bottom = section.profile.bottom!, press = bottom.press?.value ?? 0;
        return pieceOf({
            part: 'bottom', line: line.name, bay: stretch.bay, nth: stretch.letter, stock: bottom.stock,
            ...longer(stretch.lengths, press), ends: stretch.lie.ends,
            why: [...stretch.why, term('press', 1, press, bottom.press?.at)],
            width: section.bottomWidth.ticks, thickness: section.bottomThickness.ticks,
            work: [bottom.ease && { kind: 'ease', by: bottom.ease.value }, ...slotsOf({ of: line.name, where: whereOf(line, stretch), biscuits: bottom.biscuits?.value, stretch, stretches }, said, setting)],
            fence: bottom.ripWith?.value,
            where: whereOf(line, stretch), source: bottom.at,
            corners: stretch.lie.corners, meets: stretch.lie.meets, heights: [section.bottomTop.ticks, section.depth.ticks],
        }, setting);
    });
}

/** A solid beam: its own line, with its face to either side. */
export function timbersOf(line: Line, setting: Setting): Piece[] {
    return stretchesOf(setting, line, 'beam').flatMap(stretch => {
        const { section } = line, solid = section.profile.solid!;
        return pieceOf({
            part: 'timber', line: line.name, bay: stretch.bay, nth: stretch.letter, stock: solid.stock, ...stretch.lengths, ends: stretch.lie.ends, why: stretch.why,
            width: section.depth.ticks, thickness: section.outerWidth.ticks, fence: solid.ripWith?.value, where: whereOf(line, stretch), source: solid.at,
            corners: stretch.lie.corners, meets: stretch.lie.meets, heights: [0, section.depth.ticks],
        }, setting);
    });
}

function whereOf(line: Line, { lie, bay, letter }: Stretch): string {
    const [end] = endsOf(line.runs), spliced = letter ? `, piece ${letter} from the ${end}` : '';
    if (bay === null) return letter ? `line ${line.name}${spliced}` : `line ${line.name}, through`;
    const last = bayAt(line, lie.to - 1);
    return `line ${line.name}, ${last > bay ? `bays ${bay} to ${last}` : `bay ${bay}`}${spliced}`;
}
