import type { Comes } from '../../changes/places.ts';
import { noHistory, sinceWords } from '../changes/since.ts';
import { attributes, html, type Html } from '../shared/html.ts';
import { t } from '../shared/words.ts';
import type { ChangedInView } from './changed.ts';
import type { ViewContent, ViewPiece } from './content.ts';
import { COMES, type ViewState } from './state.ts';

/** What is marked in the picture; null where nothing is to be, or nothing is known. */
export function changedIn({ changes }: Pick<ViewContent, 'changes'>, { changed }: Pick<ViewState, 'changed'>): ChangedInView | null {
    return changed && changes && 'come' in changes ? changes : null;
}

/** What is walked through: all that is shown, or what is marked. */
export function walkedPieces(content: ViewContent, state: ViewState): readonly ViewPiece[] {
    const changed = changedIn(content, state), come = changed && new Set(changed.come.map(({ key }) => key));
    const all = come ? [...content.pieces.filter(({ key }) => come.has(key)), ...changed!.left] : content.pieces;
    return all.filter(({ part }) => state.parts[part] !== false);
}

/** A piece of the ceiling, or one that stood there, by its key. */
export function pieceIn(content: ViewContent, state: ViewState, key: string | null): ViewPiece | undefined {
    return content.pieces.find(piece => piece.key === key) ?? changedIn(content, state)?.left.find(piece => piece.key === key);
}

/** The commit at which a piece stood there that does no more. */
export function wasCommit(content: ViewContent, state: ViewState, { key }: ViewPiece): string | undefined {
    const changed = changedIn(content, state);
    return changed?.left.some(left => left.key === key) ? changed.commit : undefined;
}

/** What it is called, and that it is new, or stood there. */
export function pieceWords(content: ViewContent, state: ViewState, piece: ViewPiece): string {
    const changed = changedIn(content, state), isIt = ({ key }: { readonly key: string }): boolean => key === piece.key;
    const left = changed?.left.find(isIt), come = changed?.come.find(isIt);
    return left ? `${t('Stood here')}: ${piece.words} (${goes[left.how]()})` : come ? `${comes[come.how]()}: ${piece.words}` : piece.words;
}

const comes: Readonly<Record<Comes, () => string>> = { 'new': () => t('New'), from: () => t('From an old one'), elsewhere: () => t('From elsewhere') };
const goes: Readonly<Record<Comes, () => string>> = { 'new': () => t('no longer wanted'), from: () => t('another can be cut from it'), elsewhere: () => t('stands elsewhere now') };

export function changedButton({ changes }: ViewContent, { changed, play }: ViewState): Html | '' {
    if (!changes) return '';
    return html`<button type="button" id="changed-open" data-act="changed" aria-controls="changed" ${attributes({ 'aria-expanded': String(changed), disabled: play, title: t('What changed since a commit (C)') })}>${t('What changed')}</button>`;
}

/** What is said when the marks are shown, and when they are no more. */
export function changedWords(content: ViewContent, state: ViewState): string {
    const changed = changedIn(content, state);
    if (!changed) return state.changed ? '' : t('What changed is not marked any more.');
    return t('Pieces that have come: {0}. Pieces that stood there: {1}.', changed.come.length, changed.left.length);
}

/** The key to the marks, and a list of what they mark. */
export function changedMarkup(content: ViewContent, state: ViewState): Html | '' {
    const { changes } = content;
    if (!changes || !state.changed || state.play) return '';
    return html`<section class="changed" id="changed" ${attributes({ 'aria-label': t('What changed') })}>${'none' in changes ? html`<p>${noHistory[changes.none]()}</p>`
        : 'working' in changes ? html`<p class="soft">${t('The earlier state is being read …')}</p>` : foundMarkup(content, changes)}</section>`;
}

function foundMarkup(content: ViewContent, changed: ChangedInView): Html {
    const { come, left, isNew, isBehind } = changed, byKey = new Map(content.pieces.map(piece => [piece.key, piece]));
    const own = (how: Comes): ViewPiece[] => come.filter(one => one.how === how).flatMap(({ key }) => byKey.get(key) ?? []);
    const lists = COMES.map(how => ({ how, pieces: own(how) })).filter(({ pieces }) => pieces.length > 0);
    const isSame = lists.length === 0 && left.length === 0;
    return html`<p>${sinceWords(changed)} <button type="button" class="small" data-act="switch" data-kind="changes">${t('Changes')}</button></p>
${isBehind ? html`<p class="missing">${t('A room is half written now: this is what had changed before.')}</p>` : ''}
${isNew ? html`<p>${t('The room was not there then.')}</p>` : isSame ? html`<p>${t('Every piece stands where one like it stood.')}</p>` : ''}
${lists.map(({ how, pieces }) => html`<details id="come-${how}"><summary><span class="mark ${how}" aria-hidden="true"></span>${comes[how]()}: ${pieces.length}</summary><ul>
${pieces.map(({ key, words, at }) => html`<li>${pieceButton({ key, words, at }, t('Show the words'))}</li>`)}</ul></details>`)}
${left.length === 0 ? '' : html`<details id="left"><summary><span class="mark left" aria-hidden="true"></span>${t('Stood here')}: ${left.length}</summary><ul>
${left.map(({ key, words, at, how }) => html`<li>${pieceButton({ key, words, at }, t('In the text as it was'))} <span class="soft">${goes[how]()}</span></li>`)}</ul></details>`}`;
}

function pieceButton({ key, words, at }: Pick<ViewPiece, 'key' | 'words' | 'at'>, title: string): Html {
    return html`<button type="button" class="link" data-act="pick" ${attributes({ id: `changed-${key}`, 'data-key': key, 'data-at': at, 'data-lights': key, title })}>${words}</button>`;
}
