import { csvCutList } from '../../report/cut-list/csv.ts';
import { jsonCutList } from '../../report/cut-list/json.ts';
import type { House } from '../../report/house.ts';
import type { Files } from '../../report/look.ts';
import type { Page, RoomOnPage } from '../page.ts';
import { fileName } from '../shared/printable.ts';
import { cutListContent, type CutListContent } from './content.ts';
import { printedCutList } from './printed.ts';

export const cutListPage: Page<CutListContent> = {
    kind: 'cut-list',
    contentOf: cutListContent,
    exports: {
        html: (room, state) => ({ name: fileName('cut-list', room.layout.room.name, 'html'), bytes: printedCutList(cutListContent(room), state) }),
        csv: room => ({ name: fileName('cut-list', room.layout.room.name, 'csv'), bytes: csvCutList([houseOf(room)], filesBeside(room.file.uri)) }),
        json: room => ({ name: fileName('cut-list', room.layout.room.name, 'json'), bytes: jsonCutList([houseOf(room)], filesBeside(room.file.uri)) }),
    },
};

/** The room alone, as the command line lists it. */
function houseOf({ layout: { room }, takeOff, findings }: RoomOnPage): Pick<House, 'job' | 'rooms'> {
    const errors = findings.filter(({ severity, allowed }) => severity === 'error' && !allowed).length;
    return { job: room.job, rooms: [{ room, takeOff, errors }] };
}

/** Files by their way from the folder of the room's own: a list that is handed on says nothing of the machine it was made on. */
export function filesBeside(uri: string): Files {
    const folder = uri.split('/').slice(0, -1);
    return {
        nameOf: other => {
            const parts = other.split('/');
            let same = 0;
            while (same < folder.length && same < parts.length - 1 && folder[same] === parts[same]) same += 1;
            return [...folder.slice(same).map(() => '..'), ...parts.slice(same)].map(decodeURIComponent).join('/');
        },
        textOf: () => undefined,
    };
}
