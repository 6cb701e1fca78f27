// A house of 20 rooms in 20 files over shared details: a keystroke in a room, a keystroke in the shared stock, and how
// the cold check grows with the house. Milliseconds.
import { median, p95 } from './spread.ts';
import { madeHouse } from './made-house.ts';
import { Workbench } from './workbench.ts';

const KEYSTROKES = 300;

export default async function measure(): Promise<Record<string, number>> {
    const figures: Record<string, number> = {};
    const house = madeHouse(20);
    const bench = new Workbench();
    await bench.open(house);
    const rooms = house.filter(file => file.path.includes('/rooms/room-'));
    figures['lines of a room file'] = rooms[0]!.text.split('\n').length;
    figures['findings in the house'] = house.reduce((sum, file) => sum + bench.findings(file.path), 0);

    // what a hand types: a digit more in a length, and away again
    const typed = (text: string, key: number): string => key % 2 === 0 ? text.replace('wall north  ', `wall north  1`) : text;
    const warm = async (): Promise<void> => {
        for (let key = 0; key < 100; key++) {
            const { path, text } = rooms[key % rooms.length]!;
            await bench.edit(path, typed(text, key));
            await bench.parseAndLink(path, typed(text, key));
            await bench.edit(path, text);
        }
    };
    await warm();

    const checked: number[] = [], bare: number[] = [];
    for (let key = 0; key < KEYSTROKES; key++) {
        const { path, text } = rooms[Math.floor(key / 4) % rooms.length]!;
        const now = typed(text, key);
        checked.push(await bench.edit(path, now));
        bare.push(await bench.parseAndLink(path, now));
    }
    figures['room file, keystroke to findings, median'] = median(checked);
    figures['room file, keystroke to findings, p95'] = p95(checked);
    figures['room file, parse and link alone, median'] = median(bare);
    figures['room file, parse and link alone, p95'] = p95(bare);
    figures['ratio of the medians'] = median(checked) / median(bare);

    const yard = house[0]!;
    const stock: number[] = [];
    for (let key = 0; key < 40; key++) stock.push(await bench.edit(yard.path, key % 2 === 0 ? yard.text.replace('1.10 USD', '1.20 USD') : yard.text));
    figures['shared stock file, keystroke to findings of 25 files, median'] = median(stock);
    figures['shared stock file, keystroke to findings of 25 files, p95'] = p95(stock);

    for (const count of [10, 20, 200]) {
        const files = madeHouse(count);
        const times: number[] = [];
        for (let run = 0; run < (count > 100 ? 3 : 7); run++) {
            const fresh = new Workbench();
            const began = performance.now();
            await fresh.open(files);
            times.push(performance.now() - began);
        }
        figures[`${count} rooms opened and checked, warm process, median`] = median(times);
    }
    figures['memory after all, MB'] = process.memoryUsage().heapUsed / 1e6;
    return figures;
}
