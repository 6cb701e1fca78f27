import { isSound, standingTogether, type Standing } from '../pipeline/standing.ts';
import { type Cell, printCsv } from '../text/csv.ts';
import type { RoomPieces } from './house.ts';
import { wrap, type Paint } from './look.ts';
import { cleanText } from '../text/clean-text.ts';
import type { CsvText } from '../text/fit.ts';
import { counted } from '../plain/words.ts';
import { BEFORE_CUTTING, NOT_AS_IT_STANDS, USED_NOWHERE } from '../plain/notice.ts';

const MOST_TOLD = 12, MOST_IN_A_CELL = 3;

/** One line for everything that is wrong or not computed, with its place: `den.coffer:12:5: Not computed yet: …`. */
export function standingLines({ errors, notComputed }: Standing, most = MOST_TOLD): string[] {
    const all = [...errors.map(one => `${one.place}: ${one.message} [${one.rule}]`), ...notComputed.map(one => `${one.place}: ${one.message}`)].map(cleanText);
    return all.length <= most ? all : [...all.slice(0, most), `and ${all.length - most} more: \`cofferwright check\` shows them`];
}

/** Whether a finding is one of those lines, so that nobody has to read it twice. */
export function isAmongLines(standing: Standing, { message, rule }: { readonly message: string; readonly rule: string }): boolean {
    const end = cleanText(`: ${message} [${rule}]`);
    return standingLines(standing).some(line => line.endsWith(end));
}

/** What is said and makes no figure here another. */
export function unusedLines({ notUsed }: Standing, most = MOST_TOLD): string[] {
    return standingLines({ errors: [], notComputed: notUsed, notUsed: [], beforeCutting: [] }, most);
}

/** What has to be measured or seen to before anything is cut. */
function beforeCuttingLines({ beforeCutting }: Standing, most = MOST_TOLD): string[] {
    return standingLines({ errors: [], notComputed: beforeCutting, notUsed: [], beforeCutting: [] }, most);
}

/** The same with the words that stand over it; calm where no figure is wrong, nothing where nothing was found. For sheets, pages and models. */
export function standingNotice(standing: Standing): readonly string[] {
    const unused = unusedLines(standing), before = beforeCuttingLines(standing), also = unused.map(line => `${USED_NOWHERE}: ${line}`);
    if (!isSound(standing)) return [`${NOT_AS_IT_STANDS}:`, ...standingLines(standing), ...before.map(line => `${BEFORE_CUTTING}: ${line}`), ...also];
    if (before.length > 0) return [`${BEFORE_CUTTING}:`, ...before, ...also];
    return unused.length === 0 ? [] : [`${USED_NOWHERE}:`, ...unused];
}

/** The head of a list to be read. `dont`: what is not to be done with it; `lacks`: what follows where a room could not be laid out. */
export function standingText(
    rooms: readonly RoomPieces[], { dont, lacks }: { readonly dont: string; readonly lacks: string }, paint: Paint, width = 100,
): string[] {
    const standing = standingOfRooms(rooms);
    return [
        ...rooms.flatMap(({ room: { name }, takeOff, standing: { errors } }) => [
            ...errors.length > 0 ? [paint.error(`room ${name}: ${counted(errors.length, 'error')} in what it is made from. Do not ${dont} before ${errors.length === 1 ? 'it is' : 'they are'} fixed.`)] : [],
            ...takeOff ? [] : [paint.error(`room ${name}: cannot be laid out, so ${lacks}.`)],
        ]),
        ...isSound(standing) ? [] : [paint.error(`${NOT_AS_IT_STANDS}:`), ...under(standingLines(standing), width)],
        ...standing.beforeCutting.length === 0 ? [] : [paint.warning(`${BEFORE_CUTTING}:`), ...under(beforeCuttingLines(standing), width)],
        ...standing.notUsed.length === 0 ? [] : [`${USED_NOWHERE}:`, ...under(unusedLines(standing), width)],
    ];
}

function under(lines: readonly string[], width: number): string[] {
    return lines.flatMap(line => wrap(line, width - 4).map((part, i) => `${i === 0 ? '  ' : '    '}${part}`));
}

export function standingOfRooms(rooms: readonly Pick<RoomPieces, 'standing'>[]): Standing {
    return standingTogether(rooms.map(({ standing }) => standing));
}

/** The last column of every table: the same in each row, so that it stays a plain table, and no row can be taken out of it without. */
const STANDING_COLUMN = 'standing';

/** A table of rows that stand as one of these does. What has no rows, and has something to be told, has one that says so. */
export function csvStanding(
    header: readonly string[], parts: readonly { readonly rows: readonly (readonly Cell[])[]; readonly standing: Standing }[],
): CsvText {
    return printCsv([...header, STANDING_COLUMN], parts.flatMap(({ rows, standing }) => {
        const cell = standingCell(standing), isTold = !isSound(standing) || standing.notUsed.length > 0 || standing.beforeCutting.length > 0;
        return rows.length === 0 && isTold ? [[...header.map(() => null), cell]] : rows.map(row => [...row, cell]);
    }));
}

function standingCell(standing: Standing): Cell {
    const told = [[BEFORE_CUTTING, beforeCuttingLines(standing, MOST_IN_A_CELL)], [USED_NOWHERE, unusedLines(standing, MOST_IN_A_CELL)]] as const;
    if (!isSound(standing)) return `${NOT_AS_IT_STANDS}: ${standingLines(standing, MOST_IN_A_CELL).join(' | ')}`;
    const words = told.flatMap(([head, lines]) => (lines.length > 0 ? [`${head.toLowerCase()}: ${lines.join(' | ')}`] : []));
    return words.length === 0 ? 'ok' : `ok (${words.join('; ')})`;
}
