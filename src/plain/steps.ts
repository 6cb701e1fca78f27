/** Work in steps, between which others may have their turn; and what it comes to in the end. */
export type Steps<Made> = Generator<undefined, Made, undefined>;

export function atOnce<Made>(steps: Steps<Made>): Made {
    for (;;) {
        const step = steps.next();
        if (step.done) return step.value;
    }
}

/** What takes so little that nobody needs a turn meanwhile, for whoever asks for steps. */
export function inOne<Asked extends readonly unknown[], Made>(make: (...asked: Asked) => Made): (...asked: Asked) => Steps<Made> {
    return function* (...asked) { return make(...asked); };
}

/** What is made of each, with a step after so many: work that is many small parts. */
export function* eachInSteps<Thing, Made>(things: readonly Thing[], atOnceMost: number, make: (thing: Thing, i: number) => Made): Steps<Made[]> {
    const made: Made[] = [];
    for (const [i, thing] of things.entries()) {
        made.push(make(thing, i));
        if ((i + 1) % atOnceMost === 0) yield;
    }
    return made;
}

/** `next`: has others have their turn, after every step; where it throws the rest is left undone. */
export async function inTurns<Made>(steps: Steps<Made>, next: () => Promise<void>): Promise<Made> {
    for (;;) {
        const step = steps.next();
        if (step.done) return step.value;
        await next();
    }
}
