import { csvPutUp } from '../../report/put-up/csv.ts';
import { fileName } from '../../text/file-name.ts';
import { houseOf } from '../leaves/pages.ts';
import { atOnceOf, type Page, type RoomOnPage } from '../page.ts';
import { printedPutUp } from './printed.ts';
import { putUpContent, putUpOnPage, type PutUpContent } from './content.ts';

const LONG = {
    *html(room: RoomOnPage) { return { name: fileName('put-up', room.layout.room.name, 'html'), bytes: yield* printedPutUp(room) }; },
} satisfies Page['exportSteps'];

export const putUpPage: Page<PutUpContent> = {
    kind: 'put-up',
    takesLong: true,
    showsOrder: true,
    contentOf: putUpContent,
    exportSteps: LONG,
    exports: {
        ...atOnceOf(LONG),
        csv: room => ({ name: fileName('put-up', room.layout.room.name, 'csv'), bytes: csvPutUp([houseOf(room)], () => putUpOnPage(room.ceiling)) }),
    },
};
