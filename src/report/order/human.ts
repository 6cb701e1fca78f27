import { printMoney } from '../../quantity/money.ts';
import type { Stock } from '../../job/model.ts';
import { sizeText } from '../boards/there.ts';
import { titleOf, type HousePlan } from '../house.ts';
import { columns, wrap, type Paint } from '../look.ts';
import { spareText } from '../spare.ts';
import { cleanText } from '../../text/clean-text.ts';
import { standingText } from '../standing.ts';
import { feetText, ordersOf, type Order } from './lines.ts';
import { stockNames } from '../../job/stock-names.ts';
import type { TerminalText } from '../../text/fit.ts';
import { terminalLines } from '../../text/terminal.ts';
import { counted } from '../../plain/words.ts';

const WIDTH = 100;

/** What to order, supplier by supplier, for all houses together. */
export function humanOrder(plans: readonly HousePlan[], paint: Paint): TerminalText {
    const orders = ordersOf(plans, ({ house }) => titleOf(house.job));
    const lines = [
        paint.strong(`TO ORDER  ${cleanText(plans.map(({ house }) => titleOf(house.job)).join(', '))}`),
        ...wrap(`What the boards plan buys, on top of what is on hand. ${spareText(plans.map(({ plan }) => plan), plans[0]?.house.job.show.value ?? 'feet-inches')}`, WIDTH),
        ...warnings(plans, paint),
        ...(orders.length === 0 ? ['', 'nothing to buy'] : orders.flatMap(order => ['', ...orderText(order, plans, paint)])),
    ];
    return terminalLines(lines);
}

function warnings(plans: readonly HousePlan[], paint: Paint): string[] {
    return [...standingText(plans.flatMap(({ house: { rooms } }) => rooms), { dont: 'order', lacks: 'its boards are not here' }, paint, WIDTH), ...plans.flatMap(({ plan }) => [
        ...(plan.unplaced.length > 0 ? wrap(`${counted(plan.unplaced.length, 'piece')} that fit on no board: \`cofferwright boards\` says which.`, WIDTH).map(line => paint.error(line)) : []),
    ])];
}

function orderText({ supplier, lines, costs, boardFeet, leadDays }: Order, plans: readonly HousePlan[], paint: Paint): string[] {
    const several = plans.length > 1, nameOf = stockNames(plans.flatMap(({ plan }) => plan.stocks.map(({ stock }) => stock)));
    const rows = lines.map(({ stock, length, count, each, cost, boardFeet: feet, houses, show }, i) => [
        lines[i - 1]?.stock === stock ? '' : nameOf(stock),
        `${count} x`, sizeText(stock, { length }, show),
        lines[i - 1]?.stock === stock ? '' : aboutText(stock),
        feet ? `${feetText(feet)} bd ft` : '',
        each ? `at ${printMoney(each.amount, each.currency)}` : 'no price', cost ? printMoney(cost.amount, cost.currency) : '',
        ...(several ? [`for ${houses.join(', ')}`] : []),
    ]);
    const unpriced = lines.filter(line => !line.each).length;
    const sums = [
        costs.length > 0 ? `total ${costs.map(({ amount, currency }) => printMoney(amount, currency)).join(' + ')}` : 'no total',
        ...(boardFeet ? [`${feetText(boardFeet)} board feet`] : []),
        ...(leadDays === undefined ? [] : [`order ${counted(leadDays, 'working day')} ahead`]),
    ];
    return [
        paint.strong(cleanText(supplier ?? 'no supplier given')),
        ...columns(rows, [1, 2, 4, 6]).map(line => `  ${line}`),
        paint.strong(`  ${sums.join('; ')}${unpriced > 0 && costs.length > 0 ? `; without ${counted(unpriced, 'line')} that ${unpriced === 1 ? 'has' : 'have'} no price` : ''}`),
    ];
}

/** How a stock comes: `primed yellow-poplar 1x6`. */
function aboutText({ comes, species, size }: Stock): string {
    return [comes?.value, species?.value, size?.value.text].filter(word => word !== undefined).join(' ');
}
