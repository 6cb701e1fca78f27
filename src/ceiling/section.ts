import type { Molding } from '../arrangement/plan.ts';
import type { Bottom, Profile, Room, Sides, Trim } from '../job/model.ts';
import type { Given } from '../provenance/source.ts';
import { term } from '../provenance/why.ts';
import type { Measure } from '../quantity/measure.ts';
import { exactly } from '../quantity/tolerance.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { fromGiven, fromWords, summed } from './derived.ts';
import { otherFlankOf } from './flanks.ts';
import type { Derived, Section, WholeSection } from './model.ts';
import { thicknessOf, widthOf } from './part-sizes.ts';

/**
 * The section of a box beam. Depths are measured down from the ceiling.
 *
 *     inner width  = blocking; of a box made at the bench: its spacers, or what its bottom wants
 *     outer width  = inner width + 2 sides (thickness)
 *     depth        = held down + side (width), and + bottom (thickness) where the bottom lies under the sides
 *     top of the bottom = depth - bottom (thickness): flush with the sides' lower edge, or under it
 *     top of cleat = top of the bottom - cleat     spacer room = top of cleat (or of the bottom, without cleats) - blocking (thickness)
 *     channel      = inner width, and + 2 rabbets (width) where the bottom is let into the sides; none under the sides
 *     fit          = channel - bottom (width), in all, not a side
 *     a beam that wraps something: inner width = its width + 2 clearances; it stands where the blocking would
 *     a panel over the coffers is the ceiling to all of it: depths are measured down from its underside
 *     a bottom under the sides that is said to stand out beyond them is outer width + 2 overhangs wide
 *
 *     where the sides differ from flank to flank, each flank has a section of its own: the same but for what is said of its side, whose lower edge hangs
 *     as low as that of the other, so that it is held down by what is left of the depth
 *
 *     a molding under it hangs below the depth, from `overhang` beyond the face of the side inwards; against the sides it ends with their lower edge
 *
 * Formulas: common practice, no source. A part of it is undefined where the text does not say enough, or says what is not
 * computed: profile-troubles.ts tells which. `heldDown` is a line's own figure, where it has one.
 */
export function sectionOf(profile: Profile, heldDown: Given<Measure> | undefined = profile.sides?.heldDown): Section {
    if (profile.solid) return solidSection(profile, profile.solid);
    const twin = otherFlankOf(profile), own = flankSection(profile, heldDown);
    return twin ? { ...own, other: { ...flankSection(twin, heldDownThere(profile, twin, heldDown)), isOther: true } } : own;
}

/** A line that holds its sides down otherwise does so on both flanks, by as much. */
function heldDownThere(profile: Profile, twin: Profile, heldDown: Given<Measure> | undefined): Given<Measure> | undefined {
    const own = profile.sides!.heldDown, there = twin.sides!.heldDown;
    if (heldDown === own || !heldDown) return there;
    return { ...heldDown, value: { ...heldDown.value, ticks: heldDown.value.ticks + there.value.ticks - own.value.ticks }, said: false };
}

function flankSection(profile: Profile, heldDown: Given<Measure> | undefined): Section {
    const { blocking, spacers, sides, cleats, bottom, trim, under } = profile;
    const wrapped = blocking ? undefined : wrappedSizes(profile);
    const blockingWidth = wrapped?.inside ?? widthOf(blocking, 'blocking');
    const blockingThickness = wrapped?.height ?? thicknessOf(blocking, 'blocking');
    const bottomThickness = thicknessOf(bottom, 'bottom');
    const sideHeight = widthOf(sides, 'side');
    const sideThickness = thicknessOf(sides, 'side');
    const otherSide = thicknessOf(profile.otherSide ?? sides, 'side', 'other side');
    const cleatHeight = fromGiven('cleat', cleats?.height);
    const place = bottom?.place.value ?? 'between-sides';

    const rabbets = [sides, profile.otherSide ?? sides].map(side => rabbetFor(side, bottom));
    const innerWidth = blocking?.fit.value === 'bench-box' ? insideOfBox(profile, [sideThickness, otherSide], rabbets) : blockingWidth;
    const outerWidth = summed([innerWidth, 1], [sideThickness, 1], [otherSide, 1]);
    const bottomWidth = bottom?.overhang && !bottom.rip ? summed([outerWidth, 1], [fromGiven('overhang', bottom.overhang), 2]) : widthOf(bottom, 'bottom');
    const channelWidth = place === 'under-sides' ? undefined : place === 'in-rabbets' ? summed([innerWidth, 1], [rabbets[0], 1], [rabbets[1], 1]) : innerWidth;
    const depth = profile.notComputed.length > 0 ? undefined
        : summed([fromGiven('held down', heldDown), 1], [sideHeight, 1], ...place === 'under-sides' ? [[bottomThickness, 1] as const] : []);
    const bottomTop = summed([depth, 1], [bottomThickness, -1]);
    const cleatTop = summed([bottomTop, 1], [cleatHeight, -1]);
    return {
        profile, heldDown,
        blockingWidth, bottomWidth, sideHeight, spacerWidth: widthOf(spacers, 'spacer'),
        blockingThickness, bottomThickness, sideThickness, spacerThickness: thicknessOf(spacers, 'spacer'),
        ...trimSizes(trim),
        moldingWidth: widthOf(under, 'molding'), moldingThickness: thicknessOf(under, 'molding'),
        cleatThickness: fromGiven('cleat', cleats?.thickness), cleatHeight,
        innerWidth, channelWidth, outerWidth, depth, bottomTop, cleatTop,
        spacerRoom: summed([cleats ? cleatTop : bottomTop, 1], [blockingThickness, -1]),
        fit: summed([channelWidth, 1], [bottomWidth, -1]),
    };
}

/** One timber: as deep as it is wide, as wide as it is thick. It has neither an inside nor sides, and nothing in it that could be off. */
function solidSection(profile: Profile, solid: NonNullable<Profile['solid']>): Section {
    const outerWidth = thicknessOf(solid, 'timber'), depth = profile.notComputed.length > 0 ? undefined : widthOf(solid, 'timber');
    const none: Derived = { ticks: 0, tolerance: [], why: { terms: [] } };
    return {
        profile, heldDown: { value: exactly(0), at: solid.at, said: false }, ...trimSizes(profile.trim),
        outerWidth, innerWidth: outerWidth, depth, bottomTop: depth,
        bottomWidth: outerWidth, bottomThickness: none, sideThickness: none, sideHeight: depth, blockingWidth: outerWidth, blockingThickness: none,
    };
}

/**
 * A beam that is built round something is as wide inside as that and twice the clearance, and has, where its blocking would be, what it wraps: all that
 * hangs under blocking stays under it.
 */
function wrappedSizes({ wraps }: Profile): { inside: Derived; height: Derived } | undefined {
    if (!wraps) return undefined;
    const { value: { width, height }, at, clearance } = wraps;
    return {
        inside: summed([fromWords('what it wraps', width, at), 1], [fromWords('clearance', exactly(clearance.value), clearance.at), 2])!,
        height: fromWords('what it wraps', height, at),
    };
}

/**
 * What a trim reaches out along the ceiling and down the side. Flat: thickness and width. A crown leans by its spring: width x sin(spring) out, and
 * width x cos(spring) down, unless its maker says otherwise.
 */
function trimSizes(trim: Trim | undefined): Pick<Section, 'trimThickness' | 'trimHeight'> {
    const width = widthOf(trim, 'trim');
    if (!trim?.spring) return { trimThickness: thicknessOf(trim, 'trim'), trimHeight: width };
    const lean = trim.spring.value * Math.PI / 180;
    const share = (of: number): Derived | undefined => width && { ...width, ticks: Math.round(width.ticks * of), why: { terms: [term('trim', 1, Math.round(width.ticks * of), trim.spring!.at)] } };
    return {
        trimThickness: fromGiven('projection of the crown', trim.projects) ?? share(Math.sin(lean)), trimHeight: fromGiven('drop of the crown', trim.drops) ?? share(Math.cos(lean)),
    };
}

/** The section with the trim that its room has in place of its own. */
export function withTrimOfRoom<Some extends Section>(section: Some, { trim }: Pick<Room, 'trim'>): Some {
    return trim ? { ...section, ...trimSizes(trim), profile: { ...section.profile, trim } } : section;
}

/** What a side's rabbet is wide, of a bottom that is let into it; undefined where there is none for it. */
function rabbetFor(sides: Sides | undefined, bottom: Bottom | undefined): Derived | undefined {
    const rabbet = bottom?.place.value === 'in-rabbets' ? sides?.rabbet : undefined;
    return rabbet?.value.edge === 'lower' && rabbet.value.face === 'back' ? fromWords('rabbet', rabbet.value.width, rabbet.value.widthAt) : undefined;
}

/** A box is made at the bench round its spacers; where it has none, round its bottom, with the least play that it is to have. */
function insideOfBox({ spacers, bottom }: Profile, sides: readonly (Derived | undefined)[], rabbets: readonly (Derived | undefined)[]): Derived | undefined {
    if (spacers) return widthOf(spacers, 'spacer');
    const own = widthOf(bottom, 'bottom');
    switch (bottom?.place.value) {
        case 'between-sides': return summed([own, 1], [leastPlay(bottom), 1]);
        case 'in-rabbets': return summed([own, 1], [rabbets[0], -1], [rabbets[1], -1], [leastPlay(bottom), 1]);
        case 'under-sides': return bottom.overhang && summed([own, 1], [fromGiven('overhang', bottom.overhang), -2], [sides[0], -1], [sides[1], -1]);
        case undefined: return undefined;
    }
}

function leastPlay({ gap }: Bottom): Derived {
    return fromWords('gap', exactly(gap.value.least), gap.at);
}

/** Whether it has all that a layout needs. Cleats, spacers and trim may be missing: then there are no pieces of them. */
export function isWhole(section: Section): section is WholeSection {
    const { profile: { otherSide, solid }, other, isOther } = section;
    return isWholeFlank(section) && (!otherSide || Boolean(solid ?? isOther) || other !== undefined && isWholeFlank(other));
}

function isWholeFlank(section: Section): boolean {
    const { profile: { bottom } } = section;
    // what is no number makes no corner of a piece
    const isFinite = Object.values(section).every((size: unknown) => !isSize(size) || Number.isFinite(size.ticks));
    return isFinite && Boolean(section.innerWidth && section.outerWidth && section.depth && section.bottomTop && (section.fit || bottom?.place.value === 'under-sides' || section.profile.solid)
        && section.sideHeight && section.sideThickness && section.bottomWidth && section.bottomThickness
        && section.blockingWidth && section.blockingThickness && section.heldDown);
}

function isSize(value: unknown): value is Derived {
    return typeof value === 'object' && value !== null && 'ticks' in value;
}

/** The play of the bottom in its channel, in all; none where it lies under the sides. */
export function playOf({ fit }: Pick<Section, 'fit'>): Ticks {
    return fit?.ticks ?? 0;
}

/** The lower edge of the sides, down from the ceiling: the depth, or the top of a bottom that lies under them. */
export function sideFootOf({ depth, bottomTop, profile }: Pick<WholeSection, 'depth' | 'bottomTop' | 'profile'>): Ticks {
    return (profile.bottom?.place.value === 'under-sides' ? bottomTop : depth).ticks;
}

/** The molding along the lower edges of its sides. */
export function moldingOf(section: WholeSection): Molding | undefined {
    const { moldingWidth: width, moldingThickness: thickness, depth, profile: { under } } = section;
    if (!under || !width || !thickness) return undefined;
    const beyond = under.overhang.value.ticks, foot = sideFootOf(section);
    if (under.place.value === 'against-sides') return { inside: 0, beyond: thickness.ticks, top: foot - width.ticks, foot };
    return { inside: width.ticks - beyond, beyond, top: depth.ticks, foot: depth.ticks + thickness.ticks };
}

/**
 * What stops the bottom as it goes up, down from the ceiling: the edges of the sides that it lies under; else cleats, or the shoulders of the
 * rabbets, whichever it meets first; without any, where it is flush.
 */
export function seatOf({ depth, bottomTop, bottomThickness, profile: { bottom, cleats, sides } }: Pick<WholeSection, 'depth' | 'bottomTop' | 'bottomThickness' | 'profile'>): Ticks {
    if (bottom?.place.value === 'under-sides') return bottomTop.ticks;
    const stops = [
        ...cleats ? [cleats.gauge?.value.ticks ?? bottomThickness.ticks] : [],
        ...bottom?.place.value === 'in-rabbets' && sides?.rabbet ? [sides.rabbet.value.height.ticks] : [],
    ];
    return depth.ticks - (stops.length > 0 ? Math.min(...stops) : bottomThickness.ticks);
}

/** Cleats stand one bottom above its lower edge, or as high as the block they are set with; over a bottom that lies under the sides, at their edge. */
export function cleatFootOf({ depth, bottomTop, profile: { bottom, cleats } }: Pick<WholeSection, 'depth' | 'bottomTop' | 'profile'>): Ticks {
    const gauge = bottom?.place.value === 'under-sides' ? undefined : cleats?.gauge;
    return gauge ? depth.ticks - gauge.value.ticks : bottomTop.ticks;
}
