import { printRun } from '../../quantity/print-length.ts';
import { PARTS, type Part } from '../../takeoff/model.ts';
import { compareNames } from '../../takeoff/piece-order.ts';
import { attributes, html, type Html } from '../shared/html.ts';
import { t } from '../shared/words.ts';
import type { CutListContent } from './content.ts';
import { partWord } from './part-words.ts';
import type { Ticked } from './ticks.ts';

interface Total {
    readonly stock: string;
    readonly part: Part;
    readonly pieces: number;
    readonly cut: number;
    /** End to end, in ticks. */
    readonly length: number;
}

/** Pieces and lengths by stock and part, in that order. */
export function totalsOf({ pieces, cuts }: CutListContent, ticked: Ticked): readonly Total[] {
    const totals = new Map<string, { stock: string; part: Part; pieces: number; cut: number; length: number }>();
    for (const piece of pieces) {
        const cut = cuts[piece.cut]!, key = `${cut.part} ${cut.stock}`;
        const total = totals.get(key) ?? { stock: cut.stock, part: cut.part, pieces: 0, cut: 0, length: 0 };
        totals.set(key, total);
        total.pieces += 1;
        total.length += cut.back;
        if (ticked.conditionOf(piece, cut) === 'cut') total.cut += 1;
    }
    return [...totals.values()].sort((a, b) => compareNames(a.stock, b.stock) || PARTS.indexOf(a.part) - PARTS.indexOf(b.part));
}

/** A row a part of each stock, and a sum for every stock that has several. */
export function totalsTable(content: CutListContent, ticked: Ticked): Html {
    const totals = totalsOf(content, ticked), stocks = [...new Set(totals.map(({ stock }) => stock))];
    const row = (name: Html | string, { pieces, cut, length }: {
        readonly pieces: number;
        readonly cut: number;
        readonly length: number;
    }, kind?: string): Html =>
        html`<tr ${attributes({ 'class': kind })}>${name}<td class="figure">${pieces}</td><td class="figure">${cut}</td><td class="figure">${printRun(length, content.show)}</td></tr>`;
    const sum = (all: readonly Total[]) =>
        all.reduce((to, one) => ({ pieces: to.pieces + one.pieces, cut: to.cut + one.cut, length: to.length + one.length }), { pieces: 0, cut: 0, length: 0 });
    return html`<table class="totals"><thead><tr><th scope="col">${t('Stock')}</th><th scope="col">${t('Part')}</th><th scope="col" class="figure">${t('Pieces')}</th><th scope="col" class="figure">${t('Cut')}</th><th scope="col" class="figure">${t('End to end')}</th></tr></thead>
${stocks.map(stock => {
        const own = totals.filter(total => total.stock === stock);
        return html`<tbody>${own.map((total, i) => row(html`${i === 0 ? html`<th scope="rowgroup" ${attributes({ rowspan: own.length + (own.length > 1 ? 1 : 0) })}>${stock}</th>` : ''}<td>${partWord(total.part)}</td>`, total))}${own.length > 1 ? row(html`<td>${t('in all')}</td>`, sum(own), 'sum') : ''}</tbody>`;
    })}
<tfoot>${row(html`<th scope="row" colspan="2">${t('All pieces')}</th>`, sum(totals), 'sum')}</tfoot></table>`;
}
