import type { Rational } from '../../quantity/rational.ts';
import { lengthJson, moneyJson, type LengthJson } from '../amounts-json.ts';
import { houseHead } from '../house-json.ts';
import { titleOf, type HousePlan } from '../house.ts';
import type { Files } from '../look.ts';
import { sourceJson } from '../place-json.ts';
import { printJson } from '../../text/json.ts';
import { standingOfRooms } from '../standing.ts';
import { standingJson } from '../standing-json.ts';
import { feetText, ordersOf, type OrderLine } from './lines.ts';
import type { BoardFeetJson, OrderJson } from './shape.ts';
import type { JsonText } from '../../text/fit.ts';

/** The order. */
export function jsonOrder(plans: readonly HousePlan[], files: Files): JsonText {
    return printJson<OrderJson>({
        version: 1,
        kind: 'cofferwright.order',
        standing: standingJson(standingOfRooms(plans.flatMap(({ house }) => house.rooms))),
        houses: plans.map(({ house, plan }) => ({
            ...houseHead(house),
            unplaced: plan.unplaced.length,
        })),
        orders: ordersOf(plans, ({ house }) => titleOf(house.job)).map(({ supplier, lines, costs, boardFeet, leadDays }) => ({
            supplier: supplier ?? null, leadDays: leadDays ?? null, boardFeet: feetJson(boardFeet), costs: costs.map(moneyJson),
            complete: lines.every(line => line.each),
            lines: lines.map(line => lineJson(line, files, ticks => lengthJson(ticks, ticks, line.show))),
        })),
    });
}

function lineJson({ stock, length: ticks, count, spare, each, cost, boardFeet, houses }: OrderLine, files: Files, length: (ticks: number) => LengthJson): OrderJson['orders'][number]['lines'][number] {
    const sheet = stock.sheet?.value;
    return {
        stock: stock.name, source: sourceJson(stock.at, files), size: stock.size?.value.text ?? null,
        species: stock.species?.value ?? null, comes: stock.comes?.value ?? null,
        leadDays: stock.leadDays?.value ?? null, sheet: sheet ? { width: length(sheet.width), length: length(sheet.length) } : null,
        length: length(ticks), count, spare, boardFeet: feetJson(boardFeet), each: each ? moneyJson(each) : null, cost: cost ? moneyJson(cost) : null, houses,
    };
}

function feetJson(feet: Rational | undefined): BoardFeetJson | null {
    return feet ? { amount: feetText(feet), exact: feet.toFraction() } : null;
}
