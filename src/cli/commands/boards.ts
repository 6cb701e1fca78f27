import { onHandLines } from '../../cutting/cut-line.ts';
import { leftoversOf } from '../../cutting/leftovers.ts';
import type { BoardPlan } from '../../cutting/model.ts';
import { printAmount } from '../../quantity/money.ts';
import { printLength } from '../../quantity/print-length.ts';
import { countText } from '../../report/boards/there.ts';
import { csvBoards } from '../../report/boards/csv.ts';
import { humanBoards } from '../../report/boards/human.ts';
import { jsonBoards } from '../../report/boards/json.ts';
import type { House, HousePlan } from '../../report/house.ts';
import type { Files } from '../../report/look.ts';
import { csvOrder } from '../../report/order/csv.ts';
import { humanOrder } from '../../report/order/human.ts';
import { jsonOrder } from '../../report/order/json.ts';
import { terminalLines } from '../../text/terminal.ts';
import { EXIT, worst, type ExitCode } from '../exit-code.ts';
import { isSound, planHouses } from '../houses.ts';
import { LOOKING, solveBy } from '../prove.ts';
import type { World } from '../world.ts';
import { housesAsked, type ListOptions } from './lists.ts';

export interface BoardsOptions extends ListOptions {
    /** The first plan, made at once: nothing is looked for that may be cheaper. */
    readonly quick: boolean;
}
export interface LeftoversOptions extends BoardsOptions {
    /** Prints what is left in the end, as lines for the stocks of the next job. */
    readonly leftovers: boolean;
}

/** What to buy and what to cut from each board. */
export async function boards(options: LeftoversOptions, world: World): Promise<ExitCode> {
    const { plans, houses, files, code } = await planned(options, world);
    const { terminal } = world;
    if (options.leftovers) {
        const lines = leftoverLines(plans, files);
        if (lines.length === 0) terminal.say('Nothing is left that is worth keeping.');
        terminal.result(terminalLines(lines));
    }
    else switch (options.format) {
        case 'human': terminal.result(humanBoards(plans, terminal.paint, files)); break;
        case 'json': terminal.result(jsonBoards(plans, files)); break;
        case 'csv': terminal.result(csvBoards(plans)); break;
    }
    return worst(code, isSound(houses) && plans.every(({ plan }) => isComplete(plan)) ? EXIT.clean : EXIT.findings);
}

/** What to order from whom, for all houses together. */
export async function order(options: BoardsOptions, world: World): Promise<ExitCode> {
    const { plans, houses, files, code } = await planned(options, world);
    const { terminal } = world;
    switch (options.format) {
        case 'human': terminal.result(humanOrder(plans, terminal.paint)); break;
        case 'json': terminal.result(jsonOrder(plans, files)); break;
        case 'csv': terminal.result(csvOrder(plans)); break;
    }
    return worst(code, isSound(houses) && plans.every(({ plan }) => isComplete(plan)) ? EXIT.clean : EXIT.findings);
}

/** Plans of the houses that were asked for: the first, or what was found by looking closer. */
export async function planned(options: BoardsOptions, world: World): Promise<{ plans: HousePlan[]; houses: House[]; files: Files; code: ExitCode }> {
    const { houses, all, files, code } = await housesAsked(options, world);
    world.terminal.progress(LOOKING);
    const plans = await planHouses(houses, all, solveBy(options, world));
    world.terminal.progress('');
    return { plans, houses, files, code };
}

function isComplete(plan: BoardPlan): boolean {
    return plan.unplaced.length === 0 && plan.unpriced.length === 0;
}

/**
 * Under the place of each stock the lines that say what will be on hand of it, strips too, to be pasted there instead of those that are there.
 * A strip that was ripped on edge is thinner than the stock, and one of a width that has no mark cannot be said: these are remarks.
 */
function leftoverLines(plans: readonly HousePlan[], files: Files): string[] {
    return leftoversOf(plans.map(({ plan, house: { job } }) => ({ plan, job }))).flatMap(({ stock, show, pieces, strips }) => {
        const isStrip = ({ width, isThin }: (typeof strips)[number]): boolean => isThin !== true && !printLength(width, show).startsWith('~');
        const said = [...pieces, ...strips.filter(isStrip)].map(({ worth, ...left }) => (
            { ...left, ...worth && { worth: `${printAmount(worth.amount)} ${worth.currency}` } }));
        const lines = [
            ...onHandLines(said, show),
            ...strips.filter(strip => !isStrip(strip)).map(strip => `// ${countText(strip, show)}, ripped to ${printLength(strip.width, show)}${strip.isThin ? ' and on edge' : ''}`),
        ];
        return [`// ${stock.name}, ${files.nameOf(stock.at.uri)}:${stock.at.range.start.line + 1}`, ...lines.map(line => `  ${line}`)];
    });
}
