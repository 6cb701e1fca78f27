import type { HouseChange, SaidChange } from '../../changes/model.ts';
import type { Finding } from '../../findings/finding.ts';
import { counted } from '../../plain/words.ts';
import { printMoney } from '../../quantity/money.ts';
import { printLength } from '../../quantity/print-length.ts';
import type { MarkdownText } from '../../text/fit.ts';
import { page } from '../../text/markdown.ts';
import { titleOfHouse } from '../house.ts';
import { standingNotice, standingOfRooms } from '../standing.ts';
import { toldChanges, valuesOf, whatText } from './said.ts';
import { byHead, stateText, type Compared, type StateTold } from './state.ts';
import { comparisonRows, FARES, fateText, isSame, jobOf, pieceLines, pieceRows, priceRows, roomLines } from './words.ts';

/** A comment on GitHub has at most 65,536 ("Body is too long (maximum is 65536 characters)", its API says); some are left for what stands around it. */
const MOST_CHARACTERS = 64_000;
/** So many rows of each list are shown where all of them are too many. */
const ROWS = [Infinity, 300, 100, 30, 10, 3] as const;
const SHORTENED = 'Shortened, so that it fits into a review: cofferwright compare prints all of it, with --format csv every piece.';

/** What changed, for a review: what it costs first, the long lists folded; shortened where a review would not take it. */
export function markdownChanges(compared: Compared): MarkdownText {
    for (const most of ROWS) {
        const whole = page.together(partsOf(compared, most));
        if (whole.length <= MOST_CHARACTERS) return whole;
    }
    // many houses or rooms, or very long names: as many parts as there is space for, without those that take all of it
    const parts: MarkdownText[] = [];
    let left = MOST_CHARACTERS - SHORTENED.length, missing = 0;
    for (const part of partsOf(compared, ROWS.at(-1)!)) {
        if (part.length + 2 > left) missing++;
        else {
            parts.push(part);
            left -= part.length + 2;
        }
    }
    return page.together([...parts, page.words(`Left out here: ${counted(missing, 'part')}.`)]);
}

function partsOf({ before, after, changes }: Compared, most: number): MarkdownText[] {
    const notices = [[before, 'Before'] as const, [after, 'Now'] as const].flatMap(([{ rooms }, word]) => {
        const [head, ...lines] = standingNotice(standingOfRooms(rooms));
        return head === undefined ? [] : [page.strong(`${word}: ${head}`), ...listOf(lines, most)];
    });
    return [
        page.heading(2, 'What changes on the ceiling'), page.words(`From ${stateText(before)} to ${stateText(after)}.`), ...most < Infinity ? [page.words(SHORTENED)] : [], ...notices,
        ...said(changes.said, most), ...changes.houses.flatMap(house => houseParts(house, [before, after], most)),
    ];
}

function said(changes: readonly SaidChange[], most: number): MarkdownText[] {
    if (changes.length === 0) return [page.words('Nothing is said otherwise.')];
    const value = (text: string | undefined): string => (text === undefined ? '' : text === '' ? 'said' : text);
    return tableOf(['Said', 'Before', 'Now', 'Where'], toldChanges(changes).map(({ change, holds }) => {
        const { before, after, file, movedFrom } = change, { was, is } = valuesOf(change), at = (after ?? before)!.at.range.start.line + 1;
        return [
            `${whatText(change)}${holds > 0 ? ` (with ${counted(holds, 'line')})` : ''}`, value(was), value(is),
            `${file}:${at}${movedFrom === undefined ? '' : `, was in ${movedFrom}`}`,
        ];
    }), [], most);
}

function houseParts(house: HouseChange, [then, now]: readonly [StateTold, StateTold], most: number): MarkdownText[] {
    const { before, after, rooms, cut, price, pieces, findings } = house, job = jobOf(house), show = job.show.value;
    const title = page.heading(3, titleOfHouse((after ?? before)!));
    if (isSame(house)) return [title, page.words('Nothing changed: every piece, board, hour and sum is as it was.')];
    const money = priceRows(house), list = pieceLines(house, job), numbers = comparisonRows(house, job);
    const ceilings = rooms.filter(room => !room.isSame || room.renamedFrom !== undefined);
    return [
        title, ...before ? after ? [] : [page.words('The house is gone.')] : [page.words('The house is new.')],
        ...money.length === 0 ? [] : [page.table(['The price of the change', '', ''], money, [2])],
        ...price?.lacks.map(words => page.words(`Not in it: ${words}.`)) ?? [],
        ...ceilings.slice(0, most).flatMap(room => [page.strong(`room ${room.name}`), ...listOf(roomLines(room, job), most)]), ...more(ceilings.length, most, 'room'),
        page.table(['Pieces', ...FARES], pieceRows(house).map(([part, ...counts]) => [part, ...counts.map(String)]), [1, 2, 3, 4, 5]),
        ...list.length === 0 ? [] : [page.folded(counted(list.length, 'line of pieces', 'lines of pieces'), listOf(list, most))],
        ...cut.wood.length === 0 ? [] : tableOf(['Cut already', 'Length', 'What becomes of it', 'Cost', 'Saved'], cut.wood.map(wood => [
            `${wood.room}.${wood.name}`, printLength(wood.length, show), fateText(wood, job),
            wood.worth ? printMoney(wood.worth.amount, wood.worth.currency) : 'no price', wood.saved ? printMoney(wood.saved.amount, wood.saved.currency) : '',
        ]), [1, 3, 4], most),
        ...numbers.length === 0 ? [] : [page.table(['Boards, hours, money', 'Before', 'Now'], numbers.map(([what = '', was = '', , is = '']) => [what, was, is]))],
        ...pieces.proved && cut.proved ? [] : [page.words('There are more pieces than is looked through: another use of old ones may save more wood.')],
        ...found('Found now, and not before', findings.come, now, most), ...found('Found before, and not now', findings.gone, then, most),
    ];
}

function found(title: string, findings: readonly Finding[], state: StateTold, most: number): MarkdownText[] {
    if (findings.length === 0) return [];
    const { atHead, others } = byHead(findings, state);
    return [page.strong(title), ...listOf([...atHead === '' ? [] : [atHead], ...others.map(({ severity, message, rule }) => `${severity}: ${message} (${rule})`)], most)];
}

function tableOf(head: readonly string[], rows: readonly (readonly string[])[], right: readonly number[], most: number): MarkdownText[] {
    return [page.table(head, rows.slice(0, most), right), ...more(rows.length, most, 'line')];
}
function listOf(lines: readonly string[], most: number): MarkdownText[] {
    return [page.list(lines.slice(0, most)), ...more(lines.length, most, 'line')];
}
function more(all: number, most: number, what: string): MarkdownText[] {
    return all <= most ? [] : [page.words(`and ${counted(all - most, `more ${what}`, `more ${what}s`)}`)];
}
