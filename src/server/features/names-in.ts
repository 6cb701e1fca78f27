import { AstUtils } from 'langium';
import type { NamesOfRoom } from '../../language/features/completion/plain-names.ts';
import type * as ast from '../../language/generated/ast.ts';
import { takeOffOf } from '../../pipeline/inspect.ts';
import type { Figures } from './figures.ts';

/** Lines, crossings and pieces of a room as it was last laid out: half a line typed does not make them go away. */
export function namesInRoom(room: ast.Room, figures: Figures): NamesOfRoom | undefined {
    const ceiling = figures.of(AstUtils.getDocument(room)).rooms.get(room)?.ceiling;
    const prefix = `${room.name}.`;          // in its own room a piece goes without the room's name
    return ceiling && {
        lines: ceiling.lines.map(({ name }) => name),
        crossings: ceiling.crossings.map(({ name }) => name),
        get pieces() { return takeOffOf(ceiling).pieces.map(({ id }) => (id.startsWith(prefix) ? id.slice(prefix.length) : id)); },
    };
}
