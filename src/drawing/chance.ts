/**
 * Numbers from 0 up to 1 that look like chance and are the same on every machine: the same seed, the same wood grain.
 * (Mulberry32, a public-domain generator; whole-number arithmetic only.)
 */
export function chanceFrom(seed: string): () => number {
    let state = hash(seed);
    return () => {
        state = (state + 0x6d2b79f5) | 0;
        let mixed = Math.imul(state ^ (state >>> 15), state | 1);
        mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
        return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
    };
}

/** FNV-1a, 32 bits. */
function hash(words: string): number {
    let h = 0x811c9dc5;
    for (let i = 0; i < words.length; i++) h = Math.imul(h ^ words.charCodeAt(i), 0x01000193);
    return h;
}
