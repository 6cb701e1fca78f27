import { judge, type Web, type Which } from '../../../src/putup/closing/web.ts';

/** Every choice there is, tried: fewest closing pieces among those with a first piece, and among all. Of the tees only where they are free. */
export function everyChoice(web: Web, freeTees: boolean): { least: number | undefined; reach: number; ignoringCycles: number } {
    const open = web.meetings.flatMap(({ kind }, m) => (kind === 'tee' && !freeTees ? [] : [m]));
    let least: number | undefined, reach = 0, ignoringCycles = Infinity;
    for (let number = 0; number < 2 ** open.length; number++) {
        const throughs = web.meetings.map(({ now }) => now);
        open.forEach((m, bit) => { throughs[m] = (number >> bit & 1) as Which; });
        const { closing, cycle } = judge(web, throughs);
        ignoringCycles = Math.min(ignoringCycles, closing);
        if (cycle) continue;
        if (least === undefined || closing < least) { least = closing; reach = 0; }
        if (closing === least) reach++;
    }
    return { least, reach, ignoringCycles };
}
