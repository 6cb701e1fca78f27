import { afterCutting, type AfterCutting } from '../../src/cutting/after-cutting.ts';
import { cutLines } from '../../src/cutting/cut-line.ts';
import { knownText } from '../../src/cutting/known.ts';
import { leftoversOf, type Left } from '../../src/cutting/leftovers.ts';
import type { Board, BoardPlan, Money } from '../../src/cutting/model.ts';
import { questionsOf } from '../../src/cutting/questions.ts';
import { restToCut, withCutBoards } from '../../src/cutting/rest.ts';
import { inches } from '../../src/quantity/rational.ts';
import type { Piece } from '../../src/takeoff/model.ts';
import type { SHOPS } from './whole-shops.ts';

type WholeShop = (typeof SHOPS)[number];

interface PlannedShop { readonly wanted: readonly Piece[]; readonly plan: BoardPlan; readonly whole: BoardPlan; readonly after: string[] }
/** The plan at once of what is still to be cut, the pieces of that, and the plan with the boards that are cut before it. */
export function plannedAtOnce({ pieces, settings, shop, rooms = [] }: WholeShop): PlannedShop {
    const toCut = rooms.map(room => ({ room, pieces })), rest = restToCut(toCut);
    const wanted = rooms.length === 0 ? pieces : rooms.flatMap(room => rest.pieces(room));
    const plan = questionsOf(wanted, settings, [], shop).first, whole = withCutBoards(plan, rest, rooms);
    const after = afterCutting(rooms, toCut, plan, questionsOf(pieces, settings, [], shop).first);
    return { wanted, plan, whole, after: after ? [afterText(after)] : [] };
}

const inch = (ticks: number): string => String(Math.round(ticks / inches(1) * 1e4) / 1e4);
const count = ({ count: many, length, worth }: Left): string => `${many} x ${inch(length)}${worth ? ` worth ${worth.amount.toFraction()}` : ''}`;
const sums = (all: readonly Money[]): string => all.map(({ amount, currency }) => `${amount.toFraction()} ${currency}`).join(', ');

function afterText({ bought, toBuy, together, planned, ...counts }: AfterCutting): string {
    return `after cutting: ${JSON.stringify({ ...counts, bought: sums(bought), toBuy: sums(toBuy), together: sums(together), planned: sums(planned) })}`;
}

/** Everything that a plan says, board by board, with all that is bought, ripped and left; inches to a ten-thousandth. */
export function planText(plan: BoardPlan, settings: WholeShop['settings']): string {
    return [
        ...plan.stocks.flatMap(({ stock: { name }, boards, buy, costs, rips, known, spare, choice }) => [
            `${name}: ${knownText(known)}, at least ${known.lowerBound?.toFraction()}; ${sums(costs)}`,
            ...choice ? [`   takes ${choice.takes}, ${sums([choice.boardsSaved])} less for ${choice.setUps} set-ups at ${sums([choice.each])}`] : [],
            ...buy.map(({ length, count, each }) => `   buy ${count} x ${inch(length)} at ${each?.amount.toFraction()}`), ...spare ? [`   spare ${JSON.stringify(spare)}`] : [],
            ...boards.map(board => `   ${boardText(board)}`),
            ...boards.flatMap(board => (cutLines(board, () => name, settings) ?? []).map(({ room, line }) => `   ${room}: ${line.replace(/\n +/g, ' / ')}`)),
            ...rips.map(rip => `   rip ${JSON.stringify(rip)}`),
        ]),
        ...plan.unplaced.map(({ piece: { id }, reason }) => `unplaced ${id}: ${reason}`),
        ...leftoversOf([{ plan, job: settings }]).map(({ stock: { name }, pieces: whole, strips }) => `left of ${name}: ${
            [...whole.map(count), ...strips.map(strip => `${count(strip)} by ${inch(strip.width)}${strip.isThin ? ' thin' : ''}`)].join('; ')}`),
        '',
    ].join('\n');
}

function boardText({ number, length, from, worth, strips, sections, measured, width, crosswise }: Board): string {
    const what = `${from}${measured === undefined ? '' : ` ${measured}`}${width === undefined ? '' : ` of ${inch(width)}`}${crosswise ? ' across' : ''}${worth ? ` worth ${worth.amount.toFraction()}` : ''}`;
    const cut = strips.map(({ rippedTo, section, pieces: own, offcut: left, kept }) =>
        `${rippedTo === undefined ? 'whole' : inch(rippedTo)}${section === undefined ? '' : `/${section}`} ${own.map(({ id }) => id).join(' ')} | ${inch(left)}${kept ? ' kept' : ''}`);
    return `#${number} ${inch(length)} ${what}${sections ? ` in ${sections.map(inch).join(' ')}` : ''}: ${cut.join('; ')}`;
}
