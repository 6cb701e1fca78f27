import { defineRule } from './rule.ts';
import { changed, porchBox } from './support/examples.ts';
import { replacing, spelledLike } from './support/fixes.ts';
import { wordsOf } from './support/places.ts';
import { sizesOf } from './support/words.ts';

const wrong = porchBox(`
  blocking { stock poplar-1x6 }
  sides { stock poplar-1x8 }
  cleats { rip 5/8" x 1" from strip-1x2 }
  bottom { stock poplar-1x6 }
`);

export const cleatOffStock = defineRule({
    name: 'cleat-off-stock',
    severity: 'warning',
    title: 'The cleats do not come out of their stock with one rip',
    explanation: `
A cleat is a strip ripped off a board: one of its sides is the board's thickness (or its width), as it comes, and the other
is what the fence is set to.

A cleat of 5/8" x 1" from a 1x2 (3/4" x 1 1/2") has neither: every strip has to go through the saw twice. 3/4" x 1" is one rip.
Where it is larger than the board it is an **error**: it cannot be got out of it at all.`,
    wrong,
    right: changed(wrong, '5/8" x 1"', '3/4" x 1"'),
    basis: 'Geometry of the board.',
    check: {
        section({ section: { profile: { cleats } }, job }, report) {
            const { stock, thickness, height } = cleats ?? {};
            const board = [stock?.value.thickness?.value.ticks, stock?.value.width?.value.ticks];
            if (!stock || !thickness || !height || board[0] === undefined || board[1] === undefined) return;
            const cleat = [thickness.value.ticks, height.value.ticks];
            const fits = Math.min(...cleat) <= Math.min(board[0], board[1]) && Math.max(...cleat) <= Math.max(board[0], board[1]);
            if (fits && cleat.some(size => board.includes(size))) return;
            const size = sizesOf(job);
            const what = `a cleat of ${size(thickness.value.ticks)} x ${size(height.value.ticks)}`;
            const from = `${stock.value.name}, which is ${size(board[0])} x ${size(board[1])}`;
            report({
                ...wordsOf(thickness),
                severity: fits ? 'warning' : 'error',
                message: fits
                    ? `Two rips for every cleat: ${what} has neither the thickness nor the width of ${from}. Make it ${size(board[0])} one way.`
                    : `The board is too small: ${what} from ${from}. Take a larger stock.`,
                fixes: fits ? replacing(thickness, spelledLike(thickness.value, board[0], job), `Make the cleat ${size(board[0])} thick, as the board`) : [],
                related: [{ at: stock.at, message: `the cleats come from ${stock.value.name}` }],
            });
        },
    },
});
