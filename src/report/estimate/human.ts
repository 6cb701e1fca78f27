import { knownText, weakest } from '../../cutting/known.ts';
import type { Comparison } from '../../estimate/compare.ts';
import { PHASES, type Estimate } from '../../estimate/model.ts';
import { printMoney } from '../../quantity/money.ts';
import { printLength, printRun, type Show } from '../../quantity/print-length.ts';
import { Rational } from '../../quantity/rational.ts';
import { columns, wrap, type Paint } from '../look.ts';
import { cleanText } from '../../text/clean-text.ts';
import { titleOf } from '../house.ts';
import { spareText } from '../spare.ts';
import { standingText } from '../standing.ts';
import type { PricedAlternate } from '../../pipeline/price.ts';
import { afterCuttingText } from './after-cutting.ts';
import type { HousePrice } from './house.ts';
import { basisText, daysText, differenceText, eachText, hoursText, onHandText, placeText, shareText, sizeText } from './words.ts';
import { stockNames } from '../../job/stock-names.ts';
import type { TerminalText } from '../../text/fit.ts';
import { terminalParagraphs } from '../../text/terminal.ts';
import { counted, unitOf } from '../../plain/words.ts';

const WIDTH = 100;

/** What a job costs and is sold for, line by line, and what each alternate changes. */
export function humanEstimate(prices: readonly HousePrice[], paint: Paint): TerminalText {
    return terminalParagraphs(prices.map(price => estimate(price, paint)));
}

function estimate({ house, priced: { estimate, plan }, alternates, after }: HousePrice, paint: Paint): string[] {
    const show = house.job.show.value;
    const money = (amount: Rational): string => printMoney(amount, estimate.currency);
    const { sums } = estimate, nameOf = stockNames(estimate.materials.map(({ stock }) => stock));
    return [
        paint.strong(`ESTIMATE  ${cleanText(titleOf(house.job))}`),
        `For ${estimate.rooms.join(', ') || 'no room'}. For you, not for the client: it shows what you pay and what you earn.`,
        ...wrap(`Priced as if nothing were cut yet. Boards: ${knownText(weakest(plan))}.`, WIDTH), ...wrap(spareText([plan], show), WIDTH), ...[onHandText(estimate)].filter(Boolean).flatMap(words => wrap(words, WIDTH)),
        ...after ? wrap(afterCuttingText(after), WIDTH).map(line => paint.warning(line)) : [],
        ...standingText(house.rooms, { dont: 'offer it', lacks: 'it is not in this price' }, paint, WIDTH),
        '',
        paint.strong('BOARDS'), ...columns([
            ...estimate.materials.map(line => [nameOf(line.stock), `${line.count} x`, sizeText(line, show), takenText(line, money), money(line.amount)]),
            ['together', '', '', '', money(sums.materials)],
        ], [1, 2, 4]).map(indented),
        paint.strong('SUPPLIES'), ...columns([
            ...estimate.supplies.map(line => [line.what, `${line.count} ${unitOf(line.count, line.unit)}`, `at ${eachText(line, estimate.currency)}`, money(line.amount)]), ['together', '', '', money(sums.supplies)],
        ], [1, 3]).map(indented),
        paint.strong('LABOR'), ...laborRows(estimate, show),
        indented(crewText(estimate)),
        paint.strong('PRICE'), ...columns([
            ['boards', '', money(sums.materials)], ['supplies', '', money(sums.supplies)], ['labor', '', money(sums.labor)],
            ...estimate.additions.map(addition => [cleanText(addition.what), shareText(addition, estimate), money(addition.amount)]),
            ['total', estimate.missing.length > 0 ? 'without what has no rate, below' : '', money(sums.total)],
        ], [2]).map((line, i, all) => (i === all.length - 1 ? paint.strong(indented(line)) : indented(line))),
        ...estimate.missing.length > 0 ? [paint.warning('NOT IN THE PRICE: NO RATE GIVEN')] : [],
        ...estimate.missing.flatMap(({ rate, of, room }) => wrap(`${rate}: ${of}${room === undefined ? '' : `, ${room}`}`, WIDTH - 2)).map(line => paint.warning(indented(line))),
        ...alternates.flatMap(alternate => ['', ...alternateText(alternate, show, paint)]),
    ];
}

/** What one of the boards costs. */
function takenText({ onHand, each }: Estimate['materials'][number], money: (amount: Rational) => string): string {
    if (!onHand) return `at ${money(each)}`;
    return each.equals(0) ? 'on hand, at no cost' : `on hand, worth ${money(each)}`;
}

function laborRows(estimate: Estimate, show: Show): string[] {
    const { labor, currency, sums } = estimate;
    const rows = PHASES.flatMap(phase => labor.filter(line => line.phase === phase).map((line, i) => [
        i === 0 ? phase : '', placeText(line), line.what, basisText(line.basis, show), hoursText(line.minutes), line.amount ? printMoney(line.amount, currency) : 'no rate',
    ]));
    return columns([...rows, ['together', '', '', '', hoursText(estimate.minutes), printMoney(sums.labor, currency)]], [4, 5]).map(indented);
}

function crewText({ crew, days, minutes }: Estimate): string {
    if (!days) return `${hoursText(minutes)} for one person; no crew given`;
    return crew === undefined ? `${daysText(days)}, each room by its own crew` : `${daysText(days)} for a crew of ${crew}`;
}

function alternateText({ alternate, priced, comparison, told }: PricedAlternate, show: Show, paint: Paint): string[] {
    const { currency } = priced.estimate;
    const { total, minutes, days } = comparison;
    return [
        paint.strong(`WITH ${cleanText(alternate.title ?? alternate.name)}`),
        ...told.length > 0 ? [indented('Found with it, and not with the job as it is:')] : [],
        ...told.flatMap(({ place, severity, message, rule }) => wrap(`${place}: ${severity}: ${message} [${rule}]`, WIDTH - 6).map((line, i) => `${i === 0 ? '    ' : '      '}${paint[severity](line)}`)),
        ...told.some(({ severity }) => severity === 'error') ? [paint.error(indented('It cannot be built this way.'))] : [],
        ...priced.left.map(name => paint.error(indented(`room ${name} cannot be laid out this way, and is not in this price.`))),
        indented(`${printMoney(total.after, currency)} instead of ${printMoney(total.before, currency)}: ${differenceText(total.after.sub(total.before), currency)}`),
        indented(`${hoursText(minutes.after)} instead of ${hoursText(minutes.before)}${days ? `; ${daysText(days.after)} instead of ${daysText(days.before)}` : ''}`),
        ...changeRows(comparison, show).map(indented),
    ];
}

function changeRows({ boards, pieces }: Comparison, show: Show): string[] {
    return columns([
        ...pieces.map(({ part, before, after, feet }) => [part, `${before} -> ${counted(after, 'piece')}`, `${printRun(feet.before, show)} -> ${printRun(feet.after, show)}`]),
        ...boards.map(({ stock, length, before, after }) => [stock, `${before} -> ${counted(after, 'board')}`, printLength(length, show)]),
    ]);
}

function indented(line: string): string {
    return `  ${line}`;
}
