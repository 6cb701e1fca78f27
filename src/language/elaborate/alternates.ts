import type { Alternate, ChangedRoom } from '../../job/alternate.ts';
import type { Room } from '../../job/model.ts';
import * as ast from '../generated/ast.ts';
import { sourceOf, sourceOfProperty } from '../types/place.ts';
import type { House } from './house.ts';
import { findingsOf, type Raise, type Raised } from './raised.ts';
import { readRoom } from './room.ts';
import { grouped } from '../../plain/groups.ts';

/** What an alternate makes of each room that it changes. What reading a changed room finds that the room itself has not, stays with it. */
function readAlternate(declaration: ast.Alternate, house: House): Alternate {
    return readAlternates([declaration], house);
}

/** Every alternate reads the rooms anew that it changes: so many lines of rooms are read for the alternates of a file. */
const MOST_LINES = 20_000;

/** The alternates of a file, as many of them as are read; the first that is not is told so. */
export function readEachAlternate(declarations: readonly ast.Alternate[], house: House, raise: Raise): Alternate[] {
    const alternates: Alternate[] = [];
    let lines = 0;
    for (const declaration of declarations) {
        const rooms = new Set(declaration.body?.members.filter(ast.isLine).map(line => line.path[0]?.ref));
        for (const room of rooms) if (ast.isRoom(room)) lines += linesIn(room);
        if (lines > MOST_LINES) {
            raise({ rule: 'out-of-range', at: sourceOfProperty(declaration, 'name'), message: `Up to this one, the alternates of this file rewrite ${lines} lines of rooms, counting a line each time it is changed; the limit is ${MOST_LINES}. This alternate and those below it are not read.` });
            break;
        }
        alternates.push(readAlternate(declaration, house));
    }
    return alternates;
}

/** A room is never so short that reading it costs nothing. */
function linesIn({ $cstNode: words }: ast.Room): number {
    return 10 + (words ? words.range.end.line - words.range.start.line : 0);
}

/** One or more of a file together, the later on top of the earlier. */
export function readAlternates(declarations: readonly ast.Alternate[], house: House): Alternate {
    const lines = grouped(declarations.flatMap(({ body }) => body?.members.filter(ast.isLine) ?? []), line => line.path[0]?.ref);
    const titles = declarations.flatMap(({ title }) => title ?? []), last = declarations.at(-1)!;
    return {
        name: declarations.map(({ name }) => name ?? '').join('+'), ...titles.length > 0 && { title: titles.join(' + ') },
        at: sourceOfProperty(last, 'name'), whole: sourceOf(last),
        rooms: [...lines].flatMap(([room, changes]) => (ast.isRoom(room) ? changed(room, changes, house) ?? [] : [])),
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
