import type { Published } from './published.ts';

/** Bending figures of clear wood at 12 % moisture content. */
interface Strength extends Published {
    /** Specific gravity: ovendry weight over the volume at 12 %. Not the one the NDS assigns for fasteners. */
    readonly gravity: number;
    /** Modulus of rupture, psi. */
    readonly rupture: number;
    /** Modulus of elasticity, 10^6 psi, from center-loaded beams of span to depth 14: 1.10 times it is free of shear. */
    readonly elasticity: number;
}

const TABLE_5_3B = 'USDA FPL, Wood Handbook FPL-GTR-282 (2021), Table 5-3b';
const strength = (gravity: number, rupture: number, elasticity: number): Strength =>
    ({ gravity, rupture, elasticity, source: TABLE_5_3B, mark: 'read' });

/** By the words of the language; `red-oak` is northern red oak, `douglas-fir` the coast type. MDF is no wood and has no row. */
export const STRENGTH: Readonly<Record<string, Strength>> = {
    'yellow-poplar': strength(0.42, 10_100, 1.58),
    'red-alder': strength(0.41, 9_800, 1.38),
    'basswood': strength(0.37, 8_700, 1.46),
    'black-cherry': strength(0.50, 12_300, 1.49),
    'red-maple': strength(0.54, 13_400, 1.64),
    'sugar-maple': strength(0.63, 15_800, 1.83),
    'red-oak': strength(0.63, 14_300, 1.82),
    'white-oak': strength(0.68, 15_200, 1.78),
    'black-walnut': strength(0.55, 14_600, 1.68),
    'white-ash': strength(0.60, 15_400, 1.74),
    'eastern-white-pine': strength(0.35, 8_600, 1.24),
    'ponderosa-pine': strength(0.40, 9_400, 1.29),
    'sugar-pine': strength(0.36, 8_200, 1.19),
    'loblolly-pine': strength(0.51, 12_800, 1.79),
    'sitka-spruce': strength(0.40, 10_200, 1.57),
    'douglas-fir': strength(0.48, 12_400, 1.95),
    'western-hemlock': strength(0.45, 11_300, 1.63),
    'white-fir': strength(0.39, 9_800, 1.50),
    'western-redcedar': strength(0.32, 7_500, 1.11),
};

/**
 * Specific gravity that the NDS assigns to framing lumber for connections, for its withdrawal and bearing equations only, by the words that are
 * stamped on it.
 */
const TABLE_12_3_3A = 'AWC NDS 2018, Table 12.3.3A';
const assigned = (gravity: number): Published & { readonly gravity: number } => ({ gravity, source: TABLE_12_3_3A, mark: 'read' });

export const JOIST_GRAVITY: Readonly<Record<string, Published & { readonly gravity: number }>> = {
    'douglas-fir-larch': assigned(0.50),
    'douglas-fir-larch-north': assigned(0.49),
    'eastern-softwoods': assigned(0.36),
    'hem-fir': assigned(0.43),
    'northern-pine': assigned(0.42),
    'ponderosa-pine': assigned(0.43),
    'redwood': assigned(0.37),
    'southern-pine': assigned(0.55),
    'spruce-pine-fir': assigned(0.42),
    'spruce-pine-fir-south': assigned(0.36),
    'western-cedars': assigned(0.36),
    'western-hemlock': assigned(0.47),
};

/**
 * Pounds a cubic foot at 12 % moisture content: 1000 G (1 + 12/100) kg a cubic meter, Wood Handbook FPL-GTR-282 (2021), ch. 4, with the specific gravity
 * of Table 5-3b. Of fiberboard 48, from memory. Undefined where no table has it.
 */
export function poundsPerCubicFoot(species: string): number | undefined {
    const strength = Object.hasOwn(STRENGTH, species) ? STRENGTH[species] : undefined;
    if (strength) return strength.gravity * 1.12 * WATER;
    return species === 'mdf' ? 48 : undefined;
}
/** Pounds a cubic foot. */
const WATER = 62.428;
