import type { PageContent } from '../pages/page.ts';
import { attributes, html, named, type Html } from '../pages/shared/html.ts';
import { t } from '../pages/shared/words.ts';
import type { ContentMessage, ExportFormat, RoomChoice } from './messages.ts';

interface Shell {
    readonly message: ContentMessage | undefined;
    readonly pinned: boolean;
    readonly formats: readonly ExportFormat[];
    /** Words from the extension, shown until the next content. */
    readonly words: string;
    /** The page itself. */
    readonly page: Html | undefined;
    /** Why nothing is to be built from it as it stands. */
    readonly standing: PageContent['standing'];
}

/** What stands around every page: which room, pinned or not, files to keep, and what is wrong with the text. */
export function shell({ message, pinned, formats, words, page, standing }: Shell): Html {
    const broken = message?.condition === 'broken';
    return html`<div class="pane" id="pane">
<header class="head" id="head">${rooms(message)}${pin(pinned)}${files(formats, page !== undefined)}</header>
<main class="main" id="main">
<div id="trouble">${trouble(message)}</div>
${words ? html`<p class="words" id="words">${words}</p>` : ''}
<div id="standing">${page && standing ? notice(standing) : ''}</div>
<div id="page" ${attributes({ 'class': broken ? 'page broken' : 'page' })}>${page}</div>
</main>
</div>`;
}

function rooms(message: ContentMessage | undefined): Html {
    if (!message?.shown) return html`<h1 class="room" id="room">${document.title}</h1>`;
    const { shown } = message;
    const all = message.rooms.some(room => same(room, shown)) ? message.rooms : [shown, ...message.rooms];
    if (all.length === 1) return html`<h1 class="room" id="room">${named(shown.title)}</h1>`;
    return html`<h1 class="unseen" id="room-name">${named(shown.title)}</h1><label class="room" id="room"><span class="unseen">${t('Room')}</span><select id="rooms" data-rooms>
${all.map(room => html`<option ${attributes({ value: keyOf(room), selected: same(room, shown) })}>${room.title}</option>`)}
</select></label>`;
}

/** A room's name alone is not enough: two files may each have a `bath`. */
export function keyOf({ uri, room }: { readonly uri: string; readonly room: string }): string {
    return `${uri}#${room}`;
}
function same(a: RoomChoice, b: RoomChoice): boolean {
    return a.uri === b.uri && a.room === b.room;
}

function pin(pinned: boolean): Html {
    const name = pinned ? t('Pinned to this room') : t('Follows the cursor');
    return html`<button type="button" id="pin" ${attributes({ 'data-act': 'pin', 'aria-pressed': String(pinned), title: pinned ? t('Follow the cursor again') : t('Stay with this room') })}>${name}</button>`;
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
    return html`${listed('standing-title', 'standing', t('Not to be built from as it stands:'), standing.filter(({ isCalm }) => !isCalm))}
${listed('unused-title', 'standing calm', t('Said, and used in no figure here:'), standing.filter(({ isCalm }) => isCalm))}`;
}

function trouble(message: ContentMessage | undefined): Html | '' {
    if (!message || message.condition === 'current') return '';
    const said = message.condition === 'broken' ? t('This is the last picture that could be made.')
        : message.shown ? t('This room cannot be laid out yet.') : t('There is no room here. Open a job file with a room in it.');
    return html`<div class="trouble">${said}${message.problem ? html` <button type="button" class="link" data-act="problem">${t('First error: {0}', message.problem.message)}</button>` : ''}</div>`;
}
