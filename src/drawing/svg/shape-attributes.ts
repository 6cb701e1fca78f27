import { penOf, type PenName } from '../pens.ts';
import { THEMES, type Tone } from '../themes.ts';
import { FONT_FAMILY, type SvgTheme } from './style-sheet.ts';
import { atKey } from '../../plain/at-key.ts';

/** How shapes look, as attributes of their own: what a program goes by that reads no style sheet. Where one is read it wins (SVG 2, 6.6). */
export interface ShapeAttributes {
    /** Of the whole drawing. */
    readonly all: string;
    of(pen: PenName | null, fill: Tone | null): string;
}

export const NO_ATTRIBUTES: ShapeAttributes = { all: '', of: () => '' };

/** A drawing that follows its reader says what it is on paper. */
export function attributesIn(theme: SvgTheme): ShapeAttributes {
    const colors = THEMES[theme === 'auto' ? 'print' : theme], known = new Map<string, string>();
    const made = (pen: PenName | null, fill: Tone | null): string => ` fill="${fill === null ? 'none' : colors[fill]}"${pen === null ? '' : strokeOf(pen)}`;
    const strokeOf = (pen: PenName): string => {
        const { width, tone, dashes } = penOf(pen);
        return ` stroke="${colors[tone]}" stroke-width="${width}"${dashes ? ` stroke-dasharray="${dashes.join(' ')}"` : ''}`;
    };
    return {
        all: ` font-family="'${FONT_FAMILY}','Arial Narrow',sans-serif" fill="${colors.ink}"`,
        of: (pen, fill) => atKey(known, `${pen} ${fill}`, () => made(pen, fill)),
    };
}
