import type { Ticks } from '../../quantity/ticks.ts';
import type { Divided, Figures, Suggestions } from '../../suggest/model.ts';
import type { JsonText } from '../../text/fit.ts';
import { printJson } from '../../text/json.ts';
import { lengthJson, moneyJson, type LengthJson } from '../amounts-json.ts';
import { roomHead } from '../house-json.ts';
import type { House, RoomPieces } from '../house.ts';
import type { Files } from '../look.ts';
import { standingJson } from '../standing-json.ts';
import { standingOfRooms } from '../standing.ts';
import type { DividedJson, GridFiguresJson, SuggestedRoomJson, SuggestionsJson } from './shape.ts';
import { roundedToTape } from './words.ts';

export function jsonSuggestions(houses: readonly House[], of: (room: RoomPieces) => Suggestions, files: Files): JsonText {
    return printJson<SuggestionsJson>({
        version: 1, kind: 'cofferwright.suggest', standing: standingJson(standingOfRooms(houses.flatMap(({ rooms }) => rooms))),
        rooms: houses.flatMap(({ job, rooms }) => rooms.map((room): SuggestedRoomJson => {
            const { nothing, tried, notTried, present, offers } = of(room);
            const length = (ticks: Ticks): LengthJson => lengthJson(ticks, roundedToTape(ticks, job), job.show.value);
            const divided = ({ how, by }: Divided): DividedJson => ({ how, by: length(by) });
            const { grids, clear, byGeometry, lookedAt, isCutShort, least, most, inTheWay, found } = tried;
            return {
                ...roomHead(room, room.takeOff !== undefined, job, files), nothing: nothing ?? null, notTried,
                tried: {
                    grids, clear: byGeometry ? clear : null, lookedAt, cutShort: isCutShort, inTheWay, found,
                    coffers: { least: length(least), most: length(most) },
                },
                present: present ? figuresJson(present, length) : null,
                offers: offers.map(({ figures, says, across, down, warnings }, i) => ({
                    rank: i + 1, ...figuresJson(figures, length), write: says, linesNorth: divided(across), linesEast: divided(down),
                    warnings: warnings.map(({ rule, message }) => ({ rule, message })),
                })),
            };
        })),
    });
}

function figuresJson(figures: Figures, size: (ticks: Ticks) => LengthJson): GridFiguresJson {
    const { across, down, through, coffers, width, length, unequal, offSquare, errors, conflicts, joists, closing } = figures;
    const { boards, costs, unpriced, minutes, untimed } = figures;
    const share = (of: number): number => Math.round(of * 10_000) / 10_000;
    return {
        coffersNorth: across, coffersEast: down, through, coffers,
        eastWest: { least: size(width.least), most: size(width.most) }, northSouth: { least: size(length.least), most: size(length.most) },
        unequal: share(unequal), offSquare: share(offSquare), errors, conflicts, joists: joists ?? null, closingPieces: closing ?? null,
        boards, costs: costs.map(moneyJson), allPriced: !unpriced,
        hours: minutes ? Math.round(minutes.div(60).valueOf() * 1000) / 1000 : null, allTimed: !untimed,
    };
}
