import { cleatFootOf, isWhole, moldingOf, seatOf } from '../../ceiling/section.ts';
import { thicknessOf } from '../../ceiling/part-sizes.ts';
import type { Section, WholeSection } from '../../ceiling/model.ts';
import { isFiberboard } from '../../job/fiberboard.ts';
import type { Bottom, Profile, Rabbet } from '../../job/model.ts';
import { BLOCK_OF } from '../../job/parts-of.ts';
import type { Ticks } from '../../quantity/ticks.ts';

/** The section as it will stand, in ticks: widths across, heights measured down from the ceiling. */
export interface SectionShape {
    readonly innerWidth: Ticks; readonly outerWidth: Ticks; readonly depth: Ticks;
    /** What the bottom goes up into; null where it lies under the sides. */
    readonly channel: Ticks | null;
    /** On the left; and on the right, where the flanks are unlike. */
    readonly side: SideShape; readonly other: SideShape | null;
    /** What the beam hangs on: blocking, or what it wraps. */
    readonly blocking: { readonly width: Ticks; readonly thickness: Ticks; readonly isWrapped: boolean };
    readonly bottom: { readonly place: Bottom['place']['value']; readonly width: Ticks; readonly thickness: Ticks; readonly top: Ticks; readonly ease: Ticks; readonly aside: number };
    readonly cleat: { readonly thickness: Ticks; readonly top: Ticks; readonly foot: Ticks } | null;
    readonly spacer: { readonly width: Ticks; readonly height: Ticks } | null;
    /** How far out and down; of a crown, which leans, with the thickness of its board. */
    readonly trim: { readonly thickness: Ticks; readonly height: Ticks; readonly leans?: Ticks } | null;
    readonly molding: NonNullable<ReturnType<typeof moldingOf>> | null;
    /** Thickness of the panel under the ceiling from which the beam hangs; 0 without one. */
    readonly panel: Ticks;
    /** One timber: width and depth are all there is of it. */
    readonly isSolid: boolean;
    /** Parts of sheet material: it has no growth rings. */
    readonly sheet: ReadonlySet<CutPart>;
}

/** `aside`, of a bottom: how far to the right of the middle of the inside its own middle lies. */
export interface SideShape { readonly thickness: Ticks; readonly top: Ticks; readonly height: Ticks; readonly rabbet: Rabbet | null; readonly isSheet: boolean }
export type Hand = -1 | 1;

/** The side on the left or the right. */
export function sideAt({ side, other }: Pick<SectionShape, 'side' | 'other'>, hand: Hand): SideShape {
    return hand > 0 && other ? other : side;
}

/** How far its face stands from the middle of the inside. */
export function faceAt(shape: Pick<SectionShape, 'side' | 'other' | 'innerWidth'>, hand: Hand): number {
    return shape.innerWidth / 2 + sideAt(shape, hand).thickness;
}

/** What is drawn cut across its grain. */
const CUT_PARTS = ['side', 'cleat', 'bottom', 'molding', 'trim', 'timber'] as const;
type CutPart = (typeof CUT_PARTS)[number];

function sheetParts(profile: Profile): ReadonlySet<CutPart> {
    return new Set(CUT_PARTS.filter(part => isFiberboard(profile[BLOCK_OF[part]])));
}

/** Null where the text does not say enough for a section, or says what cannot be drawn (nothing, or less, of a part). */
export function shapeOf(section: Section): SectionShape | null {
    if (!isWhole(section)) return null;
    if (section.profile.solid) return solidShape(section);
    const { profile, cleatThickness, cleatHeight, spacerWidth } = section;
    const bottomThickness = section.bottomThickness.ticks;
    // pushed up against what stops it: where cleats were set with another gauge, the bottom does not end flush, and is drawn so
    const cleatFoot = cleatFootOf(section);
    const spacerHeight = profile.spacers?.height?.value.ticks;
    const isWrapped = !profile.blocking && profile.wraps !== undefined;
    const shape: SectionShape = {
        innerWidth: section.innerWidth.ticks, outerWidth: section.outerWidth.ticks, depth: section.depth.ticks,
        channel: section.channelWidth?.ticks ?? null,
        side: sideOf(section), other: section.other ? sideOf(section.other) : null,
        blocking: {
            width: isWrapped ? profile.wraps!.value.width.ticks : section.blockingWidth.ticks, thickness: section.blockingThickness.ticks, isWrapped,
        },
        bottom: { place: profile.bottom?.place.value ?? 'between-sides', width: section.bottomWidth.ticks, thickness: bottomThickness, top: seatOf(section), ease: profile.bottom?.ease?.value ?? 0, aside: asideOf(section) },
        cleat: cleatThickness && cleatHeight ? { thickness: cleatThickness.ticks, top: cleatFoot - cleatHeight.ticks, foot: cleatFoot } : null,
        spacer: spacerWidth && spacerHeight !== undefined ? { width: spacerWidth.ticks, height: spacerHeight } : null,
        molding: moldingOf(section) ?? null, isSolid: false,
        panel: panelOf(section),
        sheet: sheetParts(profile),
        trim: trimOf(section),
    };
    return sizesOf(shape).every(ticks => ticks > 0 && Number.isFinite(ticks)) ? shape : null;
}

function sideOf({ sideThickness, heldDown, sideHeight, profile: { sides } }: WholeSection): SideShape {
    const rabbet = sides?.rabbet?.value ?? null;
    return { thickness: sideThickness.ticks, top: heldDown.value.ticks, height: sideHeight.ticks, rabbet, isSheet: isFiberboard(sides) };
}

/** Under unlike sides a bottom lies in the middle of the beam, and in unlike rabbets in the middle of these. */
function asideOf({ other, sideThickness, profile }: WholeSection): number {
    const place = profile.bottom?.place.value, letIn = ({ sides }: Profile): Ticks => sides?.rabbet?.value.width.ticks ?? 0;
    if (!other || place === 'between-sides' || !place) return 0;
    return place === 'under-sides' ? (other.sideThickness.ticks - sideThickness.ticks) / 2 : (letIn(other.profile) - letIn(profile)) / 2;
}

function trimOf({ trimThickness, trimHeight, profile: { trim } }: Section): SectionShape['trim'] {
    if (!trimThickness || !trimHeight) return null;
    return { thickness: trimThickness.ticks, height: trimHeight.ticks, ...trim?.spring && { leans: thicknessOf(trim, 'trim')?.ticks } };
}

/** All of it stands where the blocking of a box would. */
function solidShape(section: WholeSection): SectionShape | null {
    const width = section.outerWidth.ticks, depth = section.depth.ticks, { profile } = section, trim = trimOf(section);
    const shape: SectionShape = {
        innerWidth: width, outerWidth: width, depth, channel: null, isSolid: true,
        side: { thickness: 0, top: 0, height: depth, rabbet: null, isSheet: false }, other: null, blocking: { width, thickness: depth, isWrapped: false },
        bottom: { place: 'between-sides', width, thickness: 0, top: depth, ease: 0, aside: 0 }, cleat: null, spacer: null, trim, molding: null, panel: panelOf(section),
        sheet: sheetParts(profile),
    };
    return [width, depth, ...trim ? [trim.thickness, trim.height] : []].every(ticks => ticks > 0 && Number.isFinite(ticks)) ? shape : null;
}

export function panelOf({ profile: { back } }: Pick<Section, 'profile'>): Ticks {
    return Math.max(0, back?.thickness?.value.ticks ?? 0);
}

/** How far the parts reach from the middle of the beam, and above and below the ceiling. Where sizes contradict each other that is more than the beam. */
export function reachOf(
    shape: SectionShape
): { readonly aside: Ticks; readonly down: Ticks; readonly up: Ticks } {
    const { innerWidth, depth, side, other, blocking, bottom, cleat, spacer, trim, molding, panel } = shape;
    return {
        aside: Math.max(
            Math.max(faceAt(shape, -1), faceAt(shape, 1)) + Math.max(trim?.thickness ?? 0, molding?.beyond ?? 0), blocking.width / 2,
            bottom.width / 2 + Math.abs(bottom.aside), (spacer?.width ?? 0) / 2,
            (cleat?.thickness ?? 0) - innerWidth / 2,
        ),
        down: Math.max(depth, bottom.top + bottom.thickness, blocking.thickness + (spacer?.height ?? 0), trim?.height ?? 0, molding?.foot ?? 0),
        up: Math.max(panel, -side.top, -(other ?? side).top, -bottom.top, -(cleat?.top ?? 0)),
    };
}

function sizesOf({ innerWidth, outerWidth, depth, side, other, blocking, bottom, cleat, spacer, trim, molding }: SectionShape): readonly Ticks[] {
    return [
        innerWidth, outerWidth, depth, side.thickness, side.height, ...other ? [other.thickness, other.height] : [],
        blocking.width, blocking.thickness, bottom.width, bottom.thickness,
        ...(cleat ? [cleat.thickness, cleat.foot - cleat.top] : []),
        ...(spacer ? [spacer.width, spacer.height] : []), ...(trim ? [trim.thickness, trim.height] : []),
        ...(molding ? [molding.inside + molding.beyond, molding.foot - molding.top] : []),
    ];
}
