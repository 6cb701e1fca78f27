import type { Addition, Estimate, LaborBasis, LaborLine, SupplyLine } from '../../estimate/model.ts';
import { printMoney } from '../../quantity/money.ts';
import { printLength, type Show } from '../../quantity/print-length.ts';
import { Rational } from '../../quantity/rational.ts';
import { TICKS_PER_FOOT, TICKS_PER_MM, type Ticks } from '../../quantity/ticks.ts';
import { unitOf } from '../../plain/words.ts';

/** Hours to a tenth, as a crew speaks of them: `31.4 h`. */
export function hoursText(minutes: Rational): string {
    return `${minutes.div(60).valueOf().toFixed(1)} h`;
}

/** Minutes to a tenth: `12 min`. */
export function minutesText(minutes: Rational): string {
    return `${Number(minutes.valueOf().toFixed(1))} min`;
}

/** Days to a tenth; they are a crew's, at its own hours a day. */
export function daysText(days: Rational): string {
    const tenths = days.valueOf().toFixed(1);
    return tenths === '1.0' ? '1.0 day' : `${tenths} days`;
}

/** `12 %`, `7.25 %`. */
export function percentText(share: Rational): string {
    return `${Number(share.mul(100).valueOf().toFixed(4))} %`;
}

/** Why a line of labor takes as long as it does: `182.3 ft x 3 min per ft`. */
export function basisText(basis: LaborBasis, show: Show): string {
    switch (basis.by) {
        case 'length': return show === 'millimeters'
            ? `${figure(new Rational(basis.ticks).div(1000 * TICKS_PER_MM), 1)} m x ${figure(basis.perTick.mul(1000 * TICKS_PER_MM))} min per m`
            : `${figure(new Rational(basis.ticks).div(TICKS_PER_FOOT), 1)} ft x ${figure(basis.perTick.mul(TICKS_PER_FOOT))} min per ft`;
        case 'count': return `${basis.count} ${unitOf(basis.count, basis.unit)} x ${figure(basis.each)} min`;
        case 'share': return `${percentText(basis.share)} of ${hoursText(basis.minutes)}, ${basis.ofWhat}`;
    }
}

/** `12 % of $4,210.00, what it costs`; nothing where the sum is simply said. */
export function shareText({ share }: Addition, { currency }: Estimate): string {
    return share ? `${percentText(share.share)} of ${printMoney(share.of, currency)}, ${share.ofWhat}` : '';
}

/** What one of it costs; of what is counted in milliliters a liter, as it is bought: a milliliter costs less than any money has. */
export function eachText({ each, unit }: Pick<SupplyLine, 'each' | 'unit'>, currency: string): string {
    return unit === 'mL' ? `${printMoney(each.mul(1000), currency)} per L` : printMoney(each, currency);
}

/** How long boards are, and how wide where that is less than their stock: `6'`, `6' x 2 1/2"`. */
export function sizeText({ length, width }: { readonly length: Ticks; readonly width?: Ticks | undefined }, show: Show): string {
    return [length, ...width === undefined ? [] : [width]].map(ticks => printLength(ticks, show)).join(' x ');
}

/** Whose the boards on hand are that a price counts on. Empty where it counts on none. */
export function onHandText({ materials }: Pick<Estimate, 'materials'>): string {
    return materials.some(({ onHand }) => onHand)
        ? 'Boards on hand are counted as this house\'s own. Another house that counts on them too is priced in one run with it: each board is spent once then.' : '';
}

/** What a line belongs to: its room, or the whole job. */
export function placeText({ room }: LaborLine): string {
    return room ?? 'all rooms';
}

/** `$2,546.02 less`, `the same`. */
export function differenceText(difference: Rational, currency: string): string {
    if (difference.equals(0)) return 'the same';
    return `${printMoney(difference.abs(), currency)} ${difference.s > 0n ? 'more' : 'less'}`;
}

function figure(value: Rational, digits = 2): string {
    return String(Number(value.valueOf().toFixed(digits)));
}
