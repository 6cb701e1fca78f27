import type { Show } from '../../quantity/print-length.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import type { DimensionString } from '../dimensions/dimension-string.ts';
import { layStack, type Stack } from '../dimensions/stack.ts';
import { sizeFigure } from '../figures.ts';
import type { SectionShape } from './shape.ts';

const SIZE = 9.2;
/** From the break lines, or from the underside, to the nearest string. */
const CLEAR = 16;

/** Strings left, right and below, laid for a scale; `at` gives a tick's place on the sheet. */
export function sectionDimensions(
    shape: SectionShape, show: Show, at: { readonly across: (ticks: Ticks) => number; readonly down: (ticks: Ticks) => number },
): { readonly left: Stack; readonly right: Stack | null; readonly foot: Stack } {
    const make = (place: (ticks: Ticks) => number) => (id: string, title: string, marks: readonly Ticks[]): readonly DimensionString[] => {
        const rising = [...new Set(marks)].sort((a, b) => a - b);
        return rising.length < 2 ? [] : [{ id: `dimensions.${id}`, title, stops: rising.map(place), figures: rising.slice(1).map((mark, i) => sizeFigure(mark - rising[i]!, show)) }];
    };
    const upright = make(at.down);
    const level = make(at.across);
    const { innerWidth, outerWidth, depth, side, blocking, bottom, cleat, trim } = shape;
    const parts = [0, blocking.thickness, ...(cleat ? [cleat.top] : []), bottom.top, bottom.top + bottom.thickness];
    const left = shape.isSolid ? [upright('depth', 'Depth of the beam', [0, depth])] : [
        upright('side', 'Held down, and height of the side', [0, Math.max(0, side.top), side.top + side.height]),
        upright('parts', 'Blocking, hollow, cleat, bottom', parts),
        upright('depth', 'Depth of the beam', [0, depth]),
    ];
    const rightMarks = [0, ...(trim && trim.height < depth ? [trim.height] : []), ...(side.rabbet ? rabbetMarks(shape) : []), side.top + side.height];
    // a rabbet along the upper edges is not seen from below
    const below = side.rabbet?.edge === 'lower' ? side.rabbet : undefined, lip = below?.width.ticks ?? 0;
    const from = below?.face === 'front' ? outerWidth / 2 - lip : innerWidth / 2 + lip;
    const underside = level('underside', 'Lips, grooves and inner width, at the underside', [-outerWidth / 2, ...(below ? [-from] : []), -innerWidth / 2, innerWidth / 2, ...(below ? [from] : []), outerWidth / 2]);
    const bottomOnly = bottom.width === innerWidth || bottom.width === outerWidth && bottom.place === 'under-sides' ? [] : [level('bottom', 'Width of the bottom', bottom.place === 'under-sides'
        ? [-bottom.width / 2, -outerWidth / 2, outerWidth / 2, bottom.width / 2] : [-bottom.width / 2, bottom.width / 2])];
    const widest = bottom.place === 'under-sides' ? Math.max(outerWidth, bottom.width) : outerWidth;
    if (shape.isSolid) {
        const solid = [level('width', 'Width of the beam', [-outerWidth / 2, outerWidth / 2])];
        return { left: layStack('left', left, SIZE, CLEAR), right: null, foot: layStack('foot', solid, SIZE, CLEAR) };
    }
    const right = rightMarks.length > 2 ? upright('trim', 'Trim and groove', rightMarks) : [];
    const some = (strings: readonly (readonly DimensionString[])[]) => strings.filter(variants => variants.length > 0);
    return {
        left: layStack('left', some(left), SIZE, CLEAR),
        right: right.length > 0 ? layStack('right', [right], SIZE, CLEAR) : null,
        foot: layStack('foot', some([underside, ...bottomOnly, level('width', 'Width of the beam', [-widest / 2, widest / 2])]), SIZE, CLEAR),
    };
}

function rabbetMarks({ side }: SectionShape): readonly Ticks[] {
    const height = side.rabbet!.height.ticks;
    return side.rabbet!.edge === 'lower' ? [side.top + side.height - height] : [side.top, side.top + height];
}
