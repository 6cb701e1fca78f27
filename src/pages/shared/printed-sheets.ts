import { atOnce, eachInSteps, type Steps } from '../../plain/steps.ts';
import { toSvg, type Sheet } from '../../drawing/index.ts';
import { html, trusted } from './html.ts';
import { wholeFile } from './printable.ts';
import type { HtmlText } from '../../text/fit.ts';

/**
 * Sheets of paper as one HTML file that needs nothing else: each on a page of its own, at its true size. All of one paper.
 */
export function printedSheets(title: string, sheets: readonly Sheet[]): HtmlText {
    return atOnce(sheetsInSteps(title, sheets));
}

/** Sheets that are written in one step. */
const AT_ONCE = 20;

/** The same step by step. */
export function* sheetsInSteps(title: string, sheets: readonly Sheet[]): Steps<HtmlText> {
    const paper = sheets[0]?.paper;
    const style = [
        `@page{size:${paper?.cssWidth ?? 'auto'} ${paper?.cssHeight ?? ''};margin:0}`,
        'body{margin:0;background:#fff}',
        '.page{break-after:page;break-inside:avoid;overflow:hidden}', '.page:last-child{break-after:auto}', '.page svg{display:block}',
        '@media screen{body{background:#e4e4e4}.page{width:max-content;margin:12px auto;box-shadow:0 1px 4px #0006}}',
    ].join('\n');
    const pages = yield* eachInSteps(sheets, AT_ONCE, sheet => html`<div class="page">${trusted(toSvg(sheet, { theme: 'print', as: 'part of a page' }))}</div>
`);
    yield;
    return wholeFile({
        title, language: 'en', policy: "default-src 'none'; style-src 'unsafe-inline'; font-src data:", style,
        body: html`<body>
<main aria-label="${title}">
${pages}</main>
</body>`,
    });
}
