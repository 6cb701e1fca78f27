import { expect, it } from 'vitest';
import { takeOffOf } from '../../src/takeoff/take-off.ts';
import { otherChoice, otherChoiceWords } from '../../src/report/put-up/other-choice.ts';
import { price } from '../../src/pipeline/price.ts';
import { inches } from '../../src/quantity/rational.ts';
import { roomText } from '../putup/closing/room.ts';
import { layoutsOf } from '../support/layouts-of.ts';

const LABOR = 'labor { crew 2 rate 60 USD per h; bottom 4 min per ft; blocking 3 min per ft; butt 6 min per joint }\n';

it('another choice of what runs through says what it changes, and that is what the room with it in its text has', async () => {
    const words = roomText().replace('room den', `${LABOR}room den`), ceiling = (await layoutsOf(words))[0]!.ceiling!;
    const other = otherChoice(ceiling, { band: 'last' })!;
    expect(other).toMatchObject({ closing: { now: 4, then: 2 }, proved: true, longest: { now: inches('180 1/2') }, splices: { now: 0, then: 0 } });
    expect(other.words).toBe('line B through at B2 and B3');
    const said = (await layoutsOf(words.replace(/\}\n$/, '  crossing B2 { through B }\n  crossing B3 { through B }\n}\n')))[0]!.ceiling!;
    const { plan, estimate } = price([said.room], said.room.job);
    expect(other.boards.then).toBe(plan.stocks.flatMap(({ buy }) => buy).reduce((sum, { count }) => sum + count, 0));
    expect(other.minutes!.then.toFraction()).toBe(estimate.minutes.toFraction());
    expect(other.longest.then).toBe(Math.max(...takeOffOf(said).pieces.filter(({ part }) => part === 'bottom' || part === 'blocking').map(({ cutOverall }) => cutOverall)));
    // as many pieces of each length as the two lists differ by
    const count = (list: typeof ceiling, { part, length }: { part: string; length: number }): number =>
        takeOffOf(list).pieces.filter(piece => piece.part === part && piece.cutOverall === length).length;
    for (const batch of other.added) expect(count(said, batch) - count(ceiling, batch)).toBe(batch.count);
    for (const batch of other.dropped) expect(count(ceiling, batch) - count(said, batch)).toBe(batch.count);
    expect(otherChoiceWords(other, { show: 'feet-inches', step: inches('1/32') })[0]).toBe('With line B through at B2 and B3 2 closing pieces remain, not 4, and no choice leaves fewer.');
    expect(otherChoice(said, { band: 'last' })).toBeUndefined();
});
