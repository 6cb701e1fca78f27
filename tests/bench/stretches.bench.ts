// How long the server is deaf: the longest stretch of work that it does for a room of 400 coffers without answering anybody between, for each content
// and each file of a pane, in the order in which they are asked for; and of one other grid that is looked at. Milliseconds of the processor.
import { partsOf } from '../../src/pipeline/inspect-closely.ts';
import { PANE_KINDS } from '../../src/pages/kinds.ts';
import { contentInSteps, PAGES } from '../../src/pages/pages.ts';
import type { Steps } from '../../src/plain/steps.ts';
import { puttingUpOf } from '../../src/putup/put-up.ts';
import { lookInSteps } from '../../src/suggest/looked-at.ts';
import { roomOnPage, serve } from '../panes/support/content.ts';
import { hallOf } from './hall.ts';

export default async function measure(): Promise<Record<string, number>> {
    const figures: Record<string, number> = {};
    const timed = async <Made>(work: () => Made | Promise<Made>): Promise<{ readonly made: Made; readonly took: number }> => {
        const began = process.cpuUsage(), made = await work(), { user, system } = process.cpuUsage(began);
        return { made, took: (user + system) / 1000 };
    };
    const stretches = async (name: string, steps: Steps<unknown>): Promise<void> => {
        for (let longest = 0, all = 0; ;) {
            const { made, took } = await timed(async () => {
                const step = steps.next();
                await step.value;
                return step;
            });
            all += took;
            longest = Math.max(longest, took);
            if (!made.done) continue;
            figures[`${name}: longest stretch`] = longest;
            figures[`${name}: all`] = all;
            return;
        }
    };
    const workspace = await serve({ 'hall.coffer': hallOf(20, 20, 64).replaceAll("24'", "64'") }), room = roomOnPage(workspace, 'hall.coffer');
    await stretches('the dry fit', partsOf(room.ceiling));
    await stretches('how it goes up', puttingUpOf(room.ceiling));
    const kinds = PANE_KINDS.filter(kind => kind !== 'suggest' && kind !== 'changes');
    for (const kind of kinds) await stretches(`content of ${kind}`, contentInSteps(PAGES[kind], room, { width: 800, height: 700 }));
    for (const kind of kinds) {
        for (const [format, make] of Object.entries(PAGES[kind].exports)) await stretches(`${kind} as ${format}`, make(room, undefined));
    }
    await stretches('another grid', lookInSteps({ ...room.layout.room }, room.layout.room, room.file));
    return figures;
}
