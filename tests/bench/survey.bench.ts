// A room with 200 lines more for the places at which its ceiling was surveyed: a keystroke in it to the findings that are told at once, and what is looked at
// when the hand rests. Milliseconds of the processor.
import { readFile } from '../../src/language/read-file.ts';
import { layoutOf, takeOffOf } from '../../src/pipeline/inspect.ts';
import { inspectClosely } from '../../src/pipeline/inspect-closely.ts';
import { surveyedOf } from '../../src/survey/survey.ts';
import { hallOf } from './hall.ts';
import { median, p95 } from './spread.ts';
import { Workbench } from './workbench.ts';

/** A wavy ceiling, read in 20 rows of 10. */
const POINTS = Array.from({ length: 200 }, (_, i) => {
    const [x, y] = [i % 20, Math.floor(i / 20)];
    return `    point ${x * 20}", ${y * 31}" up ${(14 + Math.round(8 * Math.sin(x / 3) * Math.cos(y / 2)) / 32).toFixed(5)}"\n`;
}).join('');
const KEYSTROKES = 120;

export default async function measure(): Promise<Record<string, number>> {
    const text = hallOf(8, 5).replace('  grid {', `  survey {\n${POINTS}  }\n  grid {`), path = '/house/hall.coffer', bench = new Workbench();
    await bench.open([{ path, text }]);
    const processor = async (doIt: () => unknown): Promise<number> => {
        const began = process.cpuUsage();
        await doIt();
        const { user, system } = process.cpuUsage(began);
        return (user + system) / 1000;
    };
    const file = () => readFile(bench.document(path)), figures: Record<string, number> = { 'lines of the text': text.split('\n').length };
    const { ceiling } = layoutOf(file().rooms[0]!);
    figures['lines of beams'] = ceiling?.lines.length ?? 0;
    figures['readings'] = file().rooms[0]!.survey!.points.length;
    figures['cold: the surface, the plane and every side'] = ceiling ? await processor(() => surveyedOf(ceiling, takeOffOf(ceiling))) : 0;
    const typed: number[] = [], moved: number[] = [];
    for (let key = 0; key < KEYSTROKES; key++) {
        // a digit in a reading, and away again; the price of a board; the walls
        typed.push(await processor(() => bench.edit(path, key % 2 === 0 ? text.replace('up 14.0', 'up 14.1') : text)));
        moved.push(await processor(() => bench.edit(path, key % 2 === 0 ? text.replace(/wall north +/, found => `${found}1`) : text)));
    }
    const settled = (all: readonly number[]): number[] => all.slice(20);
    figures['a digit in a reading, keystroke to findings, median'] = median(settled(typed));
    figures['a digit in a reading, keystroke to findings, p95'] = p95(settled(typed));
    figures['a digit in a wall, keystroke to findings, median'] = median(settled(moved));
    figures['a digit in a wall, keystroke to findings, p95'] = p95(settled(moved));
    const rested: number[] = [];
    for (let i = 0; i < 5; i++) {
        await bench.edit(path, text.replace('up 14.0', `up 14.${i}`));
        rested.push(await processor(() => inspectClosely(file())));
    }
    figures['all of it when the hand rests, after a digit in a reading, median'] = median(rested);
    return figures;
}
