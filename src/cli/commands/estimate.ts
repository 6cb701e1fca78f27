import type { Alternate } from '../../job/alternate.ts';
import { combinedAlternate } from '../../language/combined-alternate.ts';
import { afterCutting } from '../../cutting/after-cutting.ts';
import type { BoardPlan } from '../../cutting/model.ts';
import { alternateStanding, price, priceWith } from '../../pipeline/price.ts';
import { pricePlans } from '../../pipeline/price-plans.ts';
import { isSound as isWell } from '../../pipeline/standing.ts';
import { csvEstimate } from '../../report/estimate/csv.ts';
import { humanEstimate } from '../../report/estimate/human.ts';
import { jsonEstimate } from '../../report/estimate/json.ts';
import type { HousePrice } from '../../report/estimate/house.ts';
import type { House } from '../../report/house.ts';
import { EXIT, UsageError, worst, type ExitCode } from '../exit-code.ts';
import { houseToCut, isSound, planHouses } from '../houses.ts';
import type { World } from '../world.ts';
import type { Workspace } from '../workspace.ts';
import { LOOKING, solveBy } from '../prove.ts';
import type { BoardsOptions } from './boards.ts';
import { housesAsked, type HousesAsked } from './lists.ts';

export interface EstimateOptions extends BoardsOptions {
    /** Alternates to price beside the job, together where several are named; all of them, each by itself, where none is. */
    readonly with: readonly string[];
}

/** What the job costs and is sold for, and what each alternate changes. */
export async function estimate(options: EstimateOptions, world: World): Promise<ExitCode> {
    const asked = await housesAsked(options, world);
    const { terminal } = world;
    const prices = await pricesOf(asked, options, world);
    switch (options.format) {
        case 'human': terminal.result(humanEstimate(prices, terminal.paint)); break;
        case 'json': terminal.result(jsonEstimate(prices, asked.files)); break;
        case 'csv': terminal.result(csvEstimate(prices)); break;
    }
    const isWhole = ({ priced, alternates }: HousePrice): boolean => priced.estimate.missing.length === 0
        && alternates.every(one => isWell(alternateStanding(one)));
    const whole = isSound(asked.houses) && prices.every(isWhole);
    return worst(asked.code, whole ? EXIT.clean : EXIT.findings);
}

/**
 * Each house with its price and the alternates that were asked for, all with the boards that `boards` would buy. Throws a UsageError
 * for one that there is not.
 */
export async function pricesOf(
    { houses, all, workspace }: HousesAsked, { with: names, quick }: Pick<EstimateOptions, 'with' | 'quick'>, world: World,
): Promise<HousePrice[]> {
    const known = houses.flatMap(house => house.alternates.map(({ name }) => name));
    const unknown = names.filter(name => !known.includes(name));
    if (unknown.length > 0) throw new UsageError(`There is no alternate ${unknown.join(', ')} here; there is ${known.join(', ') || 'none'}`);
    const looking = { nameOf: workspace.files.nameOf, fileOf: (uri: string) => workspace.contentOf(uri) };
    const prices: HousePrice[] = [];
    const before: BoardPlan[] = [];
    const solve = solveBy({ quick }, world);
    world.terminal.progress(LOOKING);
    // what is cut is gone for every house
    const isCut = houses.some(({ rooms }) => rooms.some(({ room: { cutBoards, spoiled } }) => cutBoards.length + spoiled.length > 0));
    const rests = isCut ? await planHouses(houses, all, solve) : [], shop = all.flatMap(house => houseToCut(house).rooms);
    for (const [i, house] of houses.entries()) {
        const rooms = house.rooms.map(({ room }) => room);
        const asked = names.length === 0 ? house.alternates : together(house, names, workspace);
        const plans = await pricePlans(rooms, asked, house.job, before, solve);
        before.push(plans.plan);
        const priced = price(rooms, house.job, plans.plan), after = rests[i] && afterCutting(rooms, shop, rests[i].plan, plans.plan);
        const alternates = asked.map(alternate => priceWith(alternate, rooms, house.job, { ...looking, plans }));
        prices.push({ house, priced, ...after && { after }, alternates });
    }
    world.terminal.progress('');
    return prices;
}

/** The named alternates of a house as one. They stand in one file, where all that they change can be seen. */
function together(house: House, names: readonly string[], workspace: Workspace): Alternate[] {
    const own = house.alternates.filter(({ name }) => names.includes(name));
    if (own.length <= 1) return own;
    const inOneFile = own.every(({ at }) => at.uri === own[0]!.at.uri);
    const combined = inOneFile ? workspace.ask(own[0]!.at.uri, document => combinedAlternate(document, names)) : undefined;
    if (!combined) throw new UsageError(`${names.join(' and ')} are in different files: put alternates that you combine into one file`);
    return [combined];
}
