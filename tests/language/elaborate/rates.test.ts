import { expect, test } from 'vitest';
import { readFile } from '../../../src/language/read-file.ts';
import { TICKS_PER_FOOT, TICKS_PER_INCH } from '../../../src/quantity/ticks.ts';
import { TestWorkspace } from '../../support/workspace.ts';

const SHOP = `edition 1
labor {
  crew       2 rate 66 USD per h
  blocking   3 min per ft
  spacers    4 min per piece
  first-bay  100%
}
bid {
  overhead   12%
  profit     15%
  allowance  250 USD for "touch-up paint"
  allowance  20 USD
  supplies {
    screws  0.10 USD per piece
    glue    0.40 USD per fl-oz
    caulk   6 USD per tube
  }
  terms  "A third on signing."
  terms  "The rest when it is up."
}
`;
const HOUSE = `edition 1
job "Pear Row 3" { currency "USD" }
labor {
  blocking  5 min per ft
  day       7.5 h
}
bid {
  profit     10% of cost
  allowance  90 USD for "a light moved"
}
room den { wall north 15'; wall east 12' }
`;
const open = (texts: Record<string, string>) => TestWorkspace.open(texts);
const ratesIn = (workspace: TestWorkspace, path: string) => readFile(workspace.document(path)).rates;

test('rates hold in their folder and below, and a folder below says only what differs', async () => {
    const workspace = await open({ 'rates.coffer': SHOP, 'pear/house.coffer': HOUSE });
    const { labor, bid } = ratesIn(workspace, 'pear/house.coffer');
    expect(labor.crew!.value).toBe(2);
    expect([labor.rate!.value.amount.toFraction(), labor.rate!.value.currency]).toEqual(['66', 'USD']);
    expect(labor.byLength.blocking!.value.mul(TICKS_PER_FOOT).toFraction()).toBe('5');
    expect(labor.byCount.spacer!.value.toFraction()).toBe('4');
    expect([labor.day.value.toFraction(), labor.day.said, labor.firstBay!.value.toFraction()]).toEqual(['450', true, '1']);
    expect(bid.overhead!.value.toFraction()).toBe('3/25');
    expect([bid.profit!.value.share.toFraction(), bid.profit!.value.of]).toEqual(['1/10', 'cost']);
    expect(bid.allowances.map(({ value }) => [value.amount.toFraction(), value.for])).toEqual([['90', 'a light moved']]);
    expect(bid.terms.map(({ value }) => value)).toEqual(['A third on signing.', 'The rest when it is up.']);
    // a US fluid ounce is 231/128 cubic inches (NIST Handbook 44, appendix C)
    expect(bid.supplies.glue!.value.amount.mul(TICKS_PER_INCH ** 3).mul(231).div(128).toFraction()).toBe('2/5');
    expect(bid.supplies.caulk!.value.amount.toFraction()).toBe('6');
    expect(ratesIn(workspace, 'rates.coffer').bid.profit!.value).toMatchObject({ of: 'price' });
});

test('a change of rates above reaches the house, and nothing else makes them anew', async () => {
    const workspace = await open({ 'rates.coffer': SHOP, 'pear/house.coffer': HOUSE, 'pear/den.coffer': 'edition 1\n' });
    const before = ratesIn(workspace, 'pear/house.coffer');
    await workspace.edit({ 'pear/den.coffer': 'edition 1\n\n' });
    expect(ratesIn(workspace, 'pear/den.coffer')).toBe(before);
    await workspace.edit({ 'rates.coffer': SHOP.replace('12%', '14%') });
    expect(ratesIn(workspace, 'pear/house.coffer').bid.overhead!.value.toFraction()).toBe('7/50');
    await workspace.edit({ 'rates.coffer': undefined });
    expect(ratesIn(workspace, 'pear/house.coffer').bid.overhead).toBeUndefined();
});

test('a rate and a time by the day are reckoned with the hours of the nearest folder that says how many they are', async () => {
    const workspace = await open({ 'a.coffer': 'edition 1\nlabor { day 10 h }\n', 'b/b.coffer': 'edition 1\nlabor { crew 2 rate 600 USD per day; coffer 0.25 day per coffer }\n', 'b/c/c.coffer': 'edition 1\nlabor { day 6 h; layout 1 day per crossing }\n' });
    const of = (path: string) => ratesIn(workspace, path).labor;
    expect([of('b/b.coffer').rate!.value.amount.toFraction(), of('b/b.coffer').byCount.coffer!.value.toFraction(), of('b/b.coffer').day.value.toFraction()]).toEqual(['60', '150', '600']);
    expect([of('b/c/c.coffer').byCount.layout!.value.toFraction(), of('b/c/c.coffer').rate!.value.amount.toFraction()]).toEqual(['360', '60']);
    await workspace.edit({ 'a.coffer': 'edition 1\n' });
    expect(of('b/b.coffer').rate!.value.amount.toFraction()).toBe('75');
});

test.each([
    ['labor { crew 0 }', /one person or more/], ['labor { crew 1.5 }', /whole number/], ['labor { sides -3 min per ft }', /0 or more/],
    ['labor { corner 16 min per coffer }', /`corner` goes by the joint: write `per joint`, not `per coffer`\./], ['labor { spacers 2 * (1 min per board) }', /write `per piece`, not `per board`/],
    ['bid { supplies { screws 9.50 USD per board } }', /`screws` goes by the piece/], ['bid { supplies { caulk 6 USD per piece } }', /by the tube/],
    ['bid { delivery 90 USD per board }', /`delivery` does not go by anything that is counted: leave out `per board`/], ['room r { wall north 12\' per joint; wall east 9\' }', /leave out `per joint`/],
    ['stock s { size 1x6; price 9 USD per tube }', /write `per board`, `per sheet` or `per piece`, not `per tube`/],
    ['let far = 2 days\nlabor { layout far }', /How many hours is a day/], ['labor { day 1 day }', /How many hours is a day/],
    ['bid { overhead -5% }', /0 or more/], ['bid { delivery -5 USD }', /0 or more/],
])('%s is wrong', async (text, words) => {
    const findings = readFile((await open({ 'a.coffer': `edition 1\n${text}\n` })).document('a.coffer')).findings;
    expect(findings.map(({ message }) => message)).toEqual([expect.stringMatching(words)]);
});

test('rates in another money than the job is in are said at the job', async () => {
    const up = await open({ 'job.coffer': 'edition 1\njob "Pear Row 3" { currency "EUR" }\n', 'up/rates.coffer': SHOP, 'up/den.coffer': 'edition 1\nroom den { wall north 15\'; wall east 12\' }\n' });
    expect(readFile(up.document('up/den.coffer')).findings).toMatchObject([{ rule: 'mixed-currency', at: { range: { start: { line: 1, character: 5 } } } }]);
    const workspace = await open({ 'rates.coffer': SHOP, 'pear/house.coffer': HOUSE.replace('"USD"', '"EUR"') });
    expect(readFile(workspace.document('pear/house.coffer')).findings).toMatchObject([{ rule: 'mixed-currency', related: [{ at: { uri: expect.stringContaining('rates.coffer') } }] }]);
});
