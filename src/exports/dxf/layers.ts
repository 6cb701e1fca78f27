import type { Group } from '../../drawing/display-list.ts';
import { penOf, type Pen, type PenName } from '../../drawing/pens.ts';
import { PLURAL } from '../../job/part.ts';

/**
 * Layers are named by what is drawn and by the pen it is drawn with: `SIDES-EDGE`, `DIMENSIONS-TICK`, `DIMENSIONS-TEXT`.
 * So a part is switched off by its first word, and a line weight by its last.
 */
export type Kind = string;

/** By the first word of a group's id. What is named nowhere belongs to the sheet. */
const GROUP_KINDS: Readonly<Record<string, Kind>> = {
    walls: 'WALLS', found: 'WALLS', joists: 'JOISTS', line: 'CENTERS', coffer: 'COFFERS', length: 'LENGTHS', fixture: 'FIXTURES', 'fixture-name': 'FIXTURES', splices: 'SPLICES',
    mark: 'SECTION_MARKS', dimensions: 'DIMENSIONS', note: 'NOTES', beyond: 'BEYOND', ceiling: 'CEILING', 'break-lines': 'BREAKS', screws: 'FASTENERS', nails: 'FASTENERS',
};
export const SHEET_KIND: Kind = 'SHEET';

/** What a group draws: its part of the beam, else what its name says, else what the group around it draws. */
export function kindOf({ part, id }: Group, around: Kind): Kind {
    if (part !== undefined) return PLURAL[part].toUpperCase();
    return GROUP_KINDS[id.split('.')[0]!] ?? around;
}

export function layerName(kind: Kind, drawn: PenName | 'text' | 'fill'): string {
    return `${kind}-${drawn.toUpperCase()}`;
}

/** AutoCAD Color Index, as every reader knows it: 7 is black on white and white on black, 8 gray, 1 red. */
export function colorOf(tone: Pen['tone']): number {
    return tone === 'accent' ? 1 : tone === 'soft' ? 8 : 7;
}

/** The line weights that DXF knows (group code 370), in hundredths of a millimeter. */
const WEIGHTS = [0, 5, 9, 13, 15, 18, 20, 25, 30, 35, 40, 50, 53, 60, 70, 80, 90, 100, 106, 120, 140, 158, 200, 211];
const HUNDREDTHS_PER_POINT = 2540 / 72;

export function weightOf(pen: PenName): number {
    const wanted = penOf(pen).width * HUNDREDTHS_PER_POINT;
    return WEIGHTS.reduce((best, weight) => (Math.abs(weight - wanted) < Math.abs(best - wanted) ? weight : best));
}
