import type { LaidBoard } from '../../sawing/index.ts';

/** Names a board by what is cut from it, not by its number, which is another's as soon as the plan changes. */
export function boardKey({ stock, length, strips }: LaidBoard): string {
    const pieces = strips.flatMap(strip => strip.pieces.map(({ piece }) => piece.id)).sort();
    return `board.${stock.name}.${length}.${hash(pieces.join(' '))}`;
}

/** 53 bits of two multiplications a letter: short enough to keep, long enough to tell a house's boards apart. */
export function hash(words: string): string {
    let a = 0xdeadbeef, b = 0x41c6ce57;
    for (let i = 0; i < words.length; i++) {
        const c = words.charCodeAt(i);
        a = Math.imul(a ^ c, 2654435761);
        b = Math.imul(b ^ c, 1597334677);
    }
    a = Math.imul(a ^ (a >>> 16), 2246822507) ^ Math.imul(b ^ (b >>> 13), 3266489909);
    b = Math.imul(b ^ (b >>> 16), 2246822507) ^ Math.imul(a ^ (a >>> 13), 3266489909);
    return (4294967296 * (2097151 & b) + (a >>> 0)).toString(36);
}
