import type { AfterCutting } from '../../cutting/after-cutting.ts';
import type { Money } from '../../cutting/model.ts';
import { printMoney } from '../../quantity/money.ts';
import { counted } from '../../plain/words.ts';
import { differenceText } from './words.ts';

/** What a price does not hold once something is cut: it stays that of the whole job as if nothing were. */
export function afterCuttingText({ boards, spoiled, bought, unpriced, toBuy, together, planned }: AfterCutting): string {
    const sum = (money: readonly Money[]): string => money.map(({ amount, currency }) => printMoney(amount, currency)).join(' + ') || 'nothing';
    const [all, before] = [together[0], planned[0]], more = together.length === 1 && planned.length === 1 && all && before && all.currency === before.currency
        ? differenceText(all.amount.sub(before.amount), all.currency) : undefined;
    return [
        `${[...boards > 0 ? [`${counted(boards, 'board')} ${boards === 1 ? 'is' : 'are'} cut already`] : [], ...spoiled > 0 ? [`${counted(spoiled, 'piece')} ${spoiled === 1 ? 'is' : 'are'} spoiled`] : []].join(' and ')}.`,
        `Boards bought for what is cut cost ${sum(bought)}${unpriced > 0 ? `, without ${counted(unpriced, 'board')} that ${unpriced === 1 ? 'has' : 'have'} no price` : ''}, and those still to buy ${sum(toBuy)}:`,
        `${sum(together)} in all, where this price has ${sum(planned)}${more === undefined ? '' : more === 'the same' ? ', the same' : `: ${more}`}.`,
        'What was lost, and the hours it takes again, are not in this price.',
    ].join(' ');
}
