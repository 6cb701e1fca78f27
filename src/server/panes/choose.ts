import { AstUtils, type LangiumDocument } from 'langium';
import * as ast from '../../language/generated/ast.ts';
import type { Position } from '../../provenance/source.ts';
import type { CursorParams, PaneShowsParams } from '../messages.ts';
import { nodeAt } from './node-at.ts';
import type { Rooms, RoomThere } from './rooms.ts';

export interface Place { readonly uri: string; readonly room: string }

/**
 * The room a pane shows: the one it is pinned to; else the one the cursor is in; else the one it showed, if that belongs to
 * the job of the file at hand; else the first of that job. `chosen`: by hand, since the cursor last came into another room.
 */
export function roomFor(
    rooms: Rooms, { pinned, room: chosen }: PaneShowsParams, cursor: CursorParams | undefined, before: Place | undefined,
): { readonly there?: RoomThere; readonly all: readonly RoomThere[] } {
    const at = pinned && chosen ? chosen.uri : cursor?.uri ?? chosen?.uri ?? before?.uri;
    if (at === undefined) return { all: [] };
    let all = rooms.ofJob(at);
    // a file of no room's job (a yard's list nobody uses yet) is no reason to take a picture away
    if (all.length === 0 && before) all = rooms.ofJob(before.uri);
    const named = (place: Place | undefined) => place && all.find(({ file, layout }) => file.uri === place.uri && layout.room.name === place.room);
    if (pinned) return { there: named(chosen), all };
    return { there: named(chosen) ?? named(before) ?? all.find(({ file }) => file.uri === at) ?? all[0], all };
}

/** The room that a place in a text lies in. */
export function roomAt(document: LangiumDocument, position: Position): Place | undefined {
    const room = AstUtils.getContainerOfType(nodeAt(document, position), ast.isRoom);
    return room && { uri: document.uri.toString(), room: room.name };
}
