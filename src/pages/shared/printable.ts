import { facesForWords } from '../../drawing/svg/fonts.ts';
import { attributes, html, trusted, wordsAlone, type Html } from './html.ts';
import { PRINT_COLORS, PAGE_STYLE } from './style.ts';
import { isCalm } from '../../plain/notice.ts';
import type { HtmlText } from '../../text/fit.ts';

interface PrintedPage {
    readonly title: string;
    readonly body: Html;
    /** Rules of this page besides those that every page has. */
    readonly style?: string;
    readonly landscape?: boolean;
    /** Why it is not to be built from as it stands; the first line stands over the others. */
    readonly notice?: readonly string[];
    /** BCP 47; English unless said. */
    readonly language?: string;
}

/**
 * A page as one HTML file that needs nothing else and prints well: black on white, no scripts, nothing fetched (its own policy
 * forbids it), nothing of the machine it was made on.
 */
export function printable({ title, body, style = '', landscape = false, language = 'en', notice = [] }: PrintedPage): HtmlText {
    const paper = `@page{size:${landscape ? 'landscape' : 'portrait'};margin:12mm}`, { faces, rest } = lettersOnce(body);
    return wholeFile({
        title, language, policy: "default-src 'none'; style-src 'unsafe-inline'; font-src data:; img-src data:", style: [...faces, PRINT_COLORS, PAGE_STYLE, paper, style].join('\n'),
        body: html`<body class="printed">
<main>
<h1>${title}</h1>
${noticeMarkup(notice)}${rest}
</main>
</body>`,
    });
}

/**
 * The letters that lengths and drawings are set in, once for the whole page: each of its drawings brings them along, and a page without drawings needs them
 * for its fractions.
 */
function lettersOnce(body: Html): { faces: readonly string[]; rest: Html } {
    const rest = body.text.replaceAll(FACE, '');
    return { faces: facesForWords(rest), rest: trusted(rest) };
}
/** As a drawing writes them: what stands in a job has no such quotes left. */
const FACE = /@font-face\{font-family:'[^}]*\}\n/g;

/** In a box of its own over everything else. */
function noticeMarkup(notice: readonly string[]): Html | '' {
    const [head, ...lines] = notice;
    return head === undefined ? '' : html`<section ${attributes({ 'class': isCalm(notice) ? 'standing calm' : 'standing' })}><h2>${head}</h2><ul>${lines.map(line => html`<li>${line}</li>`)}</ul></section>
`;
}

/** An HTML file. `policy`: what it may load; `body`: with its own tags. */
export function wholeFile({ title, language, policy, style, body }: {
    readonly title: string; readonly language: string; readonly policy: string; readonly style: string; readonly body: Html;
}): HtmlText {
    return html`<!doctype html>
<html ${attributes({ lang: language })}>
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${trusted(policy)}">
<meta name="viewport" content="width=device-width">
<title>${wordsAlone(title)}</title>
<style>${trusted(style)}</style>
</head>
${body}
</html>
`.text as HtmlText;
}
