import * as vscode from 'vscode';

// What is used of the editor's own git extension: version 1 of its interface, which it keeps.

interface GitExtension {
    readonly enabled: boolean;
    readonly onDidChangeEnablement: vscode.Event<boolean>;
    getAPI(version: 1): Git;
}
export interface Git {
    readonly state: 'uninitialized' | 'initialized';
    readonly onDidChangeState: vscode.Event<'uninitialized' | 'initialized'>;
    readonly onDidOpenRepository: vscode.Event<Repository>;
    readonly onDidCloseRepository: vscode.Event<Repository>;
    readonly git: { readonly path: string };
    readonly repositories: readonly Repository[];
    getRepository(uri: vscode.Uri): Repository | null;
    toGitUri(uri: vscode.Uri, ref: string): vscode.Uri;
}
export interface Repository {
    readonly rootUri: vscode.Uri;
    readonly state: { readonly HEAD: { readonly commit?: string } | undefined; readonly onDidChange: vscode.Event<void> };
    diffWith(ref: string): Promise<readonly { readonly uri: vscode.Uri; readonly originalUri: vscode.Uri }[]>;
    log(options: { readonly maxEntries: number }): Promise<readonly GitCommit[]>;
    getCommit(ref: string): Promise<GitCommit>;
}
export interface GitCommit { readonly hash: string; readonly message: string; readonly authorDate?: Date }

/** How long it may take to look for repositories when the editor has just come. Milliseconds. */
const AT_START = 5000;

/** The editor's git, once it has looked for repositories; or why there is none, as in a browser, and in a folder that nobody trusts. */
export async function gitOfEditor(): Promise<Git | 'no-git' | 'switched-off'> {
    const extension = vscode.extensions.getExtension<GitExtension>('vscode.git');
    if (!extension) return 'no-git';
    try {
        const { enabled, getAPI } = await exportsOf(extension);
        if (!enabled) return 'switched-off';
        const git = getAPI(1);
        if (git.state !== 'initialized') await new Promise<void>(resolve => {
            const timer = setTimeout(done, AT_START), listening = git.onDidChangeState(state => { if (state === 'initialized') done(); });
            function done(): void {
                clearTimeout(timer);
                listening.dispose();
                resolve();
            }
        });
        return git;
    } catch {
        return 'no-git';
    }
}

async function exportsOf(extension: vscode.Extension<GitExtension>): Promise<GitExtension> {
    const git = extension.isActive ? extension.exports : await extension.activate();
    return { enabled: git.enabled, onDidChangeEnablement: git.onDidChangeEnablement, getAPI: version => git.getAPI(version) };
}

/** Told when git is switched on or off. Nothing where there is none. */
export async function onSwitch(listener: () => void): Promise<vscode.Disposable | undefined> {
    const extension = vscode.extensions.getExtension<GitExtension>('vscode.git');
    try {
        return extension && (await exportsOf(extension)).onDidChangeEnablement(listener);
    } catch {
        return undefined;
    }
}
