import type { TestProject } from 'vitest/node';
import { missingBrowser, startBrowser } from './pane-page.ts';

/** The browser of all pane tests: how to reach it, or what is missing. */
interface BrowserForAll { readonly endpoint?: string; readonly missing?: string }

declare module 'vitest' {
    export interface ProvidedContext { browser: BrowserForAll }
}

/** Starts one browser before the first pane test and ends it after the last (vitest's globalSetup). */
export default async function setup(project: TestProject): Promise<(() => Promise<void>) | undefined> {
    const missing = await missingBrowser();
    if (missing !== undefined) {
        console.warn(`Tests of panes are skipped. ${missing}`);
        project.provide('browser', { missing });
        return undefined;
    }
    const server = await startBrowser();
    project.provide('browser', { endpoint: server.wsEndpoint() });
    return () => server.close();
}
