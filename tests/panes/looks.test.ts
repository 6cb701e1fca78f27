import { describe, expect, test } from 'vitest';
import { PANE_KINDS, type PaneKind } from '../../src/pages/kinds.ts';
import { LEAST_LETTERS } from '../../src/pages/page.ts';
import { differsFromKept } from './support/as-kept.ts';
import { beforeTheyChangedTheirMinds, changesSince } from './support/changed.ts';
import { contentMessage, roomOnPage, serve } from './support/content.ts';
import { EXAMPLES } from '../support/examples.ts';
import { FULL } from '../support/full.ts';
import { inTheOneBrowser } from './support/one-browser.ts';
import { looks, PanePage } from './support/pane-page.ts';
import { brokenNumbers, overTheEdge, smallLetters } from './support/readable.ts';

/** Narrow beside a text, half a screen, a screen of its own. */
const WIDTHS = [400, 900, 1600];
const CASES = PANE_KINDS.flatMap(kind => looks(kind, WIDTHS).map(([theme, width]) => [kind, theme, width] as const));
const rooms: readonly (readonly [string, string])[] = [['dining', 'quince-lane/dining-room.coffer'], ['parlor', 'quince-lane/parlor.coffer'], ['library', 'quince-lane/library.coffer']];
/** Of this room the pictures are kept. */
const KEPT = 'library';
/** Of all pixels. Another version of the browser, and a driver that shades surfaces in its own way, stay below it. */
const TOLERATED = 0.02;
/** Of the place that differs most, which a word that is gone is a third of; not of what a driver shades. */
const TOLERATED_SOMEWHERE = 0.3;

inTheOneBrowser();

/** Everyday each pane is looked at in the room whose pictures are kept, and every fourth in each of the others. */
function casesOf(name: string): typeof CASES {
    const place = rooms.findIndex(([room]) => room === name);
    return FULL || name === KEPT ? CASES : CASES.filter((_, i) => (i + place) % 4 === 0);
}

describe.each(rooms)('the panes of the %s', (name, path) => {
    test.each(casesOf(name))('%s in %s at %i pixels', async (kind: PaneKind, theme, width) => {
        const pane = await PanePage.open(kind, { theme, width, height: 900 });
        const now = EXAMPLES, room = roomOnPage(await serve(now), path);
        const changes = kind === 'changes' ? await changesSince(beforeTheyChangedTheirMinds(now), now, room) : undefined;
        await pane.fill(size => contentMessage(kind, room, { ...size, ...changes && { changes } }));
        await pane.picture(`look-${name}-${kind}-${width}-${theme}`);
        if (name === KEPT) {
            const { inAll, somewhere } = await differsFromKept(pane.page, `${kind}-${width}-${theme}`);
            expect.soft(inAll).toBeLessThan(TOLERATED);
            if (kind !== 'view') expect.soft(somewhere).toBeLessThan(TOLERATED_SOMEWHERE);
        }
        expect.soft(await smallLetters(pane.page, LEAST_LETTERS)).toEqual([]);
        expect.soft(await brokenNumbers(pane.page)).toEqual([]);
        expect.soft(await overTheEdge(pane.page)).toEqual([]);
        expect(pane.complaints).toEqual([]);
        await pane.close();
    });
});
