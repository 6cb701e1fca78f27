import { nameInRoom } from '../takeoff/ids.ts';
import { defineRule } from './rule.ts';
import { changed, HALL_IN_WORK } from './support/examples.ts';
import { wordsOf } from './support/places.ts';

const wrong = changed(HALL_IN_WORK, `6' of poplar-1x6`, `6' of poplar-1x4`);

export const cutFromOtherStock = defineRule({
    name: 'cut-from-other-stock',
    severity: 'warning',
    title: 'A piece is recorded as cut from another stock than its own',
    explanation: `
A piece counts as cut when a board names it, whatever the board is. Where that board is of another stock than the beam says, either
the line names the wrong stock, or the wrong piece, or a substitute was cut: then the detail should say so too, since its width and
thickness decide what fits.

The sides are 1x6 (5 1/2" wide), and \`side-A-1-north\` is recorded as cut from a 1x4 (3 1/2").`,
    wrong,
    right: HALL_IN_WORK,
    basis: 'Stocks as the beam names them.',
    check: {
        room({ layout: { room }, pieces }, report) {
            for (const { stock, into } of room.cutBoards) {
                for (const name of into) {
                    const piece = pieces().find(one => nameInRoom(one) === name.value);
                    if (!piece || piece.stock.key === stock.value.key) continue;
                    report({
                        ...wordsOf(name),
                        message: `${name.value} is made of ${piece.stock.name}, and this board is ${stock.value.name}. It counts as cut all the same.`,
                        related: [{ at: piece.stock.at, message: `${name.value} comes from this stock` }],
                    });
                }
            }
        },
    },
});
