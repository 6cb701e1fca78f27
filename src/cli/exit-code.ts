/** What the program ends with. */
export const EXIT = {
    clean: 0,
    /** Something was found, or a list is incomplete. */
    findings: 1,
    /** Asked wrongly, or a file could not be read or written. */
    usage: 2,
    /** A mistake in this program. */
    internal: 101,
    /** Told to end by the system, with its number of that: a closed terminal, Ctrl+C, and what `kill` sends. */
    hungUp: 129,
    interrupted: 130,
    terminated: 143,
} as const;
export type ExitCode = (typeof EXIT)[keyof typeof EXIT];

/** The graver of the two. */
export function worst(a: ExitCode, b: ExitCode): ExitCode {
    return a > b ? a : b;
}

/** Asked for something that cannot be done: shown without a trace, exit code 2. */
export class UsageError extends Error {}
