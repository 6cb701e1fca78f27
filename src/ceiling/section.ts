import type { Profile } from '../job/model.ts';
import type { Given } from '../provenance/source.ts';
import type { Measure } from '../quantity/measure.ts';
import { fromGiven, summed } from './derived.ts';
import type { Section, WholeSection } from './model.ts';
import { thicknessOf, widthOf } from './part-sizes.ts';

/**
 * The section of a box beam whose bottom drops in between the sides. Depths are measured down from the ceiling.
 *
 *     inner width  = blocking                      outer width = inner width + 2 sides (thickness)
 *     depth        = held down + side (width)      top of the bottom = depth - bottom (thickness): flush with the sides' lower edge
 *     top of cleat = top of the bottom - cleat     spacer room = top of cleat (or of the bottom, without cleats) - blocking (thickness)
 *     fit          = inner width - bottom (width), in all, not a side
 *
 * Formulas: common practice, no source. A part of it is undefined where the text does not say enough, or says what is not
 * computed (another place of the bottom, a bench-built box, a panel back): profile-troubles.ts tells which.
 * `heldDown` is a line's own figure, where it has one.
 */
export function sectionOf(profile: Profile, heldDown: Given<Measure> | undefined = profile.sides?.heldDown): Section {
    const { blocking, spacers, sides, cleats, bottom, trim } = profile;
    const blockingWidth = widthOf(blocking, 'blocking');
    const blockingThickness = thicknessOf(blocking, 'blocking');
    const bottomWidth = widthOf(bottom, 'bottom');
    const bottomThickness = thicknessOf(bottom, 'bottom');
    const sideHeight = widthOf(sides, 'side');
    const sideThickness = thicknessOf(sides, 'side');
    const otherSide = thicknessOf(sides, 'side', 'other side');
    const cleatHeight = fromGiven('cleat', cleats?.height);

    const boxed = bottom === undefined || bottom.place.value === 'between-sides';
    const innerWidth = blocking?.fit.value === 'full-width' ? blockingWidth : undefined;
    const depth = boxed && profile.notComputed.length === 0 ? summed([fromGiven('held down', heldDown), 1], [sideHeight, 1]) : undefined;
    const bottomTop = summed([depth, 1], [bottomThickness, -1]);
    const cleatTop = summed([bottomTop, 1], [cleatHeight, -1]);
    return {
        profile, heldDown,
        blockingWidth, bottomWidth, sideHeight, spacerWidth: widthOf(spacers, 'spacer'),
        blockingThickness, bottomThickness, sideThickness, spacerThickness: thicknessOf(spacers, 'spacer'),
        trimThickness: thicknessOf(trim, 'trim'), trimHeight: widthOf(trim, 'trim'),
        cleatThickness: fromGiven('cleat', cleats?.thickness), cleatHeight,
        innerWidth,
        outerWidth: boxed ? summed([innerWidth, 1], [sideThickness, 1], [otherSide, 1]) : undefined,
        depth, bottomTop, cleatTop,
        spacerRoom: summed([cleats ? cleatTop : bottomTop, 1], [blockingThickness, -1]),
        fit: boxed ? summed([innerWidth, 1], [bottomWidth, -1]) : undefined,
    };
}

/** Whether it has all that a layout needs. Cleats, spacers and trim may be missing: then there are no pieces of them. */
export function isWhole(section: Section): section is WholeSection {
    return Boolean(section.innerWidth && section.outerWidth && section.depth && section.bottomTop && section.fit
        && section.sideHeight && section.sideThickness && section.bottomWidth && section.bottomThickness
        && section.blockingWidth && section.blockingThickness && section.heldDown);
}
