import type { Ceiling } from '../../ceiling/model.ts';
import type { Sheet } from '../display-list.ts';
import type { SheetOptions } from '../sheet-options.ts';
import { contextIn, sectionsOf, type SectionContext, type SectionOfLines } from './context.ts';
import { drawPaneSection, drawSection } from './section.ts';
import type { PaneSection } from './section-sheet.ts';
import { drawPaneWallSection, drawWallSection } from './wall-section.ts';
import { alongWalls, type AlongWalls } from './wall-shape.ts';

/** Everything a ceiling has a section of: its lines, each way they are built once, then what runs along its walls. */
export type AnySection = { readonly of: 'lines'; readonly lines: SectionOfLines } | { readonly of: 'walls'; readonly along: AlongWalls };

export function allSectionsOf(ceiling: Ceiling): readonly AnySection[] {
    return [
        ...sectionsOf(ceiling).map((lines): AnySection => ({ of: 'lines', lines })),
        ...alongWalls(ceiling).map((along): AnySection => ({ of: 'walls', along })),
    ];
}

export function drawAnySection(ceiling: Ceiling, each: AnySection, options: SheetOptions): Sheet {
    if (each.of === 'walls') return drawWallSection(each.along, ceiling.beams, wallContext(ceiling, options));
    return drawSection(each.lines.section, contextIn(ceiling, each.lines, options));
}

export function drawAnyPaneSection(ceiling: Ceiling, each: AnySection, size: { readonly width: number; readonly height: number }): PaneSection {
    if (each.of === 'walls') return drawPaneWallSection(each.along, ceiling.beams, wallContext(ceiling, {}), size);
    return drawPaneSection(each.lines.section, contextIn(ceiling, each.lines, {}), size);
}

function wallContext({ room }: Ceiling, options: SheetOptions): SectionContext {
    return { ...options, job: room.job, room: room.title ?? room.name, lines: [], covering: room.covering, crossed: false };
}
