import { URI, UriUtils } from 'langium';
import type { LanguageServer } from 'langium/lsp';
import type { Connection } from 'vscode-languageserver';
import type { Commits, CommitThere } from '../../job/commits.ts';
import {
    HISTORY_CHANGED, NAMED_COMMITS, OLD_FILES, OLD_STATE, type InitializationOptions, type NamedCommitsParams, type NamedCommitsResult,
    type OldFilesParams, type OldFilesResult, type OldStateParams, type OldStateResult,
} from '../messages.ts';

/**
 * Earlier states of the open folders. The editor reads them by its own git, if it said so when it came: the server starts no program and opens no
 * repository.
 */
export class History {
    private willing = false;
    /** By folder and commit; a question that is asked is not asked again while nothing changed. */
    private readonly answers = new Map<string, Promise<OldStateResult>>();
    private readonly named = new Map<string, Commits | 'asked'>();
    private readonly onceNamed: (() => void)[] = [];
    private readonly listeners: (() => void)[] = [];

    constructor(private readonly connection: Connection) {
        connection.onNotification(HISTORY_CHANGED, () => {
            this.answers.clear();
            this.named.clear();
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

    /**
     * What git knows of commits that a file names, as far as it has been told; undefined while that is asked, and when it comes whoever listens is told
     * (`onNamed`). Nobody waits for it: an editor that has just come looks for its repositories first.
     */
    commitsNamed(uri: string, names: readonly string[]): Commits | undefined {
        if (!this.willing || URI.parse(uri).scheme === 'untitled') return new Map();
        const key = JSON.stringify([uri, ...names]), known = this.named.get(key);
        if (!known) {
            this.named.set(key, 'asked');
            void this.nameCommits({ uri, names }).then(commits => {
                if (this.named.get(key) !== 'asked') return;
                this.named.set(key, commits);
                for (const listener of this.onceNamed) listener();
            });
        }
        return known === 'asked' ? undefined : known;
    }

    onNamed(listener: () => void): void {
        this.onceNamed.push(listener);
    }

    private async nameCommits(params: NamedCommitsParams): Promise<Commits> {
        const answer = this.connection.sendRequest<NamedCommitsResult>(NAMED_COMMITS, params).catch((error: unknown) => {
            this.connection.console.log(`${NAMED_COMMITS}: ${String(error)}`);
            return null;
        });
        return new Map((await answer ?? []).map(({ name, is }): [string, CommitThere] => [name, { is }]));
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
