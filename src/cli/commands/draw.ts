import type { Ceiling } from '../../ceiling/model.ts';
import { allSectionsOf, drawSheets, hasSurveySheet, meetingSheets, toSvg, withNotice, type SvgTheme } from '../../drawing/index.ts';
import { toDxf } from '../../exports/dxf/dxf.ts';
import { takeOffOf } from '../../pipeline/inspect.ts';
import { standingNotice } from '../../report/standing.ts';
import type { ExitCode } from '../exit-code.ts';
import type { World } from '../world.ts';
import { writeRoomFiles, type RoomFilesOptions } from '../room-files.ts';

export const THEMES: readonly SvgTheme[] = ['auto', 'light', 'dark', 'print'];
export const DRAWING_FORMATS = ['svg', 'dxf'] as const;
export interface DrawOptions extends RoomFilesOptions {
    readonly format: (typeof DRAWING_FORMATS)[number];
    readonly theme: SvgTheme;
}

/**
 * `plan-ROOM.svg` or `.dxf` for every room, `section-PROFILE` for every beam section in it, `section-band-ROOM` and the like for what
 * runs along its walls, `meetings-ROOM` for how beams meet, `survey-ROOM` of a ceiling that was surveyed.
 */
export async function draw(options: DrawOptions, world: World): Promise<ExitCode> {
    return writeRoomFiles(options, world, 'Drawing', (ceiling, workspace, standing) => {
        const sheets = drawSheets(ceiling, takeOffOf(ceiling), { fileName: uri => workspace.files.nameOf(uri) })
            .map(sheet => withNotice(sheet, standingNotice(standing)));
        return namesOf(ceiling).map((names, i) => ({
            names, ending: options.format,
            content: options.format === 'dxf' ? toDxf(sheets[i]!, ceiling.room.job.show.value) : toSvg(sheets[i]!, { theme: options.theme }),
        }));
    });
}

/** The plan's, then the sections', in the order of the sheets. */
function namesOf(ceiling: Ceiling): readonly (readonly string[])[] {
    const room = ceiling.room.name;
    return [[`plan-${room}`], ...allSectionsOf(ceiling).map(each => {
        if (each.of === 'walls') return [`section-${each.along.own.kind}-${room}`, `section-${each.along.own.kind}-${each.along.walls[0]}-${room}`];
        const { name } = each.lines.section.profile;
        return [`section-${name}`, `section-${name}-${room}`];
    }), ...Array.from({ length: meetingSheets(ceiling) }, () => [`meetings-${room}`]), ...hasSurveySheet(ceiling, takeOffOf(ceiling)) ? [[`survey-${room}`]] : []];
}
