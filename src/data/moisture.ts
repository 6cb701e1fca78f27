import type { Published } from './published.ts';

/** Wood that nothing is said of takes up the moisture of the air around it: this equation tells how much. */
export const EQUILIBRIUM: Published = { source: 'USDA FPL, Wood Handbook FPL-GTR-282 (2021), Eq. 4-5', mark: 'read' };

/**
 * Equilibrium moisture content of wood in percent, by temperature in degrees Celsius and relative humidity as a share of 1. Wood Handbook, Eq. 4-5 with its
 * coefficients for Celsius; within 0.06 of its Table 4-2.
 */
export function equilibrium(celsius: number, humidity: number): number {
    const t = celsius, weight = 349 + 1.29 * t + 0.0135 * t ** 2, k = 0.805 + 0.000736 * t - 0.00000273 * t ** 2;
    const k1 = 6.27 - 0.00938 * t - 0.000303 * t ** 2, k2 = 1.91 + 0.0407 * t - 0.000293 * t ** 2, kh = k * humidity;
    return 1800 / weight * (kh / (1 - kh) + (k1 * kh + 2 * k1 * k2 * kh ** 2) / (1 + k1 * kh + k1 * k2 * kh ** 2));
}

/** The relative humidity at which wood comes to so much moisture at that temperature: of what the equation gives, within a ten-thousandth. */
export function humidityFor(percent: number, celsius: number): number {
    let low = 0, high = 1;
    for (let i = 0; i < 40; i++) {
        const middle = (low + high) / 2;
        if (equilibrium(celsius, middle) < percent) low = middle;
        else high = middle;
    }
    return (low + high) / 2;
}

/** What fiberboard grows in length and width at most, as a share, from air of 50 % to air of 80 % relative humidity. */
export const FIBERBOARD_GROWS: Published & { readonly share: number } = { share: 0.0033, source: 'ANSI A208.2, linear expansion', mark: 'read second-hand' };
