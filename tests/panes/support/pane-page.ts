import { mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import axe from 'axe-core';
import { chromium, type Browser, type BrowserServer, type Page } from 'playwright-core';
import { paneDocument } from '../../../src/extension/panes/document.ts';
import { PANE_KINDS, type PaneKind } from '../../../src/pages/kinds.ts';
import { FACES } from '../../../src/panes/letters.ts';
import { versioned, type FromPane, type ToPane, type Versioned } from '../../../src/panes/messages.ts';
import { FULL } from '../../support/full.ts';
import themes from './themes.json' with { type: 'json' };

const THEMES = ['dark', 'light', 'high-contrast', 'high-contrast-light'] as const;
/** A theme's colors, as the editor hands them to its panes. */
type Theme = keyof typeof themes;

/** In which colors and widths a pane is looked at: each in each where everything is run, everyday each pane in colors and at a width of its own. */
export function looks(kind: PaneKind, widths: readonly number[] = [300, 700, 1600]): readonly (readonly [Theme, number])[] {
    const own = PANE_KINDS.indexOf(kind) % THEMES.length;
    return FULL ? THEMES.flatMap(theme => widths.map(width => [theme, width] as const)) : [[THEMES[own]!, widths[own % widths.length]!]];
}

/** Tests and benchmarks run in the repository's own folder. */
const root = process.cwd();
const ORIGIN = 'http://pane.test';
const outdir = join(root, '.cache/panes-test');
/** Where pictures go, to be looked at. */
const pictures = join(root, 'out/pictures/panes');

interface Built { paneKinds(): string[]; bundlePanes(options: { outdir: string; minify: boolean; sourcemap: boolean }): Promise<unknown> }
interface Driver { browserPath(): string; browserArguments: string[] }
const load = async <Module>(path: string): Promise<Module> => await import(pathToFileURL(join(root, path)).href) as Module;

const driver = (): Promise<Driver> => load<Driver>('src/build/editor-server.mjs');

/** What is missing where there is no browser. */
export async function missingBrowser(): Promise<string | undefined> {
    const { browserPath } = await driver();
    try {
        browserPath();
        return undefined;
    } catch (error) {
        return (error as Error).message;
    }
}

/** Bundles the panes and starts a browser for all who open panes. */
export async function startBrowser(): Promise<BrowserServer> {
    const { browserPath, browserArguments } = await driver();
    const { bundlePanes } = await load<Built>('src/build/bundle.mjs');
    await bundlePanes({ outdir, minify: true, sourcemap: false });
    return chromium.launchServer({ executablePath: browserPath(), args: browserArguments });
}

let browser: Browser | undefined;

/** Panes open in this browser from now on. */
export async function useBrowser(endpoint: string): Promise<void> {
    browser ??= await chromium.connect(endpoint);
}

export async function leaveBrowser(): Promise<void> {
    free = undefined;
    await browser?.close();
    browser = undefined;
}

/**
 * A page whose pane was closed: the next one opens in it, since a page of its own costs more than most tests. What a pane did in its document
 * ends with that.
 */
let free: Page | undefined;

async function pageOf({ width, height }: { readonly width: number; readonly height: number }): Promise<Page> {
    if (!browser) throw new Error('panes open in a browser: say which one by useBrowser');
    const page = free ?? await (await browser.newContext()).newPage();
    // half a minute is soon over where others have the processor
    page.setDefaultTimeout(120_000);
    free = undefined;
    await page.setViewportSize({ width, height });
    return page;
}

export interface PaneOptions {
    readonly theme?: Theme; readonly width?: number; readonly height?: number;
    /** What the pane kept before a reload. */
    readonly kept?: unknown;
    readonly language?: string;
    readonly words?: Readonly<Record<string, string>>;
    /** Done in the page before the pane's script runs: to play a browser that lacks something. */
    readonly before?: () => void;
    /** How long its letters take, in milliseconds. */
    readonly lettersTake?: number;
}

/** A pane's page as the editor shows it, with its own policy, in a browser without a face; this end plays the extension. */
export class PanePage {
    /** What the policy refused, and what went wrong in the script: tests end with none. */
    readonly complaints: string[] = [];
    /** What is done in the page before its own script, for this pane alone. */
    private readonly first: { dispose(): Promise<void> }[] = [];

    private constructor(readonly page: Page, readonly kind: PaneKind) {
        page.on('pageerror', error => this.complaints.push(error.message));
        page.on('console', message => { if (message.type() === 'error') this.complaints.push(message.text()); });
    }

    static async open(kind: PaneKind, { theme = 'dark', width = 700, height = 800, kept, language = 'en', words = {}, before, lettersTake }: PaneOptions = {}): Promise<PanePage> {
        const pane = new PanePage(await pageOf({ width, height }), kind);
        // from a place of their own, where nothing is kept of them
        const { page } = pane, own = lettersTake === undefined ? '' : `after-${lettersTake}/`;
        await page.route(`${ORIGIN}/**`, async route => {
            const name = new URL(route.request().url()).pathname.slice(1).replace(/^after-\d+\//, '');
            if (name === '') {
                const html = paneDocument({ title: kind, language, nonce: 'n0nce', origin: ORIGIN, script: `${ORIGIN}/${kind}.js`, letters: `${ORIGIN}/${own}fonts.css`, words });
                return route.fulfill({ contentType: 'text/html', body: html });
            }
            const contentType = name.endsWith('.js') ? 'text/javascript' : name.endsWith('.css') ? 'text/css' : 'font/woff2';
            if (contentType === 'font/woff2' && lettersTake !== undefined) await new Promise(resolve => { setTimeout(resolve, lettersTake); });
            return route.fulfill({ contentType, body: readFileSync(join(outdir, name)) });
        });
        pane.first.push(await page.addInitScript(EDITOR, { kept: kept ?? null, ...themes[theme] }));
        if (before) pane.first.push(await page.addInitScript(before));
        // loaded is a page only once its letters are
        await page.goto(`${ORIGIN}/`, { waitUntil: lettersTake === undefined ? 'load' : 'commit' });
        await pane.sent('ready');
        // what is said before its letters are there waits for them
        if (lettersTake === undefined) await page.evaluate(async faces => {
            await Promise.allSettled(faces.map(face => document.fonts.load(face)));
            await new Promise(resolve => { setTimeout(resolve); });
        }, FACES);
        return pane;
    }

    /** The extension says something. */
    async say(message: ToPane): Promise<void> {
        await this.sayRaw(versioned(message));
    }

    async sayRaw(message: unknown): Promise<void> {
        await this.page.evaluate(given => window.postMessage(given, '*'), message);
        // a message is handled after those before it; its letters come when they are first set, and move the lines where they have come
        await this.page.evaluate(async () => {
            await new Promise(resolve => { setTimeout(resolve); });
            document.body.getBoundingClientRect();
            await document.fonts.ready;
        });
    }

    /** Gives the pane a content laid out for its size, and once more where what stands around it has changed that. */
    async fill<Message extends ToPane>(make: (size: { readonly width: number; readonly height: number }) => Message): Promise<Message> {
        let size = (await this.sent('size')).at(-1)!, message = make(size);
        for (let round = 0; round < 3; round++) {
            await this.say(message);
            // the pane tells its size when it has settled
            await this.page.waitForTimeout(150);
            const now = (await this.sent('size')).at(-1)!;
            if (now.width === size.width && now.height === size.height) break;
            size = now;
            message = make(size);
        }
        return message;
    }

    /** Gives the pane a content; milliseconds from the message to the frame that shows it. */
    async paints(message: ToPane): Promise<number> {
        return this.page.evaluate(given => new Promise<number>(resolve => {
            const painted = (): number => Number((performance.getEntriesByName('painted')[0] as PerformanceMark | undefined)?.detail ?? 0);
            const before = painted(), began = performance.now();
            window.postMessage(given, '*');
            const look = (): void => { if (painted() > before) resolve(performance.now() - began); else requestAnimationFrame(look); };
            look();
        }), versioned(message) as unknown);
    }

    /** What the page's script holds, in bytes, after what it holds no more is collected. */
    async memory(): Promise<number> {
        const session = await this.page.context().newCDPSession(this.page);
        await session.send('HeapProfiler.collectGarbage');
        const { usedSize } = await session.send('Runtime.getHeapUsage');
        return usedSize;
    }

    /** All that the pane has said of one type, when there is some. */
    async sent<Type extends FromPane['type']>(type: Type): Promise<readonly Extract<Versioned<FromPane>, { type: Type }>[]> {
        await this.page.waitForFunction(wanted => (window as unknown as SaysAndKeeps).said.some(each => each.type === wanted), type);
        return await this.page.evaluate(wanted => (window as unknown as SaysAndKeeps).said.filter(each => each.type === wanted), type) as never;
    }

    async saidNothing(type: FromPane['type']): Promise<boolean> {
        return this.page.evaluate(wanted => !(window as unknown as SaysAndKeeps).said.some(each => each.type === wanted), type);
    }

    async forget(): Promise<void> {
        await this.page.evaluate(() => { (window as unknown as SaysAndKeeps).said.length = 0; });
    }

    async kept(): Promise<unknown> {
        return this.page.evaluate(() => (window as unknown as SaysAndKeeps).kept);
    }

    /** Mistakes against the rules of accessibility (WCAG 2 A and AA, and axe's good practice), with the elements that make them. */
    async violations(): Promise<string[]> {
        await this.page.evaluate(axe.source);
        const run = `axe.run(document, { resultTypes: ['violations'] }).then(({ violations }) => violations.flatMap(({ id, nodes }) => nodes.map(node => id + ': ' + node.html.slice(0, 160) + ' ' + (node.failureSummary || '').slice(0, 200))))`;
        return this.page.evaluate(run);
    }

    /** Keeps a picture where everything is run; everyday nobody looks at it. */
    async picture(name: string): Promise<void> {
        await this.page.evaluate(() => document.fonts.ready);
        if (!FULL) return;
        mkdirSync(pictures, { recursive: true });
        await this.page.screenshot({ path: join(pictures, `${name}.png`) });
    }

    async close(): Promise<void> {
        const { page } = this;
        for (const script of this.first) await script.dispose();
        await page.unrouteAll();
        page.removeAllListeners();
        await page.mouse.move(-1, -1);
        await page.goto('about:blank');
        free = page;
    }
}

interface SaysAndKeeps { said: { type: string }[]; kept: unknown }

/** The editor's side inside the page: colors, and the way to speak and to keep. Runs before the page's own script. */
function EDITOR(given: { kept: unknown; body: string; variables: Record<string, string> }): void {
    const target = window as unknown as SaysAndKeeps & { acquireVsCodeApi: unknown };
    target.said = [];
    target.kept = given.kept ?? undefined;
    target.acquireVsCodeApi = () => ({
        postMessage: (message: { type: string }) => target.said.push(message),
        getState: () => target.kept,
        setState: (state: unknown) => { target.kept = state; },
    });
    const dress = (): boolean => {
        if (!document.documentElement || !document.body) return false;
        for (const [name, value] of Object.entries(given.variables)) document.documentElement.style.setProperty(name, value);
        document.body.className = given.body;
        return true;
    };
    new MutationObserver((_, observer) => { if (dress()) observer.disconnect(); }).observe(document, { childList: true, subtree: true });
}
