import { AstUtils } from 'langium';
import type { NamesOfRoom } from '../../language/features/completion/plain-names.ts';
import type * as ast from '../../language/generated/ast.ts';
import { takeOffOf } from '../../pipeline/inspect.ts';
import { nameInRoom } from '../../takeoff/ids.ts';
import type { Figures } from './figures.ts';

/** Lines, crossings and pieces of a room as it was last laid out: half a line typed does not make them go away. */
export function namesInRoom(room: ast.Room, figures: Figures): NamesOfRoom | undefined {
    const ceiling = figures.of(AstUtils.getDocument(room)).rooms.get(room)?.ceiling;
    return ceiling && {
        lines: ceiling.lines,
        crossings: ceiling.crossings.map(({ name, ew, ns }) => ({ name, lines: [ew.name, ns.name] })),
        get pieces() { return takeOffOf(ceiling).pieces.map(nameInRoom); },
    };
}
