import type { AstNode } from 'langium';
import * as ast from '../../language/generated/ast.ts';
import type { Computed } from '../../language/features/outline.ts';
import { t } from '../../pages/shared/words.ts';
import type { FileFigures } from './figures.ts';
import { beamSize, coffers, cofferSizes } from './words.ts';

/** What the outline says of rooms, grids, lines and profiles beside their own words. */
export function computedFor({ rooms, profiles }: FileFigures): Computed {
    const roomOf = (node: AstNode | undefined) => ast.isRoom(node?.$container?.$container) ? rooms.get(node.$container.$container) : undefined;
    return node => {
        if (ast.isProfile(node)) {
            const known = profiles.get(node);
            return known && beamSize(known.section, known.job);
        }
        if (ast.isRoom(node)) {
            const ceiling = rooms.get(node)?.ceiling;
            return ceiling && coffers(ceiling.coffers.length);
        }
        const figures = roomOf(node), job = figures?.layout.room.job;
        if (!figures?.ceiling || !job) return undefined;
        const { across, down, lines } = figures.ceiling;
        if (ast.isLine(node) && node.path.length === 1 && node.path[0]?.$refText === 'grid') {
            return t('{0} x {1} coffers, {2} x {3}', across.coffers.length, down.coffers.length, cofferSizes(across, job), cofferSizes(down, job));
        }
        const line = ast.isFixture(node) && node.kind === 'line' ? lines.find(one => one.name === node.name) : undefined;
        return line && beamSize(line.section, job);
    };
}
