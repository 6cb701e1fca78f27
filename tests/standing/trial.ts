export type Change = readonly [from: string, to: string];
/** `from` stands in the job once and becomes `to`. `in`: what is otherwise in the job before that. */
export interface Trial { readonly change: Change; readonly in?: readonly Change[] }

export function is(from: string, to: string, ...before: Change[]): Trial {
    return { change: [from, to], ...before.length > 0 && { in: before } };
}
