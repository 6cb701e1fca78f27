import { degreesOf } from '../takeoff/ends.ts';
import type { Piece } from '../takeoff/model.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Cause } from './model.ts';
import { NEAR } from './meetings.ts';
import type { Place } from './place.ts';
import { endsAsHung, formOf, rabbetOf } from './stand.ts';

/** Where a line of the cut list differs from what its place wants: why a piece does not fit, once it is seen that it does not. */
export function causesOf(piece: Piece, { form, seat, part }: Place, step: Ticks): Cause[] {
    const causes: Cause[] = [];
    const is = formOf(piece, seat);
    const compare = (what: Extract<Cause, { wanted: Ticks; what: 'length' | 'width' | 'thickness' | 'rabbet width' | 'rabbet height' }>['what'], a: Ticks, b: Ticks): void => {
        if (a !== b) causes.push({ what, is: a, wanted: b });
    };
    if (part === 'spacer') {
        compare('length', is.high, form.high);
        compare('width', is.across, form.across);
        compare('thickness', is.along, form.along);
        return causes;
    }
    const lies = part === 'blocking' || part === 'bottom';
    compare('length', is.along, form.along);
    compare('width', lies ? is.across : is.high, lies ? form.across : form.high);
    compare('thickness', lies ? is.high : is.across, lies ? form.high : form.across);
    causes.push(...miters(piece, is, { form, seat }), ...rabbets(piece, form.rabbet));
    return causes.length > 0 ? causes : face(piece, is, step);
}

/** A line that leaves it open which end is mitered, though the piece cannot be turned round. */
export function lacksHand(piece: Piece): boolean {
    return piece.hand === null && rabbetOf(piece) !== undefined && piece.ends.filter(end => end.cut === 'miter').length === 1;
}

/** Which ends the saw miters, at what angle, and which of them it is. */
function miters(piece: Piece, as: Place['form'], { form, seat }: Pick<Place, 'form' | 'seat'>): Cause[] {
    if (lacksHand(piece)) return [{ what: 'hand', is: null }];
    const leaning = (take: Ticks): number => Math.atan2(take, form.across) * 180 / Math.PI;
    // a coped end is mitered at the saw, and what stands is what the cope leaves of that
    const is = endsAsHung(piece, seat).map((end, i) => end.cut === 'coped' ? leaning(as.off[i]!) : degreesOf(end)) as [number, number];
    const wanted = form.off.map(leaning) as [number, number];
    const near = (a: number, b: number): boolean => Math.abs(a - b) < 0.01;
    if (near(is[0], wanted[0]) && near(is[1], wanted[1])) return [];
    if (near(is[0], wanted[1]) && near(is[1], wanted[0])) return [{ what: 'hand', is: piece.hand }];
    return (['first', 'last'] as const).flatMap((end, i): Cause[] => near(is[i]!, wanted[i]!) ? [] : [{ what: 'miter', end, is: is[i]!, wanted: wanted[i]! }]);
}

function rabbets(piece: Piece, wanted: Place['form']['rabbet']): Cause[] {
    const is = rabbetOf(piece);
    if (!is || !wanted || is.edge !== wanted.edge || is.face !== wanted.face) return is || wanted ? [{ what: 'rabbet' }] : [];
    return [
        ...is.width === wanted.width ? [] : [{ what: 'rabbet width' as const, is: is.width, wanted: wanted.width }],
        ...is.height === wanted.height ? [] : [{ what: 'rabbet height' as const, is: is.height, wanted: wanted.height }],
    ];
}

/** Face and back are each rounded to the tape; beyond that the angles must account for their difference. */
function face({ cutFace }: Piece, is: { readonly along: Ticks; readonly off: readonly [Ticks, Ticks] }, step: Ticks): Cause[] {
    const left = is.along - is.off[0] - is.off[1];
    return Math.abs(cutFace - left) <= step + NEAR ? [] : [{ what: 'face', is: cutFace, wanted: left }];
}
