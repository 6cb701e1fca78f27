import type { Layout } from '../../ceiling/model.ts';
import { boardsAtBench, type BoardAtBench } from '../../measure/bench.ts';
import { driftOf, type Drift } from '../../measure/drift.ts';
import type { TakeOff } from '../../takeoff/model.ts';

/** What was measured at the bench for a room: boards beside their stock, and how cutters go. */
export interface RoomBench { readonly boards: readonly BoardAtBench[]; readonly drifts: readonly Drift[] }

export function benchContent(layout: Pick<Layout, 'room'>, { pieces, leftOut }: TakeOff): RoomBench {
    return { boards: boardsAtBench(layout.room, [...pieces, ...leftOut], layout.room.job), drifts: (layout.room.gauges ?? []).map(driftOf) };
}
