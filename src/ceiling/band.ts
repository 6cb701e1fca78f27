import type { JobSettings, Perimeter } from '../job/model.ts';
import { term } from '../provenance/why.ts';
import { printLength } from '../quantity/print-length.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { fromGiven, fromWords, summed } from './derived.ts';
import type { LineSections } from './lines.ts';
import type { Band, Derived, HalfBeam, Trouble, WholeSection } from './model.ts';
import { thicknessOf, widthOf } from './part-sizes.ts';
import { isWhole, moldingOf } from './section.ts';

/** What runs along a wall as far as it is known before the beams are. `reach`: how far its face stands off the wall. */
export type Edging = BandBoard | Omit<HalfBeam, 'splices'> & { readonly reach: Derived };
interface BandBoard { readonly kind: 'band'; readonly perimeter: Perimeter; readonly reach: Derived; readonly height: Derived }

/** Null: nothing runs along the wall. Undefined: not enough is known, or what is said cannot be (then with a trouble). */
export function edgingOf(perimeter: Perimeter | null, sections: LineSections, troubles: Trouble[]): Edging | null | undefined {
    if (!perimeter || perimeter.kind.value === 'none') return null;
    if (perimeter.kind.value === 'half-beam') return halfBeamOf(perimeter, sections, troubles);
    const thickness = thicknessOf(perimeter, 'band'), height = widthOf(perimeter, 'band');
    if (!thickness || !height) return undefined;
    const stock = perimeter.stock?.value;
    const sizes = [
        ['the thickness of the band', thickness, stock?.thickness],
        ['the width of the band', height, perimeter.rip ?? stock?.width],
    ] as const;
    const wrong = sizes.filter(([, { ticks }]) => !(ticks > 0));
    for (const [what, { ticks }, given] of wrong) troubles.push({ kind: 'not-positive', what, ticks, at: (given ?? perimeter).at });
    return wrong.length > 0 ? undefined : { kind: 'band', perimeter, reach: thickness, height };
}

function halfBeamOf(perimeter: Perimeter, sections: LineSections, troubles: Trouble[]): Edging | undefined {
    const { shows } = perimeter, whole = perimeter.beams ? sections.ofProfile(perimeter.beams.value) : sections.grid();
    const isOther = shows?.value === 'other-side', section = isOther && whole?.other ? whole.other : whole;
    const width = fromGiven('half beam', perimeter.width);
    if (!width || !section || !isWhole(section)) return undefined;
    if (isOther && !section.isOther) {
        troubles.push({ kind: 'no-other-side', of: 'half-beam', at: shows.at });
        return undefined;
    }
    if (!(width.ticks > 0)) {
        troubles.push({ kind: 'not-positive', what: 'the width of the half beam', ticks: width.ticks, at: perimeter.width!.at });
        return undefined;
    }
    if (section.profile.solid) return halfTimber(perimeter, width, section, sections.room.job, troubles);
    if ((moldingOf(section)?.inside ?? 0) > width.ticks + section.sideThickness.ticks) {
        troubles.push({ kind: 'not-supported', what: 'a molding wider than the half beam that it lies under', because: 'it would be in the wall', instead: 'a wider half beam, or more overhang', at: perimeter.width!.at });
        return undefined;
    }
    return { kind: 'half-beam', perimeter, width, bottomWidth: bottomOf(width, section), section, reach: summed([width, 1], [section.sideThickness, 1])! };
}

/** A timber along the wall is ripped to its width, or stands there whole: it is no wider than the timber that it is cut from. */
function halfTimber(perimeter: Perimeter, width: Derived, section: WholeSection, { show }: JobSettings, troubles: Trouble[]): Edging | undefined {
    const has = section.outerWidth.ticks, wants = width.ticks + (perimeter.scribe?.value ?? 0), size = (ticks: Ticks): string => printLength(ticks, show.value);
    if (wants > has) {
        troubles.push({
            kind: 'not-supported', what: `a timber of ${size(width.ticks)} along a wall${wants > width.ticks ? ` with ${size(wants - width.ticks)} on it to be scribed` : ''}`,
            because: `it is cut from one of ${size(has)}`, instead: `at most ${size(has - wants + width.ticks)}`, at: perimeter.width!.at,
        });
        return undefined;
    }
    return { kind: 'half-beam', perimeter, width, bottomWidth: width, section, reach: width };
}

/** Under its side the bottom goes on past its face by what it stands out; let in, past its back by that. It has no play. */
function bottomOf(width: Derived, { sideThickness, outerWidth, bottomWidth, profile: { bottom, sides } }: WholeSection): Derived {
    const rabbet = sides?.rabbet?.value;
    switch (bottom?.place.value) {
        case 'under-sides': {
            const over = (bottomWidth.ticks - outerWidth.ticks) / 2, overhang = bottom.overhang ? fromGiven('overhang', bottom.overhang)! : undefined;
            return summed([width, 1], [sideThickness, 1], [overhang ?? { ticks: Math.floor(over), tolerance: [], why: { terms: [term('overhang', 1, Math.floor(over))] } }, 1])!;
        }
        case 'in-rabbets': return rabbet ? summed([width, 1], [fromWords('rabbet', rabbet.width, rabbet.widthAt), 1])! : width;
        default: return width;
    }
}

/** The band hangs by its lower edge, which stands below the undersides of the beams by what the job says. */
export function hung({ perimeter, reach, height }: BandBoard, depth: Derived, troubles: Trouble[]): Omit<Band, 'splices'> {
    const lowerEdge = summed([depth, 1], [fromGiven('below the beams', perimeter.belowBeams), 1])!;
    const saidBy = perimeter.rip ?? perimeter.stock ?? perimeter;
    if (height.ticks > lowerEdge.ticks) troubles.push({ kind: 'band-too-high', height: height.ticks, room: lowerEdge.ticks, at: saidBy.at });
    return { kind: 'band', perimeter, thickness: reach, height, lowerEdge };
}
