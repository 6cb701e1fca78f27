import { printRun } from '../../quantity/print-length.ts';
import { attributes, html, named, type Html } from '../shared/html.ts';
import { t } from '../shared/words.ts';
import { whyMarkup } from '../shared/why.ts';
import { COLUMN, COLUMNS, type Column, type ShownEntry } from './columns.ts';
import type { CutListContent, Entry, ListedPiece } from './content.ts';
import { partWord } from './part-words.ts';
import { changedNote, lowerNote, pieceLink } from './piece-markup.ts';
import type { CutListState, Group, Row } from './rows.ts';
import type { Ticked } from './ticks.ts';

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
    return html`<tr class="group" ${attributes({ 'aria-rowindex': index })}><th scope="colgroup" ${attributes({ colspan: COLUMNS.length + 1 })}>${named(title)} <span class="soft">${pieces === 1 ? t('1 piece') : t('{0} pieces', pieces)}, ${printRun(length, show)}${cut > 0 ? `, ${t('{0} cut', cut)}` : ''}</span></th></tr>`;
}

function entryRow(entry: Entry, content: CutListContent, isOpen: boolean, ticked: Ticked, index: number): Html {
    const { cut, pieces, key } = entry;
    const conditions = pieces.map(piece => ticked.conditionOf(piece, cut));
    const done = conditions.filter(condition => condition === 'cut').length;
    const name = t('{0} at {1}, {2}', `${pieces.length} x ${partWord(cut.part)}`, cut.length, pieces.length === 1 ? pieces[0]!.mark : cut.ends);
    return html`<tr ${attributes({ 'class': done === pieces.length ? 'entry done' : 'entry', 'aria-rowindex': index, 'data-keys': pieces.map(({ id }) => id).join(' '), 'data-row': key })}>
<td class="tick"><input type="checkbox" data-act="tick" ${attributes({ 'data-entry': key, checked: done === pieces.length, 'data-some': done > 0 && done < pieces.length, 'aria-label': t('Cut: {0}', name) })}></td>${COLUMNS.map(column => cell(column, { entry, content, isOpen, ticked }))}
</tr>`;
}

/** A row is named by its length. */
function cell(column: Column, row: ShownEntry): Html {
    const { isFigure, hidden, classes, cell: of } = COLUMN[column];
    const names = attributes({ 'class': [isFigure ? 'figure' : '', hidden, classes].filter(Boolean).join(' ') });
    return column === 'length' ? html`
<th scope="row" ${names}>${of(row)}</th>` : html`
<td ${names}>${of(row)}</td>`;
}

function pieceRow(entry: Entry, piece: ListedPiece, content: CutListContent, ticked: Ticked, index: number): Html {
    const { cut, pieces, key } = entry, condition = ticked.conditionOf(piece, cut);
    return html`<tr class="one" ${attributes({ 'aria-rowindex': index, 'data-keys': piece.id, 'data-row': `${key} ${piece.id}` })}>
<td class="tick">${pieces.length === 1 ? '' : html`<input type="checkbox" data-act="tick" ${attributes({ 'data-entry': key, 'data-piece': piece.id, checked: condition === 'cut', 'aria-label': t('Cut: {0}', piece.mark) })}>`}</td>
<td class="detail" ${attributes({ colspan: COLUMNS.length })}><div class="detail-line">${pieceLink(piece, piece.mark)}<span class="soft">${piece.where}</span>${pieces.length > 1 ? lowerNote([piece]) : ''}${condition === 'changed' && pieces.length > 1 ? changedNote(1, { ...entry, pieces: [piece] }, ticked, content) : ''}<button type="button" class="small" data-find="plan" ${attributes({ 'data-key': piece.id, 'aria-label': t('Show {0} on the plan', piece.mark) })}>${t('On the plan')}</button></div>
<div class="why-line">${whyMarkup(content.whys[piece.why]!)}</div></td>
</tr>`;
}
