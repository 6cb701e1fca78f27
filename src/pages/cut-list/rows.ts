import { compareNames } from '../../takeoff/piece-order.ts';
import { COLUMN, COLUMNS, type Column } from './columns.ts';
import type { CutListContent, Entry, ListedPiece } from './content.ts';
import { GROUPING, type Grouping } from './groupings.ts';
import type { Ticked } from './ticks.ts';
import { grouped } from '../../plain/groups.ts';

/** What a reader of the list has set. */
export interface CutListState {
    readonly sort: Column; readonly descending: boolean;
    readonly group: Grouping;
    /** Equal pieces stand in one row. */
    readonly together: boolean;
    readonly find: string;
    /** What is cut is left out. */
    readonly onlyOpen: boolean;
    /** Keys of the entries whose why is shown. */
    readonly open: Readonly<Record<string, boolean>>;
}
export const CUT_LIST_STATE: CutListState = { sort: 'length', descending: true, group: 'stock', together: true, find: '', onlyOpen: false, open: {} };

export interface Group { readonly key: string; readonly title: string; readonly entries: readonly Entry[]; readonly pieces: number }

/** Groups in their natural order, entries sorted within; one group without a title where nothing is grouped. */
export function groupsOf(content: CutListContent, state: CutListState, ticked: Ticked): readonly Group[] {
    const kept = found(content, state, ticked);
    const groups = new Map<string, { title: string; order: readonly (string | number)[]; pieces: ListedPiece[] }>();
    for (const piece of kept) {
        const { key, title, order } = GROUPING[state.group].of(content.cuts[piece.cut]!, piece);
        const group = groups.get(key);
        if (group) group.pieces.push(piece);
        else groups.set(key, { title, order, pieces: [piece] });
    }
    return [...groups].sort(([, a], [, b]) => compareOrders(a.order, b.order))
        .map(([key, { title, pieces }]) => ({ key, title, pieces: pieces.length, entries: sorted(entriesOf(key, pieces, content, state.together), state) }));
}

function compareOrders(a: readonly (string | number)[], b: readonly (string | number)[]): number {
    for (let i = 0; i < Math.min(a.length, b.length); i++) {
        const [x, y] = [a[i]!, b[i]!];
        const order = typeof x === 'number' && typeof y === 'number' ? x - y : compareNames(String(x), String(y));
        if (order !== 0) return order;
    }
    return 0;
}

/** Every word that is looked for stands somewhere in the row, also as the tape reads it. `side` is a part, and not every piece on a north side. */
function found({ pieces, cuts }: CutListContent, { find, onlyOpen }: CutListState, ticked: Ticked): readonly ListedPiece[] {
    const words = find.toLowerCase().split(/\s+/).filter(Boolean);
    const texts = cuts.map(cut => COLUMNS.flatMap(column => COLUMN[column].sought(cut)).join(' ').toLowerCase());
    return pieces.filter(piece => {
        if (onlyOpen && ticked.conditionOf(piece, cuts[piece.cut]!) === 'cut') return false;
        if (words.length === 0) return true;
        const text = `${texts[piece.cut]} ${piece.id} ${piece.where.replace(/ side$/, '')}`.toLowerCase();
        return words.every(word => stands(word, text));
    });
}

/** One or two letters or figures are a word of their own: `B` is line B, and not every board. */
function stands(word: string, text: string): boolean {
    for (let at = text.indexOf(word); at >= 0; at = text.indexOf(word, at + 1)) {
        if (word.length > 2 || !/[\p{L}\p{N}]/u.test(`${text[at - 1] ?? ''}${text[at + word.length] ?? ''}`)) return true;
    }
    return false;
}

function entriesOf(group: string, pieces: readonly ListedPiece[], { cuts }: CutListContent, together: boolean): readonly Entry[] {
    if (!together) return pieces.map(piece => ({ key: piece.id, cut: cuts[piece.cut]!, pieces: [piece] }));
    return [...grouped(pieces, ({ cut }) => cut)].map(([cut, alike]) => ({ key: `${group}|${cuts[cut]!.print}`, cut: cuts[cut]!, pieces: alike }));
}

/** What is equal in the column stays by part, from long to short, then in the order of the list. */
function sorted(entries: readonly Entry[], { sort, descending }: CutListState): readonly Entry[] {
    const sign = descending ? -1 : 1;
    return [
        ...entries,
    ].sort((a, b) => sign * COLUMN[sort].compare(a, b) || COLUMN.part.compare(a, b) || COLUMN.length.compare(b, a) || COLUMN.piece.compare(a, b));
}

/** A line of the table. */
export type Row =
    | { readonly kind: 'group'; readonly group: Group }
    | { readonly kind: 'entry'; readonly entry: Entry }
    | { readonly kind: 'piece'; readonly entry: Entry; readonly piece: ListedPiece };

export function rowsOf(groups: readonly Group[], open: CutListState['open']): readonly Row[] {
    return groups.flatMap((group): readonly Row[] => [
        ...group.title === '' ? [] : [{ kind: 'group' as const, group }],
        ...group.entries.flatMap((entry): readonly Row[] => [{ kind: 'entry', entry }, ...open[entry.key] ? entry.pieces.map(piece => ({ kind: 'piece' as const, entry, piece })) : []]),
    ]);
}
