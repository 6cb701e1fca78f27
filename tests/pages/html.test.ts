import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { attributes, html, named, trusted } from '../../src/pages/shared/html.ts';
import { fileName } from '../../src/text/file-name.ts';
import { printable } from '../../src/pages/shared/printable.ts';
import { Sources } from '../../src/pages/shared/sources.ts';
import { HOSTILE } from './hostile.ts';
import { runs } from '../support/full.ts';

describe('the tag html', () => {
    test('puts words in as text', () => {
        expect(html`<p>${'<script>alert("1")</script> & \'more\''}</p>`.text).toBe('<p>&lt;script&gt;alert(&quot;1&quot;)&lt;/script&gt; &amp; &#39;more&#39;</p>');
    });

    test('nests, takes arrays of anything, and nothing for nothing', () => {
        const rows = ['a', 'b<'].map(word => html`<li>${word}</li>`);
        expect(html`<ul>${rows}${[undefined, null, false, 0, ['x', [html`<i></i>`]]]}</ul>`.text).toBe('<ul><li>a</li><li>b&lt;</li>0x<i></i></ul>');
    });

    test('takes no text that only looks like markup made by it', () => {
        const forged = { text: '<script>', toString: () => '<script>' };
        expect(() => html`${forged as never}`.text.includes('<script>')).toThrow();
        expect(html`${trusted('<svg></svg>')}`.text).toBe('<svg></svg>');
    });

    test('whatever is put in, no tag and no quote comes out of it', () => {
        fc.assert(fc.property(fc.string({ unit: 'binary' }), words => {
            const { text } = html`${words}`;
            expect(text).not.toMatch(/[<>"']/);
            expect(text.replace(/&(amp|lt|gt|quot|#39);/g, '')).not.toContain('&');
        }), { seed: 4, numRuns: runs(500) });
    });
});

describe('attributes', () => {
    test('are quoted, left out or alone', () => {
        expect(html`<a ${attributes({ title: 'say "so" <b>', hidden: true, disabled: false, id: undefined, 'data-at': 3 })}>`.text)
            .toBe('<a title="say &quot;so&quot; &lt;b&gt;" hidden data-at="3">');
    });

    test.each(['onclick', 'onmouseover', 'style', 'STYLE', 'OnLoad', 'a b', '"x', ''])('may not be called %s', name => {
        expect(() => attributes({ [name]: 'x' })).toThrow();
    });
});

describe('names', () => {
    test.each(HOSTILE)('stand apart from the words around them: %s', name => {
        const { text } = named(name);
        expect(text).toMatch(/^<bdi>[^<>]*<\/bdi>$/);
        expect(text).not.toMatch(/[\u202a-\u202e\u2066-\u2069]/);
    });
});

describe('a printed page', () => {
    const page = printable({ title: HOSTILE[0]!, body: html`<p>${HOSTILE[0]}</p>`, landscape: true });

    test('needs nothing from elsewhere, and runs nothing', () => {
        expect(page).not.toMatch(/<script|https?:|src=|href=/i);
        expect(page).toContain("default-src 'none'");
        expect(page).toContain('size:landscape');
    });

    test('is called by letters, digits and hyphens', () => {
        expect(fileName('plan', 'Café / «Größe» ..\\x', 'svg')).toBe('plan-café-größe-x.svg');
        expect(fileName('plan', '厨房', 'csv')).toBe('plan-厨房.csv');
        expect(fileName('plan', 'a'.repeat(500), 'html').length).toBeLessThan(180);
    });
});

test('a place in the text has one number', () => {
    const sources = new Sources(), at = (line: number) => ({ uri: 'file:///a', range: { start: { line, character: 0 }, end: { line, character: 4 } } });
    expect([sources.number(at(1)), sources.number(at(2)), sources.number(at(1))]).toEqual([0, 1, 0]);
    expect(sources.list).toEqual([at(1), at(2)]);
});
