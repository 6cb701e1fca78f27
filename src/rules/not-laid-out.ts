import { perimetersOf } from '../job/perimeters.ts';
import type { Layout } from '../ceiling/model.ts';
import type { Grid, Room } from '../job/model.ts';
import { outlineOf } from '../job/outline.ts';
import type { Source } from '../provenance/source.ts';
import { defineRule } from './rule.ts';
import { BEAM, changed, ENTRY_HALL } from './support/examples.ts';

const wrong = `// file details.coffer
${BEAM}
// file hall.coffer
edition 1
from "./details.coffer" use hall-box

${ENTRY_HALL}`.replace('rip 3/4" x 3/4"', 'rip 3/4" x -3/4"');

export const notLaidOut = defineRule({
    name: 'not-laid-out',
    severity: 'error',
    title: 'A complete room is not laid out, because of something in another file',
    explanation: `
A room is laid out with the boards and the beams of other files. Where something there is missing or impossible (cleats
ripped to 3/4" x -3/4", say), there are no pieces of this room, although nothing in its own file is wrong. So that this is
not overlooked it is reported once, at the beams; what has to be fixed is reported where it is.`,
    wrong,
    right: changed(wrong, '3/4" x -3/4"', '3/4" x 3/4"'),
    basis: 'How this program works.',
    check: {
        room({ layout }, report) {
            const { room, room: { grid } } = layout;
            if (layout.ceiling || !grid?.beams || !saysEnough(room, grid)) return;
            const reason = reasonElsewhere(layout);
            if (!reason) return;
            report({
                at: grid.beams.at,
                message: `${room.title ?? room.name} is not laid out, so it has no pieces: ${reason.words}. Fix that first.`,
                related: [{ at: reason.at, message: 'it is here' }],
            });
        },
    },
});

/** Whether everything is known that a room has to say itself. */
function saysEnough({ walls, diagonals }: Room, grid: Grid): boolean {
    const around = perimetersOf({ grid }).every(({ kind, stock, width }) => kind.value === 'none' || (kind.value === 'band' ? stock : width) !== undefined);
    return Boolean(grid.north && grid.east && grid.through && around && outlineOf({ walls, diagonals }));
}

/** What is wrong in another file, where nothing that is said of the room in its own already tells. */
function reasonElsewhere({ room, sections, troubles }: Layout): { words: string; at: Source } | undefined {
    const isElsewhere = ({ uri }: Source): boolean => uri !== room.at.uri;
    if (troubles.some(({ kind, at }) => kind === 'not-supported' || !isElsewhere(at))) return undefined;
    const [trouble] = troubles;
    if (trouble) return { words: 'what' in trouble ? `${trouble.what} is impossible` : 'something it is made of is impossible', at: trouble.at };
    const profile = [...sections.values()].map(section => section.profile).find(({ at, notComputed }) => isElsewhere(at) && notComputed.length === 0);
    return profile && { words: `${profile.name} is not complete`, at: profile.at };
}
