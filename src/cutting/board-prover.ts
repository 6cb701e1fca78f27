import type { Answer, Asked } from './questions.ts';

/** Looks for cheaper boards somewhere else than here, so that whatever comes meanwhile is heard. */
export interface BoardProver {
    /**
     * Takes the questions one after the other. `found`: a better plan or a better bound for the question of that index, `isLast`
     * where nothing more comes for it. Returns what ends the search; nothing is found any more after that.
     */
    prove(asked: readonly Asked[], found: (index: number, answer: Answer, isLast: boolean) => void): () => void;
}
