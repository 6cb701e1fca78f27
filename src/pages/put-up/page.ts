import { csvPutUp } from '../../report/put-up/csv.ts';
import { fileName } from '../../text/file-name.ts';
import { houseOf } from '../leaves/pages.ts';
import type { Page } from '../page.ts';
import { printedPutUp } from './printed.ts';
import { putUpContent, putUpOnPage, type PutUpContent } from './content.ts';

export const putUpPage: Page<PutUpContent> = {
    kind: 'put-up',
    takesLong: true,
    showsOrder: true,
    contentOf: putUpContent,
    exports: {
        html: room => ({ name: fileName('put-up', room.layout.room.name, 'html'), bytes: printedPutUp(room) }),
        csv: room => ({ name: fileName('put-up', room.layout.room.name, 'csv'), bytes: csvPutUp([houseOf(room)], () => putUpOnPage(room.ceiling)) }),
    },
};
