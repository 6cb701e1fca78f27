import { DocumentState, type LangiumDocument } from 'langium';
import type { Connection } from 'vscode-languageserver';
import type { Ceiling } from '../../ceiling/model.ts';
import type { BoardProver } from '../../cutting/board-prover.ts';
import type { CofferSharedServices } from '../../language/coffer-services.ts';
import { isOfHouse, isPaneKind } from '../../pages/kinds.ts';
import type { PageContent, RoomOnPage, Wishes } from '../../pages/page.ts';
import { keyOfJob } from '../../pages/rooms.ts';
import { contentInSteps, contentOn, PAGES } from '../../pages/pages.ts';
import { partsOf } from '../../pipeline/inspect-closely.ts';
import type { Steps } from '../../plain/steps.ts';
import { breath } from '../breath.ts';
import {
    CURSOR, PANE_CLOSED, PANE_CONTENT, PANE_EXPORT, PANE_MARK, PANE_SELECTION, PANE_SHOWS, PANE_STOP,
    type CursorParams, type PaneClosedParams, type PaneContentParams, type PaneExportParams, type PaneExportResult, type PaneMarkParams, type PaneMarkResult,
    type PaneSelectionParams, type PaneShowsParams, type PaneStopParams,
} from '../messages.ts';
import type { Typing } from '../calm/typing.ts';
import { isCommitHash, isMarkedAs, type ExportFormat } from '../../panes/messages.ts';
import { addressIn, fieldsOf, type Unsure } from '../fields.ts';
import { base64Of } from './base64.ts';
import { BoardProofs } from './board-proofs.ts';
import { roomAt, roomFor, type Place } from './choose.ts';
import type { Comparisons } from '../changes/comparisons.ts';
import { keysAt } from './keys.ts';
import { markEdits } from './mark.ts';
import { Orders } from './orders.ts';
import { OtherGrids } from './other-grids.ts';
import { choiceOf, housesOf, Rooms, type RoomThere } from './rooms.ts';

/** A pane of the editor's, and what was last sent to it. */
interface Pane {
    wishes: PaneShowsParams;
    at?: Place;
    /** The room that the cursor stood in when it was last shown, or when a room was chosen by hand. */
    cursorIn?: string | undefined;
    /** The last good picture's room. */
    good?: RoomOnPage;
    /** What the content was made from, and the content: unchanged things are not made again, nor sent. */
    madeFrom?: readonly unknown[];
    content?: string;
    /** The room whose other grids it shows, or how it is put up. */
    worksOf?: string;
    /** All but the content. */
    rest?: string;
    keys?: string;
}

/** What a pane is made from, and wishes. */
interface Wanted { readonly madeFrom: readonly unknown[]; readonly wishes: Wishes }
interface Ahead { readonly madeFrom: readonly unknown[]; readonly content: PageContent }

/**
 * How long a picture waits after a build. While somebody types it waits as long as it took the last time, so that it does not
 * stand in the way of the next keystroke; but never longer than LATEST_MS after the first build that waits.
 */
const AT_ONCE_MS = 4, TYPING_MS = 200, LATEST_MS = 120;
/** Coffers of a room of which all together takes longer than who asks for something else should wait. */
const LARGE = 64;
/** Nobody has typed for so long: what takes long may be made. */
const REST_MS = 300;

/**
 * Shows rooms in the editor's panes: pushes contents when a room has really changed, a moment after the build, one pane
 * after the other, so that whatever the editor asks meanwhile is answered first.
 */
export class Panes {
    private readonly panes = new Map<string, Pane>();
    private readonly rooms: Rooms;
    private readonly proofs: BoardProofs | undefined;
    private readonly otherGrids: OtherGrids;
    private readonly orders: Orders;
    private builtAt = 0;
    private resting: ReturnType<typeof setTimeout> | undefined;
    private cursor: CursorParams | undefined;
    private waiting: ReturnType<typeof setTimeout> | undefined;
    private waitsSince = 0;
    /** It is at it, and has to begin anew when it is done. */
    private showing = false;
    private again = false;
    /** When something last changed, and how long it then took to show it. */
    private lastChange = 0;
    private lastCost = 0;

    /** `prover`: looks for cheaper boards than the first plan's, where the machine lets it. */
    constructor(
        private readonly connection: Connection, private readonly services: CofferSharedServices, private readonly typing: Typing,
        private readonly comparisons: Comparisons, prover?: BoardProver,
    ) {
        this.proofs = prover && new BoardProofs(prover, () => this.soon());
        this.otherGrids = new OtherGrids(typing, () => this.soon());
        this.orders = new Orders(typing, () => this.soon());
        this.rooms = new Rooms(services, {
            ...this.proofs && { boardsOf: house => this.proofs?.of(house) },
            otherGridsOf: room => this.otherGrids.of(room), orderOf: room => this.orders.of(room),
        });
        connection.onNotification(PANE_SHOWS, (params: unknown) => this.shows(fieldsOf(params)));
        connection.onNotification(PANE_CLOSED, (params: unknown) => this.closed(fieldsOf<PaneClosedParams>(params).pane));
        connection.onNotification(CURSOR, (params: unknown) => this.cursorAt(fieldsOf(params)));
        connection.onNotification(PANE_STOP, (params: unknown) => this.enough(fieldsOf<PaneStopParams>(params).pane));
        connection.onRequest(PANE_MARK, (params: unknown) => this.mark(fieldsOf(params)));
        connection.onRequest(PANE_EXPORT, (params: unknown) => this.export(fieldsOf(params)));
        services.workspace.DocumentBuilder.onBuildPhase(DocumentState.Validated, () => {
            this.builtAt = Date.now();
            this.afterTyping();
        });
        typing.onRest(() => this.soon());
        comparisons.onFound(() => this.soon());
    }

    private shows(params: Unsure<PaneShowsParams>): void {
        const wishes = sensible(params);
        if (!wishes) return;
        const pane = this.panes.get(wishes.pane);
        if (pane) {
            // asked anew, a pane may have lost what it was sent
            pane.wishes = wishes;
            pane.content = pane.rest = pane.keys = undefined;
        } else this.panes.set(wishes.pane, { wishes, ...wishes.room && { at: wishes.room } });
        if (wishes.room) this.panes.get(wishes.pane)!.cursorIn = this.roomOfCursor();
        this.soon();
    }

    private roomOfCursor(): string | undefined {
        const text = this.textOfCursor(), inside = text && roomAt(text, this.cursor!.position);
        return inside && `${inside.uri}#${inside.room}`;
    }

    private textOfCursor(): LangiumDocument | undefined {
        return this.cursor && this.rooms.document(this.cursor.uri);
    }

    private closed(pane: unknown): void {
        this.panes.delete(pane as string);
        const isShown = (which: 'showsBoards' | 'showsOtherGrids' | 'showsOrder'): boolean => [...this.panes.values()].some(({ wishes }) => PAGES[wishes.kind][which]);
        if (!isShown('showsBoards')) this.proofs?.stop();
        if (!isShown('showsOtherGrids')) this.otherGrids.stop();
        if (!isShown('showsOrder')) this.orders.stop();
    }

    /** Only where the pane shows the house that is searched. */
    private enough(pane: unknown): void {
        const boards = this.panes.get(pane as string)?.good?.boards;
        if (boards) this.proofs?.enough(boards);
    }

    private cursorAt({ uri: at, position }: Unsure<CursorParams>): void {
        const { line, character } = fieldsOf<CursorParams['position']>(position), uri = addressIn(at);
        if (uri === undefined || !isCount(line) || !isCount(character)) return;
        this.cursor = { uri, position: { line, character } };
        this.afterTyping();
    }

    /** Pictures and numbers stand still while somebody types: what half a word comes to is nothing to look at. */
    private afterTyping(): void {
        if (!this.typing.now) this.soon();
    }

    /** In a moment; moments that follow each other are one, but nobody waits longer than LATEST_MS. */
    soon(): void {
        if (this.panes.size === 0) return;
        const now = Date.now();
        if (this.waiting === undefined) this.waitsSince = now;
        const settle = now - this.lastChange < TYPING_MS ? Math.max(AT_ONCE_MS, this.lastCost) : AT_ONCE_MS;
        this.lastChange = now;
        clearTimeout(this.waiting);
        this.waiting = setTimeout(() => void this.showAll(), Math.max(0, Math.min(settle, this.waitsSince + LATEST_MS - now)));
    }

    private async showAll(): Promise<void> {
        this.waiting = undefined;
        if (this.showing) {
            this.again = true;
            return;
        }
        this.showing = true;
        try {
            await this.services.workspace.WorkspaceManager.ready;
            const begun = Date.now();
            if (await this.shownAll()) this.lastCost = Date.now() - begun;
        } finally {
            this.showing = false;
        }
        if (!this.again) return;
        this.again = false;
        this.soon();
    }

    /** False where something changed again on the way: then it is shown anew. */
    private async shownAll(): Promise<boolean> {
        for (const [id, pane] of [...this.panes]) {
            if (!await this.getReady(pane)) return false;
            const ahead = await this.makeAhead(pane);
            if (ahead === 'overtaken') return false;
            await this.between(() => { if (this.panes.get(id) === pane) this.show(id, pane, ahead); });
            await breath();
        }
        return true;
    }

    /** Something waits to be shown that came after what is being shown. */
    private get isOvertaken(): boolean {
        return this.waiting !== undefined || this.again;
    }

    /** Works out part by part what a pane will ask for all at once, and answers whoever comes in between. False where something changed meanwhile. */
    private async getReady(pane: Pane): Promise<boolean> {
        let ceilings: readonly Ceiling[] = [];
        await this.between(() => { ceilings = this.largeFor(pane); });
        for (const steps of ceilings.map(partsOf)) for (let goesOn = true; goesOn;) {
            await breath();
            if (this.isOvertaken) return false;
            goesOn = false;
            await this.between(() => { goesOn = !steps.next().done; });
        }
        return !this.isOvertaken;
    }

    /**
     * The content of a large room, made step by step. Only another text overtakes it: who looks for boards or for what changed tells so often that it
     * would never come to an end.
     */
    private async makeAhead(pane: Pane): Promise<Ahead | undefined | 'overtaken'> {
        const { builtAt } = this;
        let work: (Wanted & { readonly steps: Steps<PageContent> }) | undefined, content: PageContent | undefined;
        await this.between(() => {
            const { there, all } = this.aimed(pane), room = there && this.isLarge(pane, there, all) ? this.rooms.onPage(there) : undefined;
            const wanted = room && this.wantedBy(pane, room);
            if (room && wanted) work = { ...wanted, steps: contentInSteps(PAGES[pane.wishes.kind], room, wanted.wishes) };
        });
        if (!work) return undefined;
        while (!content) {
            await breath();
            if (this.builtAt !== builtAt) return 'overtaken';
            let isFailed = true;
            await this.between(() => {
                const { done, value } = work!.steps.next();
                if (done) content = value;
                isFailed = false;
            });
            // it is told when it fails at once, too
            if (isFailed) return undefined;
        }
        return { content, madeFrom: work.madeFrom };
    }

    private isLarge(pane: Pane, there: RoomThere, all: readonly RoomThere[]): boolean {
        return this.shownWith(pane, there, all).reduce((sum, { layout: { ceiling } }) => sum + (ceiling?.coffers.length ?? 0), 0) > LARGE;
    }

    /** The rooms that a pane of this room shows. */
    private shownWith({ wishes: { kind } }: Pane, there: RoomThere, all: readonly RoomThere[]): readonly RoomThere[] {
        const house = keyOfJob(there.layout.room.job);
        return isOfHouse(kind) ? all.filter(({ layout }) => keyOfJob(layout.room.job) === house) : [there];
    }

    /** The large ceilings that a pane shows. */
    private largeFor(pane: Pane): readonly Ceiling[] {
        const { there, all } = this.aimed(pane);
        const shown = there === undefined ? [] : this.shownWith(pane, there, all);
        return shown.flatMap(({ layout: { ceiling } }) => (ceiling && ceiling.coffers.length > LARGE ? [ceiling] : []));
    }

    /** Between builds, when every document is linked. */
    private async between(action: () => void): Promise<void> {
        await this.services.workspace.WorkspaceLock.read(action).catch((error: unknown) => this.connection.console.log(`pane: ${String(error)}`));
    }

    /** The room that it is to show now, and all that it could. */
    private aimed(pane: Pane): { readonly there?: RoomThere; readonly all: readonly RoomThere[] } {
        const { pinned } = pane.wishes, { cursor } = this, text = this.textOfCursor();
        const inside = text && cursor && !pinned ? roomAt(text, cursor.position) : undefined;
        // the cursor leads away from what was chosen by hand as soon as it comes into another room
        const cursorIn = inside && `${inside.uri}#${inside.room}`;
        if (inside && cursorIn !== pane.cursorIn) pane.wishes = { ...pane.wishes, room: inside };
        pane.cursorIn = cursorIn;
        return roomFor(this.rooms, pane.wishes, cursor, pane.at);
    }

    private show(id: string, pane: Pane, ahead?: Ahead): void {
        const { there, all } = this.aimed(pane), { kind, pinned } = pane.wishes, { cursor } = this, text = this.textOfCursor();
        const lost = there === undefined && pane.good !== undefined && (pinned || all.length === 0);
        if (there) {
            const at = choiceOf(there);
            if (pane.at?.uri !== at.uri || pane.at.room !== at.room) pane.good = undefined;
            pane.at = at;
        }
        const known = there && this.rooms.onPage(there);
        if (known) pane.good = known;
        const one = there ?? (lost ? pane.good : undefined);
        const { shown, rooms } = isOfHouse(kind) ? housesOf(one, all) : { shown: one ? choiceOf(one) : null, rooms: all.map(choiceOf) };
        const problem = known || pane.at === undefined ? undefined : this.rooms.firstError(pane.at.uri);
        const condition = known ? 'current' : pane.good ? 'broken' : 'nothing';
        const content = pane.good ? this.contentFor(pane, pane.good, ahead) : undefined;
        const rest: PaneContentParams = { pane: id, kind, shown, rooms, condition, ...problem && { problem } };
        const restText = JSON.stringify(rest);
        if (content !== undefined || restText !== pane.rest) {
            pane.rest = restText;
            this.send(PANE_CONTENT, { ...rest, ...content !== undefined && { content } });
        }
        const keys = text && cursor && pane.good ? keysAt(text, cursor.position, pane.good) : [];
        if (keys.join(' ') !== pane.keys) {
            pane.keys = keys.join(' ');
            const selection: PaneSelectionParams = { pane: id, keys };
            this.send(PANE_SELECTION, selection);
        }
    }

    /** The content, where it is not the one that was sent before. */
    private contentFor(pane: Pane, room: RoomOnPage, ahead?: Ahead): PaneContentParams['content'] {
        const wanted = this.wantedBy(pane, room);
        if (!wanted) return undefined;
        // made of another room or another text, it is not what is asked for; of boards and changes as they were a moment ago it is shown until more comes
        const isOfThis = ahead?.madeFrom[0] === room.file && ahead.madeFrom[1] === room.layout.room.name;
        pane.madeFrom = isOfThis ? ahead.madeFrom : wanted.madeFrom;
        const content = isOfThis ? ahead.content : contentOn(PAGES[pane.wishes.kind], room, wanted.wishes);
        const text = JSON.stringify(content);
        if (text === pane.content) return undefined;
        pane.content = text;
        return content;
    }

    /** What is to be made for a pane, where it is not what was made before. */
    private wantedBy(pane: Pane, room: RoomOnPage): Wanted | undefined {
        const page = PAGES[pane.wishes.kind], { width, height } = pane.wishes;
        const ofHouse = isOfHouse(page.kind), stands = (ofHouse ? room.house : [room]).map(({ standing }) => [...standing.errors, ...standing.notComputed, ...standing.beforeCutting, ...standing.notUsed].map(({ place, message }) => `${place} ${message}`).join('\n'));
        const madeFrom: unknown[] = [room.file, room.layout.room.name, ...ofHouse ? room.house.map(({ file }) => file) : [], width, height, ...stands];
        const isSame = (now: readonly unknown[]): boolean =>
            pane.content !== undefined && pane.madeFrom?.length === now.length && now.every((each, i) => each === pane.madeFrom![i]);
        if (!page.showsBoards && !page.showsChanges && !page.showsOtherGrids && !page.showsOrder && isSame(madeFrom)) return undefined;
        const rested = Date.now() - this.builtAt;
        if (page.takesLong && pane.content !== undefined && rested < REST_MS) {
            clearTimeout(this.resting);
            this.resting = setTimeout(() => this.soon(), REST_MS - rested);
            return undefined;
        }
        if (page.showsBoards) madeFrom.push(room.boards);
        const changes = page.showsChanges ? this.comparisons.of(room, this.againstOf(pane)) : undefined;
        if (changes) madeFrom.push(changes);
        const works = page.showsOtherGrids ? room.otherGrids : page.showsOrder ? room.order : undefined;
        if (works !== undefined) {
            // what was found of the room as it was a moment ago stays, rather than come and go, where the page shows nothing else
            const place = `${room.file.uri}#${room.layout.room.name}`, isLooking = works === 'looking';
            if (isLooking && page.takesLong && pane.content !== undefined && pane.worksOf === place) return undefined;
            if (!isLooking) pane.worksOf = place;
            madeFrom.push(works);
        }
        return isSame(madeFrom) ? undefined : { madeFrom, wishes: { width, height, ...changes && { changes } } };
    }

    /** Every pane is compared with what the pane of changes is compared with, since they are looked at beside each other. */
    private againstOf({ wishes }: Pane): string | undefined {
        if (wishes.kind === 'changes') return wishes.against;
        const there = [...this.panes.values()].map(pane => pane.wishes).filter(({ kind }) => kind === 'changes');
        return (there.find(({ pinned }) => !pinned) ?? there[0])?.against;
    }

    private async mark({ pane: id, as, key }: Unsure<PaneMarkParams>): Promise<PaneMarkResult> {
        const room = this.panes.get(id as string)?.good;
        return room && isMarkedAs(as) && typeof key === 'string' ? this.services.workspace.WorkspaceLock.read(() => markEdits(as, key, room, this.services)).catch(() => null) : null;
    }

    private async export({ pane: id, format, state }: Unsure<PaneExportParams>): Promise<PaneExportResult> {
        const pane = this.panes.get(id as string), ways = pane ? PAGES[pane.wishes.kind].exports : {};
        const make = typeof format === 'string' && Object.hasOwn(ways, format) ? ways[format as ExportFormat] : undefined;
        if (!pane?.good || !make) return null;
        const page = PAGES[pane.wishes.kind], wishes = page.showsChanges ? { changes: this.comparisons.of(pane.good, this.againstOf(pane)) } : {};
        if (page.isThere?.(wishes) === false) return null;
        const { name, bytes } = await this.inTurns(make(pane.good, state, wishes));
        return typeof bytes === 'string' ? { name, text: bytes } : { name, base64: base64Of(bytes) };
    }

    /** Answers whoever comes in between. */
    private async inTurns<Made>(steps: Steps<Made>): Promise<Made> {
        for (;;) {
            const step = await this.services.workspace.WorkspaceLock.read(() => steps.next());
            if (step.done) return step.value;
            await breath();
        }
    }

    private send(method: string, params: object): void {
        this.connection.sendNotification(method, params).catch(error => this.connection.console.log(`${method}: ${String(error)}`));
    }
}

/** Wishes as they can be met, or undefined where nothing is wished. Another version of the extension may say something else. */
function sensible({ pane, kind, pinned, room: chosen, width, height, against }: Unsure<PaneShowsParams>): PaneShowsParams | undefined {
    if (typeof pane !== 'string' || !isPaneKind(kind)) return undefined;
    const { uri: at, room } = fieldsOf<NonNullable<PaneShowsParams['room']>>(chosen), uri = addressIn(at);
    const size = isCount(width) && isCount(height) ? { width: Math.min(width, MOST_PIXELS), height: Math.min(height, MOST_PIXELS) } : {};
    return { pane, kind, pinned: pinned === true, ...uri !== undefined && typeof room === 'string' && { room: { uri, room } }, ...size, ...typeof against === 'string' && (against === 'signed' || isCommitHash(against)) && { against } };
}
const MOST_PIXELS = 20_000;

function isCount(value: unknown): value is number {
    return Number.isInteger(value) && (value as number) >= 0;
}
