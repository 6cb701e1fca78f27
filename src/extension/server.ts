import * as vscode from 'vscode';
import { LanguageClient, RevealOutputChannelOn, State, TransportKind, type LanguageClientOptions, type ServerOptions } from 'vscode-languageclient/node';
import { BuiltinDocuments } from './builtin-documents.ts';

/** The language server's process, the talk with it, and how the editor shows its state. */
export class Server implements vscode.Disposable {
    readonly output = vscode.window.createOutputChannel('Cofferwright');
    private readonly client: LanguageClient;
    private readonly status = vscode.languages.createLanguageStatusItem('cofferwright.server', { language: 'coffer' });

    /** `module`: the bundled server, run by the editor's own Node. */
    constructor(module: string) {
        const runs: ServerOptions = {
            run: { module, transport: TransportKind.ipc },
            debug: { module, transport: TransportKind.ipc, options: { execArgv: ['--nolazy', '--inspect=6009'] } },
        };
        const options: LanguageClientOptions = {
            documentSelector: ['file', 'untitled', BuiltinDocuments.scheme].map(scheme => ({ language: 'coffer', scheme })),
            outputChannel: this.output,
            // what goes wrong inside the server is for the log; a window in the way of a carpenter's typing helps nobody
            revealOutputChannelOn: RevealOutputChannelOn.Never,
        };
        this.client = new LanguageClient('cofferwright', 'Cofferwright', runs, options);
        this.status.name = 'Cofferwright';
        this.status.command = { command: 'cofferwright.showOutput', title: vscode.l10n.t('Show Output') };
        this.client.onDidChangeState(({ newState }) => this.show(newState));
        this.show(State.Starting);
    }

    /** Ends when the server answers; tells the user where it does not. */
    async start(): Promise<void> {
        try {
            await this.client.start();
        } catch (error) {
            this.output.appendLine(String(error));
            const show = vscode.l10n.t('Show Output');
            const choice = vscode.window.showErrorMessage(vscode.l10n.t('The Cofferwright language server did not start.'), show);
            void choice.then(chosen => { if (chosen === show) this.output.show(); });
        }
    }

    async restart(): Promise<void> {
        if (this.client.state === State.Running) await this.client.restart();
        else await this.start();
    }

    async stop(): Promise<void> {
        if (this.client.state === State.Running) await this.client.stop();
    }

    /** Asks the server; undefined where it is not running or does not answer. */
    async ask<Result>(method: string, params: object): Promise<Result | undefined> {
        try {
            return await this.client.sendRequest<Result>(method, params);
        } catch (error) {
            this.output.appendLine(`${method}: ${String(error)}`);
            return undefined;
        }
    }

    dispose(): void {
        this.status.dispose();
        this.output.dispose();
    }

    private show(state: State): void {
        this.status.busy = state === State.Starting;
        this.status.severity = state === State.Stopped ? vscode.LanguageStatusSeverity.Error : vscode.LanguageStatusSeverity.Information;
        this.status.text = state === State.Stopped ? vscode.l10n.t('Cofferwright is not running') : vscode.l10n.t('Cofferwright');
    }
}
