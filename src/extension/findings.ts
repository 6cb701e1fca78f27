import * as vscode from 'vscode';
import { FILES_OF_JOB, type FilesOfJobParams, type FilesOfJobResult } from '../server/messages.ts';

interface Asks { ask<Result>(method: string, params: object): Promise<Result | undefined> }
interface Counts { readonly errors: number; readonly warnings: number; readonly hints: number }

/** Changes come in bursts while somebody types. */
const SETTLE_MS = 200;

/** Says beside the language's name what was found in the files that belong to the one on the screen, itself among them. */
export class Findings implements vscode.Disposable {
    private readonly status = vscode.languages.createLanguageStatusItem('cofferwright.findings', { language: 'coffer' });
    private readonly listening: vscode.Disposable;
    private waiting: ReturnType<typeof setTimeout> | undefined;

    constructor(private readonly server: Asks) {
        this.status.name = vscode.l10n.t('Cofferwright Findings');
        this.status.command = { command: 'workbench.actions.view.problems', title: vscode.l10n.t('Show Problems') };
        this.say(undefined);
        this.listening = vscode.Disposable.from(
            vscode.languages.onDidChangeDiagnostics(() => this.soon()),
            vscode.window.onDidChangeActiveTextEditor(() => this.soon()),
        );
        this.soon();
    }

    dispose(): void {
        clearTimeout(this.waiting);
        this.listening.dispose();
        this.status.dispose();
    }

    private soon(): void {
        clearTimeout(this.waiting);
        this.waiting = setTimeout(() => void this.look(), SETTLE_MS);
    }

    private async look(): Promise<void> {
        const document = vscode.window.activeTextEditor?.document;
        if (document?.languageId !== 'coffer') return;
        const params: FilesOfJobParams = { uri: document.uri.toString() };
        const files = await this.server.ask<FilesOfJobResult>(FILES_OF_JOB, params);
        if (vscode.window.activeTextEditor?.document === document) this.say(files && countOf(files.map(file => vscode.Uri.parse(file))));
    }

    private say(counts: Counts | undefined): void {
        const { Error, Warning, Information } = vscode.LanguageStatusSeverity;
        this.status.severity = counts?.errors ? Error : counts?.warnings ? Warning : Information;
        this.status.text = counts ? wordsOf(counts) : vscode.l10n.t('Checking');
        this.status.busy = counts === undefined;
        this.status.detail = vscode.l10n.t('in this file and those that belong to its job');
    }
}

function countOf(files: readonly vscode.Uri[]): Counts {
    const found = files.flatMap(file => vscode.languages.getDiagnostics(file));
    const count = (...severities: vscode.DiagnosticSeverity[]): number => found.filter(({ severity }) => severities.includes(severity)).length;
    const { Error, Warning, Information, Hint } = vscode.DiagnosticSeverity;
    return { errors: count(Error), warnings: count(Warning), hints: count(Information, Hint) };
}

function wordsOf({ errors, warnings, hints }: Counts): string {
    if (errors + warnings + hints === 0) return vscode.l10n.t('Nothing found');
    return vscode.l10n.t('Errors: {0}, warnings: {1}, hints: {2}', errors, warnings, hints);
}
