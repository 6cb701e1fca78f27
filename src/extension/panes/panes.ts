import * as vscode from 'vscode';
import { PANE_KINDS, type FromPane, type PaneKind } from '../../panes/messages.ts';
import {
    CURSOR, PANE_CLOSED, PANE_CONTENT, PANE_EXPORT, PANE_MARK, PANE_SELECTION, PANE_SHOWS, PANE_STOP, SHOW_CHANGES, SHOW_ESTIMATE, SHOW_PIECES,
    type CursorParams, type PaneClosedParams, type PaneContentParams, type PaneExportParams, type PaneExportResult, type PaneMarkParams, type PaneMarkResult,
    type PaneSelectionParams, type PaneShowsParams, type PaneStopParams, type ShowPiecesParams,
} from '../../server/messages.ts';
import type { History } from '../history.ts';
import type { Listen } from '../server.ts';
import { KINDS, viewType } from './kinds.ts';
import { Asleep } from './asleep.ts';
import { freeColumn, groupOfPanes } from './group.ts';
import { Pane, type Holder } from './pane.ts';
import { saveFile } from './save-file.ts';
import { TextSelector } from './select-text.ts';
import { Ticks } from './ticks.ts';

/** The talk with the server, as panes need it. */
interface Talk {
    ask<Result>(method: string, params: object): Promise<Result | undefined>;
    tell(method: string, params: object): void;
    /** Called by every server that starts, now and later. */
    onStart(started: (listen: Listen) => void): void;
    /** Called whenever all that is shown begins or ends to hold still, since somebody types. */
    onHold(held: (still: boolean) => void): void;
}

/** Panes that show rooms: opened by commands, brought back after a reload, following the cursor or pinned to a room. */
export class Panes implements Holder, vscode.Disposable {
    private readonly panes = new Map<string, Pane>();
    private readonly text = new TextSelector();
    private readonly ticks: Ticks;
    private readonly listening: vscode.Disposable;
    private count = 0;
    private cursor: CursorParams | undefined;
    /** The group that the first pane was opened in. */
    private beside = vscode.ViewColumn.Beside;
    private readonly asleep = new Asleep();

    constructor(private readonly context: vscode.ExtensionContext, private readonly talk: Talk, private readonly history: History) {
        this.ticks = new Ticks(context.workspaceState);
        this.ticks.onChange(() => { for (const pane of this.panes.values()) pane.postTicks(); });
        const kinds = PANE_KINDS.map(kind => ({ kind, ...KINDS[kind] }));
        this.listening = vscode.Disposable.from(
            this.text,
            ...kinds.map(({ kind, command }) => vscode.commands.registerCommand(command, () => this.open(kind, true).then(() => undefined))),
            ...kinds.map(({ kind }) => vscode.window.registerWebviewPanelSerializer(viewType(kind), {
                deserializeWebviewPanel: (panel, kept) => Promise.resolve(this.hold(kind, panel, kept)).then(() => undefined),
            })),
            vscode.commands.registerCommand(SHOW_PIECES, async ({ uri, room }: ShowPiecesParams) => { await this.showing('cut-list', uri, room); }),
            vscode.commands.registerCommand(SHOW_ESTIMATE, async ({ uri, room }: ShowPiecesParams) => { await this.showing('estimate', uri, room); }),
            vscode.commands.registerCommand(SHOW_CHANGES, async ({ uri, room }: ShowPiecesParams) => { (await this.showing('changes', uri, room)).compareWith(undefined); }),
            vscode.commands.registerCommand('cofferwright.compareWith', async () => this.compareWith(await this.open('changes'))),
            vscode.commands.registerCommand('cofferwright.backToText', () => this.backToText()),
            vscode.commands.registerCommand('cofferwright.pinPane', () => this.active()?.pin(true)),
            vscode.commands.registerCommand('cofferwright.unpinPane', () => this.active()?.pin(false)),
            vscode.window.onDidChangeActiveTextEditor(editor => this.cursorIn(editor)),
            vscode.window.onDidChangeTextEditorSelection(({ textEditor }) => this.cursorIn(textEditor)),
        );
        this.cursorIn(vscode.window.activeTextEditor);
        talk.onHold(still => { for (const pane of this.panes.values()) pane.holdStill(still); });
        talk.onStart(listen => {
            listen(PANE_CONTENT, (params: PaneContentParams) => this.panes.get(params.pane)?.take(params));
            listen(PANE_SELECTION, (params: PaneSelectionParams) => this.panes.get(params.pane)?.select(params));
            if (this.cursor && this.panes.size > 0) this.talk.tell(CURSOR, this.cursor);
            for (const pane of this.panes.values()) pane.tellServer();
        });
    }

    /**
     * A pane of this kind that follows the cursor: the one there is, or a new one among the other panes, beside the text. The hands stay on the
     * text, unless they are on a pane already, which would be hidden with them, or it is asked for once more while it is seen.
     */
    async open(kind: PaneKind, onceMore = false): Promise<Pane> {
        const isOnPane = this.active() !== undefined, isFit = (pane: Pane): boolean => pane.kind === kind && !pane.pinned;
        const isSeen = [...this.panes.values()].some(pane => isFit(pane) && pane.panel.visible);
        const there = await this.find(kind, isFit, !isOnPane);
        if (!there) return this.make(kind, this.column(), !isOnPane);
        there.panel.reveal(undefined, !isOnPane && !(onceMore && isSeen));
        return there;
    }

    /** The pane of this kind that is fit, also where it sleeps since the window was loaded anew. `keepsFocus`: the hands stay where they are. */
    private async find(kind: PaneKind, isFit: (pane: Pane) => boolean, keepsFocus: boolean): Promise<Pane | undefined> {
        const fit = (): Pane | undefined => [...this.panes.values()].find(pane => pane.kind === kind && isFit(pane));
        // one that wakes may be pinned to another room
        while (!fit() && await this.asleep.wake(viewType(kind), [...this.panes.values()].map(({ panel }) => panel), keepsFocus));
        return fit();
    }

    /** From a pane back to the text, to where the cursor is. */
    private async backToText(): Promise<void> {
        if (this.cursor) await this.text.focus(vscode.Uri.parse(this.cursor.uri));
        else await vscode.commands.executeCommand('workbench.action.focusFirstEditorGroup');
    }

    private make(kind: PaneKind, viewColumn: vscode.ViewColumn, preserveFocus: boolean): Pane {
        const options = { enableScripts: true, retainContextWhenHidden: true };
        const panel = vscode.window.createWebviewPanel(viewType(kind), KINDS[kind].title(), { viewColumn, preserveFocus }, options);
        return this.hold(kind, panel, undefined);
    }

    /** All panes stand in one group, which holds no texts: the manifest has the editor lock a group that begins with a pane. */
    private column(): vscode.ViewColumn {
        const panels = [...this.panes.values()].map(({ panel }) => panel), known = groupOfPanes();
        // where the first one went is not known at once: two that are opened in a breath must not stand beside each other
        if (panels.length === 0 && !known) this.beside = freeColumn();
        return panels.flatMap(({ viewColumn }) => viewColumn ?? []).at(-1) ?? known?.viewColumn ?? this.beside;
    }

    /** From one pane to another kind, which shows the same room and is pinned where that one is; with the hands on it. */
    private async switchTo(from: Pane, kind: PaneKind): Promise<void> {
        const { shown, pinned } = from, isSame = (pane: Pane): boolean => pane.isOf(shown);
        const there = await this.find(kind, pane => pane.pinned === pinned && (!pinned || isSame(pane)), false);
        const pane = there ?? this.make(kind, from.panel.viewColumn ?? this.column(), false);
        if (there) there.panel.reveal(undefined, false);
        if (!shown) return;
        if (pinned && !there) pane.pinTo(shown.uri, shown.room);
        else if (!pinned) pane.choose(shown.uri, shown.room);
    }

    dispose(): void {
        this.listening.dispose();
    }

    shows(params: PaneShowsParams): void {
        this.talk.tell(PANE_SHOWS, params);
    }

    ticksOf(uri: string, room: string): readonly string[] {
        return this.ticks.of(uri, room);
    }

    closed(pane: Pane): void {
        this.panes.delete(pane.id);
        const params: PaneClosedParams = { pane: pane.id };
        this.talk.tell(PANE_CLOSED, params);
        this.activated();
    }

    /** What the pane's own menu offers depends on the pane in front. */
    activated(): void {
        void vscode.commands.executeCommand('setContext', 'cofferwright.panePinned', this.active()?.pinned ?? false);
    }

    asked(pane: Pane, message: FromPane): void {
        switch (message.type) {
            case 'select': void this.select(message).catch((error: unknown) => pane.say(vscode.l10n.t('The text could not be opened: {0}', String(error)))); return;
            case 'against': void (message.to === 'pick' ? this.compareWith(pane) : pane.compareWith(message.to === 'signed' ? 'signed' : undefined)); return;
            case 'switch': void this.switchTo(pane, message.kind); return;
            case 'find': void this.showPart(pane, message.kind, message.key); return;
            case 'tick': return this.tick(pane, message);
            case 'mark': void this.mark(pane, message); return;
            case 'stop': return this.talk.tell(PANE_STOP, { pane: pane.id } satisfies PaneStopParams);
            case 'pick': return this.picked(pane, message.key);
            case 'export': void this.export(pane, message); return;
            default: return;
        }
    }

    private hold(kind: PaneKind, panel: vscode.WebviewPanel, kept: unknown): Pane {
        const id = `${kind}-${++this.count}`;
        const pane = new Pane(id, kind, panel, this.context.extensionUri, this, kept);
        this.panes.set(id, pane);
        this.asleep.woken();
        if (this.cursor) this.talk.tell(CURSOR, this.cursor);
        this.activated();
        return pane;
    }

    private picked(from: Pane, key: string): void {
        for (const pane of this.panes.values()) if (pane !== from && pane.isOf(from.shown)) pane.picked(key);
    }

    /** In the text, or in the text as it was. */
    private async select({ at, was }: FromPane & { type: 'select' }): Promise<void> {
        const old = was === undefined ? undefined : await this.history.oldUri(vscode.Uri.parse(at.uri), was);
        await this.text.select(old ? { ...at, uri: old.toString() } : at);
    }

    /** With a commit that somebody picks. */
    private async compareWith(pane: Pane): Promise<void> {
        const uri = pane.shown?.uri ?? this.cursor?.uri ?? vscode.workspace.workspaceFolders?.[0]?.uri.toString();
        const commit = uri === undefined ? undefined : await this.history.pick(vscode.Uri.parse(uri));
        if (commit !== undefined) pane.compareWith(commit);
    }

    private async showPart(from: Pane, kind: PaneKind, key: string): Promise<void> {
        // a page of a whole house leads to pieces of any of its rooms
        const room = from.ticked.find(one => key.startsWith(`${one.room}.`)) ?? from.shown;
        const pane = await (room ? this.showing(kind, room.uri, room.room) : this.open(kind));
        pane.reveal(key);
    }

    /** A pane of this kind that shows this room: the one there is, or one that is brought to it. */
    private async showing(kind: PaneKind, uri: string, room: string): Promise<Pane> {
        const same = (pane: Pane): boolean => pane.isOf({ uri, room }), isOnPane = this.active() !== undefined;
        const pane = [...this.panes.values()].find(each => each.kind === kind && same(each)) ?? await this.open(kind);
        if (!same(pane)) pane.choose(uri, room);
        pane.panel.reveal(undefined, !isOnPane);
        return pane;
    }

    /** A piece is ticked off in its own room; what is no piece, in the first. */
    private tick(pane: Pane, { add, remove }: FromPane & { type: 'tick' }): void {
        const rooms = pane.ticked;
        const roomOf = (key: string): unknown => rooms.find(({ room }) => key.startsWith(`${room}.`)) ?? rooms[0];
        for (const each of rooms) {
            const own = (keys: readonly string[]): string[] => keys.filter(key => roomOf(key) === each);
            const [more, less] = [own(add), own(remove)];
            if (more.length + less.length > 0) void this.ticks.change(each.uri, each.room, more, less);
        }
    }

    private async mark(pane: Pane, { as, key }: FromPane & { type: 'mark' }): Promise<void> {
        const params: PaneMarkParams = { pane: pane.id, as, key }, before = openVersions();
        const answer = await this.talk.ask<PaneMarkResult>(PANE_MARK, params), now = openVersions();
        // places are those of the texts that were asked about: in another one they are somewhere else
        const isStale = answer && 'edits' in answer && answer.edits.some(({ uri }) => now.get(addressOf(uri)) !== before.get(addressOf(uri)));
        if (!answer || isStale) return pane.say(vscode.l10n.t('The job has changed in the meantime.'));
        if ('words' in answer) return pane.say(answer.words);
        const edit = new vscode.WorkspaceEdit();
        for (const { uri, range: { start, end }, text } of answer.edits) edit.replace(
            vscode.Uri.parse(uri), new vscode.Range(start.line, start.character, end.line, end.character), text,
        );
        if (!await vscode.workspace.applyEdit(edit)) pane.say(vscode.l10n.t('The text could not be changed.'));
    }

    private async export(pane: Pane, { format, state, file }: FromPane & { type: 'export' }): Promise<void> {
        const params: PaneExportParams = { pane: pane.id, format, state };
        const made = file ?? await this.talk.ask<PaneExportResult>(PANE_EXPORT, params);
        if (!made) return pane.say(vscode.l10n.t('There is nothing to save yet.'));
        const bytes = 'text' in made ? new TextEncoder().encode(made.text) : Uint8Array.from(atob(made.base64), letter => letter.charCodeAt(0));
        await saveFile(made.name, bytes, pane.shown ? vscode.Uri.parse(pane.shown.uri) : undefined);
    }

    private active(): Pane | undefined {
        return [...this.panes.values()].find(({ panel }) => panel.active);
    }

    /** Other files and other panes leave the cursor where it was. */
    private cursorIn(editor: vscode.TextEditor | undefined): void {
        if (editor?.document.languageId !== 'coffer') return;
        const { line, character } = editor.selection.active, uri = editor.document.uri.toString();
        const before = this.cursor;
        this.cursor = { uri, position: { line, character } };
        if (before?.uri !== uri || before.position.line !== line
            || before.position.character !== character) for (const pane of this.panes.values()) pane.cursorMoved();
        if (this.panes.size > 0) this.talk.tell(CURSOR, this.cursor);
    }
}

/** The versions of all texts that are open, by their addresses. */
function openVersions(): ReadonlyMap<string, number> {
    return new Map(vscode.workspace.textDocuments.map(({ uri, version }) => [uri.toString(), version]));
}

function addressOf(uri: string): string {
    return vscode.Uri.parse(uri).toString();
}
