import { PENS, penOf, type PenName } from '../pens.ts';
import { THEMES, TONES, type Theme, type Tone } from '../themes.ts';

export const FONT_FAMILY = 'Barlow Semi Condensed';

/**
 * Every drawing carries this class, and every rule below begins with it, so that a drawing set into a page neither colors
 * the page nor is colored by it.
 */
export const SHEET_CLASS = 'coffer-sheet';

/** `auto` follows the reader: light or dark by their setting or by the editor's theme, black on white on paper. */
export type SvgTheme = Theme | 'auto';

export function styleSheet(theme: SvgTheme, fontFaces: string): string {
    const color = theme === 'auto' ? (tone: Tone) => `var(--sheet-${tone})` : (tone: Tone) => THEMES[theme][tone];
    return [
        fontFaces,
        theme === 'auto' ? variables() : '',
        ...sheetRules(color),
    ].filter(rule => rule !== '').join('\n');
}

/** How letters, pens and tones of a drawing look; the page they stand in says the colors, by `--sheet-ink` and so on where it says no other. */
export function sheetRules(color: (tone: Tone) => string = tone => `var(--sheet-${tone})`): readonly string[] {
    return [
        `.${SHEET_CLASS} text{font-family:'${FONT_FAMILY}','Arial Narrow',sans-serif;fill:${color('ink')};white-space:pre}`,
        ...(Object.keys(PENS) as PenName[]).map(name => penRule(name, color)),
        ...TONES.map(tone => `.${SHEET_CLASS} .f-${tone}{fill:${color(tone)}}`),
    ];
}

function penRule(name: PenName, color: (tone: Tone) => string): string {
    const pen = penOf(name);
    const dashes = pen.dashes === undefined ? '' : `;stroke-dasharray:${pen.dashes.join(' ')}`;
    return `.${SHEET_CLASS} .p-${name}{fill:none;stroke:${color(pen.tone)};stroke-width:${pen.width}${dashes}}`;
}

/**
 * The editor marks its panes with `vscode-` classes; in high contrast its own colors are taken and washes left out.
 * The rule for print comes last and names the editor's classes too, so that it wins over them.
 */
function variables(): string {
    const set = (theme: Theme) => TONES.map(tone => `--sheet-${tone}:${THEMES[theme][tone]}`).join(';');
    const contrast = TONES.map(tone => `--sheet-${tone}:${HIGH_CONTRAST[tone]}`).join(';');
    const sheet = `.${SHEET_CLASS}`;
    return [
        `${sheet}{${set('light')}}`,
        `@media (prefers-color-scheme:dark){${sheet}{${set('dark')}}}`,
        `.vscode-light ${sheet}{${set('light')}}`,
        `.vscode-dark ${sheet}{${set('dark')}}`,
        `.vscode-high-contrast ${sheet}{${contrast}}`,
        `@media print{${sheet},.vscode-light ${sheet},.vscode-dark ${sheet},.vscode-high-contrast ${sheet}{${set('print')}}}`,
    ].join('\n');
}

const FOREGROUND = 'var(--vscode-editor-foreground)';
const BACKGROUND = 'var(--vscode-editor-background)';
const HIGH_CONTRAST: Readonly<Record<Tone, string>> = {
    ink: FOREGROUND, soft: FOREGROUND, accent: FOREGROUND, paper: BACKGROUND, tint: BACKGROUND, wash: BACKGROUND,
};
