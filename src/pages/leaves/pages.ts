import { benchContent } from '../../report/bench/content.ts';
import { csvBench } from '../../report/bench/csv.ts';
import { benchLeaf } from '../../report/bench/leaf.ts';
import { bowedWalls } from '../../measure/bowed.ts';
import { drawSurvey, toSvg } from '../../drawing/index.ts';
import { holdingContent } from '../../report/joists/content.ts';
import { csvJoists } from '../../report/joists/csv.ts';
import { joistsLeaf } from '../../report/joists/leaf.ts';
import type { House, RoomPieces } from '../../report/house.ts';
import type { Leaf } from '../../report/leaf.ts';
import { measureContent } from '../../report/measure/content.ts';
import { csvMeasure } from '../../report/measure/csv.ts';
import { measureLeaf } from '../../report/measure/leaf.ts';
import { seasonsContent } from '../../report/seasons/content.ts';
import { csvSeasons } from '../../report/seasons/csv.ts';
import { seasonsLeaf } from '../../report/seasons/leaf.ts';
import { surveyContent } from '../../report/survey/content.ts';
import { csvSurvey } from '../../report/survey/csv.ts';
import { surveyLeaf } from '../../report/survey/leaf.ts';
import { tradesContent } from '../../report/trades/content.ts';
import { csvTrades } from '../../report/trades/csv.ts';
import { tradesLeaf } from '../../report/trades/leaf.ts';
import { csvWalls } from '../../report/walls/csv.ts';
import { wallsLeaf } from '../../report/walls/leaf.ts';
import type { CsvText } from '../../text/fit.ts';
import { fileName } from '../../text/file-name.ts';
import type { Page, RoomOnPage } from '../page.ts';
import { html, trusted } from '../shared/html.ts';
import { printedLeaf, type Under } from './printed.ts';

/** Pages that are printed and have no pane. */
export type LeafKind = 'bench' | 'joists' | 'measure' | 'trades' | 'seasons' | 'survey' | 'walls';

interface Made { leaf(house: House, room: RoomOnPage): Leaf; csv(house: House, room: RoomOnPage): CsvText }

const MADE: Readonly<Record<LeafKind, Made>> = {
    joists: {
        leaf: (house, { ceiling, takeOff }) => joistsLeaf(house, () => holdingContent(ceiling, takeOff)),
        csv: (house, { ceiling, takeOff }) => csvJoists([house], () => holdingContent(ceiling, takeOff)),
    },
    bench: {
        leaf: (house, { layout, takeOff }) => benchLeaf(house, () => benchContent(layout, takeOff)),
        csv: (house, { layout, takeOff }) => csvBench([house], () => benchContent(layout, takeOff)),
    },
    measure: {
        leaf: (house, { layout: { room } }) => measureLeaf(house, () => measureContent(room)),
        csv: (house, { layout: { room } }) => csvMeasure([house], () => measureContent(room)),
    },
    seasons: {
        leaf: (house, { ceiling, takeOff }) => seasonsLeaf(house, () => seasonsContent(ceiling, takeOff)),
        csv: (house, { ceiling, takeOff }) => csvSeasons([house], () => seasonsContent(ceiling, takeOff)),
    },
    survey: {
        leaf: (house, { ceiling, takeOff }) => surveyLeaf(house, () => surveyContent(ceiling, takeOff)),
        csv: (house, { ceiling, takeOff }) => csvSurvey([house], () => surveyContent(ceiling, takeOff)),
    },
    walls: {
        leaf: (house, { ceiling, takeOff: { pieces } }) => wallsLeaf(house, () => bowedWalls(ceiling, pieces)),
        csv: (house, { ceiling, takeOff: { pieces } }) => csvWalls([house], () => bowedWalls(ceiling, pieces)),
    },
    trades: {
        leaf: (house, { ceiling, takeOff }) => tradesLeaf(house, () => tradesContent(ceiling, takeOff)),
        csv: (house, { ceiling, takeOff }) => csvTrades([house], () => tradesContent(ceiling, takeOff)),
    },
};

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
    return {
        exports: {
            html: room => ({ name: fileName(kind, room.layout.room.name, 'html'), bytes: printedLeaf(MADE[kind].leaf(houseOf(room), room), DRAWN[kind]?.(room)) }),
            csv: room => ({ name: fileName(kind, room.layout.room.name, 'csv'), bytes: MADE[kind].csv(houseOf(room), room) }),
        },
    };
}

/** The room by itself. */
export function houseOf({ layout: { room }, takeOff, standing }: RoomOnPage): House {
    const own: RoomPieces = { room, takeOff, standing };
    return { job: room.job, rooms: [own], alternates: [] };
}
