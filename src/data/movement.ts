import type { Published } from './published.ts';

/** How much wider wood gets for each percent of moisture content, as a share of its width at 10 %. */
interface Movement extends Published {
    /** Quartersawn boards: across the rings. */
    readonly radial: number;
    /** Flatsawn boards: along the rings. */
    readonly tangential: number;
}

const TABLE_13_5 = 'USDA FPL, Wood Handbook FPL-GTR-190 (2010), Table 13-5';
const read = (radial: number, tangential: number): Movement => ({ radial, tangential, source: TABLE_13_5, mark: 'read' });
const recalled = (radial: number, tangential: number): Movement => ({ radial, tangential, source: TABLE_13_5, mark: 'from memory' });

/** The oaks are the handbook's commercial groups. MDF moves otherwise and has no row. */
export const MOVEMENT: Readonly<Record<string, Movement>> = {
    'yellow-poplar': recalled(0.00158, 0.00289),
    'red-alder': read(0.00151, 0.00256),
    'basswood': read(0.00230, 0.00330),
    'black-cherry': read(0.00126, 0.00248),
    'red-maple': read(0.00137, 0.00289),
    'sugar-maple': read(0.00165, 0.00353),
    'red-oak': read(0.00158, 0.00369),
    'white-oak': read(0.00180, 0.00365),
    'black-walnut': read(0.00190, 0.00274),
    'white-ash': read(0.00169, 0.00274),
    'eastern-white-pine': recalled(0.00071, 0.00212),
    'ponderosa-pine': recalled(0.00133, 0.00216),
    'sugar-pine': recalled(0.00099, 0.00194),
    'loblolly-pine': recalled(0.00165, 0.00259),
    'sitka-spruce': recalled(0.00148, 0.00263),
    'douglas-fir': recalled(0.00165, 0.00267),
    'western-hemlock': recalled(0.00144, 0.00274),
    'white-fir': recalled(0.00112, 0.00245),
    'western-redcedar': recalled(0.00111, 0.00234),
};

/** Shrinkage from green to ovendry, percent. */
interface Shrinkage extends Published { readonly radial: number; readonly tangential: number }

const TABLE_4_3 = 'USDA FPL, Wood Handbook FPL-GTR-190 (2010), Table 4-3';
const shrinkage = (radial: number, tangential: number, mark: Published['mark'] = 'read'): Shrinkage => ({ radial, tangential, source: TABLE_4_3, mark });

/** `red-oak` is northern red oak here, so its row does not give the coefficient of the commercial group above. */
export const SHRINKAGE: Readonly<Record<string, Shrinkage>> = {
    'yellow-poplar': shrinkage(4.6, 8.2),
    'red-alder': shrinkage(4.4, 7.3),
    'basswood': shrinkage(6.6, 9.3),
    'black-cherry': shrinkage(3.7, 7.1),
    'sugar-maple': shrinkage(4.8, 9.9),
    'red-oak': shrinkage(4.0, 8.6),
    'white-oak': shrinkage(5.6, 10.5),
    'black-walnut': shrinkage(5.5, 7.8),
    'white-ash': shrinkage(4.9, 7.8),
    'eastern-white-pine': shrinkage(2.1, 6.1, 'from memory'),
    'ponderosa-pine': shrinkage(3.9, 6.2, 'from memory'),
    'sugar-pine': shrinkage(2.9, 5.6, 'from memory'),
    'loblolly-pine': shrinkage(4.8, 7.4),
    'sitka-spruce': shrinkage(4.3, 7.5, 'from memory'),
    'douglas-fir': shrinkage(4.8, 7.6),
    'western-hemlock': shrinkage(4.2, 7.8),
    'white-fir': shrinkage(3.3, 7.0),
    'western-redcedar': shrinkage(2.4, 5.0),
};

/**
 * Change of a width between two moisture contents (percent): dD = D C (M2 - M1), in the unit of the width.
 * Wood Handbook, Eq. 13-2; good from 6 to 14 %, with an error of about 5 % at the ends.
 */
export function movementOf(width: number, coefficient: number, fromPercent: number, toPercent: number): number {
    return width * coefficient * (toPercent - fromPercent);
}
