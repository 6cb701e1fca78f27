import { printLength } from '../../quantity/print-length.ts';
import { attributes, html, named, type Html } from '../shared/html.ts';
import { printable } from '../shared/printable.ts';
import { t } from '../shared/words.ts';
import { COLUMN, COLUMNS } from './columns.ts';
import type { CutListContent, Entry } from './content.ts';
import { GROUPINGS } from './groupings.ts';
import { reading, listOf, type List } from './render.ts';
import { CUT_LIST_STATE, type CutListState } from './rows.ts';
import { totalsTable } from './totals.ts';
import type { HtmlText } from '../../text/fit.ts';

/** The list for paper: heads repeated on every sheet, a box to tick by hand for every piece, ticked where it is cut; every mark and every why. */
export function printedCutList(content: CutListContent, notice: readonly string[], state: unknown): HtmlText {
    const { own, ticks } = readState(state);
    const list = listOf(content, own, ticks);
    // a list grouped by stock has it in the head of each group
    const columns = PRINTED.filter(({ column }) => column !== own.group);
    const body = html`<p>${t('{0} pieces, cut to {1}', content.pieces.length, content.cutTo)}${list.shownPieces === content.pieces.length ? '' : html`; ${t('{0} shown', list.shownPieces)}`}${own.find ? html` (${named(own.find)})` : ''}</p>
<table class="printed-list"><thead><tr><th scope="col">✓</th>${columns.map(({ word, isFigure }) => html`<th scope="col" ${attributes({ 'class': isFigure ? 'figure' : undefined })}>${word()}</th>`)}</tr></thead>
${list.groups.map(group => html`<tbody>${group.title === '' ? '' : html`<tr class="group"><th scope="rowgroup" ${attributes({ colspan: columns.length + 1 })}>${named(group.title)} <span class="soft">${group.pieces === 1 ? t('1 piece') : t('{0} pieces', group.pieces)}</span></th></tr>`}</tbody>${group.entries.map(entry => entryRows(entry, columns, content, list))}`)}
</table>
<h2>${t('Totals by stock and part')}</h2>${totalsTable(content, list.ticked)}
<h2>${t('How to read it, and take care')}</h2>${reading(content)}`;
    return printable({ title: t('Cut list, {0}', content.title), notice, style: STYLE, body });
}

/** The columns that stand beside each other on paper. */
const PRINTED = COLUMNS.flatMap(column => {
    const { word, isFigure, printed } = COLUMN[column];
    return printed ? [{ column, word, isFigure, printed }] : [];
});

const box = (on: boolean): string => on ? '☑' : '☐';

function entryRows(entry: Entry, columns: typeof PRINTED, content: CutListContent, { ticked }: List): Html {
    const { cut, pieces } = entry;
    const whys = [...new Set(pieces.map(({ why }) => content.whys[why]!.map(({ text }) => text).join('')))];
    return html`<tbody class="entry"><tr><td class="box">${pieces.length === 1 ? box(ticked.conditionOf(pieces[0]!, cut) === 'cut') : ''}</td>${columns.map(({ column, printed, isFigure }) => html`<td ${attributes({ 'class': isFigure ? 'figure' : column })}>${printed(entry)}</td>`)}</tr>
<tr><td></td><td ${attributes({ colspan: columns.length })}><div>${pieces.map(piece => {
        const condition = ticked.conditionOf(piece, cut), was = ticked.cutAt(piece);
        return html`<span class="mark">${pieces.length === 1 ? '' : html`<span class="box">${box(condition === 'cut')}</span> `}${piece.mark}${piece.low === undefined ? '' : html` (${t('to {0}, where the ceiling hangs low', piece.low)})`}${condition === 'changed' ? html` (${was !== undefined && was !== cut.back ? t('changed since cut: it was {0}', printLength(was, content.show)) : t('changed since cut')})` : ''}</span> `;
    })}</div>${whys.map(why => html`<div class="soft">${why}</div>`)}</td></tr></tbody>`;
}

/** What the pane's state says, as far as it is one: it comes over the wire. */
function readState(state: unknown): { own: CutListState; ticks: ReadonlySet<string> } {
    const said = (typeof state === 'object' && state !== null ? state : {}) as Partial<Record<keyof CutListState | 'ticks', unknown>>;
    const one = <T extends string>(value: unknown, of: readonly T[], otherwise: T): T => of.includes(value as T) ? value as T : otherwise;
    const flag = (value: unknown, otherwise: boolean): boolean => typeof value === 'boolean' ? value : otherwise;
    return {
        own: {
            sort: one(said.sort, COLUMNS, CUT_LIST_STATE.sort), group: one(said.group, GROUPINGS, CUT_LIST_STATE.group),
            descending: flag(said.descending, CUT_LIST_STATE.descending),
            together: flag(said.together, CUT_LIST_STATE.together), onlyOpen: flag(said.onlyOpen, false), find: typeof said.find === 'string' ? said.find : '', open: {},
        },
        ticks: new Set(Array.isArray(said.ticks) ? said.ticks.filter(key => typeof key === 'string') : []),
    };
}

const STYLE = `.printed{--size:9.5pt}
h2{break-after:avoid}
.printed-list{width:100%}
.printed-list .figure,.printed-list .stock{white-space:nowrap}
.printed-list .ends{min-width:13em}
.printed-list thead th{border-bottom:1.5px solid var(--ink)}
.printed-list .group>th{padding-top:12px;font-size:1.1em;break-after:avoid}
.printed-list tbody.entry{break-inside:avoid}
.printed-list tbody.entry tr:first-child td{border-bottom:0;padding-bottom:0}
.box{font-family:sans-serif;font-size:1.15em;white-space:nowrap}
.mark{display:inline-block;margin-inline-end:10px;white-space:nowrap}
.totals .sum td,.totals .sum th{font-weight:600}
.totals th,.totals td{vertical-align:top}`;
