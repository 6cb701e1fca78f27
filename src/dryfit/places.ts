import type { Ceiling } from '../ceiling/model.ts';
import { roundDown } from '../quantity/round.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { idOf } from '../takeoff/ids.ts';
import type { TakeOff } from '../takeoff/model.ts';
import { frameOf, type Frame } from './frame.ts';
import { bandPlaces, trimPlaces } from './places-of-coffers.ts';
import { linePlaces } from './places-of-lines.ts';
import type { Place, Spot } from './place.ts';

export interface Plan { readonly ceiling: Ceiling; readonly frame: Frame; readonly places: readonly Place[] }

/**
 * Where every piece belongs, and the form it has there, worked out from the layout's lines, coffers and sections and from
 * nothing that the take-off does. Along a line the layout does not say where its spacers stand: that is looked up in the
 * list, and `spacers.ts` judges it.
 */
export function planOf(ceiling: Ceiling, takeOff: TakeOff): Plan {
    const frame = frameOf(ceiling);
    const step = ceiling.room.job.cutTo.value;
    const spots = [...ceiling.lines.flatMap(line => linePlaces(line, frame, takeOff, step)), ...bandPlaces(ceiling), ...trimPlaces(ceiling, frame)];
    return { ceiling, frame, places: spots.flatMap(spot => placed(spot, ceiling.room.name, step)) };
}

/** Cut lengths are whole steps of the tape, never more than the place; what that leaves open is planned. A spacer's length stands upright. */
function placed({ part, named, seat, form, press = 0, give = 0 }: Spot, room: string, step: Ticks): Place[] {
    const upright = part === 'spacer';
    const length = (upright ? form.high : form.along) + press;
    if (!(length > 0)) return [];
    const cut = roundDown(length, step);
    return [{
        id: idOf(room, part, named), part, seat, give: Math.max(0, give),
        form: { ...form, off: form.off ?? [0, 0], along: upright ? form.along : cut, high: upright ? cut : form.high },
        rounded: upright ? 0 : (cut - length) / 2, pressed: press / 2,
    }];
}
