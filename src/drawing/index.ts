export { drawSection } from './section/section.ts';
export { drawSmallSection } from './section/small-section.ts';
export { contextIn, sectionsOf, type SectionContext, type SectionOfLines } from './section/context.ts';
export { toSvg, type SvgOptions } from './svg/svg.ts';
export type { SvgTheme } from './svg/style-sheet.ts';
export type { Sheet } from './display-list.ts';
export type { SheetOptions } from './sheet-options.ts';
export { drawPlan } from './plan/plan.ts';
export { drawSheets } from './sheets.ts';
