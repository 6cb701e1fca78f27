import { askTogether, keyOfAsked } from '../cutting/ask-together.ts';
import { gapOf } from '../cutting/gap.ts';
import type { BoardPlan } from '../cutting/model.ts';
import type { Answer, Questions, Solve } from '../cutting/questions.ts';
import { counted } from '../plain/words.ts';
import type { World } from './world.ts';

/** Shown meanwhile. */
export const LOOKING = 'Looking for the cheapest boards …';

/** How far the search is: how many stocks it is done with, and by how many percent the plan of the one it is at may be above the cheapest. */
export function progressText(stocks: number, done: number, percent?: number): string {
    const gap = percent === undefined ? '' : `, the next at most ${percent.toFixed(1)} % above the cheapest`;
    return `Looking for the cheapest boards: ${done} of ${counted(stocks, 'stock')} done${gap} …`;
}

/**
 * How boards are looked for in one run: `quick` takes the plan that is made at once; otherwise cheaper ones are looked for, and the
 * proof that there are none. Whoever tells the program to stop gets the best that is known by then.
 */
export function solveBy({ quick }: { readonly quick: boolean }, { prover, stopped, terminal }: World): Solve {
    if (quick) return ({ first }, beside = []) => Promise.resolve([first, ...beside.map(one => one.first)]);
    let told = false;
    const known = new Map<string, Answer>();
    return async (job, beside = []) => {
        const { asked, answersOf } = askTogether([job, ...beside].map(one => one.asked), known);
        const found = new Map<number, Answer>();
        const isWhole = asked.length === 0 || await searched(asked, prover, found, stopped, text => terminal.progress(text));
        if (!isWhole && !told) terminal.say('The search for cheaper boards was stopped: these are the best found so far.');
        told ||= !isWhole;
        // an alternate is looked at less closely: what is known of it is not enough where a job asks the same
        if (isWhole) asked.forEach((each, index) => { if (!each.isBeside) known.set(keyOfAsked(each), found.get(index)!); });
        const planOf = ({ answered }: Questions, list: number): BoardPlan => answered(answersOf(list, found), { atOnce: !isWhole });
        return [planOf(job, 0), ...beside.map((one, i) => planOf(one, i + 1))];
    };
}

/** Gathers the answers as they are found. False where it was stopped before the last of them. */
function searched(
    asked: Questions['asked'], prover: World['prover'], answers: Map<number, Answer>, stop: AbortSignal, progress: (text: string) => void,
): Promise<boolean> {
    if (stop.aborted) return Promise.resolve(false);
    return new Promise(done => {
        let open = asked.length;
        const end = prover.prove(asked, (index, answer, isLast) => {
            answers.set(index, answer);
            if (isLast) open--;
            progress(progressText(asked.length, asked.length - open, isLast ? undefined : gapOf(asked[index]!, answer)));
            if (open > 0) return;
            stop.removeEventListener('abort', halt);
            done(true);
        });
        const halt = (): void => {
            end();
            done(false);
        };
        stop.addEventListener('abort', halt, { once: true });
    });
}
