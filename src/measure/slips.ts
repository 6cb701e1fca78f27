import type { Show } from '../quantity/print-length.ts';
import { TICKS_PER_FOOT, TICKS_PER_INCH, TICKS_PER_MM, type Ticks } from '../quantity/ticks.ts';

/**
 * How a tape is misread or a reading miswritten. `held-at-one`: it was held at its 1" mark (or at 100 mm), and that was not taken off. Common practice,
 * no source.
 */
export type Slip = 'held-at-one' | 'inch' | 'foot' | 'centimeter' | 'swapped-digits' | 'upside-down' | 'wrong-side-of-inch';

/** The other readings are off a little as well. Common practice, no source. */
const NEAR: Ticks = TICKS_PER_INCH / 16;

/** The usual slip by which a tape that should read `should` was written as `reads`; undefined where none comes near. */
export function slipOf(reads: Ticks, should: Ticks, show: Show): Slip | undefined {
    return (show === 'millimeters' ? metric : imperial)(reads, should);
}

function imperial(reads: Ticks, should: Ticks): Slip | undefined {
    const off = reads - should, isNear = (ticks: number): boolean => Math.abs(ticks) <= NEAR;
    if (isNear(off - TICKS_PER_INCH)) return 'held-at-one';
    if (isNear(off + TICKS_PER_INCH)) return 'inch';
    if (isNear(Math.abs(off) - TICKS_PER_FOOT)) return 'foot';
    const inches = Math.floor(reads / TICKS_PER_INCH), over = reads - inches * TICKS_PER_INCH, feet = Math.floor(inches / 12), rest = inches % 12;
    const isMeant = (whole: number): boolean => Math.abs(whole * TICKS_PER_INCH + over - should) <= NEAR;
    // as feet and inches, each with its own digits, and as inches alone
    const written = (change: (text: string) => readonly string[]): number[] => [
        ...change(String(feet)).map(text => Number(text) * 12 + rest),
        ...change(String(rest)).map(Number).filter(value => value < 12).map(value => feet * 12 + value),
        ...change(String(inches)).map(Number),
    ];
    if (written(swaps).some(isMeant)) return 'swapped-digits';
    if (written(turned).some(isMeant)) return 'upside-down';
    // 3/8" past the mark, read backwards from the next one
    if (over !== 0 && isNear(2 * (TICKS_PER_INCH / 2 - over) - (should - reads)) && Math.abs(off) > NEAR && Math.abs(off) < TICKS_PER_INCH) return 'wrong-side-of-inch';
    return undefined;
}

function metric(reads: Ticks, should: Ticks): Slip | undefined {
    const off = reads - should, isNear = (ticks: number): boolean => Math.abs(ticks) <= NEAR;
    if (isNear(off - 100 * TICKS_PER_MM)) return 'held-at-one';
    if (isNear(Math.abs(off) - 10 * TICKS_PER_MM)) return 'centimeter';
    const whole = Math.floor(reads / TICKS_PER_MM), over = reads - whole * TICKS_PER_MM;
    const isMeant = (text: string): boolean => isNear(Number(text) * TICKS_PER_MM + over - should);
    if (swaps(String(whole)).some(isMeant)) return 'swapped-digits';
    return turned(String(whole)).some(isMeant) ? 'upside-down' : undefined;
}

/** With two digits beside each other the other way round. */
function swaps(text: string): string[] {
    return Array.from({ length: text.length - 1 }, (_, i) => `${text.slice(0, i)}${text[i + 1]}${text[i]}${text.slice(i + 2)}`).filter(each => each !== text);
}

/** With a 6 for a 9, or the other way round, as a tape is read from the wrong side. */
function turned(text: string): string[] {
    return [...text].flatMap((digit, i) => (digit === '6' || digit === '9' ? [`${text.slice(0, i)}${digit === '6' ? '9' : '6'}${text.slice(i + 1)}`] : []));
}

const WORDS: Readonly<Record<Slip, string>> = {
    'held-at-one': 'as if the tape was held at its first mark', 'inch': 'as if an inch was miscounted', 'foot': 'as if a foot was miscounted',
    'centimeter': 'as if a centimeter was miscounted', 'swapped-digits': 'as if two digits were swapped', 'upside-down': 'as if a 6 was taken for a 9, or a 9 for a 6',
    'wrong-side-of-inch': 'as if the fraction was read from the wrong side of the inch',
};
/** In words: "as if a foot was miscounted". */
export function slipWords(slip: Slip): string {
    return WORDS[slip];
}
