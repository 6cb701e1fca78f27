import { PARTS } from '../../takeoff/model.ts';
import { compareNames } from '../../takeoff/piece-order.ts';
import { attributes, html, named, type Html } from '../shared/html.ts';
import { t } from '../shared/words.ts';
import type { Cut, CutListContent, Entry } from './content.ts';
import { partWord } from './part-words.ts';
import { changedNote, lowerNote, marks } from './piece-markup.ts';
import type { Ticked } from './ticks.ts';

/** A row as the pane shows it. */
export interface ShownEntry { readonly entry: Entry; readonly content: CutListContent; readonly isOpen: boolean; readonly ticked: Ticked }

/** All that a column of the list is, in the pane and on paper. */
interface ColumnSpec {
    readonly word: () => string;
    /** It stands to the right, and the largest comes first. */
    readonly isFigure?: boolean;
    /** A narrower pane has no room for it; what it says then stands under the name of the piece: see `more` and style.ts. */
    readonly hidden?: 'wide' | 'half' | 'wider' | 'widest';
    /** Further classes of its cells. */
    readonly classes?: string;
    readonly cell: (row: ShownEntry) => Html | string;
    /** On paper; null where it stands below the row, all of it. */
    readonly printed: ((entry: Entry) => Html | string) | null;
    readonly compare: (a: Entry, b: Entry) => number;
    /** What is looked for. What names single pieces is looked for besides. */
    readonly sought: (cut: Cut) => readonly string[];
}

const SPECS = {
    length: {
        word: () => t('Length'), isFigure: true, classes: 'length', cell: lengthCell,
        printed: ({ cut }) => html`<b>${cut.length}</b>${cut.inches ? html` <span class="soft">${cut.inches}</span>` : ''}`,
        compare: (a, b) => a.cut.back - b.cut.back || a.cut.face - b.cut.face, sought: ({ length, inches }) => [length, inches],
    },
    face: {
        word: () => t('Face'), isFigure: true, hidden: 'wide', cell: ({ entry: { cut } }) => cut.faceLength, printed: ({ cut }) => cut.faceLength,
        compare: (a, b) => a.cut.face - b.cut.face, sought: ({ faceLength }) => [faceLength],
    },
    pieces: {
        word: () => t('Pieces'), isFigure: true, classes: 'pieces', cell: ({ entry: { pieces } }) => (pieces.length === 1 ? '1' : html`<b>${pieces.length}</b>`),
        printed: ({ pieces }) => html`<b>${pieces.length}</b>`, compare: (a, b) => a.pieces.length - b.pieces.length, sought: () => [],
    },
    part: {
        word: () => t('Part'), hidden: 'wide', classes: 'part-name', cell: ({ entry: { cut } }) => partWord(cut.part), printed: ({ cut }) => partWord(cut.part),
        compare: (a, b) => PARTS.indexOf(a.cut.part) - PARTS.indexOf(b.cut.part), sought: ({ part }) => [partWord(part), part],
    },
    piece: {
        word: () => t('Where'), classes: 'piece', cell: pieceCell, printed: null, compare: (a, b) => compareNames(a.pieces[0]!.id, b.pieces[0]!.id), sought: () => [],
    },
    ends: {
        word: () => t('Ends'), hidden: 'half', cell: ({ entry: { cut } }) => endsAndHand(cut), printed: ({ cut }) => endsAndHand(cut),
        compare: (a, b) => compareNames(`${a.cut.ends} ${a.cut.hand ?? ''}`, `${b.cut.ends} ${b.cut.hand ?? ''}`), sought: ({ ends, hand }) => [ends, hand ?? ''],
    },
    then: {
        word: () => t('Then'), hidden: 'widest', cell: ({ entry: { cut } }) => cut.then, printed: ({ cut }) => cut.then,
        compare: (a, b) => compareNames(a.cut.then, b.cut.then), sought: ({ then }) => [then],
    },
    stock: {
        word: () => t('Stock'), hidden: 'wider', classes: 'stock-name', cell: ({ entry: { cut } }) => named(cut.stock), printed: ({ cut }) => cut.stock,
        compare: (a, b) => compareNames(a.cut.stock, b.cut.stock), sought: ({ stock }) => [stock],
    },
} satisfies Readonly<Record<string, ColumnSpec>>;

export type Column = keyof typeof SPECS;
/** The columns in their order: of the pane, its sort keys, the printed list and what is looked for. */
export const COLUMN: Readonly<Record<Column, ColumnSpec>> = SPECS;
export const COLUMNS = Object.keys(SPECS) as readonly Column[];

function lengthCell({ entry: { cut, key }, content, isOpen }: ShownEntry): Html {
    return html`<button type="button" class="open-why" data-act="open" ${attributes({ 'data-entry': key, 'aria-expanded': String(isOpen), title: t('Why this length, and where each goes') })}><span aria-hidden="true" class="turn">${isOpen ? '▾' : '▸'}</span><span class="long">${cut.length}</span>${content.show === 'feet-inches' ? html`<span class="inches">${cut.inches}</span>` : ''}</button>`;
}

function pieceCell({ entry, content, ticked }: ShownEntry): Html {
    const { cut, pieces } = entry, changed = pieces.filter(piece => ticked.conditionOf(piece, cut) === 'changed').length;
    return html`${marks(pieces, cut)}${changed > 0 ? changedNote(changed, entry, ticked, content) : ''}${lowerNote(pieces)}${more(cut)}`;
}

function endsAndHand({ ends, hand }: Cut): string {
    return hand === null ? ends : `${ends}, ${hand === 'left' ? t('left hand') : t('right hand')}`;
}

/** What the hidden columns say. */
function more(cut: Cut): Html {
    const face = cut.faceLength ? `${t('face {0}', cut.faceLength)}; ` : '';
    const then = cut.then ? html`<span class="nn">${t('then {0}', cut.then)}</span><span class="nm">; </span>` : '';
    return html`<div class="more soft"><span class="n">${partWord(cut.part)}; ${face}</span><span class="ne">${endsAndHand(cut)}; </span>${then}<span class="nm">${named(cut.stock)}</span></div>`;
}
