import type { Ceiling } from '../../ceiling/model.ts';
import type { Sheet } from '../display-list.ts';
import type { SheetOptions } from '../sheet-options.ts';
import { contextIn, sectionsOf, type SectionOfLines } from './context.ts';
import { beamSection } from './section.ts';
import { sectionInPane, sectionSheet, type PaneSection, type SectionDrawing } from './section-sheet.ts';
import { wallSection } from './wall-section.ts';
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
    return sectionSheet(drawingOf(ceiling, each, options));
}

export function drawAnyPaneSection(ceiling: Ceiling, each: AnySection, size: { readonly width: number; readonly height: number }): PaneSection {
    return sectionInPane(drawingOf(ceiling, each, {}), size);
}

function drawingOf(ceiling: Ceiling, each: AnySection, options: SheetOptions): SectionDrawing {
    if (each.of === 'lines') return beamSection(each.lines.section, contextIn(ceiling, each.lines, options));
    const { beams, room } = ceiling;
    return wallSection(each.along, beams, { ...options, job: room.job, room: room.title ?? room.name, lines: [], covering: room.covering, crossed: false });
}
