import { sheetRules, THEMES } from '../../drawing/index.ts';
import { csvEstimate } from '../../report/estimate/csv.ts';
import { jsonEstimate } from '../../report/estimate/json.ts';
import { fileNameOfHouse } from '../../report/house.ts';
import { bidContent } from '../../report/bid/content.ts';
import { printedBid } from '../bid/printed.ts';
import { standingNotice, standingOfRooms } from '../../report/standing.ts';
import { inOne } from '../../plain/steps.ts';
import type { Page, RoomOnPage } from '../page.ts';
import { fileName, type FileName } from '../../text/file-name.ts';
import { printable } from '../shared/printable.ts';
import { NOTHING_SHOWN } from '../shared/shown.ts';
import { t } from '../shared/words.ts';
import { estimateContent, housePrice, type EstimateContent } from './content.ts';
import { ESTIMATE_STATE, renderEstimate, type EstimateState } from './render.ts';
import { ESTIMATE_STYLE } from './style.ts';
import type { HtmlText } from '../../text/fit.ts';

export const estimatePage: Page<EstimateContent> = {
    kind: 'estimate',
    showsBoards: true,
    content: inOne(estimateContent),
    exports: {
        html: inOne((room, state) => ({ name: named('estimate', room, 'html'), bytes: printedEstimate(room, state) })),
        csv: inOne(room => ({ name: named('estimate', room, 'csv'), bytes: csvEstimate([housePrice(room)]) })),
        json: inOne(room => ({ name: named('estimate', room, 'json'), bytes: jsonEstimate([housePrice(room)], { nameOf: uri => uri.slice(uri.lastIndexOf('/') + 1), textOf: () => undefined }) })),
        bid: inOne(room => ({ name: named('bid', room, 'html'), bytes: printedBid(bidContent(housePrice(room))) })),
    },
};

function named(kind: string, { layout: { room: { job } }, house, picked = false }: RoomOnPage, ending: string): FileName {
    return fileName(kind, fileNameOfHouse({ job, rooms: house.map(({ layout }) => layout), picked }), ending);
}

function printedEstimate(room: RoomOnPage, state: unknown): HtmlText {
    const content = estimateContent(room);
    return printable({
        title: t('Estimate, {0}', content.title), notice: standingNotice(standingOfRooms(room.house)),
        // the small pictures are parts of the page, which says how they look
        style: [...sheetRules(tone => THEMES.print[tone]), ESTIMATE_STYLE].join('\n'),
        body: renderEstimate(content, { ...ESTIMATE_STATE, ...state as Partial<EstimateState> | undefined }, NOTHING_SHOWN, true),
    });
}
