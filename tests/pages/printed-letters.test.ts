import { expect, test } from 'vitest';
import { toSvg } from '../../src/drawing/index.ts';
import { html, trusted } from '../../src/pages/shared/html.ts';
import { printable } from '../../src/pages/shared/printable.ts';
import { drawn, ROOMS } from '../drawing/support/rooms.ts';

const faces = (page: string): string[] => [...page.matchAll(/@font-face\{font-family:'([^']*)';font-weight:(\d+)/g)].map(([, family, weight]) => `${family!} ${weight!}`);

test('a printed page brings its letters along, once, whether it has drawings or none', () => {
    const sheets = drawn(ROOMS['three by two']!);
    const drawings = sheets.map(sheet => trusted(toSvg(sheet, { as: 'part of a page', theme: 'print' })));
    expect(faces(drawings.join('')).length).toBeGreaterThan(2);
    const own = ['Barlow Semi Condensed 400', 'Barlow Semi Condensed 600'];
    expect(faces(printable({ title: 'Drawings', body: html`${drawings}` }))).toEqual(own);
    expect(faces(printable({ title: 'Words', body: html`<p>${'3/4" x 1 1/2"'}</p>` }))).toEqual(own);
});

test('letters of other languages come where a page has them', () => {
    expect(faces(printable({ title: 'Words', body: html`<p>${'Łódź'}</p>` }))).toHaveLength(4);
});

test('words of a job that look like letters stay', () => {
    const words = `@font-face{font-family:'x'}\n`;
    expect(printable({ title: 'Words', body: html`<p>${words}</p>` })).toContain('<p>@font-face{font-family:&#39;x&#39;}');
});
