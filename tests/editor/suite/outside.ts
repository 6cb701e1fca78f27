import * as fs from 'node:fs';
import * as path from 'node:path';
import type { Report } from './harness.ts';

/** Whoever drives the browser looks into this folder for what the suite wants; nobody does for the desktop program. */
const folder = process.env['COFFERWRIGHT_PICTURES'];
export const isDriven = folder !== undefined && folder !== '';

/** Takes a picture of the screen, where somebody can. */
export async function picture(name: string): Promise<void> {
    if (!isDriven) return;
    await new Promise(resolve => setTimeout(resolve, 700)); // what the editor fades in has to be there
    await ask(`${name}.wanted`, '', `${name}.png`);
}

/** The words on a part of the screen, those that are only read out among them. `selector`: as in a style sheet. */
export async function seen(selector: string): Promise<string> {
    return ask('seen.wanted-words', selector, 'seen.txt');
}

/** What an expression comes to inside the pane of this title; null where there is none, or it is not there yet. */
export async function inPane(title: string, expression: string): Promise<unknown> {
    return JSON.parse(await ask('pane.wanted-pane', JSON.stringify({ title, expression }), 'pane.txt'));
}

/** Hands in the results; a desktop editor's caller reads them from a file too. */
export function report(results: Report): void {
    const file = process.env['COFFERWRIGHT_RESULTS'];
    if (file) fs.writeFileSync(file, JSON.stringify(results, undefined, 1));
}

async function ask(question: string, text: string, answer: string): Promise<string> {
    const from = path.join(folder!, question), to = path.join(folder!, answer);
    fs.rmSync(to, { force: true }); // of an earlier time
    fs.writeFileSync(`${from}.new`, `${text}\n`);
    fs.renameSync(`${from}.new`, from);
    for (let time = 0; time < 300; time++) {
        if (fs.existsSync(to)) return answer.endsWith('.png') ? '' : fs.readFileSync(to, 'utf8');
        await new Promise(resolve => setTimeout(resolve, 30));
    }
    throw new Error(`nobody answered ${question}`);
}
