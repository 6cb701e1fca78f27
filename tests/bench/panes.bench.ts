// Panes without the editor around them: what a content costs the server, and how long a pane takes from a message to the
// painted picture; then all panes of a room of 12 coffers open at once. Milliseconds and MB.
import { contentMessage, roomOnPage, serve } from '../panes/support/content.ts';
import { leaveBrowser, PanePage, startBrowser, useBrowser } from '../panes/support/pane-page.ts';
import { PANE_KINDS } from '../../src/pages/kinds.ts';
import { hallOf } from './hall.ts';
import { median, p95 } from './spread.ts';

const TIMES = 40;
const MEGA = 1e6;

export default async function measure(): Promise<Record<string, number>> {
    const figures: Record<string, number> = {};
    const server = await startBrowser();
    try {
        await useBrowser(server.wsEndpoint());
        for (const [across, down] of [[4, 3], [8, 5]] as const) {
            const plan = `plan of ${across * down} coffers`;
            const workspace = await serve({ 'hall.coffer': hallOf(across, down) });
            const pane = await PanePage.open('plan', { width: 800, height: 800 });
            const made: number[] = [], shown: number[] = [];
            for (let time = 0; time < TIMES + 10; time++) {
                await workspace.edit({ 'hall.coffer': hallOf(across, down, time % 2 === 0 ? 33 : 32) });
                const began = performance.now();
                const message = contentMessage('plan', roomOnPage(workspace, 'hall.coffer'), { width: 800, height: 700 });
                const took = performance.now() - began, paintedIn = await pane.paints(message);
                if (time < 10) continue;
                made.push(took);
                shown.push(paintedIn);
            }
            figures[`${plan}, content made, median`] = median(made);
            figures[`${plan}, content made, p95`] = p95(made);
            figures[`${plan}, message to painted, median`] = median(shown);
            figures[`${plan}, message to painted, p95`] = p95(shown);
            await pane.close();
        }
        const workspace = await serve({ 'hall.coffer': hallOf(4, 3) }), room = roomOnPage(workspace, 'hall.coffer');
        let all = 0;
        for (const kind of PANE_KINDS) {
            const pane = await PanePage.open(kind, { width: 800, height: 800 });
            await pane.paints(contentMessage(kind, room, { width: 800, height: 700 }));
            const used = await pane.memory() / MEGA;
            figures[`memory of the ${kind} pane, MB`] = used;
            all += used;
        }
        figures['memory of all panes together, MB'] = all;
    } finally {
        await leaveBrowser();
        await server.close();
    }
    return figures;
}
