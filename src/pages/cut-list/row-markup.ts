import { printLength } from '../../quantity/print-length.ts';
import { attributes, html, named, type Html } from '../shared/html.ts';
import { t } from '../shared/words.ts';
import { whyMarkup } from '../shared/why.ts';
import type { Cut, CutListContent, ListedPiece } from './content.ts';
import { partWord } from './part-words.ts';
import { COLUMNS, type Column, type CutListState, type Entry, type Group, type Row } from './rows.ts';
import type { Ticked } from './ticks.ts';

export function columnWord(column: Column): string {
    switch (column) {
        case 'length': return t('Length');
        case 'face': return t('Face');
        case 'pieces': return t('Pieces');
        case 'part': return t('Part');
        case 'piece': return t('Where');
        case 'ends': return t('Ends');
        case 'then': return t('Then');
        case 'stock': return t('Stock');
    }
}

/** Columns that a narrow pane has no room for; what they say then stands under the name of the piece: see style.ts. */
export const HIDDEN_WHEN_NARROW: Partial<Readonly<Record<Column, string>>> = { face: 'wide', part: 'wide', ends: 'half', stock: 'wider', then: 'widest' };

export function rowMarkup(row: Row, content: CutListContent, state: CutListState, ticked: Ticked, index: number): Html {
    switch (row.kind) {
        case 'group': return groupRow(row.group, ticked, content, index);
        case 'entry': return entryRow(row.entry, content, state.open[row.entry.key] === true, ticked, index);
        case 'piece': return pieceRow(row.entry, row.piece, content, ticked, index);
    }
}

function groupRow({ title, pieces, entries }: Group, ticked: Ticked, { show }: CutListContent, index: number): Html {
    const length = entries.reduce((sum, entry) => sum + entry.cut.back * entry.pieces.length, 0);
    const cut = entries.reduce((sum, entry) => sum + entry.pieces.filter(piece => ticked.conditionOf(piece, entry.cut) === 'cut').length, 0);
    return html`<tr class="group" ${attributes({ 'aria-rowindex': index })}><th scope="colgroup" ${attributes({ colspan: COLUMNS.length + 1 })}>${named(title)} <span class="soft">${pieces === 1 ? t('1 piece') : t('{0} pieces', pieces)}, ${printLength(length, show)}${cut > 0 ? `, ${t('{0} cut', cut)}` : ''}</span></th></tr>`;
}

function entryRow(entry: Entry, content: CutListContent, isOpen: boolean, ticked: Ticked, index: number): Html {
    const { cut, pieces, key } = entry;
    const conditions = pieces.map(piece => ticked.conditionOf(piece, cut));
    const done = conditions.filter(condition => condition === 'cut').length, changed = conditions.filter(condition => condition === 'changed').length;
    const name = t('{0} at {1}, {2}', `${pieces.length} x ${partWord(cut.part)}`, cut.length, pieces.length === 1 ? pieces[0]!.mark : cut.ends);
    return html`<tr ${attributes({ 'class': done === pieces.length ? 'entry done' : 'entry', 'aria-rowindex': index, 'data-keys': pieces.map(({ id }) => id).join(' '), 'data-row': key })}>
<td class="tick"><input type="checkbox" data-act="tick" ${attributes({ 'data-entry': key, checked: done === pieces.length, 'data-some': done > 0 && done < pieces.length, 'aria-label': t('Cut: {0}', name) })}></td>
<th scope="row" class="figure length"><button type="button" class="open-why" data-act="open" ${attributes({ 'data-entry': key, 'aria-expanded': String(isOpen), title: t('Why this length, and where each goes') })}><span aria-hidden="true" class="turn">${isOpen ? '▾' : '▸'}</span><span class="long">${cut.length}</span>${content.show === 'feet-inches' ? html`<span class="inches">${cut.inches}</span>` : ''}</button></th>
<td class="figure wide">${cut.faceLength}</td>
<td class="figure pieces">${pieces.length === 1 ? '1' : html`<b>${pieces.length}</b>`}</td>
<td class="wide part-name">${partWord(cut.part)}</td>
<td class="piece">${marks(pieces, cut)}${changed > 0 ? changedNote(changed, entry, ticked, content) : ''}${more(cut)}</td>
<td class="half">${endWords(cut)}</td>
<td class="widest">${cut.then}</td>
<td class="wider stock-name">${named(cut.stock)}</td>
</tr>`;
}

const NAMED = 2;
function marks(pieces: readonly ListedPiece[], cut: Cut): Html {
    const short = ({ mark }: ListedPiece): string => mark.startsWith(`${cut.part}-`) ? mark.slice(cut.part.length + 1) : mark;
    if (pieces.length === 1) return pieceLink(pieces[0]!, short(pieces[0]!));
    const rest = pieces.length - NAMED;
    return html`<span class="marks">${pieces.slice(0, NAMED).map(short).join(', ')}${rest > 0 ? ` ${t('and {0} more', rest)}` : ''}</span>`;
}

/** Leads to the words the piece comes from, and shows it in the other panes. */
function pieceLink({ id, at, where }: ListedPiece, words: string): Html {
    return html`<button type="button" class="link mark" ${attributes({ 'data-at': at, 'data-key': id, title: where })}>${words}</button>`;
}

function changedNote(count: number, { cut, pieces }: Entry, ticked: Ticked, { show }: CutListContent): Html {
    const was = pieces.length === 1 ? ticked.cutAt(pieces[0]!) : undefined;
    return html` <span class="changed">${was !== undefined && was !== cut.back ? t('changed since cut: it was {0}', printLength(was, show)) : pieces.length === 1 ? t('changed since cut') : t('{0} changed since cut', count)}</span>`;
}

function endWords({ ends, hand }: Cut): string {
    return hand === null ? ends : `${ends}, ${hand === 'left' ? t('left hand') : t('right hand')}`;
}

/** What the hidden columns say. */
function more(cut: Cut): Html {
    return html`<div class="more soft"><span class="n">${partWord(cut.part)}; ${cut.faceLength ? `${t('face {0}', cut.faceLength)}; ` : ''}</span><span class="ne">${endWords(cut)}; </span>${cut.then ? html`<span class="nn">${t('then {0}', cut.then)}</span><span class="nm">; </span>` : ''}<span class="nm">${named(cut.stock)}</span></div>`;
}

function pieceRow(entry: Entry, piece: ListedPiece, content: CutListContent, ticked: Ticked, index: number): Html {
    const { cut, pieces, key } = entry, condition = ticked.conditionOf(piece, cut);
    return html`<tr class="one" ${attributes({ 'aria-rowindex': index, 'data-keys': piece.id, 'data-row': `${key} ${piece.id}` })}>
<td class="tick">${pieces.length === 1 ? '' : html`<input type="checkbox" data-act="tick" ${attributes({ 'data-entry': key, 'data-piece': piece.id, checked: condition === 'cut', 'aria-label': t('Cut: {0}', piece.mark) })}>`}</td>
<td class="detail" ${attributes({ colspan: COLUMNS.length })}><div class="detail-line">${pieceLink(piece, piece.mark)}<span class="soft">${piece.where}</span>${condition === 'changed' && pieces.length > 1 ? changedNote(1, { ...entry, pieces: [piece] }, ticked, content) : ''}<button type="button" class="small" data-find="plan" ${attributes({ 'data-key': piece.id, 'aria-label': t('Show {0} on the plan', piece.mark) })}>${t('On the plan')}</button></div>
<div class="why-line">${whyMarkup(content.whys[piece.why]!)}</div></td>
</tr>`;
}
