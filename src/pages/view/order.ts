import { Numbered } from '../../plain/at-key.ts';
import type { Move } from '../../putup/model.ts';
import { frameOf, type Frame } from '../../putup/motion/pose.ts';
import { stepWords } from '../../report/put-up/words.ts';
import type { RoomPutUp } from '../../report/put-up/content.ts';
import type { Solid } from '../../dryfit/model.ts';

/** The order in which a ceiling is put up, as it can be watched: every piece on the way that was tried for it. */
export interface OrderInView {
    readonly steps: readonly { readonly what: string; readonly pieces: readonly Arrival[] }[];
    /** Moves one after the other, by number: most pieces come on the same. */
    readonly ways: readonly (readonly Move[])[];
}
/** `way`: -1 where none was found. `frame`: where it is not straight on its way. */
export interface Arrival { readonly key: string; readonly way: number; readonly frame?: Frame }

export function orderInView({ steps }: Pick<RoomPutUp, 'steps'>, solids: readonly Solid[]): OrderInView {
    const ways = new Numbered<readonly Move[]>(), byId = new Map(solids.map(solid => [solid.piece.id, solid]));
    return {
        steps: steps.map(({ step }) => ({ what: stepWords(step), pieces: step.placings.map(({ piece, path }): Arrival => {
            if (!path) return { key: piece.id, way: -1 };
            const way = ways.at(JSON.stringify(path.moves), () => path.moves), solid = byId.get(piece.id);
            const bends = path.moves.some(({ from, to }) => from.shape !== 'straight' || to.shape !== 'straight');
            return { key: piece.id, way, ...bends && solid && { frame: frameIn(solid) } };
        }) })),
        ways: ways.list,
    };
}

function frameIn({ piece, prisms }: Solid): Frame {
    const outline = prisms.flatMap(prism => prism.outline.map(([x, y]) => ({ x, y })));
    return frameOf(piece, outline, Math.min(...prisms.map(({ top }) => top)), Math.max(...prisms.map(({ foot }) => foot)));
}
