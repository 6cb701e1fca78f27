import type { Show } from '../../quantity/print-length.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import type { DimensionString } from '../dimensions/dimension-string.ts';
import { layStack, type Stack } from '../dimensions/stack.ts';
import { sizeFigure } from '../figures.ts';
import { faceAt, sideAt, type Hand, type SectionShape, type SideShape } from './shape.ts';

const SIZE = 9.2;
/** From the break lines, or from the underside, to the nearest string. */
const CLEAR = 16;
/** The same at the right, where figures stand between the break line and their string: clear of its zigzag. */
const CLEAR_RIGHT = 20;

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
    const { innerWidth, outerWidth, depth, side, other, blocking, bottom, cleat, trim } = shape, right = sideAt(shape, 1);
    const parts = [0, blocking.thickness, ...(cleat ? [cleat.top] : []), bottom.top, bottom.top + bottom.thickness];
    const left = shape.isSolid ? [upright('depth', 'Depth of the beam', [0, depth])] : [
        upright('side', 'Held down, and height of the side', [0, Math.max(0, side.top), ...other && side.rabbet ? rabbetMarks(side) : [], side.top + side.height]),
        upright('parts', 'Blocking, hollow, cleat, bottom', parts),
        upright('depth', 'Depth of the beam', [0, depth]),
    ];
    const rightMarks = [
        0, ...(trim && trim.height < depth ? [trim.height] : []), ...other && other.top > 0 && other.top !== side.top ? [other.top] : [],
        ...(right.rabbet ? rabbetMarks(right) : []), right.top + right.height,
    ];
    // a rabbet along the upper edges is not seen from below
    const lipAt = (hand: Hand): readonly number[] => {
        const { rabbet } = sideAt(shape, hand);
        return rabbet?.edge !== 'lower' ? [] : [hand * (rabbet.face === 'front' ? faceAt(shape, hand) - rabbet.width.ticks : innerWidth / 2 + rabbet.width.ticks)];
    };
    const faces = [-faceAt(shape, -1), faceAt(shape, 1)], edges = [bottom.aside - bottom.width / 2, bottom.aside + bottom.width / 2];
    const underside = level('underside', 'Lips, grooves and inner width, at the underside', [...faces, ...lipAt(-1), -innerWidth / 2, innerWidth / 2, ...lipAt(1)]);
    const bottomOnly = bottom.width === innerWidth || bottom.width === outerWidth && bottom.place === 'under-sides' ? []
        : [level('bottom', 'Width of the bottom', bottom.place === 'under-sides' ? [...edges, ...faces] : edges)];
    const widest = bottom.place === 'under-sides' && bottom.width > outerWidth ? edges : faces;
    if (shape.isSolid) {
        const solid = [level('width', 'Width of the beam', faces)];
        return { left: layStack('left', left, SIZE, CLEAR), right: null, foot: layStack('foot', solid, SIZE, CLEAR) };
    }
    const rightString = rightMarks.length > 2 ? upright('trim', 'Trim and groove', rightMarks) : [];
    const some = (strings: readonly (readonly DimensionString[])[]) => strings.filter(variants => variants.length > 0);
    return {
        left: layStack('left', some(left), SIZE, CLEAR),
        right: rightString.length > 0 ? layStack('right', [rightString], SIZE, CLEAR_RIGHT) : null,
        foot: layStack('foot', some([underside, ...bottomOnly, level('width', 'Width of the beam', widest)]), SIZE, CLEAR),
    };
}

function rabbetMarks({ rabbet, top, height }: SideShape): readonly Ticks[] {
    const high = rabbet!.height.ticks;
    return rabbet!.edge === 'lower' ? [top + height - high] : [top, top + high];
}
