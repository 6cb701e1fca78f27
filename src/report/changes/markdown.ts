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
import { stateText, type Compared } from './state.ts';
import { comparisonRows, FARES, fateText, isSame, jobOf, pieceLines, pieceRows, priceRows, roomLines } from './words.ts';

/** What changed, for a review: what it costs first, the long lists folded. */
export function markdownChanges({ before, after, changes }: Compared): MarkdownText {
    const notices = [[before, 'Before'] as const, [after, 'Now'] as const].flatMap(([{ rooms }, word]) => {
        const [head, ...lines] = standingNotice(standingOfRooms(rooms));
        return head === undefined ? [] : [page.strong(`${word}: ${head}`), page.list(lines)];
    });
    return page.together([
        page.heading(2, 'What changes on the ceiling'), page.words(`From ${stateText(before)} to ${stateText(after)}.`), ...notices,
        ...said(changes.said), ...changes.houses.flatMap(houseParts),
    ]);
}

function said(changes: readonly SaidChange[]): MarkdownText[] {
    if (changes.length === 0) return [page.words('Nothing is said otherwise.')];
    const value = (text: string | undefined): string => (text === undefined ? '' : text === '' ? 'said' : text);
    return [page.table(['Said', 'Before', 'Now', 'Where'], toldChanges(changes).map(({ change, holds }) => {
        const { before, after, file, movedFrom } = change, { was, is } = valuesOf(change), at = (after ?? before)!.at.range.start.line + 1;
        return [
            `${whatText(change)}${holds > 0 ? ` (with ${counted(holds, 'line')})` : ''}`, value(was), value(is),
            `${file}:${at}${movedFrom === undefined ? '' : `, was in ${movedFrom}`}`,
        ];
    }))];
}

function houseParts(house: HouseChange): MarkdownText[] {
    const { before, after, rooms, cut, price, pieces, findings } = house, job = jobOf(house), show = job.show.value;
    const title = page.heading(3, titleOfHouse((after ?? before)!));
    if (isSame(house)) return [title, page.words('Nothing changed: every piece, board, hour and sum is as it was.')];
    const money = priceRows(house), list = pieceLines(house, job), numbers = comparisonRows(house, job);
    const ceilings = rooms.filter(room => !room.isSame || room.renamedFrom !== undefined);
    return [
        title, ...before ? after ? [] : [page.words('The house is gone.')] : [page.words('The house is new.')],
        ...money.length === 0 ? [] : [page.table(['The price of the change', '', ''], money, [2])],
        ...price?.lacks.map(words => page.words(`Not in it: ${words}.`)) ?? [],
        ...ceilings.flatMap(room => [page.strong(`room ${room.name}`), page.list(roomLines(room, job))]),
        page.table(['Pieces', ...FARES], pieceRows(house).map(([part, ...counts]) => [part, ...counts.map(String)]), [1, 2, 3, 4, 5]),
        ...list.length === 0 ? [] : [page.folded(counted(list.length, 'line of pieces', 'lines of pieces'), [page.list(list)])],
        ...cut.wood.length === 0 ? [] : [page.table(['Cut already', 'Length', 'What becomes of it', 'Cost', 'Saved'], cut.wood.map(wood => [
            `${wood.room}.${wood.name}`, printLength(wood.length, show), fateText(wood, job),
            wood.worth ? printMoney(wood.worth.amount, wood.worth.currency) : 'no price', wood.saved ? printMoney(wood.saved.amount, wood.saved.currency) : '',
        ]), [1, 3, 4])],
        ...numbers.length === 0 ? [] : [page.table(['Boards, hours, money', 'Before', 'Now'], numbers.map(([what = '', was = '', , is = '']) => [what, was, is]))],
        ...pieces.proved && cut.proved ? [] : [page.words('There are more pieces than is looked through: another use of old ones may save more wood.')],
        ...found('Found now, and not before', findings.come), ...found('Found before, and not now', findings.gone),
    ];
}

function found(title: string, findings: readonly Finding[]): MarkdownText[] {
    return findings.length === 0 ? [] : [page.strong(title), page.list(findings.map(({ severity, message, rule }) => `${severity}: ${message} (${rule})`))];
}
