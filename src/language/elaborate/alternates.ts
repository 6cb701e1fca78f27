import type { Alternate, ChangedRoom } from '../../job/alternate.ts';
import type { Room } from '../../job/model.ts';
import * as ast from '../generated/ast.ts';
import { sourceOf, sourceOfProperty } from '../types/place.ts';
import type { House } from './house.ts';
import { findingsOf, type Raised } from './raised.ts';
import { readRoom } from './room.ts';

/** What an alternate makes of each room that it changes. What reading a changed room finds that the room itself has not, stays with it. */
export function readAlternate(declaration: ast.Alternate, house: House): Alternate {
    return readAlternates([declaration], house);
}

/** One or more of a file together, the later on top of the earlier. */
export function readAlternates(declarations: readonly ast.Alternate[], house: House): Alternate {
    const lines = new Map<ast.Room, ast.Line[]>();
    for (const line of declarations.flatMap(({ body }) => body?.members.filter(ast.isLine) ?? [])) {
        const room = line.path[0]?.ref;
        if (!ast.isRoom(room)) continue;
        const before = lines.get(room);
        if (before) before.push(line); else lines.set(room, [line]);
    }
    const titles = declarations.flatMap(({ title }) => title ?? []), last = declarations.at(-1)!;
    return {
        name: declarations.map(({ name }) => name ?? '').join('+'), ...titles.length > 0 && { title: titles.join(' + ') },
        at: sourceOfProperty(last, 'name'), whole: sourceOf(last),
        rooms: [...lines].flatMap(([room, changes]) => changed(room, changes, house) ?? []),
    };
}

function changed(declaration: ast.Room, lines: readonly ast.Line[], house: House): ChangedRoom | undefined {
    const instead = house.room(declaration);
    if (!instead) return undefined;
    const raised: Raised[] = [], known: Raised[] = [];
    readRoom(declaration, instead, house, one => known.push(one));
    // what is cut is cut for the room as it is: an alternate is offered, nobody has begun it
    const room: Room = { ...readRoom(declaration, instead, house, one => raised.push(one), lines), spoiled: [], cutBoards: [] };
    const has = (one: Raised): boolean => known.some(other => other.rule === one.rule && other.message === one.message);
    return { instead, room, findings: findingsOf(raised.filter(one => !has(one))) };
}
