import { csvCutList } from '../../report/cut-list/csv.ts';
import { jsonCutList } from '../../report/cut-list/json.ts';
import { standingNotice } from '../../report/standing.ts';
import type { House } from '../../report/house.ts';
import { inOne } from '../../plain/steps.ts';
import type { Page, RoomOnPage } from '../page.ts';
import { filesBeside } from '../shared/files-beside.ts';
import { fileName } from '../../text/file-name.ts';
import { cutListContent, type CutListContent } from './content.ts';
import { printedCutList } from './printed.ts';

export const cutListPage: Page<CutListContent> = {
    kind: 'cut-list',
    content: inOne(cutListContent),
    exports: {
        html: inOne((room, state) => ({ name: fileName('cut-list', room.layout.room.name, 'html'), bytes: printedCutList(cutListContent(room), standingNotice(room.standing), state) })),
        csv: inOne(room => ({ name: fileName('cut-list', room.layout.room.name, 'csv'), bytes: csvCutList([houseOf(room)], filesBeside(room.file.uri)) })),
        json: inOne(room => ({ name: fileName('cut-list', room.layout.room.name, 'json'), bytes: jsonCutList([houseOf(room)], filesBeside(room.file.uri)) })),
    },
};

/** The room alone, as the command line lists it. */
function houseOf({ layout: { room }, takeOff, standing }: RoomOnPage): Pick<House, 'job' | 'rooms'> {
    return { job: room.job, rooms: [{ room, takeOff, standing }] };
}
