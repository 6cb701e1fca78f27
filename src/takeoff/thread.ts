import type { Ceiling, Section } from '../ceiling/model.ts';
import type { Ticks } from '../quantity/ticks.ts';

/** What a screw through the blocking goes through before it is in a joist, and what is left of it there: less than nothing where it does not reach. */
interface Thread {
    readonly through: { readonly blocking: Ticks; readonly back: Ticks; readonly covering: Ticks; readonly total: Ticks };
    readonly inWood: Ticks;
}

/** Undefined where the screws, the blocking's thickness, the covering's or the panel's are not known. */
export function threadOf({ profile, blockingThickness }: Pick<Section, 'profile' | 'blockingThickness'>, { room: { covering } }: Pick<Ceiling, 'room'>): Thread | undefined {
    const screws = profile.blocking?.screws?.value, blocking = blockingThickness?.ticks, cover = covering?.thickness?.value;
    const back = profile.back ? profile.back.thickness?.value.ticks : 0;
    if (!screws || blocking === undefined || cover === undefined || back === undefined) return undefined;
    const total = blocking + back + cover;
    return { through: { blocking, back, covering: cover, total }, inWood: screws.length - total };
}
