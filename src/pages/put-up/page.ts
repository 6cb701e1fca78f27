import { inOne } from '../../plain/steps.ts';
import { csvPutUp } from '../../report/put-up/csv.ts';
import { fileName } from '../../text/file-name.ts';
import { houseOf } from '../leaves/pages.ts';
import type { Page, RoomOnPage } from '../page.ts';
import { printedPutUp } from './printed.ts';
import { putUpContent, putUpOnPage, type PutUpContent } from './content.ts';

const exports = {
    *html(room: RoomOnPage) { return { name: fileName('put-up', room.layout.room.name, 'html'), bytes: yield* printedPutUp(room) }; },
    csv: inOne((room: RoomOnPage) => ({ name: fileName('put-up', room.layout.room.name, 'csv'), bytes: csvPutUp([houseOf(room)], () => putUpOnPage(room.ceiling)) })),
} satisfies Page['exports'];

export const putUpPage: Page<PutUpContent> = {
    kind: 'put-up',
    takesLong: true,
    showsOrder: true,
    content: inOne(putUpContent), exports,
};
