import * as vscode from 'vscode';
import type { BaseLanguageClient, LanguageClientOptions } from 'vscode-languageclient';
import {
    COLORS, HOLDING, LOOKING, OPEN_LIST, SHOW_CHANGES, SHOW_ESTIMATE, SHOW_PIECES, SHOW_RULE, SHOW_USES,
    type Colors, type ColorsParams, type HoldingParams, type InitializationOptions, type LookingParams,
} from '../server/messages.ts';
import { BuiltinDocuments } from './builtin-documents.ts';
import { History } from './history.ts';
import type { Store } from './stored-files.ts';
import { readForServer } from './workspace-files.ts';

/** Makes the talk with a new server; how depends on where the editor runs. */
export type NewClient = (options: LanguageClientOptions) => Promise<BaseLanguageClient>;

/** Listens to what a server says. */
export type Listen = (method: string, listener: (params: never) => void) => void;

type Condition = 'starting' | 'running' | 'stopped';

/** The language server, the talk with it, and how the editor shows its state. */
export class Server implements vscode.Disposable {
    readonly output = vscode.window.createOutputChannel('Cofferwright');
    /** Earlier states of the open folders, for whoever runs. */
    readonly history: History;
    private readonly status = vscode.languages.createLanguageStatusItem('cofferwright.server', { language: 'coffer' });
    private readonly listening = vscode.window.onDidChangeActiveColorTheme(() => {
        const params: ColorsParams = { colors: colorsNow() };
        this.tell(COLORS, params);
    });
    private client: BaseLanguageClient | undefined;
    private readonly startListeners: ((listen: Listen) => void)[] = [];
    private readonly holdListeners: ((still: boolean) => void)[] = [];
    private works = { busy: false, still: false };
    /** Starts and stops follow one another, however fast they are asked for. */
    private last: Promise<void> = Promise.resolve();

    constructor(private readonly newClient: NewClient, store: Store | undefined) {
        this.history = new History((method, params) => this.tell(method, params), store);
        this.status.name = 'Cofferwright';
        this.status.command = { command: 'cofferwright.showOutput', title: vscode.l10n.t('Show Output') };
        this.show('starting');
    }

    /** Ends when the server answers; tells the user where it does not. */
    start(): Promise<void> {
        return this.inTurn(() => this.startNow());
    }

    /** A new server, told of the folders that are open now. */
    restart(): Promise<void> {
        return this.inTurn(async () => {
            await this.stopNow();
            await this.startNow();
        });
    }

    stop(): Promise<void> {
        return this.inTurn(() => this.stopNow());
    }

    /** Asks the server; undefined where it is not running or does not answer. */
    async ask<Result>(method: string, params: object): Promise<Result | undefined> {
        await this.last;
        try {
            return await this.client?.sendRequest<Result>(method, params);
        } catch (error) {
            this.output.appendLine(`${method}: ${String(error)}`);
            return undefined;
        }
    }

    /** Tells the server; nothing where it is not running: whoever has something to say says it in onStart. */
    tell(method: string, params: object): void {
        const { client } = this;
        if (client?.isRunning()) client.sendNotification(method, params).catch((error: unknown) => this.output.appendLine(`${method}: ${String(error)}`));
    }

    /** Calls for the server that runs now, if one does, and for each that starts. */
    onStart(started: (listen: Listen) => void): void {
        this.startListeners.push(started);
        if (this.client?.isRunning()) started(listenTo(this.client));
    }

    /** Calls whenever what the server tells begins or ends to hold still, since somebody types. */
    onHold(listener: (still: boolean) => void): void {
        this.holdListeners.push(listener);
    }

    dispose(): void {
        this.listening.dispose();
        this.history.dispose();
        this.status.dispose();
        this.output.dispose();
    }

    private inTurn(job: () => Promise<void>): Promise<void> {
        return this.last = this.last.then(job);
    }

    private async startNow(): Promise<void> {
        this.show('starting');
        try {
            const { RevealOutputChannelOn, State } = await import('vscode-languageclient');
            // what goes wrong inside the server is for the log; a window in the way of a carpenter's typing helps nobody
            const client = this.client = await this.newClient({ ...this.options(), revealOutputChannelOn: RevealOutputChannelOn.Never });
            const conditions: Record<number, Condition> = { [State.Starting]: 'starting', [State.Running]: 'running', [State.Stopped]: 'stopped' };
            readForServer(client);
            this.history.answer(client);
            client.onDidChangeState(({ newState }) => { if (client === this.client) this.show(conditions[newState]!); });
            client.onNotification(LOOKING, ({ busy }: LookingParams) => { if (client === this.client) this.working({ busy }); });
            client.onNotification(HOLDING, ({ still }: HoldingParams) => { if (client === this.client) this.working({ still }); });
            await client.start();
            for (const started of this.startListeners) started(listenTo(client));
        } catch (error) {
            this.show('stopped');
            this.output.appendLine(String(error));
            const show = vscode.l10n.t('Show Output');
            const choice = vscode.window.showErrorMessage(vscode.l10n.t('The Cofferwright language server did not start.'), show);
            void choice.then(chosen => { if (chosen === show) this.output.show(); });
        }
    }

    private async stopNow(): Promise<void> {
        const client = this.client;
        this.client = undefined;
        try {
            await client?.dispose();
        } catch (error) {
            this.output.appendLine(String(error));
        }
    }

    private options(): LanguageClientOptions {
        const initializationOptions: InitializationOptions = {
            readsFiles: true, readsHistory: true, commands: [SHOW_PIECES, SHOW_ESTIMATE, SHOW_CHANGES, SHOW_USES, SHOW_RULE, OPEN_LIST], colors: colorsNow(),
            ...vscode.l10n.bundle && { words: vscode.l10n.bundle },
        };
        // what a comparison or a history shows is no job to check, so only places that files are kept in
        const places = new Set(['file', 'untitled', BuiltinDocuments.scheme, ...(vscode.workspace.workspaceFolders ?? []).map(folder => folder.uri.scheme)]);
        return {
            documentSelector: [...places].map(scheme => ({ language: 'coffer', scheme })),
            outputChannel: this.output,
            initializationOptions,
            // a picture and its words stand beside each other; what a job says is never taken for a tag
            markdown: { supportHtml: true },
        };
    }

    /** The dry fit of a large house takes seconds: what it finds is still to come. And while somebody types all of it holds still. */
    private working(now: { readonly busy?: boolean; readonly still?: boolean }): void {
        this.works = { ...this.works, ...now };
        const { busy, still } = this.works;
        this.status.busy = busy;
        this.status.text = still ? vscode.l10n.t('Cofferwright waits for your hand to rest') : busy ? vscode.l10n.t('Cofferwright fits the pieces together') : 'Cofferwright';
        if (now.still !== undefined) for (const listener of this.holdListeners) listener(still);
    }

    private show(condition: Condition): void {
        if (this.works.still) this.working({ still: false });
        this.works = { busy: false, still: false };
        this.status.busy = condition === 'starting';
        this.status.severity = condition === 'stopped' ? vscode.LanguageStatusSeverity.Error : vscode.LanguageStatusSeverity.Information;
        this.status.text = condition === 'stopped' ? vscode.l10n.t('Cofferwright is not running') : 'Cofferwright';
    }
}

function colorsNow(): Colors {
    const { Dark, HighContrast } = vscode.ColorThemeKind;
    return [Dark, HighContrast].includes(vscode.window.activeColorTheme.kind) ? 'dark' : 'light';
}

function listenTo(client: BaseLanguageClient): Listen {
    return (method, listener) => { client.onNotification(method, listener as (params: unknown) => void); };
}
