import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { columns, wrap } from '../../src/report/look.ts';
import { cleanText } from '../../src/text/clean-text.ts';
import { runs } from '../support/full.ts';
import { counted } from '../../src/plain/words.ts';

describe('laying out text', () => {
    test('a paragraph breaks at spaces and never inside a length', () => {
        expect(wrap(`the longest is 12', 11' 11 3/4" of it and 4 x 1193.5 mm`, 12)).toEqual([`the longest`, `is 12',`, `11' 11 3/4"`, 'of it and', '4 x 1193.5 mm']);
    });

    test('no word is lost, and no line is longer than it must be', () => {
        fc.assert(fc.property(fc.array(fc.stringMatching(/^[a-z]{1,12}$/), { minLength: 1, maxLength: 40 }), fc.integer({ min: 12, max: 60 }), (words, width) => {
            const lines = wrap(words.join('  '), width);
            expect(lines.join(' ')).toBe(words.join(' '));
            for (const line of lines) expect(line.length).toBeLessThanOrEqual(width);
        }), { seed: 9, numRuns: runs(300) });
    });

    test('what would steer a terminal or turn the reading order round is left out', () => {
        expect(cleanText('a\u001b[2Jb\u202ec\r\nd\te')).toBe('a[2Jbc d e');
    });

    test('columns stand under each other', () => {
        expect(columns([['a', '1', 'x'], ['bbb', '22', '']], [1])).toEqual(['a     1  x', 'bbb  22']);
        expect([counted(1, 'board'), counted(2, 'board'), counted(0, 'foot', 'feet')]).toEqual(['1 board', '2 boards', '0 feet']);
    });
});
