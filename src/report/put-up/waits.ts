import type { Ceiling } from '../../ceiling/model.ts';
import type { WaitSaid } from '../../job/model.ts';
import { listed } from '../../plain/words.ts';
import type { PutUp } from '../../putup/model.ts';
import { doneOn } from './days.ts';

/** What others finish first, as it is told. */
export interface WaitTold {
    readonly said: WaitSaid;
    readonly kind: 'room' | 'trade';
    /** The name of the room, or the words of the text. */
    readonly name: string;
    /** What waits for it, by the names of the text; empty: all of the room. */
    readonly before: readonly string[];
    /** The day on which they are done; null where nobody knows. */
    readonly until: number | null;
    /** Rooms that wait for each other, from this one on and back to it. */
    readonly circle: readonly string[] | null;
}

/** In the order of the text. */
export function waitsTold({ room: { putUp: said } }: Ceiling, { begin, steps }: PutUp): WaitTold[] {
    const held = new Set([...begin.waits, ...steps.flatMap(({ waits }) => waits)]);
    return (said?.waits ?? []).filter(wait => held.has(wait)).map((wait): WaitTold => {
        const before = wait.before.map(({ value }) => value);
        if (wait.kind === 'trade') return { said: wait, kind: 'trade', name: wait.trade.value, before, until: wait.untilDay?.value ?? null, circle: null };
        const room = wait.room.value;
        return { said: wait, kind: 'room', name: room.name, before, until: doneOn(room) ?? null, circle: 'circle' in room ? [room.circle[0]!.room, ...room.circle.map(({ waitsFor }) => waitsFor)] : null };
    });
}

/** `Before trim room pantry is done, which is on day 3.` */
export function waitWords({ kind, name, before, until, circle }: WaitTold): string {
    const what = before.length === 0 ? 'Before anything is begun' : `Before ${listed(before)}`, who = kind === 'room' ? `room ${name}` : `"${name}"`;
    if (circle) return `${what} ${who} would have to be done, which waits for this room: ${circle.join(', then ')}.`;
    if (until === null) return `${what} ${who} has to be done. ${kind === 'room' ? 'When that is cannot be reckoned: it is not laid out, or its labor says no crew or no times' : 'Nobody says on which day that is'}, so the days here do not wait for it.`;
    return `${what} ${who} is done, which is on day ${until}${kind === 'room' ? '; days are counted as there' : ''}.`;
}

/** `room pantry and "painter"`. */
export function afterWords(waits: readonly Pick<WaitTold, 'kind' | 'name'>[]): string {
    return listed(waits.map(({ kind, name }) => (kind === 'room' ? `room ${name}` : `"${name}"`)));
}
