import { inLines } from '../../plain/in-lines.ts';
import { atOnce, eachInSteps, type Steps } from '../../plain/steps.ts';
import type { Part } from '../../takeoff/model.ts';
import { type Point, polygon, polyline } from '../display-list.ts';
import { escapeAttribute, escapeText } from '../../text/xml.ts';
import { cleanText } from '../../text/clean-text.ts';
import { coordinate, pathData } from '../svg/path-data.ts';
import type { SvgTheme } from '../svg/style-sheet.ts';
import type { Theme } from '../themes.ts';
import type { Patch, Picture, SeenPrism } from './picture.ts';
import { WOODS } from './woods.ts';
import { isCalm } from '../../plain/notice.ts';
import type { SvgText } from '../../text/fit.ts';

const VIEW_CLASS = 'coffer-view';

type Wood = Part | 'ceiling' | 'wall';
interface Paints {
    readonly woods: Readonly<Record<Wood, string>>; readonly edge: string; readonly paper: string;
    /** How dark the darkest side of a thing is. */
    readonly dusk: number;
}

const PAINTS: Readonly<Record<Theme, Paints>> = {
    light: { woods: { ...WOODS.light, ceiling: '#fbf8f1', wall: '#efece5' }, edge: '#6b5433', paper: '#ffffff', dusk: 0.66 },
    dark: { woods: { ...WOODS.dark, ceiling: '#63625f', wall: '#4b4d50' }, edge: '#2b2012', paper: '#1d1f23', dusk: 0.55 },
    print: { woods: { ...WOODS.print, ceiling: '#fdfdfd', wall: '#f2f2f2' }, edge: '#333333', paper: '#ffffff', dusk: 0.7 },
};
/** Words over it: gray enough for a reader with weak eyes (4.5 to 1 on white, WCAG 2.2, 1.4.3). */
const WRONG = '#a3341f', CALM = '#6b6b6b';
/** Shades from what is turned away from the light to what faces it. */
const SHADES = 8;
const shadeOf = (light: number): number => Math.min(SHADES - 1, Math.round(light * (SHADES - 1)));

interface PictureOptions {
    readonly theme?: SvgTheme;
    /** `part of a page`: no ground of its own. */
    readonly as?: 'file' | 'part of a page';
    /** Why it is not to be built from, over the picture; the first line stands out. */
    readonly notice?: readonly string[];
    /** What its title and its description are called: of several in one page each has a name of its own. */
    readonly name?: string;
}
/** Points a line of a notice takes, and about as many letters as it has room for. */
const LINE = 14, LETTERS = 150;

/**
 * A picture as SVG: needs nothing else, on white unless another theme is said, the same bytes every time. A file's faces carry their colors as attributes
 * too, for programs that know no style sheets.
 */
export function pictureSvg(picture: Picture, options: PictureOptions = {}): SvgText {
    return atOnce(pictureSvgInSteps(picture, options));
}

/** Things that are written in one step. */
const IN_STEP = 600;

/** The same step by step. */
export function* pictureSvgInSteps(picture: Picture, { theme = 'print', as = 'file', notice = [], name = 'view' }: PictureOptions): Steps<SvgText> {
    const { width, title } = picture, lines = notice.flatMap(words => inLines(cleanText(words).split(' '), line => line.length <= LETTERS)), above = lines.length === 0 ? 0 : lines.length * LINE + 8;
    const looks = as === 'file' ? attributesIn(theme) : NO_ATTRIBUTES;
    const description = [...notice, picture.description].join(' '), height = picture.height + above;
    const shadows = yield* eachInSteps(picture.shadows, IN_STEP, shadow => pathData([polygon(sameTurn(shadow), null)]));
    yield;
    const things = yield* eachInSteps(picture.things, IN_STEP, each => ('wall' in each ? each.faces.map(face => patchSvg('wall', face, looks)).join('') : prismSvg(each, looks)));
    return [
        `<svg xmlns="http://www.w3.org/2000/svg" class="${VIEW_CLASS}" viewBox="0 ${coordinate(-above)} ${coordinate(width)} ${coordinate(height)}" role="img" aria-labelledby="${name}.title ${name}.description"${looks.all}>`,
        `<title id="${name}.title">${escapeText(title)}</title>`, `<desc id="${name}.description">${escapeText(description)}</desc>`,
        `<style>${styleFor(theme, usedBy(picture))}</style>`,
        ...(as === 'file' ? [`<path class="v-paper"${looks.paper} d="M0 ${coordinate(-above)}h${coordinate(width)}v${coordinate(height)}h-${coordinate(width)}z"/>`] : []),
        ...picture.ground.map(patch => patchSvg('ceiling', patch, looks)),
        `<path class="v-shadow"${looks.shadow} d="${shadows.join('')}"/>`,
        ...things,
        ...lines.map((words, i) => `<text class="${isCalm(notice) ? 'v-notice v-calm' : 'v-notice'}"${looks.notice(isCalm(notice))} x="8" y="${coordinate((i + 1) * LINE - above)}"${i === 0 ? ' font-weight="600"' : ''}>${escapeText(words)}</text>`),
        '</svg>', '',
    ].join('\n') as SvgText;
}

/** Shadows in one path darken once where they lie over each other, as long as all run round the same way. */
function sameTurn(points: readonly Point[]): readonly Point[] {
    const area = points.reduce((sum, [x, y], i) => sum + x * points[(i + 1) % points.length]![1] - points[(i + 1) % points.length]![0] * y, 0);
    return area < 0 ? [...points].reverse() : points;
}

function prismSvg({ piece, part, faces, edges }: SeenPrism, looks: Looks): string {
    const lines = edges.length === 0 ? '' : `<path class="v-edge"${looks.edge} d="${pathData(edges.map(edge => polyline(edge, 'thin')))}"/>`;
    return `<g data-piece="${escapeAttribute(piece)}">${faces.map(face => patchSvg(part, face, looks)).join('')}${lines}</g>`;
}

function patchSvg(wood: Wood, { points, light }: Patch, looks: Looks): string {
    return `<path class="${paintClass(wood, shadeOf(light))}"${looks.face(wood, shadeOf(light))} d="${pathData([polygon(points, null)])}"/>`;
}

const paintClass = (wood: Wood, shade: number): string => `v-${wood}-${shade}`;

type Used = ReadonlyMap<string, readonly [Wood, number]>;

function usedBy({ ground, things }: Picture): Used {
    const all: readonly (readonly [Wood, Patch])[] = [
        ...ground.map(patch => ['ceiling', patch] as const), ...things.flatMap(each => each.faces.map(face => ['wall' in each ? 'wall' : each.part, face] as const)),
    ];
    const named = all.map(([wood, { light }]) => [paintClass(wood, shadeOf(light)), [wood, shadeOf(light)] as const] as const);
    return new Map(named.sort(([a], [b]) => (a < b ? -1 : 1)));
}

/** As the drawings' style sheet does: by the reader's setting, by the editor's theme, gray on paper. */
function styleFor(theme: SvgTheme, used: Used): string {
    const all = `.${VIEW_CLASS}`;
    const edges = `${all} path{stroke-linejoin:round;stroke-linecap:round}\n${all} .v-edge{fill:none;stroke-width:.7}\n${all} .v-shadow{fill:#000;fill-opacity:.13}\n${all} .v-notice{font:12px sans-serif;fill:${WRONG}}\n${all} .v-calm{fill:${CALM}}`;
    if (theme !== 'auto') return `${edges}\n${rulesFor(theme, all, used)}`;
    return [
        edges, rulesFor('light', all, used), `@media (prefers-color-scheme:dark){${rulesFor('dark', all, used)}}`,
        rulesFor('light', `.vscode-light ${all}`, used), rulesFor('dark', `.vscode-dark ${all}`, used),
        `@media print{${[all, `.vscode-light ${all}`, `.vscode-dark ${all}`].map(selector => rulesFor('print', selector, used)).join('')}}`,
    ].join('\n');
}

/** Faces are drawn round with their own color too, a hair wide: no gap shows between two that meet. */
function rulesFor(theme: Theme, selector: string, used: Used): string {
    const { woods, edge, paper, dusk } = PAINTS[theme];
    return [
        `${selector} .v-paper{fill:${paper}}`, `${selector} .v-edge{stroke:${edge}}`,
        ...[...used].map(([name, [wood, shade]]) => {
            const color = paintOf(woods[wood], dusk, shade);
            return `${selector} .${name}{fill:${color};stroke:${color};stroke-width:.3}`;
        }),
    ].join('');
}

function paintOf(color: string, dusk: number, shade: number): string {
    return shaded(color, 1.03 * (dusk + (1 - dusk) * shade / (SHADES - 1)));
}

/** What shapes say of their looks themselves. */
interface Looks {
    readonly all: string; readonly paper: string; readonly edge: string; readonly shadow: string;
    notice(calm: boolean): string;
    face(wood: Wood, shade: number): string;
}
const NO_ATTRIBUTES: Looks = { all: '', paper: '', edge: '', shadow: '', notice: () => '', face: () => '' };

/** A picture that follows its reader says what it is on paper. */
function attributesIn(theme: SvgTheme): Looks {
    const { woods, edge, paper, dusk } = PAINTS[theme === 'auto' ? 'print' : theme];
    return {
        all: ' stroke-linejoin="round" stroke-width=".3" font-family="sans-serif" font-size="12"', paper: ` fill="${paper}"`,
        edge: ` fill="none" stroke="${edge}" stroke-width=".7"`, shadow: ' fill="#000" fill-opacity=".13"',
        notice: calm => ` fill="${calm ? CALM : WRONG}"`,
        face(wood, shade) {
            const color = paintOf(woods[wood], dusk, shade);
            return ` fill="${color}" stroke="${color}"`;
        },
    };
}

function shaded(color: string, by: number): string {
    const parts = [1, 3, 5].map(i => Math.min(255, Math.round(parseInt(color.slice(i, i + 2), 16) * by)));
    return `#${parts.map(part => part.toString(16).padStart(2, '0')).join('')}`;
}
