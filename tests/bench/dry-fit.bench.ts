// The dry fit: the worked example, a room of 40 coffers, a house of 20 rooms, and what is fitted again after a keystroke in
// one of them. Milliseconds, with the take-off where it says so.
import { layOut } from '../../src/ceiling/layout.ts';
import { dryFit } from '../../src/dryfit/dry-fit.ts';
import type { FileContent } from '../../src/job/file.ts';
import { readFile } from '../../src/language/read-file.ts';
import { inspectClosely } from '../../src/pipeline/inspect-closely.ts';
import { inspect, layoutOf } from '../../src/pipeline/inspect.ts';
import { takeOff } from '../../src/takeoff/take-off.ts';
import { exampleRoom } from '../support/example-room.ts';
import { madeHouse } from './made-house.ts';
import { median, p95 } from './spread.ts';
import { Workbench } from './workbench.ts';

function fitted(file: FileContent): boolean {
    return file.rooms.every(room => layoutOf(room).ceiling) && !inspect(file).findings.some(finding => finding.severity === 'error');
}

export default async function measure(): Promise<Record<string, number>> {
    const figures: Record<string, number> = {};
    const timed = (name: string, room: ReturnType<typeof exampleRoom>, runs: number): void => {
        const ceiling = layOut(room).ceiling!, off = takeOff(ceiling);
        const began = performance.now();
        const { looked } = dryFit(ceiling, off);
        figures[`${name}, first`] = performance.now() - began;
        const times = Array.from({ length: runs }, () => {
            const start = performance.now();
            dryFit(ceiling, off);
            return performance.now() - start;
        });
        figures[`${name}, warm, median`] = median(times.slice(runs / 2));
        figures[`${name}, pieces`] = looked.pieces;
        figures[`${name}, pairs`] = looked.pairs;
    };
    timed('worked example', exampleRoom(), 200);
    timed('40 coffers', exampleRoom({ width: `40'`, length: `26'`, north: { coffers: 8 }, east: { coffers: 5 } }), 60);

    // with a band that suits each detail: a room with an error is not put together
    const house = madeHouse(20).map(file => ({ ...file, text: file.path.includes('/rooms/') ? file.text.replaceAll('board-1x10', /low-box/.test(file.text) ? 'board-1x6' : /broad-box/.test(file.text) ? 'board-1x10' : 'board-1x8') : file.text }));
    const bench = new Workbench();
    await bench.open(house);
    const rooms = house.filter(file => file.path.includes('/rooms/room-'));
    globalThis.gc?.();
    const before = process.memoryUsage().heapUsed;
    const fits = rooms.map(({ path }) => {
        const file = readFile(bench.document(path));
        const start = performance.now();
        inspectClosely(file);
        return performance.now() - start;
    });
    figures['rooms put together'] = rooms.filter(({ path }) => fitted(readFile(bench.document(path)))).length;
    figures['20 rooms, take-off and all'] = fits.reduce((sum, one) => sum + one, 0);
    globalThis.gc?.();
    figures['memory kept for 20 rooms, MB'] = (process.memoryUsage().heapUsed - before) / 1e6;

    const again: number[] = [], others: number[] = [];
    for (let key = 0; key < 60; key++) {
        const { path, text } = rooms[key % rooms.length]!;
        await bench.edit(path, text.replace(/coffers-north  \d/, `coffers-north  ${3 + Math.floor(key / rooms.length)}`));
        const start = performance.now();
        inspectClosely(readFile(bench.document(path)));
        again.push(performance.now() - start);
        const middle = performance.now();
        for (const other of rooms) if (other.path !== path) inspectClosely(readFile(bench.document(other.path)));
        others.push(performance.now() - middle);
    }
    figures['after a keystroke in one room, that room, median'] = median(again);
    figures['after a keystroke in one room, that room, p95'] = p95(again);
    figures['after a keystroke in one room, the other 19, median'] = median(others);
    return figures;
}
