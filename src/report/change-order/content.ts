import type { Ceiling } from '../../ceiling/model.ts';
import type { Changes, HouseChange, LineChange, RoomChange } from '../../changes/model.ts';
import { drawPlan, FIRST_SHEET, markChanged, sheetAfter, withNotice, type Sheet } from '../../drawing/index.ts';
import { layoutOf } from '../../pipeline/inspect.ts';
import { toDate } from '../../billing/to-date.ts';
import { printMoney, roundMoney } from '../../quantity/money.ts';
import { Rational } from '../../quantity/rational.ts';
import { cautionsForClient } from '../bid/cautions.ts';
import { bidsOf } from '../bid/content.ts';
import { DRAFT } from '../bid/draft.ts';
import { roomText } from '../bid/scope.ts';
import { roomLines } from '../changes/words.ts';
import { differenceText } from '../estimate/words.ts';
import { titleOfHouse } from '../house.ts';
import type { TakeOff } from '../../takeoff/model.ts';

/** What a client signs when something is to be otherwise than agreed. No cost, no rate and no hour of ours is in it. */
export interface ChangeOrderContent {
    readonly title: string;
    readonly number: string;
    readonly contractor?: string; readonly client?: string;
    /** As they were given; the program looks at no clock. */
    readonly date?: string; readonly reason?: string;
    /** Why it is not fit to be signed yet. */
    readonly draft: readonly string[];
    readonly changed: readonly string[];
    /** The rooms as they are to be. */
    readonly scope: readonly string[];
    readonly price: readonly { readonly what: string; readonly amount: string; readonly strong: boolean }[];
    readonly terms: readonly string[];
    readonly cautions: readonly string[];
    readonly drawings: readonly Sheet[];
}
export interface Order { readonly number: string; readonly date?: string; readonly reason?: string }

/**
 * The change order of a house that is in both states; undefined of any other, and where nothing of its ceiling or its price changed.
 * @param isSound whether both states are
 */
function changeOrderContent(house: HouseChange, { number, date, reason }: Order, isSound: boolean): ChangeOrderContent | undefined {
    const { before, after, price, comparison } = house;
    if (!before || !after || !comparison) return undefined;
    const rooms = house.rooms.filter(room => !room.isSame), { estimate } = after.priced, { job } = after;
    const total = price?.total ?? new Rational(0);
    if (rooms.length === 0 && total.equals(0)) return undefined;
    const said = bidsOf(estimate), days = comparison.days?.after.sub(comparison.days.before);
    const draft = [
        ...isSound ? [] : ['Something of the ceiling, as it was or as it is to be, cannot be built as it is drawn, or is not worked out yet.'],
        ...price ? [] : ['The two states are priced in different money.'],
        ...price?.lacks.some(words => !words.startsWith('the hours')) ? ['Part of the change has no price yet.'] : [],
    ];
    return {
        title: titleOfHouse(after), number, draft,
        ...said.contractor !== undefined && { contractor: said.contractor }, ...job.client && { client: job.client.value },
        ...date !== undefined && { date }, ...reason !== undefined && { reason },
        changed: rooms.length === 0 ? ['The ceilings stay as they are; only their price is different.'] : rooms.flatMap(room => roomLines(room, job).map(line => `${titleOfRoom(room)}: ${line.replaceAll(/(?<=\d)\/(?=\d)/g, '\u2044')}`)),       // the font makes a fraction of it
        scope: rooms.flatMap(({ after: now }) => (now && layoutOf(now.room).ceiling ? [roomText(layoutOf(now.room).ceiling!)] : [])),
        price: [
            { what: 'This change', amount: differenceText(total, estimate.currency), strong: true },
            ...days === undefined ? [] : [{ what: 'Working days', amount: daysChange(days), strong: false }],
            ...sumLines(after, comparison.total.before, total),
        ],
        terms: [
            // where the bid does not say how long, somebody fills it in
            said.validDays === undefined ? 'The price holds until ______________.' : `The price holds for ${said.validDays} days from the date above.`,
            'What is agreed and not changed here stays as it is. The changed work begins when both have signed.',
        ],
        cautions: cautionsForClient(rooms.flatMap(({ after: now }) => (now && layoutOf(now.room).ceiling) ?? [])),
        drawings: drawingsOf(rooms.flatMap(room => statesOf(room, number))).map(sheet => withNotice(sheet, draft.length > 0 ? [DRAFT] : [])),
    };
}

/** Where a contract says what was agreed to date, in the same money, that is what the change is added to; else what all of it came to before. */
function sumLines({ job: { contract }, priced: { estimate: { currency } } }: NonNullable<HouseChange['after']>, before: Rational, total: Rational): ChangeOrderContent['price'] {
    const agreed = contract && toDate(contract), line = (what: string, amount: Rational) => ({ what, amount: printMoney(amount, currency), strong: false });
    if (agreed?.currency === currency) return [line('The contract to date', agreed.sum), line('The contract with this change', agreed.sum.add(roundMoney(total)))];
    return [line('All of the work, as priced before', before), line('All of the work, with this change', before.add(total))];
}

function titleOfRoom({ before, after }: RoomChange): string {
    const { room } = (after ?? before)!;
    return room.title ?? room.name;
}

/** To a tenth, as `0.6 more`. */
function daysChange(days: Rational): string {
    const tenths = days.abs().valueOf().toFixed(1);
    return tenths === '0.0' ? 'the same' : `${tenths} ${days.s > 0n ? 'more' : 'fewer'}`;
}

/** A room in one state, and what is marked on its plan. */
interface State { readonly ceiling: Ceiling; readonly takeOff: TakeOff; readonly changed: Parameters<typeof markChanged>[3] }

/** A room as it was and as it is to be, wherever it has a plan. */
function statesOf(room: RoomChange, number: string): State[] {
    return ([['before', 'before the change'], ['after', `as changed by change order ${number}`]] as const).flatMap(([side, words]) => {
        const there = room[side], { ceiling } = there ? layoutOf(there.room) : {};
        if (!there?.takeOff || !ceiling) return [];
        // where no line is otherwise, and the room is, all of it is marked
        const lines = room.lines.flatMap(line => nameIn(line, side));
        return [{ ceiling, takeOff: there.takeOff, changed: { lines, all: room.lines.length === 0, mark: number, words } }];
    });
}

function nameIn(line: LineChange, side: 'before' | 'after'): string[] {
    const there = line[side];
    return there ? [there.name] : [];
}

/** Their plans, what is otherwise marked on each, numbered on. No section goes with them, so none is pointed to. */
function drawingsOf(states: readonly State[]): Sheet[] {
    return states.map(({ ceiling, takeOff, changed }, i) => {
        const plan = drawPlan(ceiling, takeOff, { forClient: true, alone: true, sheet: sheetAfter(FIRST_SHEET, i), of: `of ${states.length}` });
        return markChanged(plan, ceiling, takeOff, changed);
    });
}

/** The change orders of all houses. */
export function changeOrders({ houses }: Changes, order: Order, isSound: boolean): { readonly house: HouseChange; readonly content: ChangeOrderContent }[] {
    return houses.flatMap(house => {
        const content = changeOrderContent(house, order, isSound);
        return content ? [{ house, content }] : [];
    });
}
