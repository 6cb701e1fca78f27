import { EQUILIBRIUM } from '../../data/moisture.ts';
import type { Moving } from '../../ceiling/moving.ts';
import { sizesOf } from '../../rules/support/words.ts';
import { printJson } from '../../text/json.ts';
import type { JsonText } from '../../text/fit.ts';
import { roomHead } from '../house-json.ts';
import type { House, RoomPieces } from '../house.ts';
import type { Files } from '../look.ts';
import { standingJson } from '../standing-json.ts';
import { standingOfRooms } from '../standing.ts';
import type { RoomSeasons } from './content.ts';
import type { SeasonJson, SeasonsJson, SmallJson } from './shape.ts';

export function jsonSeasons(houses: readonly House[], seasonsOf: (room: RoomPieces) => RoomSeasons | undefined, files: Files): JsonText {
    return printJson<SeasonsJson>({
        version: 1, kind: 'cofferwright.seasons', standing: standingJson(standingOfRooms(houses.flatMap(({ rooms }) => rooms))),
        rooms: houses.flatMap(({ job, rooms }) => rooms.map(room => {
            const seasons = seasonsOf(room), size = sizesOf(job);
            const small = (by: number): SmallJson => ({ ticks: Math.round(by * 10) / 10, text: size.fine(Math.round(by)) });
            const season = ({ driest, dampest }: Moving['corner']): SeasonJson => ({ driest: small(driest), dampest: small(dampest) });
            return {
                ...roomHead(room, room.takeOff !== undefined, job, files),
                moisture: seasons ? {
                    driest: rounded(seasons.year.driest), dampest: rounded(seasons.year.dampest), start: rounded(seasons.year.start),
                    said: seasons.year.said.goesUpAt !== undefined,
                    startAtMost: seasons.startAtMost === null ? null : rounded(seasons.startAtMost), source: EQUILIBRIUM.source,
                } : null,
                beams: seasons?.moving.map(({ lines, inside, bottom, play, butt, corner }) => ({
                    lines: lines.map(({ name }) => name), inside: inside.species?.value ?? null, bottom: bottom.species?.value ?? null,
                    play: play && { built: small(play.built), ...season(play) }, corner: season(corner),
                    butt: butt && { lines: butt.at, ...season(butt) },
                })) ?? [],
                unknown: seasons?.unknown ?? [],
            };
        })),
    });
}

function rounded(percent: number): number {
    return Math.round(percent * 100) / 100;
}
