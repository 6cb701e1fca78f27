import { drawTemplates, toSvg, withNotice } from '../../drawing/index.ts';
import { printedSheets } from '../../pages/shared/printed-sheets.ts';
import { takeOffOf } from '../../pipeline/inspect.ts';
import { standingNotice } from '../../report/standing.ts';
import { surveyedOf } from '../../survey/survey.ts';
import type { ExitCode } from '../exit-code.ts';
import { writeRoomFiles } from '../room-files.ts';
import type { World } from '../world.ts';
import { told } from './leaves.ts';
import type { ListOptions } from './lists.ts';

export interface SurveyOptions extends ListOptions {
    /** The folder for templates of the sides that have to be scribed; none are drawn where none is named. */
    readonly templates?: string;
    readonly force?: boolean;
}

/** What the surveyed ceiling leaves of each side; with `templates` instead what is scribed, at true size to be printed. */
export async function survey(options: SurveyOptions, world: World): Promise<ExitCode> {
    if (options.templates === undefined) return told('survey')(options, world);
    let any = false;
    const code = await writeRoomFiles({ ...options, out: options.templates, force: options.force ?? false }, world, 'Drawing', async (ceiling, _, standing) => {
        const surveyed = surveyedOf(ceiling, takeOffOf(ceiling)), { name } = ceiling.room;
        const sheets = (surveyed ? drawTemplates(ceiling, surveyed) : []).map(sheet => withNotice(sheet, standingNotice(standing)));
        if (sheets.length === 0) return [];
        any = true;
        const title = `Scribe templates, ${ceiling.room.title ?? name}`, { sheetsPdf } = await import('../../exports/pdf/bid.ts');
        return [
            ...sheets.map((sheet, i) => ({ names: [`scribe-${name}-${i + 1}`], ending: 'svg', content: toSvg(sheet, { theme: 'print' }) })),
            { names: [`scribe-${name}`], ending: 'html', content: printedSheets(title, sheets) },
            { names: [`scribe-${name}`], ending: 'pdf', content: await sheetsPdf(title, sheets) },
        ];
    });
    if (!any) world.terminal.say('No side has to be scribed, as far as the readings reach.');
    return code;
}
