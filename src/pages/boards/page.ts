import { lowIn } from '../../report/cut-list/low-in-room.ts';
import { boardRollInSteps, drawBoard, labelsInSteps, svgInSteps, toSvg, withNotice } from '../../drawing/index.ts';
import { printLength, type Show } from '../../quantity/print-length.ts';
import { fileNameOfHouse, titleOf, titleOfHouse, type House } from '../../report/house.ts';
import { csvSaw } from '../../report/sawing/csv.ts';
import type { HouseSaw } from '../../report/sawing/house-saw.ts';
import { jsonSaw } from '../../report/sawing/json.ts';
import { standingNotice, standingOfRooms } from '../../report/standing.ts';
import type { LaidBoard } from '../../sawing/index.ts';
import { eachInSteps, inOne, type Steps } from '../../plain/steps.ts';
import type { Page, RoomOnPage } from '../page.ts';
import { html, trusted, type Html } from '../shared/html.ts';
import { fileName, type FileName } from '../../text/file-name.ts';
import { printable } from '../shared/printable.ts';
import { sheetsInSteps } from '../shared/printed-sheets.ts';
import { NOTHING_SHOWN } from '../shared/shown.ts';
import { t } from '../shared/words.ts';
import { BOARDS_IN_STEP, boardsContentInSteps, type BoardsContent } from './content.ts';
import { boardsInSteps, boardsOfHouse } from './house-plan.ts';
import { BOARDS_STATE, purchase, stagesSection } from './render.ts';
import { BOARDS_STYLE } from './style.ts';
import type { HtmlText } from '../../text/fit.ts';

const exports = {
    *html(room: RoomOnPage) { return { name: named(room, 'html'), bytes: yield* printedBoards(room) }; },
    *svg(room: RoomOnPage) {
        const sheet = yield* roll(room);
        yield;
        return { name: named(room, 'svg'), bytes: yield* svgInSteps(sheet, {}) };
    },
    *labels(room: RoomOnPage) { return { name: named(room, 'html', 'labels'), bytes: yield* printedLabels(room) }; },
    csv: inOne((room: RoomOnPage) => ({ name: named(room, 'csv'), bytes: csvSaw([sawOf(room)]) })),
    json: inOne((room: RoomOnPage) => ({ name: named(room, 'json'), bytes: jsonSaw([sawOf(room)]) })),
} satisfies Page['exports'];

export const boardsPage: Page<BoardsContent> = {
    kind: 'boards',
    takesLong: true, showsBoards: true,
    content: (room, wishes) => boardsContentInSteps(room, wishes), exports,
};

function named(room: RoomOnPage, ending: string, kind = 'boards'): FileName {
    return fileName(kind, fileNameOfHouse(houseOf(room)), ending);
}

function houseOf({ layout: { room: { job } }, house, picked = false }: RoomOnPage): House {
    return { job, alternates: [], picked, rooms: house.map(({ layout, takeOff, standing }) => ({ room: layout.room, takeOff, standing })) };
}

function sawOf(room: RoomOnPage): HouseSaw {
    return { house: houseOf(room), order: boardsOfHouse(room).order };
}

function* roll(room: RoomOnPage) {
    const { job } = room.layout.room, { order } = yield* boardsInSteps(room);
    yield;
    const rooms = room.house.map(({ layout }) => layout.room.title ?? layout.room.name).join(', ');
    return withNotice(
        yield* boardRollInSteps(order, { job: titleOf(job), rooms, ...job.client === undefined ? {} : { client: job.client.value } }),
        noticeOf(room),
    );
}

function noticeOf({ house }: RoomOnPage): readonly string[] {
    return standingNotice(standingOfRooms(house));
}

function* printedLabels(room: RoomOnPage): Steps<HtmlText> {
    const title = titleOfHouse(houseOf(room)), { order } = yield* boardsInSteps(room);
    yield;
    const drawn = yield* labelsInSteps(order, title, undefined, lowIn(houseOf(room).rooms)), sheets = drawn.map(sheet => withNotice(sheet, noticeOf(room)));
    yield;
    return yield* sheetsInSteps(t('Labels, {0}', title), sheets);
}

/** What to buy, every board, and the order of the work, on paper. */
function* printedBoards(room: RoomOnPage): Steps<HtmlText> {
    const house = yield* boardsInSteps(room), { order } = house;
    const content = yield* boardsContentInSteps(room, {}, house);
    const show = room.layout.room.job.show.value;
    const figures = yield* eachInSteps(order.boards, BOARDS_IN_STEP, (board, i) => figure(
        board, order.boards[i - 1], toSvg(drawBoard(order, board, `board-${i + 1}`, PRINTED_WIDTH), { theme: 'print', as: 'part of a page', fonts: i === 0 ? 'embedded' : 'named' }), show,
    ));
    yield;
    return printable({
        title: t('Boards, {0}', titleOfHouse(houseOf(room))), landscape: true, notice: noticeOf(room), style: `${BOARDS_STYLE}\n${PRINT_STYLE}`,
        body: html`${content.troubles.length > 0 ? html`<ul class="troubles">${content.troubles.map(words => html`<li>${words}</li>`)}</ul>` : ''}
${purchase({ ...content, proving: null }, true)}
${figures}
${stagesSection(content, BOARDS_STATE, NOTHING_SHOWN)}`,
    });
}

/** As wide as a landscape page, in points. */
const PRINTED_WIDTH = 720;

/** A board under its number, and its stock's name over the first. */
function figure(board: LaidBoard, before: LaidBoard | undefined, svg: string, show: Show): Html {
    const { stock, number, length, from } = board;
    return html`${before?.stock.key === stock.key ? '' : html`<h2>${stock.title ?? stock.name}</h2>`}
<figure class="board"><figcaption><b>#${number}</b> <span>${printLength(length, show)}${from === 'bought' ? '' : `, ${from}`}</span></figcaption>${trusted(svg)}</figure>`;
}

const PRINT_STYLE = `.board{break-inside:avoid}
.board svg{display:block;width:100%;height:auto}
.stages{max-width:none;break-before:page}
.stages h3,.stages .cautions,.stages ol>li>label{break-after:avoid}
.stages ol ul li{break-inside:avoid}
.purchase,.stages{padding-inline:0}`;
