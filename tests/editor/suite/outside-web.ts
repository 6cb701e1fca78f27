import * as vscode from 'vscode';
import type { Report } from './harness.ts';

/**
 * In a browser's worker there is no disk to meet on: the editor's own file system is, where the driver looks into a folder of the
 * workspace. Results go to the log, which the driver reads.
 */
export const isDriven = true;

/** Takes a picture of the screen, where somebody can: the driver's folder is the other host's. */
export async function picture(): Promise<void> {}

export async function seen(selector: string): Promise<string> {
    return ask('seen.wanted-words', selector, 'seen.txt');
}

/** What an expression comes to inside the pane of this title; null where there is none, or it is not there yet. */
export async function inPane(title: string, expression: string): Promise<unknown> {
    return JSON.parse(await ask('pane.wanted-pane', JSON.stringify({ title, expression }), 'pane.txt'));
}

export function report(results: Report): void {
    console.log(`cofferwright-results ${JSON.stringify(results)}`);
}

async function ask(question: string, text: string, answer: string): Promise<string> {
    const { fs, workspaceFolders } = vscode.workspace;
    const file = (name: string): vscode.Uri => vscode.Uri.joinPath(workspaceFolders![0]!.uri, '.driver', name);
    // the end of a line says that all of it is there
    await fs.writeFile(file(question), new TextEncoder().encode(`${text}\n`));
    for (let time = 0; time < 300; time++) {
        try {
            const found = new TextDecoder().decode(await fs.readFile(file(answer)));
            await fs.delete(file(answer));
            return found;
        } catch {
            await new Promise(resolve => setTimeout(resolve, 30));
        }
    }
    throw new Error(`nobody answered ${question}`);
}
