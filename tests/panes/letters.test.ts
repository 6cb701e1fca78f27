import { expect, test } from 'vitest';
import { FACES } from '../../src/panes/letters.ts';
import { parlor } from '../pages/parlor.ts';
import { contentMessage, roomOnPage, serve } from './support/content.ts';
import { inTheOneBrowser } from './support/one-browser.ts';
import { PanePage } from './support/pane-page.ts';

inTheOneBrowser();

interface Seen { hadLetters?: boolean; face: string }

/** Notes, when the first picture stands in the pane, whether its letters were there by then. */
function noteFirstPicture(): void {
    const seen = window as unknown as Seen;
    new MutationObserver((_, observer) => {
        if (document.querySelector('#page .len') === null) return;
        seen.hadLetters = document.fonts.check(`400 1em 'Barlow Semi Condensed'`);
        observer.disconnect();
    }).observe(document, { childList: true, subtree: true });
}

async function opened(lettersTake: number): Promise<{ pane: PanePage; hadLetters: boolean | undefined }> {
    const pane = await PanePage.open('section', { before: noteFirstPicture, lettersTake });
    await pane.page.evaluate(message => window.postMessage(message, '*'), { ...contentMessage('section', roomOnPage(await serve({ 'parlor.coffer': parlor() }), 'parlor.coffer')), version: 1 });
    await pane.page.waitForSelector('#page .len');
    return { pane, hadLetters: await pane.page.evaluate(() => (window as unknown as Seen).hadLetters) };
}

test('the first picture waits for its letters, so that no line of it moves when they come', async () => {
    expect(FACES).toContain(`400 1em 'Barlow Semi Condensed'`);
    const { pane, hadLetters } = await opened(250);
    expect(hadLetters).toBe(true);
    const places = (): Promise<number[]> => pane.page.evaluate(() => [...document.querySelectorAll('#page *')].map(part => part.getBoundingClientRect().y));
    const at = await places();
    await pane.page.evaluate(() => document.fonts.ready);
    expect(await places()).toEqual(at);
    expect(pane.complaints).toEqual([]);
    await pane.close();
});

test('it does not wait long: what it says is there without them', async () => {
    const { pane, hadLetters } = await opened(4000);
    expect(hadLetters).toBe(false);
    await pane.close();
});
