/** What stands in a commit's folders. `path`: from the top, with forward slashes. */
export interface Listed {
    readonly path: string;
    /** `other`: a repository within the repository. */
    readonly kind: 'file' | 'link' | 'other';
    /** The name of what is stored. */
    readonly blob: string;
    readonly bytes: number;
}

/** Before the commit, and the paths that are asked for, if not all are. */
export const LIST_TREE = ['ls-tree', '-r', '-l', '-z', '--full-tree'];

/** What git prints when it is asked so. */
export function printedTree(out: Buffer): Listed[] {
    return out.toString('utf8').split('\0').filter(line => line !== '').map(line => {
        const tab = line.indexOf('\t'), [mode, kind, blob = '', size] = line.slice(0, tab).split(/ +/);
        return { path: line.slice(tab + 1), kind: mode === '120000' ? 'link' : kind === 'blob' ? 'file' : 'other', blob, bytes: Number(size) };
    });
}
