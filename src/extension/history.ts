import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import {
    HISTORY_CHANGED, MOST_OLD_BYTES, NAMED_COMMITS, OLD_FILES, OLD_STATE,
    type Commit, type NamedCommitsParams, type NamedCommitsResult, type OldFile, type OldFilesParams, type OldFilesResult, type OldStateParams,
    type OldStateResult,
} from '../server/messages.ts';
import { gitOfEditor, onSwitch, type Git, type GitCommit, type Repository } from './git.ts';
import type { Store, Stored } from './stored-files.ts';

/** Job files, and tables that these name. */
const READ = /\.(coffer|csv|tsv|txt)$/i;
/** So many commits are offered; any other by its name. */
const MOST_OFFERED = 200;

/** What files said at a commit of a repository that the editor's own git opened: for the server, which compares them with what they say now. */
export class History implements vscode.Disposable {
    private readonly disposables: vscode.Disposable[] = [];
    private readonly watched = new Map<Repository, { readonly listening: vscode.Disposable; head: string | undefined }>();
    private git: Promise<Git | 'no-git' | 'switched-off'> | undefined;
    private isWatching = false;

    /** `tell`: says something to the server. `store` is undefined in a browser, where there is no git. */
    constructor(private readonly tell: (method: string, params: object) => void, private readonly store: Store | undefined) {
        this.disposables.push(vscode.extensions.onDidChange(() => this.lookAgain()));
    }

    dispose(): void {
        for (const each of [...this.disposables, ...[...this.watched.values()].map(({ listening }) => listening)]) each.dispose();
    }

    /** Answers a server. */
    answer(client: BaseLanguageClient): void {
        client.onRequest(OLD_STATE, (params: OldStateParams): Promise<OldStateResult> => this.stateOf(params));
        client.onRequest(OLD_FILES, (params: OldFilesParams): Promise<OldFilesResult> => this.filesOf(params));
        client.onRequest(NAMED_COMMITS, (params: NamedCommitsParams): Promise<NamedCommitsResult> => this.commitsNamed(params));
    }

    /** The text of a file as it was, to be read; undefined where git is gone. */
    async oldUri(uri: vscode.Uri, commit: string): Promise<vscode.Uri | undefined> {
        const git = await this.gitNow();
        return typeof git === 'string' ? undefined : git.toGitUri(uri, commit);
    }

    /** Has somebody pick a commit out of the history of a file's repository. Its whole hash; undefined where nobody did. */
    async pick(uri: vscode.Uri): Promise<string | undefined> {
        const git = await this.gitNow(), repository = typeof git === 'string' ? undefined : git.getRepository(uri);
        const commits = await repository?.log({ maxEntries: MOST_OFFERED }).catch(() => []);
        if (!repository || !commits || commits.length === 0) {
            void vscode.window.showInformationMessage(vscode.l10n.t('There is no history here to choose a commit from.'));
            return undefined;
        }
        const items = commits.map(commit => {
            const { hash, date, subject } = told(commit);
            return { label: subject || hash.slice(0, 8), description: [hash.slice(0, 8), date].filter(Boolean).join(', '), hash };
        });
        const byName = { label: vscode.l10n.t('Another commit, by its name …'), description: vscode.l10n.t('a tag, a branch, the beginning of its number'), hash: undefined };
        const chosen = await vscode.window.showQuickPick([...items, byName], { title: vscode.l10n.t('Compare with a commit'), placeHolder: vscode.l10n.t('What has changed since?'), matchOnDescription: true });
        return chosen && (chosen.hash ?? this.byName(repository));
    }

    private async byName(repository: Repository): Promise<string | undefined> {
        let hash: string | undefined;
        const find = async (name: string): Promise<string | undefined> => {
            const found = await commitOf(repository, name);
            hash = found?.hash;
            return found ? undefined : vscode.l10n.t('There is no commit of this name here.');
        };
        const name = await vscode.window.showInputBox({ title: vscode.l10n.t('Compare with a commit'), prompt: vscode.l10n.t('A commit, a tag or a branch'), validateInput: text => find(text.trim()) });
        if (name !== undefined) await find(name.trim());
        return name === undefined ? undefined : hash;
    }

    private async stateOf({ uri, commit }: OldStateParams): Promise<OldStateResult> {
        const file = vscode.Uri.parse(uri), git = await this.gitNow();
        if (typeof git === 'string') return { none: git };
        const repository = git.getRepository(file);
        if (!repository) return { none: 'no-repository' };
        const name = commit ?? repository.state.HEAD?.commit;
        if (name === undefined) return { none: 'no-commit' };
        const found = await commitOf(repository, name);
        if (!found) return { none: commit === null ? 'no-commit' : 'unknown-commit' };
        const others = await repository.diffWith(found.hash);
        const paths = new Set(others.map(({ originalUri }) => originalUri).filter(isJobFile).map(each => each.toString()));
        return { commit: told(found), top: repository.rootUri.toString(), others: [...paths] };
    }

    private async filesOf({ top, commit, files }: OldFilesParams): Promise<OldFilesResult> {
        const git = await this.gitNow(), repository = typeof git === 'string' ? undefined : git.repositories.find(one => one.rootUri.toString() === top);
        if (typeof git === 'string' || !repository) throw new Error(`${top} is no repository that is open.`);
        const read = files.map(file => vscode.Uri.parse(file)).filter(({ path }) => READ.test(path));
        const stored = await this.store!.read(git.git.path, repository.rootUri.fsPath, commit, read.map(({ fsPath }) => fsPath), MOST_OLD_BYTES);
        return read.flatMap((uri, i) => oldFile(uri.toString(), stored[i]));
    }

    private async commitsNamed({ uri, names }: NamedCommitsParams): Promise<NamedCommitsResult> {
        const git = await this.gitNow(), repository = typeof git === 'string' ? undefined : git.getRepository(vscode.Uri.parse(uri));
        if (typeof git === 'string' || !repository) return null;
        return [...await this.store!.name(git.git.path, repository.rootUri.fsPath, names)].map(([name, { is }]) => ({ name, is }));
    }

    /** Asked for once; the first time it is watched from then on. */
    private async gitNow(): Promise<Git | 'no-git' | 'switched-off'> {
        const git = await (this.git ??= this.store ? gitOfEditor() : Promise.resolve('no-git' as const));
        if (this.isWatching || git === 'no-git') return git;
        this.isWatching = true;
        const switching = await onSwitch(() => this.lookAgain());
        if (switching) this.disposables.push(switching);
        if (git === 'switched-off') return git;
        this.disposables.push(
            git.onDidOpenRepository(repository => { this.watch(repository); this.changed(); }),
            git.onDidCloseRepository(repository => {
                this.watched.get(repository)?.listening.dispose();
                this.watched.delete(repository);
                this.changed();
            }),
        );
        for (const repository of git.repositories) this.watch(repository);
        return git;
    }

    /** Tells of every new last commit; a file that is saved changes the state of its repository too, and is none. */
    private watch(repository: Repository): void {
        if (this.watched.has(repository)) return;
        const seen = { head: repository.state.HEAD?.commit, listening: repository.state.onDidChange(() => {
            const { commit } = repository.state.HEAD ?? {};
            if (commit === seen.head) return;
            seen.head = commit;
            this.changed();
        }) };
        this.watched.set(repository, seen);
    }

    private lookAgain(): void {
        if (!this.git) return;
        this.git = undefined;
        this.isWatching = false;
        this.changed();
    }

    private changed(): void {
        this.tell(HISTORY_CHANGED, {});
    }
}

/** A commit by its hash, a tag or a branch; undefined: there is none. A name that begins like an option is none. */
async function commitOf(repository: Repository, name: string): Promise<GitCommit | undefined> {
    return /^[^-\s][^\s]*$/.test(name) ? repository.getCommit(`${name}^{commit}`).catch(() => undefined) : undefined;
}

/** None where there was no such file. */
function oldFile(uri: string, stored: Stored): OldFile[] {
    if (stored === undefined) return [];
    if (typeof stored === 'string') return [{ uri, noText: stored }];
    try {
        return [{ uri, text: new TextDecoder('utf-8', { fatal: true }).decode(stored) }];
    } catch {
        return [{ uri, noText: 'not-text' }];
    }
}

function isJobFile({ path }: vscode.Uri): boolean {
    return path.endsWith('.coffer');
}

/** The day as it is here. */
function told({ hash, message, authorDate }: GitCommit): Commit {
    const two = (figure: number): string => String(figure).padStart(2, '0');
    const date = authorDate ? `${authorDate.getFullYear()}-${two(authorDate.getMonth() + 1)}-${two(authorDate.getDate())}` : '';
    return { hash, date, subject: message.trim().split('\n')[0]?.trim() ?? '' };
}
