import { printLength } from '../../quantity/print-length.ts';
import { attributes, html, type Html } from '../shared/html.ts';
import { t } from '../shared/words.ts';
import type { Cut, CutListContent, Entry, ListedPiece } from './content.ts';
import type { Ticked } from './ticks.ts';

const NAMED = 2;
/** What is penciled on the pieces of a row, without the part where that stands beside it. */
export function marks(pieces: readonly ListedPiece[], cut: Cut): Html {
    const short = ({ mark }: ListedPiece): string => mark.startsWith(`${cut.part}-`) ? mark.slice(cut.part.length + 1) : mark;
    if (pieces.length === 1) return pieceLink(pieces[0]!, short(pieces[0]!));
    const rest = pieces.length - NAMED;
    return html`<span class="marks">${pieces.slice(0, NAMED).map(short).join(', ')}${rest > 0 ? ` ${t('and {0} more', rest)}` : ''}</span>`;
}

/** Which of the pieces of a row are cut lower than the rest, since the ceiling hangs low over them: `2 lower, under a low ceiling: A-1-2 3 5/16"`. */
export function lowerNote(pieces: readonly ListedPiece[]): Html | string {
    const low = pieces.filter(piece => piece.low !== undefined);
    if (low.length === 0) return '';
    const named = low.slice(0, NAMED).map(({ mark, low }) => t('{0} to {1}', mark.replace(/^spacer-/, ''), low!)).join(', '), rest = low.length - NAMED;
    return html` <span class="changed">${t('lower, where the ceiling hangs low: {0}', rest > 0 ? `${named} ${t('and {0} more', rest)}` : named)}</span>`;
}

/** Leads to the words the piece comes from, and shows it in the other panes. */
export function pieceLink({ id, at, where }: ListedPiece, words: string): Html {
    return html`<button type="button" class="link mark" ${attributes({ 'data-at': at, 'data-key': id, title: where })}>${words}</button>`;
}

export function changedNote(count: number, { cut, pieces }: Entry, ticked: Ticked, { show }: CutListContent): Html {
    const was = pieces.length === 1 ? ticked.cutAt(pieces[0]!) : undefined;
    const words = was !== undefined && was !== cut.back ? t('changed since cut: it was {0}', printLength(was, show))
        : pieces.length === 1 ? t('changed since cut') : t('{0} changed since cut', count);
    return html` <span class="changed">${words}</span>`;
}
