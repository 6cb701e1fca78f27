import { describe, expect, test } from 'vitest';
import { toSvg, type Sheet } from '../../src/drawing/index.ts';
import { bidPdf } from '../../src/exports/pdf/bid.ts';
import { readFile } from '../../src/language/read-file.ts';
import { bidContent, type BidContent } from '../../src/report/bid/content.ts';
import { printedBid } from '../../src/pages/bid/printed.ts';
import { takeOffOf, inspect } from '../../src/pipeline/inspect.ts';
import { price, priceWith } from '../../src/pipeline/price.ts';
import { SOUND } from '../../src/pipeline/standing.ts';
import { TestWorkspace } from '../support/workspace.ts';
import { fontsOf, hasPoppler, pageSizes, wordsOf } from './support/poppler.ts';

const text = (title: string, more = ''): string => `edition 1
stock poplar-1x4 { size 1x4; species yellow-poplar; lengths 8', 16'; price 1.85 USD per ft }
stock poplar-1x6 { size 1x6; species yellow-poplar; lengths 8', 16'; price 3 USD per ft }
profile box {
  blocking { stock poplar-1x4 }
  sides { stock poplar-1x6; corners butted past north-south }
  cleats { rip 3/4" x 3/4" from poplar-1x4 }
  bottom { stock poplar-1x4 }
}
job "${title}" { client "Mara & Søren <b>Ødegård</b>"; currency "USD" }
room den "Reading room" {
  wall north 15' 7"
  wall east 12'
  grid { coffers-north 3; coffers-east 2; beams box; through north-south }
  fixture lamp light at 3', 3'
  fixture head sprinkler at 6', 3'
}
labor {
  crew 2 rate 61.37 USD per h
  layout 12 min per crossing; blocking 3 min per ft; sides 5 min per ft; cleats 2 min per ft; bottom 4 min per ft
  corner 4 min per joint; butt 6 min per joint; splice 9 min per joint; coffer 20 min per coffer; set-up 6 min per set-up
}
bid {
  overhead 11%; profit 17% of price; contingency 4%; tax 6.25% on everything; deposit 30%; valid-days 45
  contractor "Fernhill Trim"
  allowance 250 USD for "touch-up paint"
  supplies { screws 0.11 USD per piece; nails 0.02 USD per piece; biscuits 0.09 USD per piece; glue 0.45 USD per fl-oz; filler 0.60 USD per fl-oz; caulk 5.80 USD per tube }
  scope "Old crown is taken down first."
  exclusion "Painting."
  terms "A third on signing, the rest when it is up."
}
alternate two "Two coffers by two" { den.grid.coffers-north 2 }
alternate impossible { den.grid.beams.bottom.rip 9" }
${more}`;

const ROOM_TEXT = text('Pear Row 3');

async function bidOf(title: string, date?: string, given = text(title)): Promise<{ bid: BidContent; secrets: string[] }> {
    const workspace = await TestWorkspace.open({ 'den.coffer': given });
    const content = readFile(workspace.document('den.coffer')), { rooms, job, alternates } = content;
    const priced = price(rooms, job);
    const house = { job, alternates, rooms: inspect(content).layouts.map(({ room, ceiling }) => ({ room, standing: SOUND, takeOff: takeOffOf(ceiling!) })) };
    const others = alternates.map(alternate => priceWith(alternate, rooms, job, { nameOf: uri => uri }));
    const { sums, materials, labor, additions } = priced.estimate;
    const inner = [sums.materials, sums.labor, sums.cost, sums.profit, ...materials.map(({ each }) => each), ...labor.flatMap(({ amount }) => amount ?? []), ...additions.filter(({ kind }) => !['allowance', 'tax'].includes(kind)).map(({ amount }) => amount)];
    return { bid: bidContent({ house, priced, alternates: others }, date), secrets: ['61.37', '17 %', '11 %', ...inner.map(one => one.valueOf().toFixed(2))] };
}
/** Words as a reader sees them, whatever lines they are broken into. */
const plain = (words: string): string => words.replace(/<[^>]*>/g, ' ').replaceAll('&amp;', '&').replaceAll('&#39;', "'").replaceAll('&quot;', '"').replaceAll(/\s+/g, ' ').replaceAll(',', '');

describe('the client\'s page', () => {
    test('says what is done, for how much and on which terms, and no cost of ours', async () => {
        const { bid, secrets } = await bidOf('Pear Row 3', '2026-11-25');
        const page = plain(printedBid(bid));
        expect(bid.draft).toEqual([]);
        for (const words of ['Fernhill Trim', '2026-11-25', 'Reading room', '6 coffers 3 by 2', 'Old crown is taken down first.', 'Painting.', '45 days', 'Due on signing 30 %', 'Two coffers by two', '250.00 for touch-up paint']) expect(page).toContain(words);
        expect(page).toContain('lights sprinklers');
        expect(page).not.toContain('impossible');
        for (const secret of secrets) expect(page).not.toContain(secret);
    });

    test('what it is told is text, whatever it holds', async () => {
        const { bid } = await bidOf('<script>alert(1)</script> \\u202Eevil 🪚', '"><img src=x>');
        const page = printedBid(bid);
        expect(page).not.toMatch(/<script|<img|<b>/);
        expect(page).toContain('&lt;script&gt;');
        expect(page).toContain("default-src 'none'");
        expect(page).not.toMatch(/(?:src|href)="|url\((?!data:)/);
    });
});

/** What a sheet says to be, and the sheets its plan points to, in its notes and in its bubbles. */
const lettered = (sheet: Sheet) => {
    const svg = toSvg(sheet, { as: 'part of a page' }), pages = [...svg.matchAll(/>(C-\d+)</g)].map(found => found[1]!), notes = [...svg.replaceAll(/<[^>]*>/g, ' ').matchAll(/section on\s+(C-\d+)/g)].map(found => found[1]!);
    return { id: sheet.id, pages: new Set(pages), notes, bubbles: [...svg.matchAll(/Section (\d+) on sheet (C-\d+)/g)].map(([, number, at]) => [number, at]) };
};

describe('the sheets of a bid', () => {
    const TWO_SIZES = ROOM_TEXT.replace('profile box', 'profile low like box { sides.stock poplar-1x4 }\nprofile box').replace('fixture lamp', 'line A { beams low }\n  fixture lamp');

    test('are numbered on through its rooms, each number once, and a plan points to those that are there', async () => {
        const second = TWO_SIZES.slice(TWO_SIZES.indexOf('room den'), TWO_SIZES.indexOf('labor {')).replace('room den "Reading room"', 'room study "Study"');
        const { bid } = await bidOf('Pear Row 3', undefined, TWO_SIZES + second), sheets = bid.drawings.map(lettered);
        expect(sheets.map(({ id }) => id)).toEqual(['C-1', 'C-2', 'C-3', 'C-4', 'C-5', 'C-6']);
        for (const [i, { id, pages, notes, bubbles }] of sheets.entries()) {
            expect(pages).toContain(id);
            const pointed = i % 3 > 0 ? [] : [`C-${i + 2}`, `C-${i + 3}`];
            expect(notes).toEqual(pointed);
            expect(new Set(bubbles.map(([, at]) => at))).toEqual(new Set(pointed));
            for (const [number, at] of bubbles) expect(at).toBe(`C-${number}`);
            if (i % 3 > 0) expect([...pages]).toEqual([id]);
        }
    });
});

describe('who judges what carries the beams', () => {
    const WRAPPED = 'profile boxed { wraps 3" x 5" clearance 1/4"; sides { stock poplar-1x6; corners butted past north-south }; cleats { rip 3/4" x 3/4" from poplar-1x4 }; bottom { stock poplar-1x4 } }\n';
    test.each([
        ['all from the framing', ROOM_TEXT, 'The beams hang from the ceiling\'s framing. Whether it may carry them,'],
        ['one around what is there', WRAPPED + ROOM_TEXT.replace('fixture lamp', 'line 1 { beams boxed }\n  fixture lamp'), 'The beams of line 1 are built around what is there and hang on it; the others hang from the ceiling\'s framing. Whether each may carry them and be fastened to,'],
        ['all around what is there', WRAPPED + ROOM_TEXT.replace('beams box;', 'beams boxed;'), 'The beams are built around what is there and hang on it. Whether it may carry them and be fastened to,'],
    ])('%s', async (_, given, words) => {
        const { bid } = await bidOf('Pear Row 3', undefined, given.replace(/^(profile boxed .*\n)(edition 1\n)/, '$2$1'));
        expect(bid.cautions.at(-1)).toBe(`${words} and what headroom must stay, is for the local code and those who are licensed to judge it.`);
    });
});

describe.runIf(hasPoppler())('the client\'s page as PDF, read back by another program', () => {
    test('the words of the page, the drawings on their own paper at their own scale, every letter of an embedded font', async () => {
        const { bid, secrets } = await bidOf('Pear Row 3', '2026-11-25');
        const pdf = await bidPdf(bid);
        expect(Buffer.compare(await bidPdf(bid), pdf)).toBe(0);
        const pages = wordsOf(pdf), count = pages.length - bid.drawings.length, first = pages.slice(0, count).join('\n'), drawings = pages.slice(count);
        for (const words of ['Bid: Pear Row 3', 'Fernhill Trim', 'Mara & Søren <b>Ødegård</b>', 'Painting.', 'Two coffers by two', 'For the client']) expect(first).toContain(words);
        expect(plain(first)).toContain(plain(bid.price.find(({ strong }) => strong)!.amount));
        const all = plain([first, ...drawings].join(' '));
        for (const secret of secrets) expect(all).not.toContain(secret);
        expect(drawings.join(' ')).toMatch(/\d \d+⁄\d+"/);
        expect(pageSizes(pdf, pages.length))
            .toEqual([...Array.from({ length: count }, () => [612, 792]), ...bid.drawings.map(({ paper }) => [paper.width, paper.height])]);
        const fonts = fontsOf(pdf);
        expect(fonts.length).toBeGreaterThan(1);
        for (const font of fonts) expect(font).toMatch(/BarlowSemiCondensed.* yes yes yes /);
    });

    test('long lists go on over pages; letters that the font has not got are boxes, not gaps', async () => {
        const { bid } = await bidOf('Pear Row 3');
        const long = { ...bid, title: '漢字 ☃', scope: Array.from({ length: 90 }, (_, i) => `Item ${i}, ${'a long line of words '.repeat(6)}`), drawings: [] };
        const pages = wordsOf(await bidPdf(long));
        expect(pages.length).toBeGreaterThan(2);
        for (let i = 0; i < 90; i++) expect(pages.join('\n')).toContain(`Item ${i},`);
        expect(pages[0]).toMatch(/Bid: (?:\?\?|□□) (?:\?|□)/);
    });
});
