import type { LaidJoists } from '../../ceiling/joists.ts';
import type { Ceiling } from '../../ceiling/model.ts';
import { PERMANENT_LOAD, screwShank, screwWithdrawal, THREADED_SHARE } from '../../data/fasteners.ts';
import { JOIST_GRAVITY } from '../../data/species.ts';
import { TICKS_PER_FOOT, TICKS_PER_INCH, type Ticks } from '../../quantity/ticks.ts';
import { byBeam, holdingOf, type Held } from '../../takeoff/holding.ts';
import type { TakeOff } from '../../takeoff/model.ts';
import { threadOf } from '../../takeoff/thread.ts';
import { hangingOn } from '../../takeoff/weight.ts';

/** What holds the beams of a room. */
export interface RoomHolding { readonly joists: LaidJoists; readonly beams: readonly BeamHolding[] }

export interface BeamHolding {
    /** Its line, or the wall of a half beam. */
    readonly of: string;
    readonly isLine: boolean;
    readonly screw: { readonly gauge: number; readonly length: Ticks } | null;
    readonly pieces: readonly Held[];
    /** Screws into joists; null where the profile says none. */
    readonly screws: number | null;
    /** Screws into backing, of the pieces that find no joist; null where the profile says none. */
    readonly intoBacking: number | null;
    /** Of a screw in the joist; null where it is not known, and where none goes into a joist. */
    readonly thread: Ticks | null;
    /** What hangs there, at 12 % moisture content. Null where a stock's weight is not known; `unknown` names these. */
    readonly pounds: number | null;
    readonly poundsPerFoot: number | null;
    readonly poundsPerScrew: number | null;
    readonly unknown: readonly string[];
    readonly withdrawal: Withdrawal | null;
}
/** Of one screw, in pounds: the reference value for each inch of thread in the wood, and times that thread and the factor for a load that stays. */
interface Withdrawal { readonly perInch: number; readonly thread: Ticks; readonly ofScrew: number }

/** Undefined where nobody knows where the joists are. */
export function holdingContent(ceiling: Ceiling, { pieces }: TakeOff): RoomHolding | undefined {
    const holding = holdingOf(ceiling, pieces);
    if (!holding) return undefined;
    const wood = ceiling.room.joists?.of?.value;
    return {
        joists: holding.joists,
        beams: [...byBeam(holding)].map(([of, held]): BeamHolding => {
            const line = ceiling.lines.find(({ name }) => name === of), own = ceiling.around[of], section = line?.section ?? (own?.kind === 'half-beam' ? own.section : undefined);
            const screw = section?.profile.blocking?.screws?.value, sumOf = (count: 'screws' | 'intoBacking'): number => held.reduce((sum, one) => sum + (one[count] ?? 0), 0);
            const screws = screw ? sumOf('screws') : null, intoBacking = screw ? sumOf('intoBacking') : null;
            const hanging = hangingOn(of, ceiling, pieces), pounds = hanging.unknown.length === 0 ? hanging.pounds : null;
            const long = (line ? line.end - line.start : ceiling.walls.find(({ name }) => name === of)?.length ?? 0) / TICKS_PER_FOOT;
            const thread = section && screws !== 0 ? threadOf(section, ceiling)?.inWood ?? null : null;
            return {
                of, isLine: line !== undefined, screw: screw ?? null, pieces: held, screws, intoBacking, thread, pounds, unknown: hanging.unknown,
                poundsPerFoot: pounds !== null && long > 0 ? pounds / long : null, poundsPerScrew: pounds !== null && screws ? pounds / screws : null,
                withdrawal: screw && thread !== null && thread > 0 && wood !== undefined ? withdrawalOf(screw, thread, wood) : null,
            };
        }),
    };
}

/** The thread of a wood screw is two thirds of its length: more of it in the joist does not count. */
function withdrawalOf({ gauge, length }: NonNullable<BeamHolding['screw']>, inWood: Ticks, wood: string): Withdrawal | null {
    const shank = screwShank(gauge), gravity = JOIST_GRAVITY[wood];
    if (!shank || !gravity) return null;
    const thread = Math.min(inWood, Math.round(length * THREADED_SHARE)), perInch = screwWithdrawal(gravity.gravity, shank.ticks);
    return { perInch, thread, ofScrew: perInch * thread / TICKS_PER_INCH * PERMANENT_LOAD };
}
