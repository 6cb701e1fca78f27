import type { BoardPlan } from '../cutting/model.ts';
import type { JobSettings } from '../job/model.ts';
import { blocksOf } from './blocks.ts';
import { cautionsOf } from './cautions.ts';
import { crosscutsOf } from './crosscuts.ts';
import { layBoards } from './lay-boards.ts';
import { edgesOf, halvesOf, kerfsOf, pocketsOf, shapesOf, slotStepsOf } from './machining.ts';
import { copesOf, mitersOf } from './miters.ts';
import type { BlockStep, SawOrder, Step, Take } from './model.ts';
import { ripsInto, ripsOfPieces } from './rips.ts';
import { setUpsOf } from './set-ups.ts';

/**
 * The order at the saw for a plan of boards. Whole boards are ripped; everything is crosscut square, the stop set from long
 * to short, sections of boards too, which are then ripped and their strips crosscut; test pieces and gauge blocks come out of what
 * is left; what is ripped alone is ripped; edges are machined; then
 * miters are cut, since a point that is cut last is not broken on the way; panels are cut to their shapes; backs are kerfed; slots and pocket holes
 * come into finished ends; what is cut in two comes after its slots. Where the job says a stop for miters, what is mitered alike at both ends stays in its
 * board up to then, behind all that is cut square: its edges are run there, and it is cut to its miters straight from what is left.
 * Boards that are already cut lie among the others and have no step.
 */
export function sawOrder(plan: BoardPlan, job: JobSettings): SawOrder {
    const boards = layBoards(plan, job);
    const open = boards.filter(board => board.from !== 'already cut');
    const laid = open.flatMap(b => b.strips).flatMap(s => s.pieces), pieces = laid.map(p => p.piece);
    const once = open.flatMap(board => board.strips.map((strip): Take => ({ board, strip, pieces: strip.pieces.filter(p => p.once) })));
    const blocks = blocksOf(open, job);
    const steps = [
        ...ripsInto(open, 'boards'), ...crosscutsOf(open, 'boards'), ...ripsInto(open, 'sections'), ...crosscutsOf(open, 'strips'),
        ...blocks.length > 0 ? [{ do: 'blocks', blocks } satisfies Omit<BlockStep, 'number'>] : [],
        ...ripsOfPieces(open), ...edgesOf(open, job), ...mitersOf(laid.filter(p => !p.once).map(p => p.piece), once),
        ...copesOf(pieces), ...shapesOf(pieces), ...kerfsOf(pieces),
        ...slotStepsOf(pieces), ...halvesOf(pieces), ...pocketsOf(pieces),
    ].map((step, i): Step => ({ ...step, number: i + 1 }));
    return { job, boards, steps, setUps: setUpsOf(steps, open), cautions: cautionsOf(steps) };
}
