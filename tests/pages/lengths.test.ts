import { describe, expect, test } from 'vitest';
import { plainValue } from '../../src/language/lexer/pasted.ts';
import { attributes, html } from '../../src/pages/shared/html.ts';
import { inStretches } from '../../src/pages/shared/lengths.ts';
import { readLength } from '../../src/quantity/read-length.ts';

describe('lengths on a page', () => {
    test.each([
        [`3' 6 5/8"`, [`3' 6 5⁄8"`]], [`16'`, [`16'`]], [`~5 1/2" wide`, [`~5 1⁄2"`]], [`4 × 3' 8" of 3/4" x 5 1/2"`, [`3' 8"`, `3⁄4" x 5 1⁄2"`]], [`rip 5 1/2" ± 1/64", 19 mm × 140 mm`, [`5 1⁄2" ± 1⁄64"`, '19 mm × 140 mm']], [`-1/32" and 1239.5 mm`, ['-1⁄32"', '1239.5 mm']],
        [`7" wide and 7 1\u20442" deep`, ['7"', '7 1\u20442"']], [`the carpenter's 3 boards, 1/2 of them`, []], [`the 8's`, []], ['side-A-1', []],
    ])('%s', (words, lengths) => {
        expect(inStretches(words).filter(({ isLength }) => isLength).map(each => each.words)).toEqual(lengths);
        expect(inStretches(words).map(each => each.words).join('').replaceAll('⁄', '/')).toBe(words.replaceAll('\u2044', '/'));
    });

    test('are set in text and not in tags; what is set can be read as it is typed', () => {
        const page = html`<p ${attributes({ title: `3' 6 5/8"` })} class="${'a 1/2" b'}">${`is ${`3' 6 5/8"`} <long>`}</p>`.text;
        expect(page).toBe('<p title="3&#39; 6 5/8&quot;" class="a 1/2&quot; b">is <span class="len">3&#39; 6 5⁄8&quot;</span> &lt;long&gt;</p>');
        expect(readLength(plainValue('3\' 6 5\u20448"'))).toEqual(readLength(`3' 6 5/8"`));
    });
});
