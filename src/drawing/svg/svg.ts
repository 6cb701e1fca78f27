import type { Circle, Group, Item, Line, Polyline, Sheet, TextRun } from '../display-list.ts';
import { isInFont, runWidth } from '../text/measure-text.ts';
import type { Tone } from '../themes.ts';
import type { PenName } from '../pens.ts';
import { escapeAttribute, escapeText } from '../../text/xml.ts';
import { fontFaces } from './fonts.ts';
import { coordinate, pathData } from './path-data.ts';
import { attributesIn, NO_ATTRIBUTES, type ShapeAttributes } from './shape-attributes.ts';
import { SHEET_CLASS, styleSheet, type SvgTheme } from './style-sheet.ts';
import type { SvgText } from '../../text/fit.ts';
import { atOnce, type Steps } from '../../plain/steps.ts';

interface SvgOptions {
    /** Black on white as on paper, whatever the reader's colors are, unless said. */
    readonly theme?: SvgTheme;
    /**
     * `named`: the font is not put into the file; for a page or a renderer that has it already. `held`: nor is it, and lines of text keep their width
     * in whatever font steps in, so that they fit where they stand.
     */
    readonly fonts?: 'embedded' | 'named' | 'held';
    /**
     * `part of a page`: says nothing of the paper it is printed on, which is then the page's matter. A file's shapes carry their colors as attributes too,
     * for programs that know no style sheets.
     */
    readonly as?: 'file' | 'part of a page';
    /** `none`: what is drawn lies on whatever is behind it, whose color should be near that of the theme's paper. */
    readonly paper?: 'none';
}

/** A sheet as one SVG file that needs nothing else: true to scale in print, readable by screen readers, the same bytes every time. */
export function toSvg(sheet: Sheet, options: SvgOptions = {}): SvgText {
    return atOnce(svgInSteps(sheet, options));
}

/** Parts of a sheet that are written in one step. */
const IN_STEP = 24;

/** The same step by step. */
export function* svgInSteps(sheet: Sheet, options: SvgOptions): Steps<SvgText> {
    const { width, height, cssWidth, cssHeight } = sheet.paper;
    const titleId = `${idText(sheet.id)}.title`;
    const descriptionId = `${idText(sheet.id)}.description`;
    const isFile = options.as !== 'part of a page', theme = options.theme ?? 'print', looks = isFile ? attributesIn(theme) : NO_ATTRIBUTES;
    const page = isFile ? `@page{size:${cssWidth} ${cssHeight};margin:0}\n` : '';
    const fonts = (options.fonts ?? 'embedded') === 'embedded' ? fontFaces(sheet) : '';
    yield;
    const items = yield* itemsInSteps(sheet.items, { id: sheet.id, looks, held: options.fonts === 'held' });
    return [
        `<svg xmlns="http://www.w3.org/2000/svg" class="${SHEET_CLASS}" width="${cssWidth}" height="${cssHeight}" `
        + `viewBox="0 0 ${coordinate(width)} ${coordinate(height)}" role="img" aria-labelledby="${titleId} ${descriptionId}"${looks.all}>`,
        `<title id="${titleId}">${escapeText(sheet.title)}</title>`,
        `<desc id="${descriptionId}">${escapeText(sheet.description)}</desc>`,
        `<style>${page}${styleSheet(theme, fonts)}</style>`,
        ...options.paper === 'none' ? [] : [`<path class="f-paper"${looks.of(null, 'paper')} d="M0 0h${coordinate(width)}v${coordinate(height)}h-${coordinate(width)}z"/>`],
        ...items,
        '</svg>',
        '',
    ].join('\n') as SvgText;
}

/**
 * A sheet as markup inside a page that has the font and the style sheet (sheetRules) itself and decides on its size. It says
 * nothing of files, and is no single picture to a screen reader: its groups may be what somebody walks through. `attributesOf` a group besides its
 * id: what a pane's script finds it by and a screen reader calls it.
 */
export function toPaneSvg(sheet: Sheet, attributesOf: AttributesOf = () => ({})): SvgText {
    const { width, height } = sheet.paper;
    return [
        `<svg xmlns="http://www.w3.org/2000/svg" id="${idText(sheet.id)}" class="${SHEET_CLASS}" viewBox="0 0 ${coordinate(width)} ${coordinate(height)}" role="group" aria-label="${escapeAttribute(sheet.title)}">`,
        `<desc>${escapeText(sheet.description)}</desc>`,
        ...itemsSvg(sheet.items, { id: sheet.id, looks: NO_ATTRIBUTES, held: false, attributesOf }),
        '</svg>',
    ].join('\n') as SvgText;
}

type AttributesOf = (group: Group) => Readonly<Record<string, string>>;

/** The sheet that groups belong to, how they are told apart there, what its shapes say of their looks themselves, and whether all its text keeps its width. */
interface Names {
    readonly id: string;
    readonly looks: ShapeAttributes;
    readonly held: boolean;
    readonly attributesOf?: AttributesOf;
}

/** Strokes of one pen that follow each other become one path: a hatch is one element, not a hundred. */
function itemsSvg(items: readonly Item[], names: Names): readonly string[] {
    return atOnce(itemsInSteps(items, names));
}

function* itemsInSteps(items: readonly Item[], names: Names): Steps<readonly string[]> {
    const lines: string[] = [];
    let strokes: (Line | Polyline)[] = [];
    const flush = () => {
        if (strokes.length > 0) lines.push(`<path class="${classes(strokes[0]!.pen, null)}"${names.looks.of(strokes[0]!.pen, null)} d="${pathData(strokes)}"/>`);
        strokes = [];
    };
    for (const [i, item] of items.entries()) {
        if ((i + 1) % IN_STEP === 0) yield;
        const bare = item.kind === 'line' || (item.kind === 'polyline' && item.fill === null);
        if (!bare || (strokes.length > 0 && strokes[0]!.pen !== item.pen)) flush();
        if (bare) strokes.push(item);
        else lines.push(itemSvg(item, names));
    }
    flush();
    return lines;
}

function itemSvg(item: Group | Polyline | Circle | TextRun, names: Names): string {
    switch (item.kind) {
        case 'group': return groupSvg(item, names);
        case 'polyline': return `<path class="${classes(item.pen, item.fill)}"${names.looks.of(item.pen, item.fill)} d="${pathData([item])}"/>`;
        case 'circle': return `<circle class="${classes(item.pen, item.fill)}"${names.looks.of(item.pen, item.fill)} cx="${coordinate(item.center[0])}" cy="${coordinate(item.center[1])}" r="${coordinate(item.radius)}"/>`;
        case 'text': return textSvg(item, names);
    }
}

function groupSvg(group: Group, names: Names): string {
    const attributes = Object.entries(names.attributesOf?.(group) ?? {
        ...group.piece !== undefined && { 'data-piece': group.piece }, ...group.part !== undefined && { 'data-part': group.part }, ...group.source !== undefined && { 'data-source': group.source },
    }).map(([name, value]) => ` ${name}="${escapeAttribute(value)}"`).join('');
    const title = group.title === undefined ? [] : [`<title>${escapeText(group.title)}</title>`];
    return [`<g id="${idText(`${names.id}.${group.id}`)}"${attributes}>`, ...title, ...itemsSvg(group.items, names), '</g>'].join('\n');
}

function textSvg(run: TextRun, { looks, held }: Names): string {
    const [x, y] = run.at.map(coordinate);
    return `<text x="${x}" y="${y}" font-size="${coordinate(run.size)}"`
        + (run.anchor === 'start' ? '' : ` text-anchor="${run.anchor}"`)
        + (run.weight === 400 ? '' : ` font-weight="${run.weight}"`)
        + (run.tone === 'ink' ? '' : ` class="${classes(null, run.tone)}"${looks.of(null, run.tone)}`)
        + (run.spaced === 0 ? '' : ` letter-spacing="${coordinate(run.spaced)}"`)
        + (run.turned ? ` transform="rotate(${coordinate(-run.turned)} ${x} ${y})"` : '')
        + (held ? ` ${heldTo(runWidth(run))}>${escapeText(run.text)}</text>` : `>${lettersSvg(run)}</text>`);
}

/** Where the font lacks a letter another font steps in, whose width nobody knows: such a stretch is held to the width reckoned with. */
function lettersSvg(run: TextRun): string {
    const stretches: { known: boolean; words: string }[] = [];
    for (const character of run.text) {
        const known = isInFont(character);
        const last = stretches.at(-1);
        if (last?.known === known) last.words += character;
        else stretches.push({ known, words: character });
    }
    return stretches.map(({ known, words }) => {
        if (known) return escapeText(words);
        return `<tspan ${heldTo(runWidth({ ...run, text: words }))}>${escapeText(words)}</tspan>`;
    }).join('');
}

function heldTo(width: number): string {
    return `textLength="${coordinate(width)}" lengthAdjust="spacingAndGlyphs"`;
}

function classes(pen: PenName | null, fill: Tone | null): string {
    return [pen === null ? '' : `p-${pen}`, fill === null ? '' : `f-${fill}`].filter(name => name !== '').join(' ');
}

/** An id holds no white space (HTML, 3.2.6); the sheet's own id before it keeps the ids of sheets shown side by side apart. */
function idText(id: string): string {
    return escapeAttribute(id.replace(/[^\p{Letter}\p{Number}\-_.]/gu, c => `_${c.codePointAt(0)!.toString(16)}_`));
}
