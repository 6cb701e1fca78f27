import type { JobSettings } from '../../job/model.ts';
import { TICKS_PER_INCH, TICKS_PER_MM, type Ticks } from '../../quantity/ticks.ts';
import { roundTo } from '../../quantity/round.ts';
import { crowdedSpacers, mostOfSpacer } from '../../survey/spacers.ts';
import type { Deep, Spot, SurveyedSide } from '../../survey/survey.ts';
import type { JsonText } from '../../text/fit.ts';
import { printJson } from '../../text/json.ts';
import { lengthJson, type LengthJson } from '../amounts-json.ts';
import { roomHead } from '../house-json.ts';
import type { House, RoomPieces } from '../house.ts';
import type { Files } from '../look.ts';
import { sourceJson } from '../place-json.ts';
import { standingJson } from '../standing-json.ts';
import { standingOfRooms } from '../standing.ts';
import type { RoomSurvey } from './content.ts';
import type { SurveyJson, SurveyRoomJson, SurveySideJson, SurveySpotJson, SurveyStretchJson } from './shape.ts';

export function jsonSurvey(houses: readonly House[], surveyOf: (room: RoomPieces) => RoomSurvey | undefined, files: Files): JsonText {
    return printJson<SurveyJson>({
        version: 1, kind: 'cofferwright.survey', standing: standingJson(standingOfRooms(houses.flatMap(({ rooms }) => rooms))),
        rooms: houses.flatMap(({ job, rooms }) => rooms.map((room): SurveyRoomJson => {
            const survey = surveyOf(room), length = lengthIn(job), surveyed = survey?.surveyed, chosen = surveyed?.chosen;
            return {
                ...roomHead(room, room.takeOff !== undefined, job, files),
                survey: survey && surveyed ? {
                    method: surveyed.said.method?.value ?? null, source: sourceJson(surveyed.said.at, files),
                    readings: surveyed.surface.readings.map(({ x, y, up }) => ({ east: length(x), south: length(y), up: length(up) })),
                    plane: chosen ? {
                        at: length(chosen.plane.at), risesEast: chosen.plane.east, risesSouth: chosen.plane.south,
                        scribed: chosen.scribed, deepest: length(chosen.deepest), proved: chosen.proved,
                    } : null,
                    planes: survey.planes.map(({ slope, chosen: { scribed, deepest, proved } }) => ({ slope, scribed, deepest: length(deepest), proved })),
                    outOfLevel: survey.level.map(({ wall, fixture, over, by }) => ({
                        wall: wall.name, fixture: fixture?.name ?? null, over: length(over), by: length(by),
                    })),
                    leftOut: survey.leftOut,
                } : null,
                sides: surveyed?.sides.map(side => sideJson(side, length)) ?? [],
                spacers: crowdedSpacers(surveyed?.spacers ?? []).map(spacer => ({
                    id: spacer.piece.id, height: length(spacer.height), atMost: length(mostOfSpacer(spacer, job.cutTo.value)),
                })),
            };
        })),
    });
}

type Length = (ticks: Ticks) => LengthJson;

/** Exact, and as a steel rule reads it. */
function lengthIn({ show: { value: show } }: JobSettings): Length {
    return ticks => lengthJson(Math.round(ticks), roundTo(Math.round(ticks), show === 'millimeters' ? TICKS_PER_MM / 2 : TICKS_PER_INCH / 64), show);
}

function sideJson({ under, gap, trimLap, blockingLap, scribes, shims, profile, unknown }: SurveyedSide, length: Length): SurveySideJson {
    const { piece, heldDown, trim, blocking } = under;
    const spot = ({ ticks, along }: Spot): SurveySpotJson => ({ along: length(along), is: length(ticks) });
    const stretch = ({ from, to, deepest }: Deep): SurveyStretchJson => ({ from: length(from), to: length(to), deepest: spot(deepest) });
    return {
        id: piece.id, line: piece.line, on: piece.on, length: length(under.length), heldDown: length(heldDown),
        gap: gap ? { least: spot(gap.least), most: spot(gap.most) } : null,
        trim: trim !== undefined && trimLap ? { height: length(trim), laps: spot(trimLap) } : null,
        blocking: blocking !== undefined && blockingLap ? { thickness: length(blocking), laps: spot(blockingLap) } : null,
        scribes: scribes.map(stretch), shims: shims.map(stretch),
        profile: profile.map(({ along, gap: is }) => ({ along: length(along), is: length(is) })),
        unknown: unknown.map(({ from, to }) => ({ from: length(from), to: length(to) })),
    };
}
