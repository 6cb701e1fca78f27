import { isUnfamiliar, laborOf, timedWork, type PricedRoom } from '../estimate/labor.ts';
import type { LaborLine } from '../estimate/model.ts';
import { atKey } from '../plain/at-key.ts';
import { Rational } from '../quantity/rational.ts';
import type { PutUp } from './model.ts';
import { stepsOfPieces } from './steps-of-pieces.ts';

/** What a room takes, step by step, by the rates of its labor: minutes of one person. */
export interface Hours {
    /** Setting out, before the first step. */
    readonly layout: Rational;
    /** By the number of a step. */
    readonly steps: ReadonlyMap<number, Rational>;
    /** Filling and sanding, when all is up. */
    readonly finish: Rational;
    /** How many people work, and how many minutes of a day; undefined where nobody says how many they are. */
    readonly crew: { readonly people: number; readonly day: Rational } | undefined;
}

/** Undefined where nothing of it is timed. The rates of a part hold for making it and putting it up: what is cut at the saw is in the hours of its step. */
export function hoursOf(room: PricedRoom, { steps }: PutUp): Hours | undefined {
    const { labor } = room.ceiling.room.rates, timed = timedWork(room, labor);
    if (timed.length === 0) return undefined;
    const stepOf = stepsOfPieces(steps), byStep = new Map<number, Rational>();
    let layout = new Rational(0), finish = new Rational(0);
    for (const { of, minutes: usual, detail } of timed) {
        const minutes = isUnfamiliar(detail, labor) ? usual.add(usual.mul(labor.unfamiliar!.value.share)) : usual;
        if ('crossing' in of) layout = layout.add(minutes);
        else if ('coffer' in of) finish = finish.add(minutes);
        else {
            const step = stepOf.get(of.piece);
            if (step !== undefined) byStep.set(step, atKey(byStep, step, () => new Rational(0)).add(minutes));
        }
    }
    const first = steps.find(({ kind }) => kind === 'first-bay'), { crew, day } = labor;
    const longer = laborOf([room], 0, labor).lines.filter(isFirstBay).map(({ minutes }) => minutes);
    if (first) byStep.set(first.number, longer.reduce((sum, minutes) => sum.add(minutes), byStep.get(first.number) ?? new Rational(0)));
    return { layout, steps: byStep, finish, crew: crew && { people: crew.value, day: day.value } };
}

/** What a bay takes longer that is put up dry and measured. */
function isFirstBay({ phase, basis }: LaborLine): boolean {
    return phase === 'first of its kind' && basis.by === 'share' && basis.ofWhat === 'an average bay';
}
