import { sheetRules, THEMES } from '../../drawing/index.ts';
import { csvChanges } from '../../report/changes/csv.ts';
import { jsonChanges } from '../../report/changes/json.ts';
import type { Compared } from '../../report/changes/state.ts';
import { fileNameOfHouse } from '../../report/house.ts';
import { standingNotice, standingOfRooms } from '../../report/standing.ts';
import { fileName } from '../../text/file-name.ts';
import type { Content, HtmlText } from '../../text/fit.ts';
import { inOne } from '../../plain/steps.ts';
import type { ExportFormat, Page, RoomOnPage, Wishes } from '../page.ts';
import { printable } from '../shared/printable.ts';
import { t } from '../shared/words.ts';
import { changesContent, type ChangesContent } from './content.ts';
import type { ChangesFound } from './known.ts';
import { renderChanges } from './render.ts';
import { CHANGES_STYLE } from './style.ts';

export const changesPage: Page<ChangesContent> = {
    kind: 'changes', showsChanges: true, content: inOne(changesContent),
    // a page that tells of no change must not look like a house that has none
    isThere: wishes => foundIn(wishes) !== undefined,
    exports: {
        html: keptAs('html', printed),
        csv: keptAs('csv', (_, found) => csvChanges(compared(found))),
        json: keptAs('json', (_, found) => jsonChanges(compared(found), { nameOf: uri => uri.slice(uri.lastIndexOf('/') + 1), textOf: () => undefined })),
    },
};

function foundIn({ changes }: Wishes): ChangesFound | undefined {
    return changes && 'house' in changes ? changes : undefined;
}

function keptAs(format: ExportFormat, make: (room: RoomOnPage, found: ChangesFound) => Content): NonNullable<Page['exports']['html']> {
    return inOne((room: RoomOnPage, _: unknown, wishes: Wishes = {}) => {
        const changes = foundIn(wishes);
        if (!changes) throw new Error('No earlier state is known.');
        const rooms = room.house.map(({ layout }) => layout), { job } = room.layout.room;
        return { name: fileName('changes', fileNameOfHouse({ job, rooms }), format), bytes: make(room, changes) };
    });
}

function compared({ before, after, said, house }: ChangesFound): Compared {
    return { before, after, changes: { said, houses: [house] } };
}

/** Pixels of a sheet of paper. */
const WIDTH = 720;

function printed(room: RoomOnPage, changes: ChangesFound): HtmlText {
    const { job, title, name } = room.layout.room;
    return printable({
        title: t('Changes, {0}', job.title?.value ?? title ?? name), notice: standingNotice(standingOfRooms(room.house)),
        // the small plans are parts of the page, which says how they look
        style: [...sheetRules(tone => THEMES.print[tone]), CHANGES_STYLE].join('\n'),
        body: renderChanges(changesContent(room, { changes, width: WIDTH }), { list: true }),
    });
}
