/** A moisture content as a meter shows it: to a tenth of a percent. */
export function percentOf(value: number): string {
    return `${Number(value.toFixed(1))}%`;
}
