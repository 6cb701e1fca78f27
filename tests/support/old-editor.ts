import type { Connection } from 'vscode-languageserver';
import type { NoHistory } from '../../src/pages/changes/known.ts';
import { History } from '../../src/server/changes/history.ts';
import { HISTORY_CHANGED, OLD_FILES, OLD_STATE, type Commit, type OldFile, type OldFilesParams, type OldFilesResult, type OldStateParams, type OldStateResult } from '../../src/server/messages.ts';

type Texts = Readonly<Record<string, string>>;

/** An editor whose repository is `file:///house`, with commits that are texts. */
export class OldEditor {
    /** By hash; the last one is the last commit. */
    readonly commits = new Map<string, Texts>();
    /** How often it was asked, and for which files. */
    readonly asked: { states: number; files: string[] } = { states: 0, files: [] };
    /** Answers this instead. */
    none: NoHistory | undefined;
    private heard: () => void = () => undefined;
    readonly history: History;

    constructor(private readonly now: () => Texts, { willing = true } = {}) {
        const connection = {
            onNotification: (method: string, listener: () => void) => { if (method === HISTORY_CHANGED) this.heard = listener; },
            sendRequest: (method: string, params: object) => Promise.resolve(
                method === OLD_STATE ? this.stateOf(params as OldStateParams) : method === OLD_FILES ? this.filesOf(params as OldFilesParams) : null,
            ),
            console: { log: () => undefined },
        } as unknown as Connection;
        this.history = new History(connection);
        let initialize: ((params: object) => void) | undefined;
        this.history.listenTo({ onInitialize: (listener: (params: object) => void) => { initialize = listener; } } as never);
        initialize?.({ initializationOptions: { readsHistory: willing } });
    }

    commit(hash: string, texts: Texts): void {
        this.commits.set(hash, texts);
        this.heard();
    }

    private stateOf({ commit }: OldStateParams): OldStateResult {
        this.asked.states++;
        if (this.none) return { none: this.none };
        const hash = commit ?? [...this.commits.keys()].at(-1), texts = hash === undefined ? undefined : this.commits.get(hash);
        if (hash === undefined || !texts) return { none: hash === undefined ? 'no-commit' : 'unknown-commit' };
        const now = this.now(), told: Commit = { hash, date: '2026-10-03', subject: hash.length > 8 ? 'Three coffers by three in the dining room' : `State ${hash}` };
        return { commit: told, top: 'file:///house', others: Object.keys(texts).filter(path => texts[path] !== now[path]).map(path => `file:///house/${path}`) };
    }

    private filesOf({ commit, files }: OldFilesParams): OldFilesResult {
        this.asked.files.push(...files);
        const texts = this.commits.get(commit)!;
        return files.flatMap((uri): OldFile[] => {
            const text = texts[uri.slice('file:///house/'.length)];
            return text === undefined ? [] : text === 'TOO LARGE' ? [{ uri, noText: 'too-large' }] : [{ uri, text }];
        });
    }
}
