import type { Ceiling } from '../ceiling/model.ts';
import type { TakeOff } from '../takeoff/model.ts';
import type { Sheet } from './display-list.ts';
import { drawMeetings, meetingSheets } from './meetings/sheets.ts';
import { drawPlan, FIRST_SHEET, sheetAfter } from './plan/plan.ts';
import { allSectionsOf, drawAnySection } from './section/all-sections.ts';
import type { SheetOptions } from './sheet-options.ts';
import { drawSurvey, hasSurveySheet } from './survey/sheet.ts';

/** All sheets of a room: the plan, then each of its sections, then how beams meet, then its survey where there is one, numbered on from the first. */
export function drawSheets(ceiling: Ceiling, takeOff: TakeOff, options: SheetOptions = {}): readonly Sheet[] {
    const sections = allSectionsOf(ceiling), meetings = meetingSheets(ceiling), surveyed = !options.forClient && hasSurveySheet(ceiling, takeOff);
    const first = options.sheet ?? FIRST_SHEET;
    const of = options.of ?? `of ${1 + sections.length + meetings + (surveyed ? 1 : 0)}`, sheetAt = (i: number): SheetOptions => ({ ...options, sheet: sheetAfter(first, i), of });
    return [
        drawPlan(ceiling, takeOff, sheetAt(0)),
        ...sections.map((each, i) => drawAnySection(ceiling, each, sheetAt(1 + i))),
        ...drawMeetings(ceiling, takeOff, Array.from({ length: meetings }, (_, i) => sheetAt(1 + sections.length + i))),
        ...surveyed ? [drawSurvey(ceiling, takeOff, sheetAt(1 + sections.length + meetings))].filter(each => each !== undefined) : [],
    ];
}
