import type { Ticks } from '../quantity/ticks.ts';

/** Why a plan cannot be worked out. Names are those of the plan; whoever asked turns them into words at their places. */
export type Trouble =
    | { readonly kind: 'room-crosses-itself' }
    /** Walls listed the wrong way round. */
    | { readonly kind: 'room-counterclockwise' }
    | { readonly kind: 'wall-without-length'; readonly wall: string }
    | { readonly kind: 'name-twice'; readonly name: string }
    | { readonly kind: 'unknown-carrier'; readonly line: string; readonly name: string }
    /** It runs along what it should end at, or ends where it starts. */
    | { readonly kind: 'never-gets-there'; readonly line: string; readonly to: string }
    /** It reaches a wall or line beyond the end of that. */
    | { readonly kind: 'misses'; readonly line: string; readonly to: string }
    | { readonly kind: 'leaves-the-room'; readonly line: string; readonly at: string }
    /** Its center is the line of a wall that juts into the room. */
    | { readonly kind: 'on-a-wall'; readonly line: string; readonly wall: string }
    /** Its end lies over an outside corner, across two walls, or over another line's end. `by`: how far, along `on`. */
    | { readonly kind: 'in-the-way'; readonly on: string; readonly between: readonly [string, string]; readonly by: Ticks }
    /** On its way it lies over a corner of the wall, or of what runs along it. `by`: how far, square to the line. */
    | { readonly kind: 'grazes'; readonly line: string; readonly wall: string; readonly by: Ticks }
    /** It meets another line in a corner that sticks out through a wall, or through what runs along it. `by`: how far, square to that. */
    | { readonly kind: 'sticks-out'; readonly line: string; readonly other: string; readonly through: string; readonly by: Ticks }
    /** With lines that it ends at, and that end at it: none of them comes to a wall. */
    | { readonly kind: 'outside'; readonly line: string }
    /** It leaves so little to an outside corner of a coffer that trims round it and along the line are in each other. */
    | { readonly kind: 'crowds'; readonly line: string; readonly wall: string; readonly leaves: Ticks; readonly wants: Ticks }
    /** It leaves its coffer an edge that is shorter than what the miters of the trim on it take. `along`: the wall or line of that edge. */
    | { readonly kind: 'shortens'; readonly line: string; readonly along: string; readonly leaves: Ticks; readonly wants: Ticks }
    | { readonly kind: 'deeper-than-its-end'; readonly line: string; readonly at: string; readonly deep: Ticks; readonly has: Ticks };
