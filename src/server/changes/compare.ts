import { URI, type LangiumDocument } from 'langium';
import { changesOf } from '../../changes/changes.ts';
import { pairHouses } from '../../changes/rooms.ts';
import type { Finding } from '../../findings/finding.ts';
import type { FileContent } from '../../job/file.ts';
import { statedFiles } from '../../language/stated-files.ts';
import type { Tables } from '../../language/workspace/tables.ts';
import type { ChangesFound } from '../../pages/changes/known.ts';
import { RoomsOnPages, type FilesThere, type RoomThere } from '../../pages/rooms.ts';
import { inTurns } from '../../plain/steps.ts';
import { behindWall, inspectClosely, stepsOf } from '../../pipeline/inspect-closely.ts';
import type { Commit } from '../messages.ts';
import { t } from '../../pages/shared/words.ts';
import type { OldWorkspace } from './old-workspace.ts';
import { filesOf, houseThere, byHouse, toldRooms, type HouseRead, type Next } from './side.ts';

/** A house as it is, all that is needed of it taken at one moment. */
export interface HouseNow {
    readonly house: HouseRead;
    readonly documents: readonly LangiumDocument[];
    /** What its files name. */
    readonly tables: Tables;
    readonly contents: ReadonlyMap<string, FileContent>;
    readonly rooms: RoomsOnPages;
}

interface Compared { readonly found: Omit<ChangesFound, 'against' | 'unread' | 'isBehind'>; readonly old: HouseRead | undefined }

interface HouseBefore { readonly house: HouseRead | undefined; readonly rooms: RoomsOnPages }

/** The house as it was, laid out a room at a time; undefined where there was none. */
export async function houseBefore({ house }: HouseNow, old: OldWorkspace, next: Next): Promise<HouseBefore> {
    const rooms = new RoomsOnPages(old), all: RoomThere[] = [];
    for (const uri of old.all()) {
        all.push(...rooms.in(uri));
        await next();
    }
    const withRooms = (one: HouseRead) => ({ ...one, rooms: one.rooms.map(({ layout }) => layout), read: one });
    return { house: pairHouses(byHouse(all).map(withRooms), [withRooms(house)]).find(({ after }) => after)?.before?.read, rooms };
}

/**
 * What changed in a house. `closely`: what the dry fit finds is looked for too, in the rooms that are not the same in both states; what it finds in
 * others it finds in both.
 */
export async function compareHouse(
    now: HouseNow, before: HouseBefore, old: OldWorkspace, commit: Commit, nameOf: (uri: string) => string,
    { closely }: { readonly closely: boolean }, next: Next,
): Promise<Compared['found']> {
    const fits = async (house: HouseRead): Promise<Finding[]> => {
        const found: Finding[] = [];
        for (const there of closely ? house.rooms : []) if (!old.isSameNow(there.file.uri)) {
            // what takes long is made before, a part at a time
            await inTurns(stepsOf(there.file, there.layout.room), next);
            found.push(...behindWall(there.layout.room, () => inspectClosely({ ...there.file, rooms: [there.layout.room] })));
            await next();
        }
        return found;
    };
    const after = await houseThere(now.house, now.rooms, await fits(now.house), next);
    const was = before.house && await houseThere(before.house, before.rooms, await fits(before.house), next);
    const oldFiles = before.house ? filesOf(before.house, old) : [];
    const changes = changesOf(
        { files: old.stated(oldFiles, nameOf), houses: was ? [was] : [] },
        { files: statedFiles(now.documents, now.tables, nameOf), houses: [after] },
    );
    return {
        before: { name: commit.hash.slice(0, 8), commit, rooms: before.house && was ? toldRooms(before.house, was, before.rooms) : [] },
        after: { name: t('the text as it is'), rooms: toldRooms(now.house, after, now.rooms) },
        said: changes.said, house: changes.houses.find(one => one.after)!,
        isLooking: !closely && now.house.rooms.some(({ file }) => !old.isSameNow(file.uri)),
    };
}

/** Job files that were there and are otherwise now, as far as they may be of a house: in its folders, or said above them for all that is below. */
export function mayBeOf(house: HouseRead, files: FilesThere, others: readonly string[]): string[] {
    const own = filesOf(house, files).map(folderOf), jobFolder = house.job.at && folderOf(house.job.at.uri);
    const folders = new Set(own);
    return others.filter(uri => {
        const folder = folderOf(uri);
        return folders.has(folder) || jobFolder !== undefined && folder.startsWith(jobFolder) || own.some(each => each.startsWith(folder));
    });
}

/** With a `/` at its end. */
function folderOf(uri: string): string {
    const address = URI.parse(uri).toString();
    return address.slice(0, address.lastIndexOf('/') + 1);
}
