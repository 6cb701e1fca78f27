/** The files of one state of a folder. */
export interface StateOfFiles {
    /** Addresses of all that a file is made from. */
    madeFrom(uri: string): readonly string[];
    /** undefined: there is no such file, or it cannot be read. */
    textOf(uri: string): string | undefined;
    /** All that the tables say which it names. */
    tablesOf(uri: string): string;
}

/** Whether a file and all that it is made from say the same in two states: then what is known of it in one holds in the other, and is worked out once. */
export function saysTheSame(uri: string, before: StateOfFiles, after: StateOfFiles): boolean {
    const was = [uri, ...before.madeFrom(uri)].sort(), is = [uri, ...after.madeFrom(uri)].sort();
    return was.length === is.length && was.every((each, i) => {
        const text = before.textOf(each);
        return each === is[i] && text !== undefined && text === after.textOf(each) && before.tablesOf(each) === after.tablesOf(each);
    });
}
