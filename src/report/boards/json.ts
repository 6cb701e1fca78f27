import { blankOver } from '../../cutting/blank.ts';
import { knownText, weakest } from '../../cutting/known.ts';
import { leftoversOf, type Left } from '../../cutting/leftovers.ts';
import type { Board, Known, StockPlan } from '../../cutting/model.ts';
import type { JobSettings, Stock } from '../../job/model.ts';
import { stripNumbers } from '../../cutting/rips.ts';
import { roundDown } from '../../quantity/round.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import { lengthJson, moneyJson, type LengthJson } from '../amounts-json.ts';
import { choiceText } from '../choice.ts';
import { houseHead } from '../house-json.ts';
import type { House, HousePlan } from '../house.ts';
import type { Files } from '../look.ts';
import { sourceJson } from '../place-json.ts';
import { printJson } from '../../text/json.ts';
import { standingOfRooms } from '../standing.ts';
import { standingJson } from '../standing-json.ts';
import type { BoardsJson, KnownJson, LengthKnownJson } from './shape.ts';
import { lengthKnownOf } from './there.ts';
import type { JsonText } from '../../text/fit.ts';

type StockJson = BoardsJson['houses'][number]['stocks'][number];

/** Boards and cuts. */
export function jsonBoards(plans: readonly HousePlan[], files: Files): JsonText {
    return printJson<BoardsJson>({
        version: 1,
        kind: 'cofferwright.boards',
        standing: standingJson(standingOfRooms(plans.flatMap(({ house }) => house.rooms))),
        plan: plans.some(({ plan }) => plan.stocks.some(stock => stock.known.as !== 'first plan')) ? 'looked closer' : 'first',
        houses: plans.map(({ house, plan }) => {
            const length = exactly(house.job);
            return {
                ...houseHead(house),
                kerf: length(house.job.kerf.value),
                endTrim: length(house.job.endTrim.value),
                shortestOffcut: length(house.job.shortestOffcut.value),
                known: knownJson(weakest(plan)),
                stocks: plan.stocks.map(stock => stockJson(stock, length, house, files)),
                costs: plan.costs.map(moneyJson),
                complete: plan.unpriced.length === 0 && plan.unplaced.length === 0 && house.rooms.every(r => r.takeOff),
                unpriced: plan.unpriced.map(u => ({ stock: u.stock.name, length: length(u.length), count: u.count })),
                unplaced: plan.unplaced.map(
                    u => ({ piece: u.piece.id, stock: u.piece.stock.name, reason: u.reason, source: sourceJson(u.piece.stock.at, files) })
                ),
            };
        }),
        left: leftoversOf(plans.map(({ plan, house: { job } }) => ({ plan, job }))).map(({ stock, show, pieces, strips }) => {
            const length = (ticks: Ticks): LengthJson => lengthJson(ticks, ticks, show);
            const one = ({ count, length: ticks, worth }: Left) => ({ count, length: length(ticks), worth: worth ? moneyJson(worth) : null });
            return {
                stock: stock.name, source: sourceJson(stock.at, files), pieces: pieces.map(one),
                strips: strips.map(strip => ({ ...one(strip), width: length(strip.width) })),
            };
        }),
    });
}

function knownJson(known: Known): KnownJson {
    return { as: known.as, percent: known.percent ?? null, text: knownText(known), model: known.model ?? null };
}

type PrintLength = (ticks: Ticks) => LengthJson;

/** Boards, strips, kerf and trim are what they are: only what is cut to length is rounded to the tape. */
function exactly(job: JobSettings): PrintLength {
    return ticks => lengthJson(ticks, ticks, job.show.value);
}

function stockJson({ stock, boards, buy, spare, costs, rips, known, choice }: StockPlan, length: PrintLength, house: House, files: Files): StockJson {
    const sheet = stock.sheet?.value;
    return {
        stock: stock.name,
        source: sourceJson(stock.at, files),
        sheet: sheet ? { width: length(sheet.width), length: length(sheet.length), grain: sheet.grain, stages: sheet.stages ?? 3 } : null,
        known: knownJson(known),
        choice: choice ? { ...choice, boardsSaved: moneyJson(choice.boardsSaved), each: moneyJson(choice.each), text: choiceText(choice) } : null,
        buy: buy.map(p => ({ length: length(p.length), count: p.count, each: p.each ? moneyJson(p.each) : null, cost: p.cost ? moneyJson(p.cost) : null })),
        defects: stock.defects ?? stock.spare ? {
            share: stock.defects ? Number(stock.defects.value.valueOf().toFixed(6)) : null,
            spare: spare ? { count: spare.count, length: length(spare.length) } : null,
        } : null,
        costs: costs.map(moneyJson),
        rips: rips.map(({ section, widths, boards: numbers, left }) => ({
            section: section === undefined ? null : length(section), widths: widths.map(({ width, count }) => ({ width: length(width), count })),
            boards: numbers, left: length(left),
        })),
        boards: boards.map(board => ({
            ...boardJson(board, length, house.job), name: board.measured ?? null, lengthKnown: lengthKnownJson(board, stock, house),
        })),
    };
}

function lengthKnownJson(board: Board, stock: Stock, house: House): LengthKnownJson | null {
    const is = lengthKnownOf(board, stock, house);
    return is ? { known: is.known, on: is.on ?? null, by: is.by ?? null } : null;
}

function boardJson({ number, length: ticks, width, from, worth, strips, sections, crosswise }: Board, length: PrintLength, job: JobSettings): StockJson['boards'][number] {
    const step = job.cutTo.value, show = job.show.value;
    const numbers = stripNumbers({ strips });
    return {
        number, length: length(ticks), width: width === undefined ? null : length(width), onHand: from === 'on hand', from, worth: worth ? moneyJson(worth) : null, crosswise: crosswise === true, cut: length(job.kerf.value), sections: (sections ?? []).map(length),
        strips: strips.map((strip, i) => ({
            number: numbers[i]!,
            rippedTo: strip.rippedTo === undefined ? null : length(strip.rippedTo),
            section: strip.section ?? null,
            pieces: strip.pieces.map(p => ({ piece: p.id, length: lengthJson(p.overall, p.cutOverall, show), over: length(blankOver(p, job)) })),
            offcut: lengthJson(strip.offcut, roundDown(strip.offcut, step), show),     // never promised too long
            kept: strip.kept,
        })),
    };
}
