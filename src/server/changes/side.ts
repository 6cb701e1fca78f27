import { URI, UriUtils } from 'langium';
import type { HouseThere } from '../../changes/model.ts';
import { compareFindings, type Finding } from '../../findings/finding.ts';
import type { JobSettings } from '../../job/model.ts';
import { keyOfJob, type FilesThere, type RoomThere, type RoomsOnPages } from '../../pages/rooms.ts';
import { takeOffOf } from '../../pipeline/inspect.ts';
import { priceInSteps } from '../../pipeline/price.ts';
import { grouped } from '../../plain/groups.ts';
import { inTurns } from '../../plain/steps.ts';
import type { RoomPieces } from '../../report/house.ts';

/** Lets whatever waits be answered; throws where the comparison is to be left. */
export type Next = () => Promise<void>;

/** A house in one state, before anything is worked out: its rooms, laid out or not. */
export interface HouseRead { readonly job: JobSettings; readonly rooms: readonly RoomThere[] }

/** All houses of some rooms. */
export function byHouse(rooms: readonly RoomThere[]): HouseRead[] {
    return [...grouped(rooms, ({ layout }) => keyOfJob(layout.room.job))].map(([, own]) => ({ job: own[0]!.layout.room.job, rooms: own }));
}

/** Addresses of the files that a house is made from, and of all that lie in the folder of its job or below. */
export function filesOf({ job, rooms }: HouseRead, files: FilesThere): string[] {
    const folder = job.at && `${UriUtils.dirname(URI.parse(job.at.uri)).toString()}/`;
    const own = rooms.map(({ file }) => file.uri);
    const below = folder === undefined ? [] : files.all().filter(uri => uri.startsWith(folder));
    return [...new Set([...own, ...own.flatMap(uri => files.reached(uri)), ...below])].sort();
}

/** A house with its pieces and its price, a room after the other. `more`: what was found in its rooms by looking closely. */
export async function houseThere({ job, rooms }: HouseRead, from: RoomsOnPages, more: readonly Finding[], next: Next): Promise<HouseThere> {
    const there: HouseThere['rooms'][number][] = [];
    for (const { layout: { room, ceiling } } of rooms) {
        there.push({ room, ...ceiling && { takeOff: takeOffOf(ceiling) } });
        await next();
    }
    const priced = await inTurns(priceInSteps(rooms.map(({ layout }) => layout.room), job), next);
    await next();
    const found = new Set([...new Set(rooms.map(({ file }) => file.uri))].flatMap(uri => from.findingsBehind(uri)));
    return { job, rooms: there, priced, findings: [...found, ...more].sort(compareFindings) };
}

/** The same rooms with how sound what is made from them is. */
export function toldRooms({ rooms }: HouseRead, there: HouseThere, from: RoomsOnPages): RoomPieces[] {
    return there.rooms.map((one, i) => ({ ...one, standing: from.standing(one.room, rooms[i]!.file.uri) }));
}
