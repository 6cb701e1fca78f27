import { PARTS } from '../../takeoff/model.ts';
import { compareNames } from '../../takeoff/piece-order.ts';
import { t } from '../shared/words.ts';
import type { Cut, CutListContent, ListedPiece } from './content.ts';
import type { Ticked } from './ticks.ts';
import { partWord } from './part-words.ts';

export const COLUMNS = ['length', 'face', 'pieces', 'part', 'piece', 'ends', 'then', 'stock'] as const;
export type Column = (typeof COLUMNS)[number];
export const GROUPINGS = ['none', 'part', 'stock', 'set-up', 'line'] as const;
export type Grouping = (typeof GROUPINGS)[number];

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

/** Pieces that stand in one row. */
export interface Entry { readonly key: string; readonly cut: Cut; readonly pieces: readonly ListedPiece[] }
export interface Group { readonly key: string; readonly title: string; readonly entries: readonly Entry[]; readonly pieces: number }

/** Groups in their natural order, entries sorted within; one group without a title where nothing is grouped. */
export function groupsOf(content: CutListContent, state: CutListState, ticked: Ticked): readonly Group[] {
    const kept = found(content, state, ticked);
    const groups = new Map<string, { title: string; order: readonly (string | number)[]; pieces: ListedPiece[] }>();
    for (const piece of kept) {
        const { key, title, order } = GROUPED[state.group](content.cuts[piece.cut]!, piece);
        const group = groups.get(key);
        if (group) group.pieces.push(piece);
        else groups.set(key, { title, order, pieces: [piece] });
    }
    return [...groups].sort(([, a], [, b]) => compareOrders(a.order, b.order))
        .map(([key, { title, pieces }]) => ({ key, title, pieces: pieces.length, entries: sorted(entriesOf(key, pieces, content, state.together), state) }));
}

const stop = (cut: Cut): string => cut.length;
/** One setting of the stop: the length, and which way round the piece lies. */
function setUp(cut: Cut): { key: string; title: string; order: readonly (string | number)[] } {
    const lies = cut.hand ?? cut.ends;
    const words = cut.hand === null ? cut.ends : cut.hand === 'left' ? t('left hand') : t('right hand');
    return { key: `${cut.back} ${lies}`, title: t('Stop at {0}, {1}', cut.inches || stop(cut), words), order: [-cut.back, lies] };
}

const GROUPED: Readonly<Record<Grouping, (cut: Cut, piece: ListedPiece) => { key: string; title: string; order: readonly (string | number)[] }>> = {
    none: () => ({ key: '', title: '', order: [] }),
    part: ({ part }) => ({ key: part, title: partWord(part), order: [PARTS.indexOf(part)] }),
    stock: ({ stock }) => ({ key: stock, title: stock, order: [stock] }),
    'set-up': setUp,
    line: ({ part }, { line }) => line === null ? { key: `-${part}`, title: partWord(part), order: [1, PARTS.indexOf(part)] } : { key: line, title: t('Line {0}', line), order: [0, line] },
};

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
    const texts = cuts.map(cut => [partWord(cut.part), cut.part, cut.stock, cut.length, cut.inches, cut.faceLength, cut.ends, cut.hand ?? '', cut.then].join(' ').toLowerCase());
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
    const byCut = new Map<number, ListedPiece[]>();
    for (const piece of pieces) {
        const alike = byCut.get(piece.cut);
        if (alike) alike.push(piece);
        else byCut.set(piece.cut, [piece]);
    }
    return [...byCut].map(([cut, alike]) => ({ key: `${group}|${cuts[cut]!.print}`, cut: cuts[cut]!, pieces: alike }));
}

const COMPARED: Readonly<Record<Column, (a: Entry, b: Entry) => number>> = {
    length: (a, b) => a.cut.back - b.cut.back || a.cut.face - b.cut.face,
    face: (a, b) => a.cut.face - b.cut.face,
    pieces: (a, b) => a.pieces.length - b.pieces.length,
    part: (a, b) => PARTS.indexOf(a.cut.part) - PARTS.indexOf(b.cut.part),
    piece: (a, b) => compareNames(a.pieces[0]!.id, b.pieces[0]!.id),
    ends: (a, b) => compareNames(`${a.cut.ends} ${a.cut.hand ?? ''}`, `${b.cut.ends} ${b.cut.hand ?? ''}`),
    then: (a, b) => compareNames(a.cut.then, b.cut.then),
    stock: (a, b) => compareNames(a.cut.stock, b.cut.stock),
};

/** What is equal in the column stays by part, from long to short, then in the order of the list. */
function sorted(entries: readonly Entry[], { sort, descending }: CutListState): readonly Entry[] {
    const sign = descending ? -1 : 1;
    return [...entries].sort((a, b) => sign * COMPARED[sort](a, b) || COMPARED.part(a, b) || COMPARED.length(b, a) || COMPARED.piece(a, b));
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
