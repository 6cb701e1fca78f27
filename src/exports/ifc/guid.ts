/** FNV-1a over 128 bits (public domain): the same words give the same number on every machine. */
const OFFSET = 0x6c62272e07bb014262b821756295c58dn;
const PRIME = 0x0000000001000000000000000000013bn;
const WHOLE = 1n << 128n;

/** The 64 letters that IFC writes a number of 128 bits in (ISO 16739, IfcGloballyUniqueId). */
const LETTERS = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz_$';

/**
 * A GlobalId made from a name: a piece keeps it through every export, so that another program knows the piece again.
 * 22 letters, the first of which stands for two bits alone.
 */
export function guidOf(name: string): string {
    let number = OFFSET;
    for (const byte of new TextEncoder().encode(name)) number = ((number ^ BigInt(byte)) * PRIME) % WHOLE;
    let letters = '';
    for (let i = 0; i < 22; i++) {
        letters = LETTERS[Number(number & 63n)]! + letters;
        number >>= 6n;
    }
    return letters;
}
