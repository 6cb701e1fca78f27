import type { BoardProver } from '../../cutting/board-prover.ts';
import { gapOf } from '../../cutting/gap.ts';
import type { BoardPlan } from '../../cutting/model.ts';
import type { Answer, Asked, Questions } from '../../cutting/questions.ts';
import type { RoomOnPage } from '../../pages/page.ts';
import { Boards } from '../../pipeline/boards.ts';
import type { TakeOff } from '../../takeoff/model.ts';

/** The boards of one house as far as they are known. */
interface Known {
    readonly takeOffs: readonly TakeOff[];
    readonly questions: Questions;
    whole(plan: BoardPlan): BoardPlan;
    readonly answers: Map<number, Answer>;
    done: number;
    /** The question that is looked at, with what is known of it. */
    at?: { readonly asked: Asked; readonly answer: Answer } | undefined;
    stop(): void;
    boards: NonNullable<RoomOnPage['boards']>;
}

/** Shown progress changes no more often than this; the last word comes at once. */
const SHOW_MS = 250;

/**
 * Plans of houses that somebody looks at: the first at once, then what the prover finds. A house whose pieces change is planned
 * anew and the search for the old ones ended. Only the house that was asked for last is searched.
 */
export class BoardProofs {
    private known: Known | undefined;
    private shownAt = 0;
    private later: ReturnType<typeof setTimeout> | undefined;

    /** `changed`: called whenever something more is known than `of` has told. */
    constructor(private readonly prover: BoardProver, private readonly changed: () => void) {}

    /** The same object as long as nothing more is known. */
    of(house: readonly RoomOnPage[]): RoomOnPage['boards'] {
        const takeOffs = house.map(({ takeOff }) => takeOff);
        const { known } = this;
        if (known && known.takeOffs.length === takeOffs.length && known.takeOffs.every((each, i) => each === takeOffs[i])) return known.boards;
        known?.stop();
        this.known = undefined;
        const [first] = house;
        if (!first) return undefined;
        const toCut = { job: first.layout.room.job, rooms: house.map(({ layout, takeOff }) => ({ room: layout.room, pieces: takeOff.pieces })) };
        const { questions, whole } = new Boards([toCut]).of(toCut, []);
        const next: Known = { takeOffs, questions, whole, answers: new Map(), done: 0, stop: () => undefined, boards: { plan: whole(questions.first) } };
        this.known = next;
        if (questions.asked.length > 0) {
            next.boards = boardsOf(next);
            next.stop = this.prover.prove(questions.asked, (index, answer, isLast) => this.found(next, index, answer, isLast));
        }
        return next.boards;
    }

    /** Ends the search whose boards are shown, and keeps the best that is known. */
    enough(boards: NonNullable<RoomOnPage['boards']>): void {
        const { known } = this;
        if (known?.boards !== boards || !boards.proving) return;
        clearTimeout(this.later);
        known.stop();
        const { proving: _, ...best } = boardsOf(known);
        known.boards = { ...best, stopped: true };
        this.changed();
    }

    /** Ends what is searched: nobody looks at boards any more. */
    stop(): void {
        clearTimeout(this.later);
        this.known?.stop();
        this.known = undefined;
    }

    private found(known: Known, index: number, answer: Answer, isLast: boolean): void {
        if (this.known !== known || known.boards.stopped) return;
        known.answers.set(index, answer);
        known.at = isLast ? undefined : { asked: known.questions.asked[index]!, answer };
        if (isLast) known.done++;
        const isOver = known.done === known.questions.asked.length;
        clearTimeout(this.later);
        const wait = isOver ? 0 : Math.max(0, this.shownAt + SHOW_MS - Date.now());
        this.later = setTimeout(() => {
            if (this.known !== known) return;
            this.shownAt = Date.now();
            known.boards = boardsOf(known);
            this.changed();
        }, wait);
    }
}

function boardsOf({ questions: { asked, answered }, whole, answers, done, at }: Known): Known['boards'] {
    const percent = at && gapOf(at.asked, at.answer);
    return { plan: whole(answered(answers)), ...done < asked.length && { proving: { done, of: asked.length, ...percent !== undefined && { percent } } } };
}
