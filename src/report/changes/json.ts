import type { Coffers, CutWood, HouseChange, LineThere, Pair, RoomChange, SaidChange, WorkInVain } from '../../changes/model.ts';
import type { Finding } from '../../findings/finding.ts';
import type { Statement } from '../../job/statement.ts';
import type { JobSettings } from '../../job/model.ts';
import type { Rational } from '../../quantity/rational.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import type { Piece } from '../../takeoff/model.ts';
import type { JsonText } from '../../text/fit.ts';
import { printJson } from '../../text/json.ts';
import { lengthJson, moneyJson, type LengthJson, type MoneyJson } from '../amounts-json.ts';
import { jobJson } from '../house-json.ts';
import type { Files } from '../look.ts';
import { sourceJson } from '../place-json.ts';
import { standingOfRooms } from '../standing.ts';
import { standingJson } from '../standing-json.ts';
import type { ChangesJson, CoffersJson, CutJson, FoundJson, LineJson, PairJson, PieceJson, SaidJson, StateJson, ValueJson } from './shape.ts';
import type { Compared, StateTold } from './state.ts';
import { jobOf } from './words.ts';

/** What changed, for programs. */
export function jsonChanges({ before, after, changes }: Compared, files: Files): JsonText {
    return printJson<ChangesJson>({
        version: 1, kind: 'cofferwright.changes', before: stateJson(before), after: stateJson(after),
        said: changes.said.map(saidJson), houses: changes.houses.map(house => houseJson(house, files)),
    });
}

function stateJson({ name, commit, rooms }: StateTold): StateJson {
    const standing = standingJson(standingOfRooms(rooms));
    if (!commit) return { revision: null, commit: null, date: null, subject: null, standing };
    return { revision: name, commit: commit.hash, date: commit.date || null, subject: commit.subject, standing };
}

function saidJson({ what, file, movedFrom, renamedFrom, before, after }: SaidChange): SaidJson {
    return { what, file, movedFrom: movedFrom ?? null, renamedFrom: renamedFrom ?? null, before: valueJson(before), after: valueJson(after) };
}
function valueJson(statement: Statement | undefined): ValueJson | null {
    return statement ? { value: statement.value, line: statement.at.range.start.line + 1 } : null;
}

function houseJson(house: HouseChange, files: Files): ChangesJson['houses'][number] {
    const { pieces, cut, comparison, price, findings } = house, job = jobOf(house), lengths = lengthsIn(job);
    const currency = (house.after ?? house.before)!.priced.estimate.currency, money = (amount: Rational): MoneyJson => moneyJson({ amount, currency });
    const pair = ({ before, after }: Pair): PairJson => ({ before: pieceJson(before, lengths), after: pieceJson(after, lengths) });
    return {
        job: jobJson(job), in: inWhich(house), rooms: house.rooms.map(room => roomJson(room, lengths)),
        pieces: {
            same: pieces.same.length, moved: pieces.moved.map(pair), from: pieces.from.map(pair),
            fresh: pieces.fresh.map(piece => pieceJson(piece, lengths)), gone: pieces.gone.map(piece => pieceJson(piece, lengths)), proved: pieces.proved,
        },
        cut: cut.wood.map(wood => cutJson(wood, lengths)), cutProved: cut.proved,
        boards: comparison?.boards.map(({ stock, length, before, after }) => ({ stock, length: lengths(length), before, after })) ?? [],
        total: comparison ? {
            before: money(comparison.total.before), after: money(comparison.total.after),
            minutesBefore: comparison.minutes.before.valueOf(), minutesAfter: comparison.minutes.after.valueOf(),
        } : null,
        price: price ? {
            difference: money(price.difference), inVain: money(price.inVain), saved: money(price.saved),
            workInVain: workJson(price.workInVain, money), total: money(price.total),
            atOldRates: price.atOldRates ? money(price.atOldRates) : null, lacks: price.lacks,
        } : null,
        findings: { come: findings.come.map(one => foundJson(one, files)), gone: findings.gone.map(one => foundJson(one, files)) },
    };
}

function workJson(work: WorkInVain | undefined, money: (amount: Rational) => MoneyJson): NonNullable<ChangesJson['houses'][number]['price']>['workInVain'] {
    return work ? { pieces: work.pieces, minutes: work.minutes.valueOf(), amount: money(work.amount) } : null;
}

function inWhich({ before, after }: { readonly before?: unknown; readonly after?: unknown }): 'both' | 'before' | 'after' {
    return before && after ? 'both' : before ? 'before' : 'after';
}

type Lengths = (ticks: Ticks) => LengthJson;
function lengthsIn({ show }: JobSettings): Lengths {
    return ticks => lengthJson(ticks, ticks, show.value);
}

function roomJson(room: RoomChange, lengths: Lengths): ChangesJson['houses'][number]['rooms'][number] {
    const { name, renamedFrom, isSame, walls, lines, coffers } = room;
    const length = (ticks: Ticks | undefined): LengthJson | null => (ticks === undefined ? null : lengths(ticks));
    const line = (one: LineThere | undefined): LineJson | null =>
        one ? { ...one, center: lengths(one.center), depth: lengths(one.depth), width: lengths(one.width) } : null;
    const all = ({ count, acrossNorth, acrossEast }: Coffers): CoffersJson =>
        ({ count, acrossNorth: acrossNorth.map(lengths), acrossEast: acrossEast.map(lengths) });
    return {
        name, in: inWhich(room), renamedFrom: renamedFrom ?? null, same: isSame,
        walls: walls.map(({ wall, before, after }) => ({ name: wall, before: length(before), after: length(after) })),
        lines: lines.map(({ runs, before, after }) => ({ runs, before: line(before), after: line(after) })),
        coffers: coffers ? { before: all(coffers.before), after: all(coffers.after) } : null,
    };
}

function pieceJson({ id, part, stock, overall, cutOverall }: Piece, lengths: Lengths): PieceJson {
    return { id, part, stock: stock.name, length: { ...lengths(cutOverall), ticks: overall } };
}

function cutJson({ room, name, stock, length, fate, into, worth, saved }: CutWood, lengths: Lengths): CutJson {
    return {
        id: `${room}.${name}`, stock: stock.name, length: lengths(length), fate, into: into?.id ?? null,
        worth: worth ? moneyJson(worth) : null, saved: saved ? moneyJson(saved) : null,
    };
}

function foundJson({ rule, severity, message, at }: Finding, files: Files): FoundJson {
    return { rule, severity, message, source: sourceJson(at, files) };
}
