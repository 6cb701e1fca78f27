import { expect, test } from 'vitest';
import { JOB } from '../../standing/said-job.ts';
import { some } from '../../support/full.ts';
import { atTheirOwnClock, Hand } from './hand.ts';

atTheirOwnClock();

/** What a text that is right so far may be told at rest: what its block still lacks. */
const STILL_TO_COME = /still needs|does not show|^How big is /;
/** As the protocol counts. */
const ERROR = 1;

/** The innermost blocks of a job that says everything, and its short top-level lines: from the keyword to its closing brace. */
function blocksOf(text: string): { readonly name: string; readonly from: number; readonly to: number }[] {
    const open: number[] = [], found: { name: string; from: number; to: number; depth: number }[] = [];
    for (let i = 0; i < text.length; i++) {
        if (text[i] === '"' && text[i - 1] !== '\\') {
            // a mark of inches follows a figure; a text begins after a space and ends on its line
            if (!/[\d]/.test(text[i - 1]!)) i = text.indexOf('"', i + 1);
        } else if (text.startsWith('//', i)) i = text.indexOf('\n', i);
        else if (text[i] === '{') open.push(text.lastIndexOf('\n', i) + 1);
        else if (text[i] === '}') {
            const from = open.pop()!, lineEnd = text.indexOf('\n', i);
            if (text.slice(i + 1, lineEnd).trim() === '') found.push({ name: text.slice(from, text.indexOf('{', from)).trim(), from, to: lineEnd, depth: open.length });
        }
    }
    const whole = found.filter(({ depth, from, to }) => depth === 0 && to - from < 700);
    const inner = found.filter(({ depth, from }) => depth === 1 && !whole.some(outer => outer.from <= from && from < outer.to));
    return [...whole, ...inner].sort((a, b) => a.from - b.from);
}

const blocks = blocksOf(JOB);

test('the blocks that are typed are those of all kinds of words', () => {
    expect(blocks.length).toBeGreaterThan(12);
    const names = blocks.map(({ name }) => name.split(' ')[0]);
    for (const word of ['stock', 'sides', 'survey', 'contract', 'measured', 'grid', 'seasons', 'labor', 'bid']) expect(names).toContain(word);
});

// every fourth block everyday, all of them with FULL
const cases = some(blocks, 4).map(({ name, from, to }) => [name, from, to] as const);
test.each(cases)('%s: typed at the speed of a hand, nothing is wrong, and little changes', { timeout: 600_000 }, async (_, from, to) => {
    const block = JOB.slice(from, to), without = JOB.slice(0, from) + JOB.slice(to);
    const hand = await Hand.at(JOB), right = new Set(hand.shown);
    await hand.edit(from, to - from, '');
    await hand.rest();
    expect(hand.text).toBe(without);
    const lacking = new Set(hand.shown), before = hand.published.length;
    await hand.type(block, from);
    await hand.rest();
    expect(new Set(hand.shown)).toEqual(right);
    // what the rest of the job says of pieces and beams that are not said yet is true for so long, and elsewhere
    const first = without.slice(0, from).split('\n').length - 1, last = first + block.split('\n').length - 1, published = hand.published.slice(before);
    const told = published.flat().filter(({ severity, range: { start: { line } } }) => severity === ERROR && line >= first && line <= last)
        .map(({ message }) => message).filter(message => !right.has(message) && !lacking.has(message) && !STILL_TO_COME.test(message));
    expect([...new Set(told)]).toEqual([]);
    // the same in other lines is no change to who reads it
    const words = published.map(each => each.map(({ message }) => message).sort().join('\n'));
    expect(words.filter((each, i) => each !== words[i - 1]).length).toBeLessThan(6);
});
