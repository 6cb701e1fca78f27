import type { Report } from './harness.ts';

/** In a browser's worker there is no disk to meet on: results go to the log, which the driver reads, and no pictures are taken. */
export const isDriven = false;

export async function picture(): Promise<void> {}

export async function seen(): Promise<string> {
    return '';
}

export async function inPane(): Promise<unknown> {
    return null;
}

export function report(results: Report): void {
    console.log(`cofferwright-results ${JSON.stringify(results)}`);
}
