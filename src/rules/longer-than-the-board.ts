import { perimetersOf } from '../job/perimeters.ts';
import { sameSource } from '../provenance/source.ts';
import type { Ceiling } from '../ceiling/model.ts';
import { roundTo } from '../quantity/round.ts';
import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { replacing } from './support/fixes.ts';
import { troublesOf } from './support/troubles.ts';
import { sizesOf } from './support/words.ts';

const wrong = changed(changed(HALL, 'stock poplar-1x4 { size 1x4 }', `stock poplar-1x4 {
  size     1x4
  lengths  6', 8'
}`), 'through        north-south', `through        north-south
    splices        where-said`);

export const longerThanTheBoard = defineRule({
    name: 'longer-than-the-board',
    severity: 'error',
    title: 'A piece is longer than any board it could be cut from',
    explanation: `
A piece in one length needs a board that is longer by the end trim: one that the yard sells and that may come into the house
(\`longest-board\`), or one on hand, each for one piece.

A bottom of 9' 5" from boards of at most 8', less 1" of end trim, is 1' 6" too long. Where the grid says \`splices
on-crossings\` what runs through is spliced on a crossing; else say a splice, buy longer boards, or let the other direction run
through.`,
    wrong,
    right: changed(wrong, 'where-said', 'on-crossings'),
    basis: 'Lengths as the stock says them.',
    check: {
        room({ layout, job }, report) {
            const size = sizesOf(job);
            const { value: step } = job.cutTo;
            for (const { line, part, where, length, longest, at } of troublesOf(layout, 'longer-than-the-board')) {
                const cut = roundTo(length, step);
                const { grid, lines } = layout.room;
                const splices = part === 'band' ? perimetersOf(layout.room).find(each => sameSource((each.stock ?? each).at, at))?.splices : lines.find(spec => spec.name === line)?.splicing ?? grid?.splices;
                const undecided = splices !== undefined && splices.value !== 'on-crossings' && (part === 'band' || isSpliced(line, part, layout.ceiling));
                if (longest === -Infinity) {
                    report({
                        at,
                        message: `The ${part} (${where}) comes out of no board: at most ${size(job.longestBoard?.value ?? 0)} may come into the house, and its stock is sold in longer boards only. Have it cut, and say that length too.`,
                        related: job.longestBoard ? [{ at: job.longestBoard.at, message: 'the longest board that may come in' }] : [],
                    });
                    continue;
                }
                report({
                    at,
                    message: `The ${part} (${where}) is ${size(Math.max(cut - Math.max(longest, 0), step))} too long to come in one piece: it is ${size(cut)}, and ${longest > 0 ? `${size(longest)} is the longest to be had` : 'the end trim leaves nothing of any board'}. `
                        + (undecided ? splices.value === 'never' ? 'Let it be spliced, or buy longer boards.' : 'Splice it on a crossing, or say where.' : 'Buy longer boards, or divide the room into smaller coffers.'),
                    fixes: undecided ? replacing(splices, 'on-crossings', 'Splice on the crossings') : [],
                });
            }
        },
    },
});

/** Only what runs through at the crossings comes in pieces that are spliced there; all else reaches from one beam to the next. */
function isSpliced(name: string, part: string, ceiling: Ceiling | undefined): boolean {
    return (part === 'bottom' || part === 'blocking') && ceiling?.lines.find(line => line.name === name)?.through === true;
}
