import { DocumentState, URI, type LangiumDocument } from 'langium';
import type { Diagnostic } from 'vscode-languageserver';
import type { Finding } from '../../findings/finding.ts';
import type { FileContent } from '../../job/file.ts';
import type { Room } from '../../job/model.ts';
import { readFile } from '../../language/read-file.ts';
import type { CofferSharedServices } from '../../language/coffer-services.ts';
import { brokenLines } from '../../language/types/broken.ts';
import { diagnosticsOf } from '../../language/workspace/diagnostics.ts';
import { behindWall, stepsOf } from '../../pipeline/inspect-closely.ts';
import { layoutOf } from '../../pipeline/inspect.ts';
import { breath } from '../breath.ts';
import type { Edits } from '../edits/edits.ts';
import { isKnown } from '../features/figures.ts';
import type { LateFindings } from './late-findings.ts';

/** Finds what takes longer than a keystroke may. Asked for one room at a time: the file it is given has no others. */
export type LookClosely = (file: FileContent) => readonly Finding[];

/** Finds what others have to be asked for, of a file as a whole; undefined until they have answered. */
type AskOthers = (file: FileContent) => readonly Finding[] | undefined;

/** Nobody has typed for so long: the hand rests. */
const REST_MS = 300;

/**
 * Looks closely at files that were built anew, while nobody types: open ones first, room after room, and between rooms, and what each is
 * looked at with, whatever the editor asks for is answered. An edit breaks it off, to begin again when the hand rests.
 */
export class CloseLook {
    private readonly workspace: CofferSharedServices['workspace'];
    private readonly waiting = new Set<string>();
    private timer: ReturnType<typeof setTimeout> | undefined;
    /** Counts edits and builds: whoever sees another number than at its beginning is out of date. */
    private edition = 0;

    /** `onBusy`: told when a look begins and when it has ended. */
    constructor(
        { workspace }: CofferSharedServices, private readonly late: LateFindings, edits: Edits, private readonly look: LookClosely,
        private readonly onBusy: (busy: boolean) => void = () => undefined, private readonly askOthers: AskOthers = () => [],
    ) {
        this.workspace = workspace;
        edits.onEdit(() => this.rest());
        late.onBuild(uri => {
            this.waiting.add(uri);
            this.rest();
        });
    }

    /** What others were asked for may be otherwise now. */
    again(uris: readonly string[]): void {
        for (const uri of uris) this.waiting.add(uri);
        this.rest();
    }

    private rest(): void {
        this.edition++;
        clearTimeout(this.timer);
        this.onBusy(false);
        if (this.waiting.size > 0) this.timer = setTimeout(() => void this.begin(this.edition), REST_MS);
    }

    private async begin(edition: number): Promise<void> {
        const isOpen = (uri: string): boolean => this.workspace.TextDocuments?.get(URI.parse(uri)) !== undefined;
        const files = [...this.waiting].sort((a, b) => Number(isOpen(b)) - Number(isOpen(a)));
        this.onBusy(true);
        await this.lookAt(files, edition);
        if (edition === this.edition) this.onBusy(false);
    }

    private async lookAt(files: readonly string[], edition: number): Promise<void> {
        for (const uri of files) {
            const document = this.workspace.LangiumDocuments.getDocument(URI.parse(uri));
            const rooms = document?.state === DocumentState.Validated ? await this.rooms(document, edition) : undefined;
            if (edition !== this.edition) return;
            this.waiting.delete(uri);                                // what is not built now comes again when it is
            if (document && rooms) this.late.found(uri, rooms, { whole: brokenLines(document.parseResult.value).size === 0 });
        }
    }

    /** undefined where somebody typed meanwhile. */
    private async rooms(document: LangiumDocument, edition: number): Promise<ReadonlyMap<string, readonly Diagnostic[] | 'unknown'> | undefined> {
        const content = readFile(document);
        const found = new Map<string, readonly Diagnostic[] | 'unknown'>();
        for (const room of content.rooms) {
            for (const _ of isKnown(layoutOf(room)) ? stepsOf(content, room) : []) {
                await breath();
                if (edition !== this.edition) return undefined;
            }
            found.set(keyIn(found, room), isKnown(layoutOf(room)) ? diagnosticsOf(document, behindWall(room, () => this.look({ ...content, rooms: [room] }))) : 'unknown');
            await breath();
            if (edition !== this.edition) return undefined;
        }
        const ofOthers = this.askOthers(content);
        return found.set(OF_FILE, ofOthers ? diagnosticsOf(document, ofOthers) : 'unknown');
    }
}

/** What is of no room: none is called so. */
const OF_FILE = '';

/** Two rooms of one name are a mistake, and still two rooms. */
function keyIn(found: ReadonlyMap<string, unknown>, { name }: Room): string {
    let key = name;
    while (found.has(key)) key += ' again';
    return key;
}
