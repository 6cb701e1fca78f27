/** The few of Node's assertions that the suite uses, for a browser's worker. */
export function ok(value: unknown, message?: string): asserts value {
    if (!value) throw new Error(message ?? `${show(value)} is not true`);
}

export function equal(actual: unknown, expected: unknown, message?: string): void {
    if (!Object.is(actual, expected)) throw new Error(message ?? `${show(actual)} instead of ${show(expected)}`);
}

/** For plain data. */
export function deepEqual(actual: unknown, expected: unknown, message?: string): void {
    if (show(actual) !== show(expected)) throw new Error(message ?? `${show(actual)} instead of ${show(expected)}`);
}

export function match(text: string, pattern: RegExp, message?: string): void {
    if (!pattern.test(text)) throw new Error(message ?? `${pattern} is not in ${show(text)}`);
}

export function doesNotMatch(text: string, pattern: RegExp, message?: string): void {
    if (pattern.test(text)) throw new Error(message ?? `${pattern} is in ${show(text)}`);
}

function show(value: unknown): string {
    return JSON.stringify(value) ?? String(value);
}
