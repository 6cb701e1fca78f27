// How a ceiling is put up: its order with the way of every piece tried, for one crew and for two, in rooms of 12 to 160 coffers, and how that grows; the
// choice of through lines of 8 by 8; and what the pane takes from a keystroke to its new picture, beside the time that the hand is waited for. Of a room of one
// size each time is that of a ceiling that nobody has asked about yet. Milliseconds of the processor; of the pane, by the clock.
import { layOut } from '../../src/ceiling/layout.ts';
import type { Ceiling } from '../../src/ceiling/model.ts';
import type { Room } from '../../src/job/model.ts';
import { readFile } from '../../src/language/read-file.ts';
import { putUpContent } from '../../src/report/put-up/content.ts';
import { bestThrough } from '../../src/putup/closing/best-through.ts';
import { putUp } from '../../src/putup/put-up.ts';
import { takeOffOf } from '../../src/takeoff/take-off.ts';
import { contentMessage, roomOnPage, serve } from '../panes/support/content.ts';
import { leaveBrowser, PanePage, startBrowser, useBrowser } from '../panes/support/pane-page.ts';
import { hallOf } from './hall.ts';
import { median, p95 } from './spread.ts';
import { Workbench } from './workbench.ts';

const SIZES = [[4, 3], [8, 5], [10, 8], [16, 10]] as const;
const RUNS = 12, TIMES = 20;
const PANE = { width: 1000, height: 800 };

export default async function measure(keep: (figures: Record<string, number>) => void): Promise<Record<string, number>> {
    const figures: Record<string, number> = {}, grown: { pieces: number; ms: number }[] = [];
    for (const [across, down] of SIZES) {
        const room = await roomOf(hallOf(across, down)), name = `${across * down} coffers`, first = ceilingOf(room), pieces = takeOffOf(first).pieces.length;
        const cold = clocked(() => putUp(first)).ms, one: number[] = [], two: number[] = [], told: number[] = [];
        for (let run = 0; run < RUNS; run++) {
            const ceiling = ceilingOf(room), off = takeOffOf(ceiling), other = ceilingOf(byTwo(room));
            takeOffOf(other);
            one.push(clocked(() => putUp(ceiling)).ms);
            two.push(clocked(() => putUp(other)).ms);
            told.push(clocked(() => putUpContent(ceiling, off)).ms);
        }
        const warm = (all: readonly number[]): number => median(all.slice(RUNS / 2));
        Object.assign(figures, {
            [`${name}, pieces`]: pieces, [`${name}, order and ways, the first time`]: cold, [`${name}, order and ways`]: warm(one),
            [`${name}, order and ways, two crews`]: warm(two), [`${name}, all that is told`]: warm(told),
        });
        grown.push({ pieces, ms: warm(one) });
    }
    const [least, most] = [grown[0]!, grown.at(-1)!];
    figures['order and ways grow with this power of the pieces'] = Math.log(most.ms / least.ms) / Math.log(most.pieces / least.pieces);
    const grid = await roomOf(hallOf(9, 9));
    figures['8 by 8 lines, the choice of what runs through'] = median(Array.from({ length: RUNS }, () => { const ceiling = ceilingOf(grid); takeOffOf(ceiling); return clocked(() => bestThrough(ceiling)).ms; }));
    keep(figures);
    return { ...figures, ...await pane() };
}

/** From a changed width of the room. On the keystroke itself the pane hears that it is worked out; the rest is done while the hand rests. */
async function pane(): Promise<Record<string, number>> {
    const figures: Record<string, number> = {}, server = await startBrowser();
    try {
        await useBrowser(server.wsEndpoint());
        for (const [across, down] of SIZES.slice(0, 2)) {
            const workspace = await serve({ 'hall.coffer': hallOf(across, down) }), page = await PanePage.open('put-up', PANE), name = `pane of ${across * down} coffers`;
            const typed: number[] = [], whole: number[] = [], step: number[] = [];
            for (let time = 0; time < TIMES + 5; time++) {
                await workspace.edit({ 'hall.coffer': hallOf(across, down, time % 2 === 0 ? 33 : 34 + time) });
                const began = performance.now(), room = roomOnPage(workspace, 'hall.coffer');
                contentMessage('put-up', Object.create(room, { order: { value: 'looking' } }) as typeof room, PANE);
                const onTheKey = performance.now() - began, message = contentMessage('put-up', room, PANE);
                const made = performance.now() - began, painted = await page.paints(message), scrubbed = await page.page.evaluate<number>(STEP_ON);
                if (time < 5) continue;
                typed.push(onTheKey);
                whole.push(made + painted);
                step.push(scrubbed);
            }
            Object.assign(figures, {
                [`${name}, on the keystroke, median`]: median(typed), [`${name}, changed text to new picture, median`]: median(whole),
                [`${name}, changed text to new picture, p95`]: p95(whole), [`${name}, key along the steps to the picture, median`]: median(step),
                [`${name}, key along the steps to the picture, p95`]: p95(step),
            });
            await page.close();
        }
    } finally {
        await leaveBrowser();
        await server.close();
    }
    return figures;
}

/** One step on by the slider, as a key moves it, until the frame after. In the page. */
const STEP_ON = `new Promise(done => {
    const slider = document.getElementById('scrub'), began = performance.now();
    slider.value = String(Number(slider.value) % Number(slider.max) + 1);
    slider.dispatchEvent(new Event('input', { bubbles: true }));
    requestAnimationFrame(() => requestAnimationFrame(() => done(performance.now() - began)));
})`;

let asked = 0;
/** Of a file that nobody has asked about yet: of one room the same beams would be there already. */
function ceilingOf(room: Room): Ceiling {
    return layOut({ ...room, at: { ...room.at, uri: `${room.at.uri}?${asked++}` } }).ceiling!;
}

function byTwo(room: Room): Room {
    return { ...room, putUp: { at: room.at, up: [], orders: [], waits: [], crews: { value: 2, at: room.at, said: true } } };
}

async function roomOf(text: string): Promise<Room> {
    const bench = new Workbench();
    await bench.open([{ path: '/house/hall.coffer', text }]);
    return readFile(bench.document('/house/hall.coffer')).rooms[0]!;
}

function clocked(work: () => unknown): { ms: number } {
    const before = process.cpuUsage();
    work();
    const { user, system } = process.cpuUsage(before);
    return { ms: (user + system) / 1000 };
}
