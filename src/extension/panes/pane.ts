import * as vscode from 'vscode';
import { isCommitHash, readFromPane, versioned, type FromPane, type PaneKind, type ToPane } from '../../panes/messages.ts';
import type { PaneContentParams, PaneSelectionParams, PaneShowsParams } from '../../server/messages.ts';
import { KINDS } from './kinds.ts';
import { iconOf, pageHtml, paneFiles } from './page-html.ts';

/** What a pane asks of those who hold it. */
export interface Holder {
    shows(params: PaneShowsParams): void;
    asked(pane: Pane, message: FromPane): void;
    ticksOf(uri: string, room: string): readonly string[];
    closed(pane: Pane): void;
    activated(): void;
}

/** What a pane's script kept over a reload, as far as it can be read. */
interface Kept {
    readonly pinned?: unknown;
    readonly room?: { readonly uri?: unknown; readonly room?: unknown };
    readonly own?: { readonly against?: unknown } | null;
}

/** One webview, with what it shows. Nothing is sent to it while it is hidden: what was to be shown last is said when it is back. */
export class Pane {
    pinned = false;
    private chosen: { readonly uri: string; readonly room: string } | undefined;
    /** What a pane of changes compares with: a commit, or `signed`; undefined: the last one. */
    private against: string | undefined;
    private size: { readonly width: number; readonly height: number } | undefined;
    private last: PaneContentParams | undefined;
    /** What the cursor stands in; undefined until the server has said so. */
    private keys: readonly string[] | undefined;
    /** The part that was picked by hand: said again to a pane that comes back, until the cursor comes into the words of others. */
    private pickedKey: string | undefined;
    /** The cursor has gone somewhere since. */
    private hasMoved = false;
    /** Its script has said that it is there. It stays while the pane is hidden, so that a pane that is switched to is there at once, as it was left. */
    private isReady = false;
    private isStill = false;

    constructor(
        readonly id: string, readonly kind: PaneKind, readonly panel: vscode.WebviewPanel, extension: vscode.Uri, private readonly holder: Holder,
        kept: unknown,
    ) {
        this.recall(kept as Kept | undefined);
        const { webview } = panel;
        webview.options = { enableScripts: true, localResourceRoots: [paneFiles(extension)] };
        webview.onDidReceiveMessage(data => this.receive(data));
        panel.onDidDispose(() => holder.closed(this));
        panel.onDidChangeViewState(() => {
            if (panel.visible) this.sayAgain();
            holder.activated();
        });
        panel.iconPath = iconOf(kind, extension);
        webview.html = pageHtml(webview, extension, kind);
        // one that comes back after a reload has the name it had
        if (kept === undefined) this.name();
        this.tellServer();
    }

    get shown(): PaneContentParams['shown'] {
        return this.last?.shown ?? null;
    }

    /** Whether it shows this room; null: none. */
    isOf(room: { readonly uri: string; readonly room: string } | null): boolean {
        // one that comes back after a reload knows its room before the server has said it
        const own = this.shown ?? this.chosen;
        return own?.uri === room?.uri && own?.room === room?.room;
    }

    /** The rooms whose pieces are ticked off in it. */
    get ticked(): readonly { readonly uri: string; readonly room: string }[] {
        return this.last?.content?.rooms ?? (this.shown ? [this.shown] : []);
    }

    /** Says again what is to be shown: to a new server, and after every change. */
    tellServer(): void {
        const room = this.chosen ?? (this.pinned && this.shown ? { uri: this.shown.uri, room: this.shown.room } : undefined);
        const against = this.against === undefined ? {} : { against: this.against };
        this.holder.shows({ pane: this.id, kind: this.kind, pinned: this.pinned, ...room && { room }, ...this.size, ...against });
    }

    take(params: PaneContentParams): void {
        const before = this.ticked;
        const content = params.content ?? (params.condition === 'nothing' ? undefined : this.last?.content);
        // the cursor has led away from what was chosen by hand
        if (!this.pinned && this.chosen && (params.shown?.uri !== this.chosen.uri || params.shown.room !== this.chosen.room)) this.chosen = undefined;
        this.last = { ...params, ...content && { content } };
        this.name();
        const { pane: _, ...message } = params;
        this.post({ type: 'content', ...message });
        // somebody asked for a part of a pane that was not there yet
        if (this.pickedKey !== undefined && before.length === 0) this.picked(this.pickedKey);
        if (!sameRooms(before, this.ticked)) this.postTicks();
    }

    /** The server says it after every build too: only a cursor that has moved makes forget what was picked. */
    select({ keys }: PaneSelectionParams): void {
        this.keys = keys;
        this.post({ type: 'selection', keys, reveal: false });
        if (this.pickedKey === undefined || keys.length === 0 || keys.includes(this.pickedKey)) return;
        if (this.hasMoved) this.pickedKey = undefined;
        else this.post({ type: 'picked', key: this.pickedKey });
    }

    cursorMoved(): void {
        this.hasMoved = true;
    }

    /** Shows a part that somebody asked for in another pane. */
    reveal(key: string): void {
        this.picked(key);
    }

    picked(key: string): void {
        this.pickedKey = key;
        this.hasMoved = false;
        this.post({ type: 'picked', key });
    }

    pin(pinned: boolean): void {
        this.pinned = pinned;
        this.chosen = pinned && this.shown ? { uri: this.shown.uri, room: this.shown.room } : undefined;
        this.post({ type: 'following', pinned });
        this.tellServer();
        this.holder.activated();
    }

    /** Stays with this room from the beginning. */
    pinTo(uri: string, room: string): void {
        this.pinned = true;
        this.choose(uri, room);
    }

    choose(uri: string, room: string): void {
        this.chosen = { uri, room };
        this.tellServer();
    }

    /** `commit`: its whole hash, or `signed`; undefined: the last one. */
    compareWith(commit: string | undefined): void {
        this.against = commit;
        this.tellServer();
    }

    holdStill(still: boolean): void {
        this.isStill = still;
        this.post({ type: 'holding', still });
    }

    postTicks(): void {
        this.post({ type: 'ticks', keys: this.ticked.flatMap(({ uri, room }) => this.holder.ticksOf(uri, room)) });
    }

    say(words: string): void {
        this.post({ type: 'plain', words });
    }

    private post(message: ToPane): void {
        if (this.isReady && this.panel.visible) void this.panel.webview.postMessage(versioned(message));
    }

    private receive(data: unknown): void {
        const message = readFromPane(data);
        switch (message.type) {
            case 'not-taken':
                // not posted by `post`: a pane of another version never said that it is ready as this one understands it
                void this.panel.webview.postMessage(versioned({ type: 'plain', words: vscode.l10n.t('This pane and the extension are of different versions. Close the pane and open it again.') }));
                return;
            case 'ready': return this.ready();
            case 'size':
                this.size = { width: message.width, height: message.height };
                this.tellServer();
                return;
            case 'pin': return this.pin(message.pinned);
            case 'choose': return this.choose(message.uri, message.room);
            case 'select': case 'switch': case 'find': case 'pick': case 'tick': case 'mark': case 'stop': case 'against': case 'export': return this.holder.asked(this, message);
        }
    }

    private ready(): void {
        this.isReady = true;
        this.sayAgain();
    }

    private sayAgain(): void {
        this.post({ type: 'following', pinned: this.pinned });
        this.post({ type: 'holding', still: this.isStill });
        if (!this.last) return;
        const { pane: _, ...message } = this.last;
        this.post({ type: 'content', ...message });
        this.postTicks();
        if (this.keys) this.post({ type: 'selection', keys: this.keys, reveal: false });
        if (this.pickedKey !== undefined) this.post({ type: 'picked', key: this.pickedKey });
    }

    private name(): void {
        const kind = KINDS[this.kind].title();
        this.panel.title = this.shown ? `${this.shown.title} — ${kind}` : kind;
    }

    private recall(kept: Kept | undefined): void {
        const against = kept?.own?.against;
        if (typeof against === 'string' && (against === 'signed' || isCommitHash(against))) this.against = against;
        const room = kept?.room;
        if (typeof room?.uri !== 'string' || typeof room.room !== 'string') return;
        this.pinned = kept?.pinned === true;
        this.chosen = { uri: room.uri, room: room.room };
    }
}

function sameRooms(a: Pane['ticked'], b: Pane['ticked']): boolean {
    return a.length === b.length && a.every(({ uri, room }, i) => uri === b[i]!.uri && room === b[i]!.room);
}
