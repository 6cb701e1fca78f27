import type { Crossing, Layout, Line } from '../../ceiling/model.ts';
import type { Source } from '../../provenance/source.ts';
import { atKey } from '../../plain/at-key.ts';

/** Two lines of different details that cross, seen from the line whose words make the difference. */
interface Meeting {
    readonly line: Line;
    /** The lines of one detail that it crosses. */
    readonly others: readonly Line[];
    /** What says of which detail `line` is. */
    readonly at: Source;
    readonly via?: readonly Source[];
}

/**
 * Where different details meet at crossings, each once: the line that has a block of its own stands for the difference, the
 * east-west one where both have (or, by the grid's own beams, neither has). All lines alike: none.
 */
export function meetings({ room, ceiling }: Layout, counts: (crossing: Crossing) => boolean = () => true): Meeting[] {
    const found = new Map<string, { line: Line; others: Line[] }>();
    const ownBeams = new Map(room.lines.filter(spec => spec.beams).map(spec => [spec.name, spec.beams!]));
    for (const crossing of ceiling?.crossings ?? []) {
        const { ns, ew, flush } = crossing;
        if (!flush || !counts(crossing) || ns.section.profile === ew.section.profile) continue;
        const [line, other] = ownBeams.has(ns.name) && !ownBeams.has(ew.name) ? [ns, ew] : [ew, ns];
        const key = `${line.name} ${other.section.profile.key}`;
        atKey(found, key, () => ({ line, others: [] as Line[] })).others.push(other);
    }
    return [...found.values()].map(({ line, others }) => {
        const beams = ownBeams.get(line.name);
        return { line, others, at: beams?.at ?? line.at, via: beams?.via };
    });
}
