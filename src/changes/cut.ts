import { piecesAsCut } from '../cutting/as-cut.ts';
import { assign } from '../cutting/assign.ts';
import { canBecome, gainOfCut, offcutsOf, restOf } from '../cutting/become.ts';
import type { Money } from '../cutting/model.ts';
import type { CutBoard, JobSettings, Stock } from '../job/model.ts';
import { costOf, roundMoney } from '../quantity/money.ts';
import { Rational } from '../quantity/rational.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { grouped } from '../plain/groups.ts';
import { nameInRoom } from '../takeoff/ids.ts';
import { roughWidth } from '../takeoff/rough-width.ts';
import type { Piece } from '../takeoff/model.ts';
import type { CutChange, CutWood, RoomChange, StockNames } from './model.ts';
import { isHalfKnown } from './rooms.ts';
import { woodOf } from './pieces.ts';

/**
 * What of the wood that is cut already can be used for the house as it is wanted now: so that the most of it is kept, each piece for one at most.
 * What was cut is what the rooms record (`measured { cut … }`), those of the state after, and of rooms that are gone those of the one before; as the
 * piece was wanted when it was cut, with the length, the miters and the hand that are recorded.
 */
export function cutChange(all: readonly Pick<RoomChange, 'before' | 'after'>[], job: JobSettings, renamed: StockNames): CutChange {
    const rooms = all.filter(room => !isHalfKnown(room)), offcuts = offcutsOf(job);
    const wanted = rooms.flatMap(({ after }) => after?.takeOff?.pieces ?? []);
    const cut = rooms.flatMap(cutPieces), wood: CutWood[] = [], byWood = grouped(wanted, piece => woodOf(piece, renamed));
    let proved = true;
    for (const [key, own] of grouped(cut, piece => woodOf(piece, renamed))) {
        const may = byWood.get(key) ?? [], found = assign(own.length, may.length, (i, j) => gainOfCut(own[i]!, may[j]!, offcuts));
        proved &&= found.proved;
        const into = new Map(found.pairs);
        own.forEach((piece, i) => {
            const j = into.get(i);
            wood.push(woodNow(piece, j === undefined ? undefined : may[j]!, job));
        });
    }
    const order = new Map(cut.map((piece, i) => [`${piece.room} ${nameInRoom(piece)}`, i]));
    return { wood: wood.sort((a, b) => order.get(`${a.room} ${a.name}`)! - order.get(`${b.room} ${b.name}`)!), proved };
}

function cutPieces({ before, after }: Pick<RoomChange, 'before' | 'after'>): Piece[] {
    const now = after ?? before!;
    const list = [...new Map([...after?.takeOff?.pieces ?? [], ...before?.takeOff?.pieces ?? []].map(piece => [nameInRoom(piece), piece])).values()];
    const spoiled = new Map<string, number>();
    for (const { value } of now.room.spoiled) spoiled.set(value, (spoiled.get(value) ?? 0) + 1);
    return now.room.cutBoards.flatMap((board: CutBoard) => piecesAsCut(board, list).filter(piece => {
        const name = nameInRoom(piece), bad = spoiled.get(name) ?? 0;
        spoiled.set(name, bad - 1);
        return bad <= 0;
    }).map(piece => ({ ...piece, room: now.room.name, id: `${now.room.name}.${nameInRoom(piece)}`, stock: board.stock.value })));
}

function woodNow(piece: Piece, into: Piece | undefined, job: JobSettings): CutWood {
    const { room, stock, cutOverall: length } = piece, how = into && canBecome(piece, into);
    const fate = how === 'keep' ? into!.id === piece.id ? 'keep' : 'elsewhere' : how ?? (length >= job.shortestOffcut.value ? 'offcut' : 'lost');
    const worth = worthOf(stock, length, roughWidth(piece)), share = job.offcutWorth?.value;
    const asOffcut = (left: Ticks): Rational => new Rational(worth && share ? worthOf(stock, left, roughWidth(piece))!.amount.mul(share) : 0);
    const used = into && worthOf(stock, into.cutOverall, roughWidth(into)), rest = into ? restOf(piece, into, offcutsOf(job)) : fate === 'offcut' ? length : 0;
    // to the cent piece by piece, as they are printed: the price of the change is the sum of its lines
    const money = worth && {
        worth: { ...worth, amount: roundMoney(worth.amount) },
        saved: { ...worth, amount: roundMoney((used?.amount ?? new Rational(0)).add(asOffcut(rest))) },
    };
    return { name: nameInRoom(piece), room, stock, length, fate, ...into && { into }, ...money };
}

/** What the yard asks for so much of it: of what is ripped, its share of the board's width. Undefined where there is no price. */
function worthOf({ prices, width }: Stock, length: Ticks, ripped: Ticks): Money | undefined {
    const price = prices.find(each => !each.for) ?? prices[0], across = width?.value.ticks;
    if (!price) return undefined;
    const amount = costOf(price.perTick, length);
    return { currency: price.currency, amount: across !== undefined && ripped < across ? amount.mul(ripped).div(across) : amount };
}
