import { PANE_KINDS } from '../pages/kinds.ts';
import { PANE_ICONS } from '../pages/pane-icons.ts';

/** The colors that an editor's own signs have on a light ground and on a dark one. */
const STROKES = { light: '#424242', dark: '#c5c5c5' } as const;

/** The signs of the panes as the files that a manifest and a tab want, by name. */
export function paneIconFiles(): readonly (readonly [string, string])[] {
    return PANE_KINDS.flatMap(kind => (['light', 'dark'] as const).map(ground => [`${kind}-${ground}.svg`,
        `<svg xmlns="http://www.w3.org/2000/svg" width="16" height="16" viewBox="0 0 16 16"><path fill="none" stroke="${STROKES[ground]}" d="${PANE_ICONS[kind]}"/></svg>\n`] as const));
}
