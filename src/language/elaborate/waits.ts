import type { Room, RoomBefore, WaitSaid } from '../../job/model.ts';
import type { WaitInCircle } from '../../job/put-up.ts';
import type { Source } from '../../provenance/source.ts';
import * as ast from '../generated/ast.ts';
import { isBroken } from '../types/broken.ts';
import { sourceOf } from '../types/place.ts';
import type { LineReading, Reading } from './reading.ts';
import type { Found } from './values.ts';

/** Reads rooms of this and of other files. */
export interface RoomsElsewhere { roomBefore(declaration: ast.Room, user: ast.Expr): Room | undefined }

/** What others finish first, line by line: rooms and trades. */
export function waitsOf(putUp: Reading, home: ast.Room, rooms: RoomsElsewhere): WaitSaid[] {
    return [
        ...linesOf(putUp, 'after-room').flatMap(line => {
            const before = line.each('before', textOf);
            return line.each('value', found => roomOf(found, home, rooms)).map((room): WaitSaid => ({ kind: 'room', room, before }));
        }),
        ...linesOf(putUp, 'after-trade').flatMap(line => {
            const before = line.each('before', textOf), untilDay = line.wholeNumber('until-day');
            return line.each('value', textOf).map((trade): WaitSaid => ({ kind: 'trade', trade, before, ...untilDay && { untilDay } }));
        }),
    ];
}

/** A text, or a name that nobody declares. */
export function textOf({ known: { value } }: Found): string | undefined {
    return value.is === 'text' ? value.text : undefined;
}

function linesOf(putUp: Reading, name: string): LineReading[] {
    const entry = putUp.block.entries.get(name);
    return entry?.lines.filter(line => !isBroken(line)).map(line => putUp.line(line, entry.property, 'PutUp')) ?? [];
}

function roomOf({ known: { value }, expr }: Found, home: ast.Room, rooms: RoomsElsewhere): RoomBefore | undefined {
    if (value.is !== 'thing' || !ast.isRoom(value.node)) return undefined;
    const name = value.node.name ?? '', circle = circleThrough(home, { room: value.node, at: sourceOf(expr) });
    return { name, ...circle ? { circle } : { room: rooms.roomBefore(value.node, expr) } };
}

/** A room that is waited for, and the words that say so. */
interface Waited { readonly room: ast.Room; readonly at: Source }

/** The shortest way from `home` over `first` and what it waits for back to `home`, wait by wait. Nothing recurses. */
function circleThrough(home: ast.Room, first: Waited): WaitInCircle[] | undefined {
    const cameBy = new Map<ast.Room, WaitInCircle & { readonly from: ast.Room }>();
    const waits = (from: ast.Room, { room, at }: Waited): void => {
        cameBy.set(room, { from, room: from.name ?? '', waitsFor: room.name ?? '', at });
        row.push(room);
    };
    const row: ast.Room[] = [];
    waits(home, first);
    for (let i = 0; i < row.length && !cameBy.has(home); i++) {
        for (const next of waitedFor(row[i]!)) if (!cameBy.has(next.room)) waits(row[i]!, next);
    }
    const last = cameBy.get(home), way: WaitInCircle[] = [];
    for (let on = last; on; on = on.from === home ? undefined : cameBy.get(on.from)) way.unshift({ room: on.room, waitsFor: on.waitsFor, at: on.at });
    return last && way;
}

/** The rooms that a room waits for, as its own text says it. */
function waitedFor({ body }: ast.Room): Waited[] {
    const lines = (body?.members ?? []).filter(ast.isLine).filter(({ path: [word] }) => word?.$refText === 'put-up');
    return lines.flatMap(line => (line.path.length > 1 ? roomsIn(line, 1) : (line.body?.members ?? []).filter(ast.isLine).flatMap(inner => roomsIn(inner, 0))));
}

function roomsIn({ path, values }: ast.Line, word: number): Waited[] {
    if (path[word]?.$refText !== 'after-room') return [];
    return values.flatMap(value => {
        const target = ast.isRef(value) ? value.target?.ref : undefined;
        return ast.isRoom(target) ? [{ room: target, at: sourceOf(value) }] : [];
    });
}
