import { Resvg } from '@resvg/resvg-js';
import { describe, expect, test } from 'vitest';
import { circle, group, line, polygon, rectangle, text, type Sheet } from '../../src/drawing/display-list.ts';
import { drawSheets, toSvg } from '../../src/drawing/index.ts';
import { PAPERS } from '../../src/drawing/paper.ts';
import { THEMES } from '../../src/drawing/themes.ts';
import { laid, ROOMS } from './support/rooms.ts';
import { texts } from './support/walk.ts';
import { all, readXml, wholeText } from './support/xml.ts';

function sheetOf(...items: Sheet['items']): Sheet {
    return { id: 'C-1', title: 'a title', description: 'a description', paper: PAPERS['17x11'], items };
}
const body = (sheet: Sheet) => toSvg(sheet, { theme: 'print', fonts: 'named', as: 'part of a page' });

describe('the file', () => {
    const { ceiling, pieces } = laid(ROOMS['three by two']!);
    const plan = drawSheets(ceiling, pieces)[0]!;
    const svg = toSvg(plan);
    const root = readXml(svg);

    test('is an image with a title and a description, in its true size', () => {
        expect(root.attributes).toMatchObject({ role: 'img', width: '17in', height: '11in', viewBox: '0 0 1224 792', xmlns: 'http://www.w3.org/2000/svg' });
        const named = root.attributes['aria-labelledby']!.split(' ').map(id => all(root).find(element => element.attributes['id'] === id)!);
        expect(named.map(element => element.name)).toEqual(['title', 'desc']);
        expect(named[0]!.text).toBe('Reflected ceiling plan, Parlor, Quince Lane 4');
        expect(named[1]!.text).toContain('6 coffers, 3 across and 2 down');
    });

    test('ties each piece to its id, its part and its words', () => {
        const drawn = all(root).filter(element => element.attributes['data-piece'] !== undefined);
        expect(drawn).toHaveLength(pieces.pieces.length);
        const side = drawn.find(element => element.attributes['data-piece'] === 'parlor.side-A-2-north')!;
        expect(side.attributes['data-part']).toBe('side');
        expect(side.attributes['data-source']).toMatch(/^parlor\.coffer:\d+:1$/);
        expect(side.children[0]!.name).toBe('title');
        expect(side.children[0]!.text).toMatch(/^Side, line A, bay 2, north side: 4' .*" at the short points$/);
    });

    test('needs nothing from elsewhere and runs nothing', () => {
        expect(svg).not.toMatch(/https?:\/\/(?!www\.w3\.org\/2000\/svg")/);
        expect(all(root).map(element => element.name)).not.toContain('script');
        expect(all(root).flatMap(element => Object.keys(element.attributes)).filter(name => /^on|href/i.test(name))).toEqual([]);
        expect(svg.match(/@font-face/g)).toHaveLength(2);
    });

    test('follows the reader, the editor and the printer where that is wanted', () => {
        const following = readXml(toSvg(plan, { theme: 'auto' }));
        const style = all(following).find(element => element.name === 'style')!.text;
        for (const rule of ['@media (prefers-color-scheme:dark)', '.vscode-light .coffer-sheet', '.vscode-dark .coffer-sheet', '.vscode-high-contrast .coffer-sheet', '@media print']) expect(style).toContain(rule);
        const selectors = style.replaceAll(/@font-face\{[^}]*\}/g, '').replaceAll(/\{[^{}]*\}/g, ';').split(/[;{}]/).map(part => part.trim()).filter(part => part !== '' && !part.startsWith('@'));
        // nothing in it reaches beyond the drawing that it stands in
        expect(selectors.flatMap(selector => selector.split(',')).filter(selector => !selector.includes('.coffer-sheet'))).toEqual([]);
    });

    test('asks for its own paper as a file, and leaves that to the page it is a part of', () => {
        expect(svg).toContain('@page{size:17in 11in;margin:0}');
        expect(toSvg(plan, { as: 'part of a page' })).not.toContain('@page');
    });

    test.each(['print', 'auto', 'dark'] as const)('%s: a program that knows no style sheets shows the same lines on the same ground', theme => {
        const drawn = toSvg(plan, { theme, fonts: 'named' }), bare = drawn.replace(/<style>[^]*?<\/style>/, '');
        const shapes = all(readXml(bare)).filter(({ name }) => name === 'path' || name === 'circle');
        expect(shapes.filter(({ attributes }) => attributes['fill'] === undefined || attributes['fill'].includes('var('))).toEqual([]);
        expect(shapes.filter(({ attributes }) => /\bp-/.test(attributes['class'] ?? '') && attributes['stroke'] === undefined)).toEqual([]);
        const pixels = (svg: string): Buffer => new Resvg(svg, { font: { loadSystemFonts: false }, fitTo: { mode: 'width', value: 900 } }).render().pixels;
        const wanted = theme === 'auto' ? toSvg(plan, { theme: 'print', fonts: 'named' }) : drawn;
        expect(pixels(bare).equals(pixels(wanted))).toBe(true);
        expect(bare).toContain(theme === 'dark' ? `fill="${THEMES.dark.paper}"` : 'fill="#ffffff"');
    });

    test.each(['light', 'dark', 'print'] as const)('%s: fixed colors where they are wanted', theme => {
        const fixed = toSvg(plan, { theme, fonts: 'named' });
        expect(fixed).not.toContain('var(');
        expect(fixed).toContain(THEMES[theme].soft);
        readXml(fixed);
    });

    test('says the file as the caller names it', () => {
        const named = drawSheets(ceiling, pieces, { fileName: uri => uri.replace('file:///', '/') })[0]!;
        expect(toSvg(named)).toContain('data-source="/work%20shop/quince-lane/parlor.coffer:');
    });
});

test('names from the job are text, whatever they hold', () => {
    const { ceiling, pieces } = laid(ROOMS['hostile']!);
    for (const sheet of drawSheets(ceiling, pieces)) {
        const svg = toSvg(sheet);
        const root = readXml(svg);
        const known = new Set(['svg', 'title', 'desc', 'style', 'path', 'g', 'text', 'tspan', 'circle']);
        expect(all(root).map(element => element.name).filter(name => !known.has(name))).toEqual([]);
        expect(all(root).flatMap(element => Object.keys(element.attributes)).filter(name => /^on|href/i.test(name))).toEqual([]);
        expect(all(root).filter(element => element.name === 'text').map(wholeText).some(words => words.startsWith('<script>alert("x")</script> &'))).toBe(true);
        expect(svg).not.toContain('<script');
        expect(svg).not.toMatch(/[\u0000-\u0008\u202E\uFFFE]/);
    }
});

test('letters of a second font file are carried along only where they are used', () => {
    const { ceiling, pieces } = laid(ROOMS['hostile']!);
    expect(toSvg(drawSheets(ceiling, pieces)[0]!).match(/@font-face/g)).toHaveLength(3);
});

test('a stretch that the font lacks is held to its width', () => {
    const svg = body(sheetOf(text([0, 0], 'a\u{1F3DA}b', { size: 10 })));
    expect(svg).toContain('>a<tspan textLength="11" lengthAdjust="spacingAndGlyphs">\u{1F3DA}</tspan>b</text>');
});

test('where the font may be another, every line of text is held to its width, with the space between its letters', () => {
    const svg = toSvg(sheetOf(text([0, 0], '\u{1F3DA}', { size: 10, spaced: 2 })), { fonts: 'held' });
    expect(svg).toContain(' letter-spacing="2" textLength="13" lengthAdjust="spacingAndGlyphs">\u{1F3DA}</text>');
    expect(svg).not.toContain('@font-face');
});

describe('shapes', () => {
    test('strokes of one pen become one path', () => {
        const svg = body(sheetOf(line([0, 0], [10, 0], 'thin'), line([0, 1], [10.004, 1.25], 'thin'), line([0, 2], [0, 5], 'edge')));
        expect(svg).toContain('<path class="p-thin" d="M0 0h10M0 1l10 .25"/>\n<path class="p-edge" d="M0 2v3"/>');
    });
    test('filled shapes, circles, text turned upward', () => {
        const svg = body(sheetOf(rectangle(1, 2, 4, 6, 'cut', 'paper'), polygon([[0, 0], [1, 1], [0.5, -2]], null, 'wash'), circle([3, 4], 1.5, 'thin'), text([5, 6], '<&>', { turned: 90, anchor: 'middle', weight: 600, tone: 'soft' })));
        expect(svg).toContain('<path class="p-cut f-paper" d="M1 2h3v4h-3z"/>');
        expect(svg).toContain('<path class="f-wash" d="M0 0l1 1l-.5-3z"/>');
        expect(svg).toContain('<circle class="p-thin" cx="3" cy="4" r="1.5"/>');
        expect(svg).toContain('<text x="5" y="6" font-size="8.4" text-anchor="middle" font-weight="600" class="f-soft" transform="rotate(-90 5 6)">&lt;&amp;&gt;</text>');
    });
    test('groups carry their names, escaped', () => {
        const svg = body(sheetOf(group('a b', { title: '<t>', piece: '"p"', part: 'side', source: 'x.coffer:1:2' }, [])));
        expect(svg).toContain('<g id="C-1.a_20_b" data-piece="&quot;p&quot;" data-part="side" data-source="x.coffer:1:2">\n<title>&lt;t&gt;</title>\n</g>');
    });
});

test.each(Object.entries(THEMES))('%s: words stand out from what they stand on', (_theme, palette) => {
    for (const ground of ['paper', 'wash'] as const) {
        for (const tone of ['ink', 'soft', 'accent'] as const) expect(contrast(palette[tone], palette[ground])).toBeGreaterThanOrEqual(4.5);
    }
});

test('a drawing is a good deal smaller than its font', () => {
    const { ceiling, pieces } = laid(ROOMS['three by two']!);
    for (const sheet of drawSheets(ceiling, pieces)) {
        expect(body(sheet).length).toBeLessThan(100_000);
        expect(toSvg(sheet).length).toBeLessThan(170_000);
        expect(texts(sheet.items).length).toBeGreaterThan(30);
    }
});

/** Contrast of two colors as WCAG 2.2 defines it, from relative luminance. */
function contrast(a: string, b: string): number {
    const [light, dark] = [luminance(a), luminance(b)].sort((x, y) => y - x) as [number, number];
    return (light + 0.05) / (dark + 0.05);
}
function luminance(color: string): number {
    const [r, g, b] = [1, 3, 5].map(i => parseInt(color.slice(i, i + 2), 16) / 255)
        .map(c => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4)) as [number, number, number];
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}
