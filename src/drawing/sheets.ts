import type { Ceiling } from '../ceiling/model.ts';
import type { TakeOff } from '../takeoff/model.ts';
import type { Sheet } from './display-list.ts';
import { drawMeetings, meetingSheets } from './meetings/sheets.ts';
import { drawPlan, sheetAfter } from './plan/plan.ts';
import { allSectionsOf, drawAnySection } from './section/all-sections.ts';
import type { SheetOptions } from './sheet-options.ts';

/** All sheets of a room: the plan, then each of its sections, then how beams meet, numbered on from the first. */
export function drawSheets(ceiling: Ceiling, takeOff: TakeOff, options: SheetOptions = {}): readonly Sheet[] {
    const sections = allSectionsOf(ceiling), meetings = meetingSheets(ceiling);
    const first = options.sheet ?? 'C-1';
    const of = options.of ?? `of ${1 + sections.length + meetings}`, sheetAt = (i: number): SheetOptions => ({ ...options, sheet: sheetAfter(first, i), of });
    return [
        drawPlan(ceiling, takeOff, sheetAt(0)),
        ...sections.map((each, i) => drawAnySection(ceiling, each, sheetAt(1 + i))),
        ...drawMeetings(ceiling, takeOff, Array.from({ length: meetings }, (_, i) => sheetAt(1 + sections.length + i))),
    ];
}
