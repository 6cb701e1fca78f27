import { compassOf } from '../arrangement/compass.ts';
import type { Compass } from '../arrangement/model.ts';
import type { Direction, LineSpec, Profile, Side, Sides } from '../job/model.ts';
import { kept } from '../plain/kept.ts';
import { exactly } from '../quantity/tolerance.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Line, Section, Trouble, WholeSection } from './model.ts';
import { widthOf } from './part-sizes.ts';

/**
 * The two flanks of a line, to the left and the right of somebody who walks along it. Where a beam has another side on one of them, its profile has
 * a twin that is seen from there: whatever reads the sides of a profile or a section reads those of a flank in just the same way.
 */
export type Flank = 'left' | 'right';

/** The two sides of a line, the lower coordinate first. */
export function sidesOf(runs: Direction): readonly [Side, Side] {
    return runs === 'east-west' ? ['north', 'south'] : ['west', 'east'];
}

/** The flank that looks to this side. */
export function flankOf(on: Side): Flank {
    return on === 'north' || on === 'east' ? 'left' : 'right';
}

/** The way that a flank of a line looks, by which its pieces are named: at 45 degrees between two winds. */
export function lookOf({ heading: { x, y } }: Pick<Line, 'heading'>, flank: Flank): Compass {
    return compassOf(flank === 'left' ? { x: y, y: -x } : { x: -y, y: x });
}

/** A beam as the flank with its other side has it. Undefined where both are alike, or where nobody knows how high the two are. */
export const otherFlankOf: (profile: Profile) => Profile | undefined = kept(profile => {
    const { sides, otherSide, key } = profile, [own, other] = [widthOf(sides, 'side'), widthOf(otherSide, 'side')];
    // a side that is not there has no width
    if (!own || !other) return undefined;
    return { ...profile, key: `${key} other side`, sides: heldDownAs(otherSide!, own.ticks - other.ticks), otherSide: sides };
});

/** Lower edges hang in line, so a side that is higher is held down less. */
function heldDownAs(side: Sides, more: Ticks): Sides {
    const { heldDown, rip, stock } = side;
    if (more === 0) return side;
    return { ...side, heldDown: { value: exactly(heldDown.value.ticks + more), at: (rip ?? stock ?? heldDown).at, said: false } };
}

/** A section as each kind of its flanks has it. */
export function flanksOf<Some extends Section>(section: Some): readonly Some[] {
    return section.other ? [section, section.other as Some] : [section];
}

/** The section as one flank of a line has it. */
export function sectionAt({ section, otherSide }: Pick<Line, 'section' | 'otherSide'>, flank: Flank): WholeSection {
    return section.other && otherSide === flank ? section.other : section;
}

/** The section as what looks that way from a line has it: a side, a cleat. */
export function sectionLooking(line: Pick<Line, 'section' | 'otherSide' | 'heading'>, on: string | null): WholeSection {
    return line.otherSide && lookOf(line, line.otherSide) === on ? sectionAt(line, line.otherSide) : line.section;
}

/** From the center of a line, which is that of its inside, to the face of one flank: half a tick where the inside is odd. */
export function reachAt(line: Pick<Line, 'section' | 'otherSide'>, flank: Flank): number {
    const { innerWidth, sideThickness } = sectionAt(line, flank);
    return innerWidth.ticks / 2 + sideThickness.ticks;
}

/** From the center of a line to the edge of its bottom. */
export function bottomReachAt(line: Pick<Line, 'section' | 'otherSide'>, flank: Flank): number {
    const { bottomWidth, outerWidth, innerWidth, fit, profile: { bottom } } = line.section;
    switch (bottom?.place.value) {
        case 'under-sides': return reachAt(line, flank) + (bottomWidth.ticks - outerWidth.ticks) / 2;
        case 'in-rabbets': return (innerWidth.ticks - (fit?.ticks ?? 0)) / 2 + (sectionAt(line, flank).profile.sides?.rabbet?.value.width.ticks ?? 0);
        default: return bottomWidth.ticks / 2;
    }
}

/** How far its west or north face lies from its center. */
export function lowReach(line: Pick<Line, 'section' | 'otherSide' | 'runs'>): number {
    return reachAt(line, flankOf(sidesOf(line.runs)[0]));
}

/** What both sides are thick together. */
export function thicknessOfSides({ sideThickness, other }: WholeSection): Ticks {
    return sideThickness.ticks + (other ?? { sideThickness }).sideThickness.ticks;
}

/**
 * The flank of a line that has the other side of its beam: where the line says it, else to the east or south. Undefined where both are alike; null,
 * with a trouble, where the line has no flank that looks there.
 */
export function otherSideOf(name: string, runs: Direction, { other }: Pick<Section, 'other'>, spec: LineSpec | undefined, troubles: Trouble[]): Flank | undefined | null {
    const has = sidesOf(runs), said = spec?.otherSide;
    if (!said) return other && flankOf(has[1]);
    if (other && has.includes(said.value)) return flankOf(said.value);
    troubles.push({ kind: 'no-other-side', of: 'line', line: name, runs, ...other && { has }, said: said.value, at: said.at });
    return null;
}
