/** Who waits to go on, in the order in which they came. */
const waiting: (() => void)[] = [];

/**
 * Lets whatever has come meanwhile be answered: only a timer lets messages in on Node and in a browser alike. One goes on at a time, whoever else has work
 * to do. With a timer each, that of the one would be due as soon as the work of the other ends, and Node calls due timers one after the other: nobody
 * would be heard until all of them are done.
 */
export function breath(): Promise<void> {
    return new Promise(resolve => {
        if (waiting.push(resolve) === 1) later(goOn);
    });
}

/** The next is let go on only after the work that now begins. */
function goOn(): void {
    waiting.shift()!();
    if (waiting.length > 0) later(goOn);
}

/**
 * A message is read in one round of Node's loop, handled in the next, its answer comes to its turn behind what else is said, and is written: the
 * protocol's library waits for a round each time. With work in every round a question would wait for as many pieces of it.
 */
const ROUNDS = 8;

/** Node looks for messages before what is immediate; a timer alone, set before some work begins, may be due when that ends. */
function later(action: () => void): void {
    const { setImmediate: immediate } = globalThis as { readonly setImmediate?: (action: () => void) => void };
    let rounds = ROUNDS;
    const round = (): void => {
        if (immediate && rounds-- > 0) immediate(round);
        else setTimeout(action, 0);
    };
    round();
}
