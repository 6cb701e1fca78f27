/** `2`, `2 and B`, `1, 2 and B`; `mitered or butted`. */
export function listed(words: readonly string[], last: 'and' | 'or' = 'and'): string {
    return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} ${last} ${words.at(-1)}`;
}

/** `1 board`, `3 boards`, `0 boards`. */
export function counted(count: number, one: string, many = `${one}s`): string {
    return `${count} ${count === 1 ? one : many}`;
}

/** The unit of so many: of one `tubes` a tube. What is measured, as in `mL`, has no other word for one. */
export function unitOf(count: number, unit: string): string {
    return count === 1 ? unit.replace(/s$/, '') : unit;
}

export function capitalized(words: string): string {
    return words.charAt(0).toUpperCase() + words.slice(1);
}
