import type { PaneKind } from './kinds.ts';

/**
 * A sign for each kind of pane, drawn in strokes on a ground of 16 by 16: the same in the panes' switch, on their tabs and on their commands.
 * The editor wants them as files: `npm run reference` writes those in syntaxes/icons, and a test fails while one is stale.
 */
export const PANE_ICONS: Readonly<Record<PaneKind, string>> = {
    // a ceiling from below: walls, two lines each way
    plan: 'M1.5 2.5h13v11h-13zM6 2.5v11M10.5 2.5v11M1.5 8h13',
    // a beam cut through: two sides under a ceiling, the bottom between them
    section: 'M1 2.5h14M3.5 2.5v11h2v-11M10.5 2.5v11h2v-11M5.5 11h5M5.5 13h5M5.5 11v2M10.5 11v2',
    // lines of a list, two of them ticked off
    'cut-list': 'M1.5 3.5l1.2 1.2 2-2.4M7 4h7.5M1.5 8l1.2 1.2 2-2.4M7 8.5h7.5M1.5 13h3M7 13h7.5',
    // boards with their cuts
    boards: 'M1.5 2h13v3h-13zM6 2v3M11 2v3M1.5 6.5h13v3h-13zM8.5 6.5v3M1.5 11h13v3h-13zM4.5 11v3M10 11v3',
    // a box of which three faces are seen
    view: 'M8 1.5l6 3v7l-6 3-6-3v-7zM2 4.5l6 3 6-3M8 7.5v7',
    // a tag on its string
    estimate: 'M2 2h6l6.5 6.5-6 6L2 8zM4.6 5.4a.8.8 0 1 0 .01 0',
    // two sheets, what is otherwise on the second ringed
    changes: 'M1.5 1.5h8v3M1.5 1.5v9h3M4.5 4.5h10v10h-10zM7 9.5a2.5 2.5 0 1 0 5 0a2.5 2.5 0 1 0-5 0',
    // two ceilings beside each other, of other grids
    suggest: 'M1.5 2.5h5.5v11h-5.5zM1.5 8h5.5M9 2.5h5.5v11h-5.5zM9 6.2h5.5M9 9.8h5.5M11.75 2.5v11',
    // a board on its way up to the ceiling
    'put-up': 'M1.5 2.5h13M3 5h10v2.5h-10zM8 14.5v-5M5.5 12l2.5-2.5l2.5 2.5',
};
