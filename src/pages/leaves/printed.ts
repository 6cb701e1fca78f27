import { shownTable, type Leaf, type LeafSection } from '../../report/leaf.ts';
import { standingNotice, standingOfRooms } from '../../report/standing.ts';
import type { HtmlText } from '../../text/fit.ts';
import { capitalized } from '../../plain/words.ts';
import { attributes, html, type Html } from '../shared/html.ts';
import { printable } from '../shared/printable.ts';

/** What stands under the tables of a page, before its notes, and how it looks. */
export interface Under { readonly body: Html; readonly style: string }

/** A page of tables and sentences as one HTML file that prints well. */
export function printedLeaf({ title, of, house: { rooms }, head = [], sections, notes, cautions }: Leaf, under?: Under): HtmlText {
    return printable({
        title: `${capitalized(title.toLowerCase())}: ${of}`, landscape: true, notice: [...head, ...standingNotice(standingOfRooms(rooms))], style: under ? `${STYLE}\n${under.style}` : STYLE,
        body: html`${sections.map(sectionMarkup)}
${under?.body}${notes.map(note => html`<p class="soft">${note}</p>`)}
${cautions.length > 0 && html`<section><h2>Take care</h2><ul>${cautions.map(caution => html`<li>${caution}</li>`)}</ul></section>`}`,
    });
}

function sectionMarkup({ heading, words, table: whole, after = [] }: LeafSection): Html {
    const table = whole && shownTable(whole);
    const cell = (text: string, column: number): Html => html`<td ${attributes({ 'class': table!.figures.includes(column) ? 'figure' : '' })}>${text}</td>`;
    return html`<section><h2>${heading}</h2>
${words.map(paragraph)}
${table && table.rows.length > 0 && html`<table><thead><tr>${table.head.map((text, column) => html`<th scope="col" ${attributes({ 'class': table.figures.includes(column) ? 'figure' : '' })}>${text}</th>`)}</tr></thead>
<tbody>${table.rows.map(row => html`<tr>${row.map(cell)}</tr>`)}</tbody></table>`}
${after.map(paragraph)}
</section>
`;
}

function paragraph(words: string): Html {
    return html`<p>${words}</p>`;
}

const STYLE = `section{margin-top:1.2em}p{max-width:95ch;margin:.3em 0}table{margin:.5em 0}tr{break-inside:avoid}td,th{vertical-align:top;padding-inline-end:1em}
ul{margin:.2em 0;padding-inline-start:1.2em}li{max-width:95ch;margin:.25em 0}`;
