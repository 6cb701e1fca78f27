import type { Rabbet, Side } from '../job/model.ts';
import type { Ticks } from '../quantity/ticks.ts';

/** One thing that is done to a piece besides cutting it to length, as figures. Lengths in ticks. */
export type Work =
    /** `thickness` where it is ripped both ways (a cleat); `fence`: the name of the fence setting, where the job gives one. */
    | { readonly kind: 'rip'; readonly width: Ticks; readonly thickness?: Ticks; readonly fence?: string }
    | { readonly kind: 'rabbet'; readonly width: Ticks; readonly height: Ticks; readonly edge: Rabbet['edge']; readonly face: Rabbet['face'] }
    /** The edge at the wall scribed to it: so much of it is there to be taken off. */
    | { readonly kind: 'scribe'; readonly by: Ticks }
    /** The two back edges taken off. */
    | { readonly kind: 'ease'; readonly by: Ticks }
    /** `count` at each of so many places: ends or edges, in words "in the west and the east end". */
    | Slots
    /**
     * Where biscuits are left out, or a bottom is cut in two: a block behind the joint at this end, or in its middle, so wide.
     */
    | { readonly kind: 'block'; readonly end: Side | 'middle'; readonly width: Ticks }
    /** Cut in two in its middle, the back of the joint there relieved. */
    | { readonly kind: 'halve'; readonly relieved: Ticks }
    /** Across its back, from center to center, so that its middle hangs down so far while it goes in. */
    | { readonly kind: 'kerfs'; readonly count: number; readonly apart: Ticks; readonly depth: Ticks; readonly hangs: Ticks }
    | { readonly kind: 'pocket-holes'; readonly count: number }
    /** The corner away from the side, taken off so far along the piece at its west or north end and at the other. */
    | { readonly kind: 'nip'; readonly by: readonly [Ticks, Ticks]; readonly ends: readonly [string, string] }
    /** Cut to its shape, corner by corner: so far along from its west or north end, and in from its edge to the north or west, as the words of both tell. */
    | { readonly kind: 'shape'; readonly corners: readonly (readonly [Ticks, Ticks])[]; readonly from: readonly [string, string] };

/**
 * `opened` to the back of the piece, so that it goes up over the biscuits; or so much `wider` than the biscuit, towards the back, since it comes to it at
 * an angle.
 */
interface Slots {
    readonly kind: 'slots'; readonly count: number; readonly size: string; readonly places: number; readonly where: string;
    readonly opened?: Opened; readonly wider?: Ticks;
}

/** A slot that is open to the back: as long as the biscuit's slot is, so deep from there, with so much wood left under it. */
export interface Opened { readonly long: Ticks; readonly deep: Ticks; readonly leaves: Ticks }

/** The same in words, as lists and sheets print it. `size` prints a length. */
export function workWords(work: Work, size: (ticks: Ticks) => string): string {
    switch (work.kind) {
        case 'rip': return `rip to ${work.thickness === undefined ? '' : `${size(work.thickness)} x `}${size(work.width)}`;
        case 'rabbet': return `rabbet ${size(work.width)} x ${size(work.height)} on the ${work.edge} ${work.face} edge`;
        case 'scribe': return `${size(work.by)} of it to be scribed to the wall`;
        case 'ease': return `ease the two back edges ${size(work.by)}`;
        case 'slots': return `${work.count === 1 ? `slot for 1 ${work.size} biscuit` : `slots for ${work.count} ${work.size} biscuits`} ${work.where}${work.opened ? ', opened to the back' : work.wider ? `, ${size(work.wider)} wider towards the back` : ''}`;
        case 'block': return `glue a block ${size(work.width)} wide behind the joint ${work.end === 'middle' ? 'in its middle' : `at its ${work.end} end`}`;
        case 'halve': return `cut in two in its middle, the back of the joint relieved by ${size(work.relieved)}`;
        case 'kerfs': return `${work.count} kerfs across its back, ${size(work.apart)} apart and ${size(work.depth)} deep`;
        case 'pocket-holes': return `${work.count} pocket holes at the upper end`;
        case 'nip': {
            const nips = work.by.flatMap((by, i) => (by > 0 ? [`${size(by)} at the ${work.ends[i]} end`] : []));
            return `nip the corner away from the side ${nips.join(' and ')}`;
        }
        case 'shape': {
            const corners = work.corners.map(([along, across]) => `${size(along)}, ${size(across)}`);
            return `cut to shape by its corners, from the ${work.from[0]} end and from the ${work.from[1]} edge: ${corners.join('; ')}`;
        }
    }
}
