import type { Choice, Money } from '../cutting/model.ts';
import { counted } from '../plain/words.ts';
import { printMoney } from '../quantity/money.ts';

/** What sections save and cost against whole boards that are ripped, and which of the two is taken. Empty where nothing was chosen. */
export function choiceText(choice: Choice | undefined): string {
    if (!choice) return '';
    const { takes, boardsSaved, setUps, each } = choice, sum: Money = { ...each, amount: each.amount.mul(Math.abs(setUps)) };
    const boards = boardsSaved.amount.equals(0) ? 'as much for boards' : `${money({ ...boardsSaved, amount: boardsSaved.amount.abs() })} ${boardsSaved.amount.s > 0n ? 'less' : 'more'} for boards`;
    const more = setUps === 0 ? 'as many set-ups' : `${counted(Math.abs(setUps), 'set-up')} ${setUps > 0 ? 'more' : 'fewer'} at ${money(each)} (${money(sum)})`;
    return `Sections beside whole boards that are ripped: ${boards}, ${more}. Taken: ${takes}.`;
}

function money({ amount, currency }: Money): string {
    return printMoney(amount, currency);
}
