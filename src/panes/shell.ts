import type { PageContent } from '../pages/page.ts';
import { attributes, html, named, wordsAlone, type Html } from '../pages/shared/html.ts';
import { t } from '../pages/shared/words.ts';
import { isOfHouse } from '../pages/kinds.ts';
import { PANE_ICONS } from '../pages/pane-icons.ts';
import { PANE_KINDS, type ContentMessage, type ExportFormat, type PaneKind, type RoomChoice } from './messages.ts';

interface Shell {
    readonly kind: PaneKind;
    readonly message: ContentMessage | undefined;
    readonly pinned: boolean;
    readonly formats: readonly ExportFormat[];
    /** Words from the extension, shown until the next content. */
    readonly words: string;
    /** Something was asked for that is not there yet. */
    readonly isWorking: boolean;
    /** What is shown is from before somebody began to type, and waits for the hand to rest. */
    readonly isStill: boolean;
    /** The page itself. */
    readonly page: Html | undefined;
    /** Why nothing is to be built from it as it stands. */
    readonly standing: PageContent['standing'];
}

/** What stands around every page: which room, pinned or not, files to keep, and what is wrong with the text. */
export function shell({ kind, message, pinned, formats, words, isWorking, isStill, page, standing }: Shell): Html {
    const broken = message?.condition === 'broken';
    return html`<div class="pane" id="pane">
${kindSwitch(kind)}
<header class="head" id="head">${rooms(kind, message)}${pin(kind, pinned)}${files(formats, page !== undefined)}</header>
<main ${attributes({ 'class': 'main', id: 'main', 'aria-busy': isWorking ? 'true' : undefined })}>
<div id="working">${isWorking ? html`<p class="working">${t('Working …')}</p>` : ''}</div>
<div id="trouble">${trouble(message)}</div>
${words ? html`<p class="words" id="words">${words}</p>` : ''}
<div id="standing">${page && standing ? notice(standing) : ''}</div>
<div id="page" ${attributes({ 'class': broken ? 'page broken' : 'page' })}>${page}</div>
<div id="still">${still(isStill && page !== undefined)}</div>
</main>
</div>`;
}

/** Not read aloud: who types hears what is typed. */
export function still(isStill: boolean): Html {
    return isStill ? html`<p class="still">${t('As it was before you began to type')}</p>` : html``;
}

const kindNames: Readonly<Record<PaneKind, () => string>> = {
    plan: () => t('Plan'), section: () => t('Section'), 'cut-list': () => t('Cut list'), boards: () => t('Boards'), view: () => t('3D'), estimate: () => t('Estimate'), changes: () => t('Changes'), suggest: () => t('Grids'), 'put-up': () => t('Putting up'),
};

/** From pane to pane: by a click, by Alt and the number, or with the arrow keys along them. */
function kindSwitch(own: PaneKind): Html {
    return html`<nav class="switch" id="switch" ${attributes({ 'aria-label': t('Panes') })}>${PANE_KINDS.map((kind, i) => html`<button type="button" ${attributes({
        id: `switch-${kind}`, 'data-act': 'switch', 'data-kind': kind, 'aria-current': kind === own ? 'page' : undefined, tabindex: kind === own ? 0 : -1,
        title: `${kindNames[kind]()} (Alt+${i + 1})`, 'aria-keyshortcuts': `Alt+${i + 1}`,
    })}><svg viewBox="0 0 16 16" aria-hidden="true"><path ${attributes({ d: PANE_ICONS[kind] })}/></svg><span>${kindNames[kind]()}</span></button>`)}</nav>`;
}

function rooms(kind: PaneKind, message: ContentMessage | undefined): Html {
    if (!message?.shown) return html`<h1 class="room" id="room">${document.title}</h1>`;
    const { shown } = message;
    const all = message.rooms.some(room => same(room, shown)) ? message.rooms : [shown, ...message.rooms];
    if (all.length === 1) return html`<h1 class="room" id="room">${named(shown.title)}</h1>`;
    return html`<h1 class="unseen" id="room-name">${named(shown.title)}</h1><label class="room" id="room"><span class="unseen">${isOfHouse(kind) ? t('House') : t('Room')}</span><select id="rooms" data-rooms>
${all.map(room => html`<option ${attributes({ value: keyOf(room), selected: same(room, shown) })}>${wordsAlone(room.title)}</option>`)}
</select></label>`;
}

/** A room's name alone is not enough: two files may each have a `bath`. */
export function keyOf({ uri, room }: { readonly uri: string; readonly room: string }): string {
    return `${uri}#${room}`;
}
function same(a: RoomChoice, b: RoomChoice): boolean {
    return a.uri === b.uri && a.room === b.room;
}

function pin(kind: PaneKind, pinned: boolean): Html {
    const stay = isOfHouse(kind) ? t('Stay with this house') : t('Stay with this room');
    return html`<button type="button" id="pin" ${attributes({ 'data-act': 'pin', 'aria-pressed': String(pinned), title: pinned ? t('Follow the cursor again') : stay })}>${pinWords(kind, pinned)}</button>`;
}

export function pinWords(kind: PaneKind, pinned: boolean): string {
    return !pinned ? t('Follows the cursor') : isOfHouse(kind) ? t('Pinned to this house') : t('Pinned to this room');
}

const formatNames: Readonly<Record<ExportFormat, string>> = { html: 'HTML', svg: 'SVG', csv: 'CSV', json: 'JSON', pdf: 'PDF', dxf: 'DXF', gltf: 'glTF', ifc: 'IFC', bid: 'HTML', labels: 'HTML' };

function files(formats: readonly ExportFormat[], can: boolean): Html | '' {
    if (formats.length === 0) return '';
    return html`<details class="menu end" id="files"><summary>${t('Save a copy')}</summary><div class="choices">
${formats.map(format => html`<button type="button" ${attributes({ 'data-act': 'export', 'data-format': format, disabled: !can })}>${format === 'html' ? t('HTML, to print') : format === 'bid' ? t('The client\'s page') : format === 'labels' ? t('Labels, to print') : formatNames[format]}</button>`)}
</div></details>`;
}

/** Each line leads to its words. */
function notice(standing: NonNullable<PageContent['standing']>): Html {
    const listed = (id: string, kind: string, head: string, lines: typeof standing): Html | '' => lines.length === 0 ? '' : html`<section ${attributes({ 'class': kind, 'aria-labelledby': id })}><h2 ${attributes({ id })}>${head}</h2><ul>
${lines.map(({ words, at }) => html`<li><button type="button" class="link" ${attributes({ 'data-at': at })}>${words}</button></li>`)}</ul></section>`;
    return html`${listed('standing-title', 'standing', t('Not to be built from as it stands:'), standing.filter(({ isCalm, isBefore }) => !isCalm && !isBefore))}
${listed('before-title', 'standing calm', t('Before anything is cut:'), standing.filter(({ isBefore }) => isBefore))}
${listed('unused-title', 'standing calm', t('Written, but not used in any figure here:'), standing.filter(({ isCalm }) => isCalm))}`;
}

function trouble(message: ContentMessage | undefined): Html | '' {
    if (!message || message.condition === 'current') return '';
    const said = message.condition === 'broken' ? t('This is the last picture that could be made.')
        : message.shown ? t('This room cannot be laid out yet.') : t('There is no room here. Open a job file with a room in it.');
    return html`<div class="trouble">${said}${message.problem ? html` <button type="button" class="link" data-act="problem">${t('First error: {0}', message.problem.message)}</button>` : ''}</div>`;
}
