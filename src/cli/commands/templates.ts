import type { Ceiling } from '../../ceiling/model.ts';
import { drawTemplates, drawWallTemplates, toSvg, withNotice, type Sheet } from '../../drawing/index.ts';
import { bowedWalls } from '../../measure/bowed.ts';
import { printedSheets } from '../../pages/shared/printed-sheets.ts';
import { takeOffOf } from '../../pipeline/inspect.ts';
import { standingNotice } from '../../report/standing.ts';
import { surveyedOf } from '../../survey/survey.ts';
import { drawnInto } from '../drawn-into.ts';
import type { ExitCode } from '../exit-code.ts';
import { writeRoomFiles } from '../room-files.ts';
import type { World } from '../world.ts';
import { told } from './leaves.ts';
import type { ListOptions } from './lists.ts';

export interface TemplateOptions extends ListOptions {
    /** Templates of what has to be scribed are drawn: into this folder, or where none is named into that of `out`. */
    readonly templates?: string | true;
    readonly out?: string;
    readonly force?: boolean;
}

/** Templates of one kind: how its files are called, what is drawn of a room, what is said where nothing is. */
interface Kind { readonly file: string; readonly title: string; readonly none: string; sheetsOf(ceiling: Ceiling): readonly Sheet[] }

const KINDS = {
    survey: {
        file: 'scribe', title: 'Scribe templates', none: 'No side has to be scribed, as far as the readings reach.',
        sheetsOf: ceiling => {
            const surveyed = surveyedOf(ceiling, takeOffOf(ceiling));
            return surveyed ? drawTemplates(ceiling, surveyed) : [];
        },
    },
    walls: {
        file: 'scribe-walls', title: 'Scribe templates of the walls', none: 'Nothing that runs along a wall has to be scribed, as far as is said of the walls.',
        sheetsOf: ceiling => drawWallTemplates(ceiling, bowedWalls(ceiling, takeOffOf(ceiling).pieces)),
    },
} satisfies Record<string, Kind>;

/** What the surveyed ceiling leaves of each side, or what walls do that are not straight; with `templates` instead what is scribed, at true size. */
export function orTemplates(what: keyof typeof KINDS) {
    return async (options: TemplateOptions, world: World): Promise<ExitCode> => {
        const out = drawnInto(options.templates, options.out, 'templates');
        if (out === undefined) return told(what)(options, world);
        const { file, title, none, sheetsOf } = KINDS[what];
        let any = false;
        const code = await writeRoomFiles({ ...options, out, force: options.force ?? false }, world, 'Drawing', async (ceiling, _, standing) => {
            const { name } = ceiling.room, sheets = sheetsOf(ceiling).map(sheet => withNotice(sheet, standingNotice(standing)));
            if (sheets.length === 0) return [];
            any = true;
            const titled = `${title}, ${ceiling.room.title ?? name}`, { sheetsPdf } = await import('../../exports/pdf/bid.ts');
            return [
                ...sheets.map((sheet, i) => ({ names: [`${file}-${name}-${i + 1}`], ending: 'svg', content: toSvg(sheet, { theme: 'print' }) })),
                { names: [`${file}-${name}`], ending: 'html', content: printedSheets(titled, sheets) },
                { names: [`${file}-${name}`], ending: 'pdf', content: await sheetsPdf(titled, sheets) },
            ];
        });
        if (!any) world.terminal.say(none);
        return code;
    };
}
