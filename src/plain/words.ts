/** `2`, `2 and B`, `1, 2 and B`; `mitered or butted`. */
export function listed(words: readonly string[], last: 'and' | 'or' = 'and'): string {
    return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} ${last} ${words.at(-1)}`;
}

/** `1 board`, `3 boards`, `0 boards`. */
export function counted(count: number, one: string, many = `${one}s`): string {
    return `${count} ${count === 1 ? one : many}`;
}

export function capitalized(words: string): string {
    return words.charAt(0).toUpperCase() + words.slice(1);
}
