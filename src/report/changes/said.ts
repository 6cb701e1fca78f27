import type { SaidChange } from '../../changes/model.ts';

/** A change of what is said, as it is told: a block that is new or gone is told once, with how much stands in it. */
interface ToldChange { readonly change: SaidChange; readonly holds: number }

export function toldChanges(said: readonly SaidChange[]): ToldChange[] {
    const told: { change: SaidChange; holds: number }[] = [];
    for (const change of said) {
        const side = sideOf(change);
        const holds = (one: SaidChange): boolean => isWhole(one) && sideOf(one) === side && one.file === change.file && isInside(change, one);
        const whole = side === 'both' ? undefined : told.findLast(one => holds(one.change));
        if (whole) whole.holds++;
        else told.push({ change, holds: 0 });
    }
    return told;
}

function sideOf({ before, after }: SaidChange): 'before' | 'after' | 'both' {
    return before && after ? 'both' : before ? 'before' : 'after';
}

/** The head of a block that is in one state only. */
function isWhole({ before, after }: SaidChange): boolean {
    return (after ?? before)!.what === '' && !(before && after);
}

function isInside({ what }: SaidChange, { what: outer }: SaidChange): boolean {
    return what.length > outer.length && outer.every((word, i) => what[i] === word);
}

/** `room dining › grid › coffers-north`. */
export function whatText({ what }: SaidChange): string {
    return what.join(' › ');
}

/** What it said and says, as it is written; undefined where it is not there. A head that is called otherwise says its name. */
export function valuesOf({ before, after, renamedFrom, what }: SaidChange): { readonly was: string | undefined; readonly is: string | undefined } {
    if (renamedFrom === undefined) return { was: before?.value, is: after?.value };
    return { was: `${renamedFrom} ${before!.value}`.trimEnd(), is: `${what[0]} ${after!.value}`.trimEnd() };
}
