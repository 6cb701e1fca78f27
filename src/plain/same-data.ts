/**
 * Whether two values of plain data, made apart from each other, say the same in every part: objects, lists and figures. What holds its parts
 * otherwise (a map, a set) is the same only as itself.
 */
export function sameData(a: unknown, b: unknown): boolean {
    if (Object.is(a, b)) return true;
    if (!isHolder(a) || !isHolder(b) || Array.isArray(a) !== Array.isArray(b)) return false;
    const keys = Object.keys(a);
    return keys.length === Object.keys(b).length && keys.every(key => Object.hasOwn(b, key) && sameData(a[key], b[key]));
}

function isHolder(value: unknown): value is Record<string, unknown> {
    return typeof value === 'object' && value !== null && !(value instanceof Map) && !(value instanceof Set);
}
