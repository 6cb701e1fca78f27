import { isOfHouse, type PaneKind } from '../../../src/pages/kinds.ts';
import type { RoomOnPage, Wishes } from '../../../src/pages/page.ts';
import { contentOn, PAGES } from '../../../src/pages/pages.ts';
import type { ContentMessage } from '../../../src/panes/messages.ts';
import { choiceOf, housesOf, Rooms } from '../../../src/server/panes/rooms.ts';
import { createServerServices } from '../../../src/server/services.ts';
import { TestWorkspace, uriOf } from '../../support/workspace.ts';

const served = new Map<string, Promise<TestWorkspace>>();

/** Files of a job, with the server that reads them; the same one for the same files, since nobody here edits them. */
export function serve(files: Readonly<Record<string, string>>): Promise<TestWorkspace> {
    const key = JSON.stringify(files);
    const workspace = served.get(key) ?? TestWorkspace.serve(files, createServerServices);
    served.set(key, workspace);
    return workspace;
}

/** A room of a file as pages get it from the server. */
export function roomOnPage(workspace: TestWorkspace, path: string, name?: string): RoomOnPage {
    const rooms = new Rooms(workspace.shared);
    const there = rooms.in(uriOf(path).toString()).find(({ layout }) => name === undefined || layout.room.name === name);
    const room = there && rooms.onPage(there);
    if (!room) throw new Error(`no room ${name ?? ''} of ${path} is laid out`);
    return room;
}

/** What the server sends to a pane of a room, as it comes over the wire. */
export function contentMessage(kind: PaneKind, room: RoomOnPage, wishes: Wishes = {}): ContentMessage {
    const choice = choiceOf(room), { shown, rooms } = isOfHouse(kind) ? housesOf(room, room.house) : { shown: choice, rooms: [choice] };
    const message: ContentMessage = { type: 'content', kind, shown, rooms, condition: 'current', content: contentOn(PAGES[kind], room, wishes) };
    return JSON.parse(JSON.stringify(message)) as ContentMessage;
}
