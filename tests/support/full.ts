/** Everyday's run makes a share of the long tests' cases, FULL=1 all of them, as the step `full` of `.ci/run` does in some folders. */
export const FULL = (process.env['FULL'] ?? '') !== '';

/** How many of a property's cases are tried, or how often something has to have come up in them. The seed is the same, so everyday's are the first of all. */
export function runs(all: number, everyday = Math.ceil(all / 30)): number {
    return FULL ? all : everyday;
}

/** Of a table of cases every n-th is tried everyday, all of them with FULL=1. */
export function some<T>(all: readonly T[], every: number): readonly T[] {
    return FULL ? all : all.filter((_, i) => i % every === 0);
}
