import { URI, UriUtils } from 'langium';
import type { LanguageServer } from 'langium/lsp';
import type { Connection } from 'vscode-languageserver';
import {
    HISTORY_CHANGED, OLD_FILES, OLD_STATE, type InitializationOptions, type OldFilesParams, type OldFilesResult, type OldStateParams, type OldStateResult,
} from '../messages.ts';

/**
 * Earlier states of the open folders. The editor reads them by its own git, if it said so when it came: the server starts no program and opens no
 * repository.
 */
export class History {
    private willing = false;
    /** By folder and commit; a question that is asked is not asked again while nothing changed. */
    private readonly answers = new Map<string, Promise<OldStateResult>>();
    private readonly listeners: (() => void)[] = [];

    constructor(private readonly connection: Connection) {
        connection.onNotification(HISTORY_CHANGED, () => {
            this.answers.clear();
            for (const listener of this.listeners) listener();
        });
    }

    listenTo(server: LanguageServer): void {
        server.onInitialize(({ initializationOptions }) => {
            this.willing = (initializationOptions as Partial<InitializationOptions> | undefined)?.readsHistory === true;
        });
    }

    /** Tells that what was answered may hold no more. */
    onChange(listener: () => void): void {
        this.listeners.push(listener);
    }

    /** Which state of a file's repository a commit is. `commit`: its whole hash; null: the last one. */
    stateOf(uri: string, commit: string | null): Promise<OldStateResult> {
        const key = `${UriUtils.dirname(URI.parse(uri)).toString()} ${commit ?? ''}`, known = this.answers.get(key);
        if (known) return known;
        const answer = this.ask({ uri, commit });
        this.answers.set(key, answer);
        return answer;
    }

    /** What files said then; those that were not there are left out. */
    async filesOf(params: OldFilesParams): Promise<OldFilesResult> {
        return this.connection.sendRequest<OldFilesResult>(OLD_FILES, params);
    }

    private async ask(params: OldStateParams): Promise<OldStateResult> {
        if (!this.willing) return { none: 'not-asked' };
        if (URI.parse(params.uri).scheme === 'untitled') return { none: 'not-saved' };
        return this.connection.sendRequest<OldStateResult>(OLD_STATE, params).catch((error: unknown) => {
            this.connection.console.log(`${OLD_STATE}: ${String(error)}`);
            return { none: 'fault' };
        });
    }
}
