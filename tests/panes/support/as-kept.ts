import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import pixelmatch from 'pixelmatch';
import type { Page } from 'playwright-core';
import { PNG } from 'pngjs';

const kept = join(process.cwd(), 'tests/panes/looks');
/** Pictures are kept that much smaller, so that how another browser draws the edges of letters does not count. */
const SMALLER = 4;
/** Of the difference between black and white, from which on a pixel counts as another one. */
const ANOTHER = 0.2;

/** A word that is gone is little of a pane, and much of the place where it stood: of so many small pixels across and down. */
const PLACE = 6;

/** Shares of pixels, 0 to 1: of the whole pane, and of the place that differs most. */
interface Differs { readonly inAll: number; readonly somewhere: number }

/**
 * How much of a pane differs from how it looked when somebody looked at it and kept the picture. With KEEP_LOOKS=1 it is kept
 * anew, and what is kept is to be looked at before it is committed. Throws where none is kept.
 */
export async function differsFromKept(page: Page, name: string): Promise<Differs> {
    const seen = await smaller(page, await page.screenshot({ animations: 'disabled', caret: 'hide' }));
    const file = join(kept, `${name}.png`);
    if (process.env['KEEP_LOOKS'] === '1') {
        mkdirSync(kept, { recursive: true });
        writeFileSync(file, seen);
    }
    if (!existsSync(file)) throw new Error(`No picture is kept of ${name}: KEEP_LOOKS=1 keeps one, to be looked at.`);
    const [now, then] = [PNG.sync.read(seen), PNG.sync.read(readFileSync(file))];
    if (now.width !== then.width || now.height !== then.height) return { inAll: 1, somewhere: 1 };
    const { width, height } = now, marks = new Uint8Array(width * height * 4);
    const all = pixelmatch(now.data, then.data, marks, width, height, { threshold: ANOTHER, includeAA: true, diffMask: true });
    const places = new Map<number, number>();
    for (let i = 0; i < width * height; i++) if (marks[4 * i + 3]! > 0) {
        const place = Math.floor(i / width / PLACE) * width + Math.floor(i % width / PLACE);
        places.set(place, (places.get(place) ?? 0) + 1);
    }
    return { inAll: all / (width * height), somewhere: Math.max(0, ...places.values()) / PLACE ** 2 };
}

/** In the browser, which has the means: every pixel is the mean of those it stands for. */
async function smaller(page: Page, png: Buffer): Promise<Buffer> {
    const small = await page.evaluate(async ([text, by]) => {
        const blob = new Blob([Uint8Array.from(atob(text), letter => letter.charCodeAt(0))]);
        const whole = await createImageBitmap(blob);
        const size = { resizeWidth: Math.round(whole.width / by), resizeHeight: Math.round(whole.height / by) };
        const bitmap = await createImageBitmap(whole, { ...size, resizeQuality: 'high' });
        const canvas = new OffscreenCanvas(size.resizeWidth, size.resizeHeight);
        canvas.getContext('2d')!.drawImage(bitmap, 0, 0);
        const bytes = new Uint8Array(await (await canvas.convertToBlob()).arrayBuffer());
        return btoa(Array.from(bytes, byte => String.fromCharCode(byte)).join(''));
    }, [png.toString('base64'), SMALLER] as const);
    return Buffer.from(small, 'base64');
}
