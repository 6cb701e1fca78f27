import { sheetRules, THEMES } from '../../drawing/index.ts';
import { csvSuggestions } from '../../report/suggest/csv.ts';
import { standingNotice } from '../../report/standing.ts';
import { fileName } from '../../text/file-name.ts';
import type { CsvText, HtmlText } from '../../text/fit.ts';
import { suggestionsFor } from '../../suggest/suggestions.ts';
import type { Suggestions } from '../../suggest/model.ts';
import { inOne } from '../../plain/steps.ts';
import type { Page, RoomOnPage } from '../page.ts';
import { printable } from '../shared/printable.ts';
import { NOTHING_SHOWN } from '../shared/shown.ts';
import { t } from '../shared/words.ts';
import { suggestContent, suggestionsOn, type SuggestContent } from './content.ts';
import { renderSuggest, SUGGEST_STATE } from './render.ts';
import { SUGGEST_STYLE } from './style.ts';

export const suggestPage: Page<SuggestContent> = {
    kind: 'suggest',
    takesLong: true,
    showsOtherGrids: true,
    content: inOne(suggestContent),
    exports: {
        html: inOne(room => ({ name: fileName('suggest', room.layout.room.name, 'html'), bytes: printed(room) })),
        csv: inOne(room => ({ name: fileName('suggest', room.layout.room.name, 'csv'), bytes: asCsv(room) })),
    },
};

/** A file is made of what is known, and waits for nothing: what is looked for still is looked for at once. */
function whole(page: RoomOnPage): Suggestions {
    const known = suggestionsOn(page);
    return known === 'looking' ? suggestionsFor(page.layout.room, page.file, page.standing) : known;
}

function printed(page: RoomOnPage): HtmlText {
    const { layout: { room }, file, layout, ceiling, takeOff, findings, standing, house, alternates } = page;
    const content = suggestContent({ file, layout, ceiling, takeOff, findings, standing, house, alternates, otherGrids: whole(page) });
    return printable({
        title: t('Other grids, {0}', room.title ?? room.name), notice: standingNotice(standing),
        // the small pictures are parts of the page, which says how they look
        style: [...sheetRules(tone => THEMES.print[tone]), SUGGEST_STYLE].join('\n'),
        body: renderSuggest(content, SUGGEST_STATE, NOTHING_SHOWN, true),
    });
}

function asCsv(page: RoomOnPage): CsvText {
    const { layout: { room }, takeOff, standing } = page;
    return csvSuggestions([{ job: room.job, rooms: [{ room, takeOff, standing }], alternates: [] }], () => whole(page));
}
