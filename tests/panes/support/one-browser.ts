import { afterAll, beforeAll, beforeEach, inject } from 'vitest';
import { leaveBrowser, useBrowser } from './pane-page.ts';

/** To be called at the head of a file whose tests open panes. Where there is no browser they are skipped, and say what is missing. */
export function inTheOneBrowser(): void {
    const { endpoint, missing } = inject('browser');
    if (endpoint === undefined) {
        beforeEach(({ skip }) => skip(missing));
        return;
    }
    beforeAll(() => useBrowser(endpoint));
    afterAll(leaveBrowser);
}
