import type { Alternate } from '../../job/alternate.ts';
import { combinedAlternate } from '../../language/combined-alternate.ts';
import { price, priceWith } from '../../pipeline/price.ts';
import { csvEstimate } from '../../report/estimate/csv.ts';
import { humanEstimate } from '../../report/estimate/human.ts';
import { jsonEstimate } from '../../report/estimate/json.ts';
import type { HousePrice } from '../../report/estimate/house.ts';
import type { House } from '../../report/house.ts';
import { EXIT, UsageError, worst, type ExitCode } from '../exit-code.ts';
import { isSound } from '../houses.ts';
import type { World } from '../input.ts';
import type { Workspace } from '../workspace.ts';
import { housesAsked, type ListOptions } from './lists.ts';

export interface EstimateOptions extends ListOptions {
    /** Alternates to price beside the job, together where several are named; all of them, each by itself, where none is. */
    readonly with: readonly string[];
}

/** What the job costs and is sold for, and what each alternate changes. */
export async function estimate(options: EstimateOptions, world: World): Promise<ExitCode> {
    const { houses, files, workspace, code } = await housesAsked(options, world);
    const { terminal } = world;
    const prices = pricesOf(houses, options.with, workspace);
    switch (options.format) {
        case 'human': terminal.result(humanEstimate(prices, terminal.paint)); break;
        case 'json': terminal.result(jsonEstimate(prices, files)); break;
        case 'csv': terminal.result(csvEstimate(prices)); break;
    }
    const whole = isSound(houses) && prices.every(({ priced, alternates }) => priced.estimate.missing.length === 0 && alternates.every(({ errors }) => errors === 0));
    return worst(code, whole ? EXIT.clean : EXIT.findings);
}

/** Each house with its price and the alternates that were asked for. Throws a UsageError for one that there is not. */
export function pricesOf(houses: readonly House[], names: readonly string[], workspace: Workspace): HousePrice[] {
    const known = houses.flatMap(house => house.alternates.map(({ name }) => name));
    const unknown = names.filter(name => !known.includes(name));
    if (unknown.length > 0) throw new UsageError(`There is no alternate ${unknown.join(', ')} here; there is ${known.join(', ') || 'none'}`);
    return houses.map(house => {
        const rooms = house.rooms.map(({ room }) => room);
        const priced = price(rooms, house.job);
        const asked = names.length === 0 ? house.alternates : together(house, names, workspace);
        return { house, priced, alternates: asked.map(alternate => priceWith(alternate, rooms, house.job)) };
    });
}

/** The named alternates of a house as one. They stand in one file, where all that they change can be seen. */
function together(house: House, names: readonly string[], workspace: Workspace): Alternate[] {
    const own = house.alternates.filter(({ name }) => names.includes(name));
    if (own.length <= 1) return own;
    const inOneFile = own.every(({ at }) => at.uri === own[0]!.at.uri);
    const combined = inOneFile ? workspace.ask(own[0]!.at.uri, document => combinedAlternate(document, names)) : undefined;
    if (!combined) throw new UsageError(`${names.join(' and ')} stand in several files: put alternates that are to be combined into one`);
    return [combined];
}
