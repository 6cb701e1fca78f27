import { drawSurvey, toSvg } from '../../drawing/index.ts';
import { inOne } from '../../plain/steps.ts';
import type { House, RoomPieces } from '../../report/house.ts';
import { LEAF_REPORTS } from '../../report/leaf-reports.ts';
import { fileName } from '../../text/file-name.ts';
import type { Page, RoomOnPage } from '../page.ts';
import { html, trusted } from '../shared/html.ts';
import { printedLeaf, type Under } from './printed.ts';

/** Pages that are printed and have no pane. */
export type LeafKind = Exclude<keyof typeof LEAF_REPORTS, 'put-up'>;

/** What is drawn under the tables. */
const DRAWN: Readonly<Partial<Record<LeafKind, (room: RoomOnPage) => Under | undefined>>> = {
    survey: ({ ceiling, takeOff }) => {
        const sheet = drawSurvey(ceiling, takeOff);
        return sheet && { body: html`<div class="drawing">${trusted(toSvg(sheet, { as: 'part of a page' }))}</div>`, style: '.drawing svg{width:100%;height:auto}' };
    },
};

/** The files that each is kept as. */
export const LEAVES: Readonly<Record<LeafKind, Pick<Page, 'exports'>>> = {
    bench: keptAs('bench'), joists: keptAs('joists'), measure: keptAs('measure'), trades: keptAs('trades'), seasons: keptAs('seasons'), survey: keptAs('survey'),
    walls: keptAs('walls'),
};

function keptAs(kind: LeafKind): Pick<Page, 'exports'> {
    const { leaf, csv } = LEAF_REPORTS[kind];
    return {
        exports: {
            html: inOne(room => ({ name: fileName(kind, room.layout.room.name, 'html'), bytes: printedLeaf(leaf(houseOf(room)), DRAWN[kind]?.(room)) })),
            csv: inOne(room => ({ name: fileName(kind, room.layout.room.name, 'csv'), bytes: csv([houseOf(room)]) })),
        },
    };
}

/** The room by itself. */
export function houseOf({ layout: { room }, takeOff, standing }: RoomOnPage): House {
    const own: RoomPieces = { room, takeOff, standing };
    return { job: room.job, rooms: [own], alternates: [] };
}
