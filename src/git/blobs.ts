/** Objects as `git cat-file --batch` prints them, by their names; those that are not there are left out. */
export function printedBlobs(out: Buffer): Map<string, Buffer> {
    const blobs = new Map<string, Buffer>();
    for (let at = 0; at < out.length;) {
        const end = out.indexOf(10, at);
        if (end < 0) break;
        const [name = '', kind, size] = out.subarray(at, end).toString('latin1').split(' ');
        at = end + 1;
        if (kind !== 'blob') continue;
        blobs.set(name, out.subarray(at, at + Number(size)));
        at += Number(size) + 1;
    }
    return blobs;
}
