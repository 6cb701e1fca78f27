import type { Ceiling } from '../ceiling/model.ts';
import type { TakeOff } from '../takeoff/model.ts';
import type { Sheet } from './display-list.ts';
import { drawPlan, sheetAfter } from './plan/plan.ts';
import { contextIn, sectionsOf } from './section/context.ts';
import { drawSection } from './section/section.ts';
import type { SheetOptions } from './sheet-options.ts';

/** All sheets of a room: the plan, then each of its sections, numbered on from the first. */
export function drawSheets(ceiling: Ceiling, takeOff: TakeOff, options: SheetOptions = {}): readonly Sheet[] {
    const sections = sectionsOf(ceiling);
    const first = options.sheet ?? 'C-1';
    const of = options.of ?? `of ${1 + sections.length}`;
    return [
        drawPlan(ceiling, takeOff, { ...options, sheet: first, of }),
        ...sections.map((each, i) => drawSection(each.section, contextIn(ceiling, each, { ...options, sheet: sheetAfter(first, i + 1), of }))),
    ];
}
