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
    causes.push(...miters(piece, { form, seat }, is.off), ...rabbets(piece, form.rabbet));
    return causes.length > 0 ? causes : face(piece, is, step);
}

/** Which ends the saw miters, at what angle, and which of them it is. */
function miters(piece: Piece, { form, seat }: Pick<Place, 'form' | 'seat'>, off: readonly [Ticks, Ticks]): Cause[] {
    const [first, last] = off, [wantFirst, wantLast] = form.off;
    const near = (a: Ticks, b: Ticks): boolean => Math.abs(a - b) <= NEAR;
    const single = (first === 0) !== (last === 0);
    if (single && near(first, wantLast) && near(last, wantFirst)) return [{ what: 'hand', is: piece.hand }];
    if (single && piece.hand === null && rabbetOf(piece)) return [{ what: 'hand', is: null }];
    const ends = endsAsHung(piece, seat);
    const degrees = (take: Ticks): number => Math.atan2(take, form.across) * 180 / Math.PI;
    return ([['first', first, wantFirst, ends[0]], ['last', last, wantLast, ends[1]]] as const).flatMap(([end, is, wanted, cut]): Cause[] =>
        near(is, wanted) ? [] : [{ what: 'miter', end, is: cut.cut === 'miter' ? cut.degrees : 0, wanted: degrees(wanted) }]);
}

function rabbets(piece: Piece, wanted: Place['form']['rabbet']): Cause[] {
    const is = rabbetOf(piece);
    if (!is || !wanted || is.edge !== wanted.edge) return is || wanted ? [{ what: 'rabbet' }] : [];
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
