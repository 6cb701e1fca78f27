import type { Answer, Asked } from './questions.ts';

/** Questions without those that are asked twice or were answered before, and the way back to each list of questions. */
interface AskedTogether {
    readonly asked: readonly Asked[];
    /** The answers to the questions of the list of that index, as far as they are known. */
    answersOf(list: number, found: ReadonlyMap<number, Answer>): Map<number, Answer>;
}

/**
 * What is to be asked about a job and about others that are compared with it: a stock that an alternate leaves as it is, is asked about once.
 * @param lists the questions of the job, then those of the others
 * @param before what was answered before, by `keyOfAsked`
 */
export function askTogether(lists: readonly (readonly Asked[])[], before: ReadonlyMap<string, Answer>): AskedTogether {
    const asked: Asked[] = [], places = new Map<string, number>();
    const keys = lists.map(list => list.map(keyOfAsked));
    lists.forEach((list, l) => list.forEach(({ withSections, ...question }, q) => {
        const key = keys[l]![q]!;
        if (before.has(key) || places.has(key)) return;
        const other = withSections === undefined ? undefined : places.get(keys[l]![withSections]!);
        places.set(key, asked.push({ ...question, ...other !== undefined && { withSections: other }, ...l > 0 && { isBeside: true } }) - 1);
    }));
    return {
        asked,
        answersOf: (list, found) => new Map(keys[list]!.flatMap((key, q): [number, Answer][] => {
            const answer = before.get(key) ?? found.get(places.get(key)!);
            return answer ? [[q, answer]] : [];
        })),
    };
}

/** Questions with the same key have the same answers. */
export function keyOfAsked({ problem }: Asked): string {
    return JSON.stringify(problem);
}
