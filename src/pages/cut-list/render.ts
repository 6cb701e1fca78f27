import { printRun } from '../../quantity/print-length.ts';
import { attributes, html, type Html } from '../shared/html.ts';
import { t } from '../shared/words.ts';
import type { CutListContent } from './content.ts';
import { COLUMN, COLUMNS, type Column } from './columns.ts';
import { GROUPING, GROUPINGS } from './groupings.ts';
import { rowMarkup } from './row-markup.ts';
import { groupsOf, rowsOf, type CutListState, type Group, type Row } from './rows.ts';
import { Ticked } from './ticks.ts';
import { totalsTable } from './totals.ts';

/** The rows as they are to be shown: worked out once for a content, a state and a set of ticks. */
export interface List {
    readonly groups: readonly Group[];
    readonly rows: readonly Row[];
    readonly ticked: Ticked;
    readonly shownPieces: number;
    readonly cutPieces: number;
}

export function listOf(content: CutListContent, state: CutListState, ticks: ReadonlySet<string>): List {
    const ticked = new Ticked(ticks), groups = groupsOf(content, state, ticked);
    return {
        groups, rows: rowsOf(groups, state.open), ticked, shownPieces: groups.reduce((sum, group) => sum + group.pieces, 0),
        cutPieces: content.pieces.filter(piece => ticked.conditionOf(piece, content.cuts[piece.cut]!) === 'cut').length,
    };
}

/** Rows stand in chunks of so many; of a long list only the chunks near what is seen are in the page. */
export const CHUNK = 60;
/** Chunks from and to, both shown. */
export interface Span { readonly from: number; readonly to: number }

export function renderCutList(content: CutListContent, state: CutListState, list: List, span: Span = { from: 0, to: Infinity }): Html {
    return html`<div class="cut-list">
${bar(state)}
${progress(content, list)}
<div class="list" id="list">${table(content, state, list, span)}</div>
${foot(content, list)}
</div>`;
}

function bar(state: CutListState): Html {
    return html`<div class="bar">
<label class="find"><span class="unseen">${t('Find in the list')}</span><input type="search" id="find" data-live="find" spellcheck="false" ${attributes({ value: state.find, placeholder: t('Find: bottom, 42 5/8, line B …') })}></label>
<label class="group-by">${t('Grouped by')} <select id="group" data-state="group">${GROUPINGS.map(grouping => html`<option ${attributes({ value: grouping, selected: grouping === state.group })}>${GROUPING[grouping].word()}</option>`)}</select></label>
<label><input type="checkbox" id="together" data-state="together" ${attributes({ checked: state.together })}>${t('Equal pieces in one row')}</label>
<label><input type="checkbox" id="only-open" data-state="onlyOpen" ${attributes({ checked: state.onlyOpen })}>${t('Only what is left to cut')}</label>
</div>`;
}

function progress({ pieces, cuts, show }: CutListContent, { cutPieces, shownPieces }: List): Html {
    const length = pieces.reduce((sum, piece) => sum + cuts[piece.cut]!.back, 0);
    return html`<div class="progress"><progress ${attributes({ max: Math.max(1, pieces.length), value: cutPieces, 'aria-label': t('Pieces cut') })}></progress>
<span>${t('{0} of {1} pieces cut', cutPieces, pieces.length)}</span><span class="soft">${t('{0} end to end', printRun(length, show))}</span>${shownPieces === pieces.length ? '' : html`<span class="soft">${t('{0} shown', shownPieces)}</span>`}</div>`;
}

function table(content: CutListContent, state: CutListState, list: List, { from, to }: Span): Html {
    const chunks = Math.ceil(list.rows.length / CHUNK), last = Math.min(to, chunks - 1), first = Math.min(from, Math.max(0, last));
    if (list.rows.length === 0) return html`<p class="none">${content.pieces.length === 0 ? t('This room has no pieces yet.') : t('Nothing in the list has all of these words.')}</p>`;
    // its height is the script's matter
    const gap = (id: string, rows: number): Html | '' => rows <= 0 ? '' : html`<tbody class="gap" aria-hidden="true" data-own ${attributes({ id })}></tbody>`;
    return html`<table ${attributes({ 'aria-rowcount': list.rows.length + 1, 'aria-label': t('Cut list, {0}', content.title) })}>
<thead><tr aria-rowindex="1"><th scope="col" class="tick"><span class="unseen">${t('Cut')}</span><span aria-hidden="true">✓</span></th>${COLUMNS.map(column => head(column, state))}</tr></thead>
${gap('gap-before', first * CHUNK)}
${Array.from({ length: last - first + 1 }, (_, i) => chunk(content, state, list, first + i))}
${gap('gap-after', list.rows.length - (last + 1) * CHUNK)}
</table>`;
}

function chunk(content: CutListContent, state: CutListState, list: List, number: number): Html {
    return html`<tbody class="chunk" ${attributes({ id: `chunk-${number}`, 'data-chunk': number })}>${list.rows.slice(number * CHUNK, (number + 1) * CHUNK).map((row, i) => rowMarkup(row, content, state, list.ticked, number * CHUNK + i + 2))}</tbody>`;
}

function head(column: Column, { sort, descending }: CutListState): Html {
    const isSorted = sort === column, { isFigure, hidden, word } = COLUMN[column];
    const names = [...isFigure ? ['figure', column] : [], ...hidden ? [hidden] : []].join(' ');
    return html`<th scope="col" ${attributes({ 'class': names || undefined, 'aria-sort': isSorted ? descending ? 'descending' : 'ascending' : 'none' })}><button type="button" class="sort" data-act="sort" ${attributes({ id: `sort-${column}`, 'data-column': column, title: t('Sort by this column') })}>${word()}<span aria-hidden="true" class="arrow">${isSorted ? descending ? '▾' : '▴' : ''}</span></button></th>`;
}

function foot(content: CutListContent, { ticked }: List): Html {
    const gone = ticked.gone(content.pieces);
    return html`<div class="foot">
${gone.length === 0 ? '' : html`<p class="gone">${t('Cut, and no longer in the list: {0}.', gone.map(id => id.split('.').at(-1) ?? id).join(', '))} <button type="button" data-act="forget">${t('Forget them')}</button></p>`}
<details id="totals"><summary>${t('Totals by stock and part')}</summary><div class="open">${totalsTable(content, ticked)}</div></details>
<details id="how"><summary>${t('How to read it, and take care')}</summary><div class="open">${reading(content)}</div></details>
</div>`;
}

/** What the figures mean, and the usual cautions. */
export function reading({ howToRead, cautions, cutTo }: CutListContent): Html {
    return html`<ul>${[t('Lengths are rounded down to the tape, to {0}.', cutTo), ...howToRead].map(words => html`<li>${words}</li>`)}</ul><h2>${t('Take care')}</h2><ul>${cautions.map(words => html`<li>${words}</li>`)}</ul>`;
}
