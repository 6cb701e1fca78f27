import * as vscode from 'vscode';
import { TRIALS, TRY_ROOM, type FoundInRoom, type TrialsResult, type TryRoomParams, type TryRoomResult } from '../server/messages.ts';

interface Talk { ask<Result>(method: string, params: object): Promise<Result | undefined>; onStart(started: () => void): void }

/** What a thing in the Testing view stands for; its parent is a room or a file. */
type Subject = { readonly file: string } | { readonly room: TryRoomParams } | { readonly group: 'dry-fit' | 'rules' } | { readonly rule: string };

/** What the language itself finds belongs to no rule of the trade. */
const TEXT = 'text';

/** Changes of a house come in bursts. */
const SETTLE_MS = 1000;

/**
 * The rooms of the house in the editor's Testing view: each is tried by every rule and by the dry fit of its cut list. What is
 * wrong or what a careful carpenter would not do fails, at its place; a hint does not.
 */
export class Trials implements vscode.Disposable {
    private readonly controller = vscode.tests.createTestController('cofferwright', vscode.l10n.t('Coffered Ceilings'));
    private readonly subjects = new WeakMap<vscode.TestItem, Subject>();
    private readonly listening: vscode.Disposable;
    private rules: TrialsResult['rules'] = [];
    private waiting: ReturnType<typeof setTimeout> | undefined;
    /** Nothing is asked before somebody has looked at the view. */
    private looked = false;

    constructor(private readonly talk: Talk) {
        this.controller.resolveHandler = item => item ? undefined : this.list();
        this.controller.refreshHandler = () => this.list();
        this.controller.createRunProfile(vscode.l10n.t('Try'), vscode.TestRunProfileKind.Run, (request, cancelled) => this.run(request, cancelled), true);
        this.listening = vscode.languages.onDidChangeDiagnostics(() => this.soon());
        talk.onStart(() => this.soon());
    }

    dispose(): void {
        clearTimeout(this.waiting);
        this.listening.dispose();
        this.controller.dispose();
    }

    private soon(): void {
        if (!this.looked) return;
        clearTimeout(this.waiting);
        this.waiting = setTimeout(() => void this.list(), SETTLE_MS);
    }

    /** Lists the rooms anew; a room that is still there keeps what was found of it. */
    private async list(): Promise<void> {
        this.looked = true;
        const trials = await this.talk.ask<TrialsResult>(TRIALS, {});
        if (!trials) return;
        this.rules = trials.rules;
        const byFile = new Map<string, TrialsResult['rooms'][number][]>();
        for (const room of trials.rooms) byFile.set(room.uri, [...byFile.get(room.uri) ?? [], room]);
        this.controller.items.replace([...byFile].map(([file, rooms]) => {
            const uri = vscode.Uri.parse(file), item = this.controller.items.get(file) ?? this.item(file, vscode.workspace.asRelativePath(uri), { file }, uri);
            item.children.replace(rooms.map(({ room, title, range }) => {
                const child = item.children.get(`${file}#${room}`) ?? this.roomItem({ uri: file, room }, uri);
                child.label = title;
                child.range = new vscode.Range(range.start.line, range.start.character, range.end.line, range.end.character);
                return child;
            }));
            return item;
        }));
    }

    private roomItem(room: TryRoomParams, uri: vscode.Uri): vscode.TestItem {
        const id = `${room.uri}#${room.room}`, item = this.item(id, room.room, { room }, uri);
        const group = (name: 'dry-fit' | 'rules', label: string, rules: TrialsResult['rules']): vscode.TestItem => {
            const holder = this.item(`${id}/${name}`, label, { group: name }, uri);
            holder.children.replace(rules.map(rule => {
                const child = this.item(`${id}/${rule.name}`, rule.title, { rule: rule.name }, uri);
                child.description = rule.name;
                return child;
            }));
            return holder;
        };
        item.children.replace([
            group('dry-fit', vscode.l10n.t('Dry fit: the cut list goes together'), this.rules.filter(({ dryFit }) => dryFit)),
            group('rules', vscode.l10n.t('Rules'), [
                { name: TEXT, title: vscode.l10n.t('Everything in the text is understood'), dryFit: false }, ...this.rules.filter(({ dryFit }) => !dryFit),
            ]),
        ]);
        return item;
    }

    private item(id: string, label: string, subject: Subject, uri: vscode.Uri): vscode.TestItem {
        const item = this.controller.createTestItem(id, label, uri);
        this.subjects.set(item, subject);
        return item;
    }

    private async run(request: vscode.TestRunRequest, cancelled: vscode.CancellationToken): Promise<void> {
        if (this.controller.items.size === 0) await this.list();
        const run = this.controller.createTestRun(request), left = new Set(request.exclude);
        const byRoom = new Map<vscode.TestItem, vscode.TestItem[]>();
        for (const rule of this.rulesIn(request.include ?? valuesOf(this.controller.items), left)) {
            const room = rule.parent!.parent!;
            byRoom.set(room, [...byRoom.get(room) ?? [], rule]);
            run.enqueued(rule);
        }
        for (const [room, rules] of byRoom) {
            if (cancelled.isCancellationRequested) break;
            await this.tryOne(run, room, rules);
        }
        run.end();
    }

    /** The rules under some things of the view. */
    private rulesIn(items: readonly vscode.TestItem[], left: ReadonlySet<vscode.TestItem>): vscode.TestItem[] {
        return items.filter(item => !left.has(item)).flatMap(item => {
            const subject = this.subjects.get(item);
            return subject && 'rule' in subject ? [item] : this.rulesIn(valuesOf(item.children), left);
        });
    }

    private async tryOne(run: vscode.TestRun, room: vscode.TestItem, rules: readonly vscode.TestItem[]): Promise<void> {
        const subject = this.subjects.get(room);
        const known = new Set(this.rules.map(({ name }) => name));
        for (const rule of rules) run.started(rule);
        const tried = subject && 'room' in subject ? await this.talk.ask<TryRoomResult>(TRY_ROOM, subject.room) : undefined;
        for (const item of rules) {
            const of = this.subjects.get(item), name = of && 'rule' in of ? of.rule : '';
            const found = tried?.found.filter(({ rule, severity }) => (known.has(rule) ? rule : TEXT) === name && severity !== 'hint') ?? [];
            if (!tried) run.errored(item, new vscode.TestMessage(vscode.l10n.t('The language server did not answer, or the room is gone.')));
            else if (found.length > 0) run.failed(item, found.map(messageOf));
            else if (!tried.known) run.skipped(item);              // why it cannot be laid out stands in the Problems
            else run.passed(item);
        }
    }
}

function messageOf({ message, uri, range: { start, end } }: FoundInRoom): vscode.TestMessage {
    const told = new vscode.TestMessage(message);
    told.location = new vscode.Location(vscode.Uri.parse(uri), new vscode.Range(start.line, start.character, end.line, end.character));
    return told;
}

function valuesOf(items: vscode.TestItemCollection): vscode.TestItem[] {
    return [...items].map(([, item]) => item);
}
