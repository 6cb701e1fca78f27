import type { HouseChange, SaidChange } from '../../changes/model.ts';
import type { Finding } from '../../findings/finding.ts';
import { printMoney } from '../../quantity/money.ts';
import { printLength } from '../../quantity/print-length.ts';
import { cleanText } from '../../text/clean-text.ts';
import type { TerminalText } from '../../text/fit.ts';
import { terminalParagraphs } from '../../text/terminal.ts';
import { titleOfHouse } from '../house.ts';
import { columns, wrap, type Paint } from '../look.ts';
import { standingText } from '../standing.ts';
import { toldChanges, valuesOf, whatText } from './said.ts';
import { byHead, stateText, type Compared, type StateTold } from './state.ts';
import { comparisonRows, FARES, fateText, isSame, jobOf, pieceLines, pieceRows, priceRows, roomLines } from './words.ts';
import { counted } from '../../plain/words.ts';

const WIDTH = 100, MOST_PIECES = 40;

/** What changed between two states, layer by layer. */
export function humanChanges({ before, after, changes }: Compared, paint: Paint): TerminalText {
    const dont = { dont: 'agree to a price', lacks: 'it is in no figure here' };
    return terminalParagraphs([
        [paint.strong('CHANGES'), ...wrap(`From ${stateText(before)} to ${stateText(after)}.`, WIDTH)],
        ...[[before, 'BEFORE'] as const, [after, 'NOW'] as const].map(([state, word]) => [state, word, standingText(state.rooms, dont, paint, WIDTH)] as const)
            .filter(([, , lines]) => lines.length > 0).map(([, word, lines]) => [paint.strong(word), ...lines.map(indented)]),
        said(changes.said, paint), ...changes.houses.map(house => houseText(house, [before, after], paint)),
    ]);
}

function said(changes: readonly SaidChange[], paint: Paint): string[] {
    if (changes.length === 0) return ['Nothing is said otherwise.'];
    return [paint.strong('WHAT IS SAID'), ...toldChanges(changes).flatMap(({ change, holds }) => {
        const { before, after, file, movedFrom } = change, { was, is } = valuesOf(change), at = (after ?? before)!.at.range.start.line + 1;
        const more = holds > 0 ? ` (with ${counted(holds, 'line')})` : '';
        const words = was !== undefined && is !== undefined ? `${valueText(was)} → ${valueText(is)}` : `${is === undefined ? 'gone' : 'new'}${(is ?? was) === '' ? '' : `: ${is ?? was}`}${more}`;
        const place = before && !after ? `${file}, was line ${at}` : `${file}:${at}${movedFrom === undefined ? '' : `, was in ${movedFrom}`}`;
        return [indented(paint.faint(cleanText(place))), ...wrap(`${whatText(change)}: ${words}`, WIDTH - 4).map(line => `    ${line}`)];
    })];
}

function valueText(value: string): string {
    return value === '' ? 'nothing' : value;
}

function houseText(house: HouseChange, [then, now]: readonly [StateTold, StateTold], paint: Paint): string[] {
    const { before, after, rooms, pieces, cut, price, findings } = house, job = jobOf(house);
    const title = paint.strong(cleanText(titleOfHouse((after ?? before)!)).toUpperCase());
    if (isSame(house)) return [title, indented('Nothing changed: every piece, board, hour and sum is as it was.')];
    const ceilings = rooms.filter(room => !room.isSame || room.renamedFrom !== undefined), list = pieceLines(house, job), money = priceRows(house);
    return [
        title, ...before ? after ? [] : [indented('The house is gone.')] : [indented('The house is new.')],
        ...ceilings.length === 0 ? [] : [paint.strong('THE CEILING')],
        ...ceilings.flatMap(room => [indented(`room ${room.name}`), ...roomLines(room, job).flatMap(line => wrap(line, WIDTH - 6).map((part, i) => `${i === 0 ? '    ' : '      '}${part}`))]),
        paint.strong('PIECES'), ...columns([['', ...FARES], ...pieceRows(house).map(([part, ...counts]) => [part, ...counts.map(String)])], [1, 2, 3, 4, 5]).map(indented),
        ...list.slice(0, MOST_PIECES).map(indented), ...list.length > MOST_PIECES ? [indented(`and ${list.length - MOST_PIECES} more such lines: --format csv has every piece`)] : [],
        ...pieces.from.length === 0 ? [] : wrap(`"From an old one": so that the most wood of old pieces is used, if they are all cut; ${pieces.proved ? 'no other way uses more' : 'more than is looked through, so another way may use more'}.`, WIDTH - 2).map(indented),
        ...cut.wood.length === 0 ? [] : [paint.strong('CUT ALREADY'), ...columns([
            ...cut.wood.map(wood => [`${wood.room}.${wood.name}`, printLength(wood.length, job.show.value), wood.worth ? printMoney(wood.worth.amount, wood.worth.currency) : 'no price', wood.fate === 'keep' || wood.fate === 'elsewhere' ? '' : wood.saved ? printMoney(wood.saved.amount, wood.saved.currency) : '', fateText(wood, job)]),
        ], [1, 2, 3]).map(indented), ...wrap(`Length, what its wood cost, what of that is saved. ${cut.proved ? 'No other use of these pieces saves more wood.' : 'There are more of them than is looked through: another use may save more.'}`, WIDTH - 2).map(indented)],
        ...comparisonRows(house, job).length === 0 ? [] : [paint.strong('BOARDS, HOURS, MONEY'), ...columns(comparisonRows(house, job)).map(indented)],
        ...money.length === 0 ? [] : [paint.strong('THE PRICE OF THE CHANGE'), ...columns(money, [2]).map((line, i) => indented(i === money.length - 1 ? paint.strong(line) : line))],
        ...price?.lacks.flatMap(words => wrap(`Not in it: ${words}.`, WIDTH - 2)).map(line => indented(paint.warning(line))) ?? [],
        ...findingText('FOUND NOW, AND NOT BEFORE', findings.come, now, paint), ...findingText('FOUND BEFORE, AND NOT NOW', findings.gone, then, paint),
    ];
}

/** What stands at the head already is not written out again. */
function findingText(title: string, findings: readonly Finding[], state: StateTold, paint: Paint): string[] {
    if (findings.length === 0) return [];
    const { atHead, others } = byHead(findings, state);
    return [
        paint.strong(title), ...atHead === '' ? [] : wrap(atHead, WIDTH - 4).map((line, i) => `${i === 0 ? '  ' : '    '}${paint.error(line)}`),
        ...others.flatMap(({ severity, message, rule }) => wrap(`${severity}: ${message} [${rule}]`, WIDTH - 4).map((line, i) => `${i === 0 ? '  ' : '    '}${paint[severity](line)}`)),
    ];
}

function indented(line: string): string {
    return `  ${line}`;
}
