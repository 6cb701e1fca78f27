// An L out of square with beams of two depths, of 40 coffers and of twice and four times as many: what layout, take-off and dry fit
// take, and how that grows. Milliseconds of the processor, once warm.
import { layOut } from '../../src/ceiling/layout.ts';
import { dryFit } from '../../src/dryfit/dry-fit.ts';
import type { Room } from '../../src/job/model.ts';
import { readFile } from '../../src/language/read-file.ts';
import { takeOff } from '../../src/takeoff/take-off.ts';
import { lShape } from './l-shape.ts';
import { median } from './spread.ts';
import { Workbench } from './workbench.ts';

const SIZES = [[8, 7], [12, 9], [16, 14]] as const;
const RUNS = 60;
/** Rooms of files that nobody has asked about yet: of one room the same beams would be there already. */
let asked = 0;

export default async function measure(): Promise<Record<string, number>> {
    const figures: Record<string, number> = {};
    const grown: { coffers: number; pieces: number; fit: number }[] = [];
    for (const [across, down] of SIZES) {
        const room = await roomOf(lShape(across, down));
        const again = (): Room => ({ ...room, at: { ...room.at, uri: `${room.at.uri}?${String(asked++)}` } }), ceiling = layOut(room).ceiling;
        if (!ceiling) throw new Error(`The L of ${across} by ${down} coffers is not laid out: ${JSON.stringify(layOut(room).troubles[0])}.`);
        const off = takeOff(ceiling), coffers = ceiling.coffers.length, name = `L of ${coffers} coffers`;
        const faults = dryFit(ceiling, off).faults.length;
        const layout: number[] = [], pieces: number[] = [], fit: number[] = [], both: number[] = [];
        for (let run = 0; run < RUNS; run++) {
            const other = again(), laid = clocked(() => layOut(other).ceiling!), taken = clocked(() => takeOff(laid.result));
            layout.push(laid.ms);
            pieces.push(taken.ms);
            both.push(laid.ms + taken.ms);
            fit.push(clocked(() => dryFit(laid.result, taken.result)).ms);
        }
        const warm = (times: readonly number[]): number => median(times.slice(RUNS / 2));
        figures[`${name}, pieces`] = off.pieces.length;
        figures[`${name}, faults`] = faults;
        figures[`${name}, laid out`] = warm(layout);
        figures[`${name}, taken off`] = warm(pieces);
        figures[`${name}, from job to pieces`] = warm(both);
        figures[`${name}, dry fit`] = warm(fit);
        grown.push({ coffers, pieces: warm(both), fit: warm(fit) });
    }
    const [first, , last] = grown as [typeof grown[0], unknown, typeof grown[0]], times = last.coffers / first.coffers;
    // 1: as the coffers; 2: with their square
    const power = (more: number): number => Math.log(more) / Math.log(times);
    figures['from job to pieces, grows with this power of the coffers'] = power(last.pieces / first.pieces);
    figures['dry fit, grows with this power of the coffers'] = power(last.fit / first.fit);
    return figures;
}

async function roomOf(text: string): Promise<Room> {
    const bench = new Workbench();
    await bench.open([{ path: '/house/refectory.coffer', text }]);
    return readFile(bench.document('/house/refectory.coffer')).rooms[0]!;
}

function clocked<T>(work: () => T): { result: T; ms: number } {
    const before = process.cpuUsage();
    const result = work();
    const { user, system } = process.cpuUsage(before);
    return { result, ms: (user + system) / 1000 };
}
