import { crowdedSpacers, mostOfSpacer } from '../../survey/spacers.ts';
import { rowOf, type Cell } from '../../text/csv.ts';
import type { CsvText } from '../../text/fit.ts';
import { decimal, unitOf } from '../csv.ts';
import type { House, RoomPieces } from '../house.ts';
import { csvStanding } from '../standing.ts';
import type { RoomSurvey } from './content.ts';

const HEADER = ['room', 'piece', 'beam', 'unit', 'what', 'figure', 'at', 'from', 'to'] as const;
type Row = Partial<Record<typeof HEADER[number], Cell>>;

/**
 * A row for each figure of a side: its least and greatest gap, what trim and blocking lap, every stretch that is scribed, shimmed or not known; and one
 * for each spacer that is cut shorter. Places along the piece count from its west or north end.
 */
export function csvSurvey(houses: readonly House[], surveyOf: (room: RoomPieces) => RoomSurvey | undefined): CsvText {
    return csvStanding(HEADER, houses.flatMap(({ job, rooms }) => rooms.map(room => {
        const show = job.show.value, surveyed = surveyOf(room)?.surveyed, length = (ticks: number): number => decimal(Math.round(ticks), show);
        const sides = surveyed?.sides.flatMap(({ under: { piece }, gap, trimLap, blockingLap, scribes, shims, unknown }) => {
            const spots = [['gap-least', gap?.least], ['gap-most', gap?.most], ['trim-laps', trimLap], ['blocking-laps', blockingLap]] as const;
            const stretches = [...scribes.map(each => ['scribe', each] as const), ...shims.map(each => ['shim', each] as const)];
            const rows: Row[] = [
                ...spots.flatMap(([what, spot]) => (spot ? [{ what, figure: length(spot.ticks), at: length(spot.along) }] : [])),
                ...stretches.map(([what, { from, to, deepest }]) =>
                    ({ what, figure: length(deepest.ticks), at: length(deepest.along), from: length(from), to: length(to) })),
                ...unknown.map(({ from, to }) => ({ what: 'unknown', from: length(from), to: length(to) })),
            ];
            return rows.map(row => ({ piece: piece.id, beam: piece.line ?? piece.on, ...row }));
        }) ?? [];
        const spacers = crowdedSpacers(surveyed?.spacers ?? []).map((spacer): Row =>
            ({ piece: spacer.piece.id, beam: spacer.piece.line, what: 'spacer-at-most', figure: length(mostOfSpacer(spacer, job.cutTo.value)) }));
        return { standing: room.standing, rows: [...sides, ...spacers].map(row => rowOf(HEADER, { room: room.room.name, unit: unitOf(show), ...row })) };
    })));
}
