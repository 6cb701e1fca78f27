import { dirname, isAbsolute, relative, sep } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import { URI, type LangiumDocument } from 'langium';
import { compareFindings, type Finding } from '../findings/finding.ts';
import type { FileContent } from '../job/file.ts';
import { createCofferServices } from '../language/services.ts';
import { readFile } from '../language/read-file.ts';
import { foldersAbove, houseWideFiles, repositoryOf } from '../language/workspace/folders-above.ts';
import { isBuiltin } from '../language/workspace/builtin.ts';
import { madeFrom } from '../language/workspace/made-from.ts';
import type { StateOfFiles } from '../language/workspace/same-behind.ts';
import { inspectClosely } from '../pipeline/inspect-closely.ts';
import { inspect, takeOffOf, type Inspection } from '../pipeline/inspect.ts';
import type { TakeOff } from '../takeoff/model.ts';
import { type Files } from '../report/look.ts';
import { Disk } from './disk.ts';
import { isWithin } from './find-files.ts';
import type { World } from './world.ts';
import type { Terminal } from './terminal.ts';
import { counted } from '../plain/words.ts';

/** A file as it was read and what is wrong with it. */
export interface Checked extends Inspection {
    readonly content: FileContent; readonly document: LangiumDocument;
    /** Held for whoever makes houses of it: of more rooms than are kept they would be taken off twice. */
    readonly takeOffs?: readonly TakeOff[];
}

interface HowChecked { readonly closely?: boolean; readonly forHouses?: boolean; readonly known?: (uri: string) => Checked | undefined }

type Services = ReturnType<typeof createCofferServices>;

/** Files that were asked for with everything they are made from, kept warm: after a change only what depends on it is done again. */
export class Workspace {
    readonly files: Files = { nameOf: uri => this.nameOf(uri), textOf: uri => this.documentAt(uri)?.textDocument.getText() };
    readonly services: Services;
    /** What is not readable has no text. */
    readonly texts: StateOfFiles = {
        madeFrom: uri => this.madeFrom(uri), textOf: uri => (this.isUnread(uri) ? undefined : this.files.textOf(uri)), tablesOf: uri => this.tablesOf(uri),
    };
    private readonly shared: Services['shared']['workspace'];
    private readonly asked = new Set<string>();
    private readonly names = new Map<string, string>();
    private readonly told = new Set<string>();
    /** By folder, the one whose files belong together with its own. */
    private readonly tops = new Map<string, string>();

    private constructor(readonly cwd: string, private readonly terminal: Terminal, readonly disk: Disk, private readonly askedFolders: readonly string[]) {
        this.services = createCofferServices({ fileSystemProvider: () => this.disk });
        this.shared = this.services.shared.workspace;
    }

    /**
     * @param askedFolders full paths of the folders that are asked about
     * @param files what is read; the disk where nothing is said
     */
    static async open({ cwd, terminal, disk }: Pick<World, 'cwd' | 'terminal' | 'disk'>, askedFolders: readonly string[], files = new Disk(disk)): Promise<Workspace> {
        const workspace = new Workspace(cwd, terminal, files, askedFolders);
        await workspace.shared.WorkspaceManager.initializeWorkspace([]);
        return workspace;
    }

    /** A text that stands for a file, with the name it is shown under. */
    layOver(path: string, text: string, name: string): void {
        const uri = URI.file(path).toString();
        this.disk.laidOver.set(uri, text);
        this.names.set(uri, name);
    }

    /** Reads files, what they import, and the jobs they stand under. */
    async add(paths: readonly string[]): Promise<void> {
        paths.forEach(path => this.asked.add(URI.file(path).toString()));
        for (const path of paths) await this.findTop(dirname(path));
        this.shared.Imports.folders = [...new Set(this.tops.values())].map(top => URI.file(top));
        this.terminal.progress(`Reading ${counted(paths.length, 'file')} ...`);
        const all = [...new Set([...paths, ...await this.jobFilesFor(paths)])].map(path => URI.file(path));
        const documents = await Promise.all(all.filter(uri => !this.shared.LangiumDocuments.hasDocument(uri))
            .map(uri => this.shared.LangiumDocuments.getOrCreateDocument(uri)));
        await this.shared.DocumentBuilder.build(documents, { validation: false });
        this.terminal.progress('');
    }

    /**
     * Reads again what has changed on the disk, reads what is new, also a file that was missing, and forgets what is gone.
     * True where there was any of it.
     */
    async refresh(asked: readonly string[]): Promise<boolean> {
        const paths = [...new Set([...asked, ...this.documentPaths(), ...this.missing()])].filter(path => !this.disk.laidOver.has(URI.file(path).toString()));
        const changed: URI[] = [];
        const removed: URI[] = [];
        for (const path of paths) {
            const uri = URI.file(path);
            const known = this.documentAt(uri.toString())?.textDocument.getText();
            if (!await this.disk.exists(uri)) {
                this.disk.unreadable.delete(path);
                if (known !== undefined) removed.push(uri);
            }
            else if (known === undefined || known !== await this.disk.readFile(uri)) changed.push(uri);
        }
        for (const uri of this.shared.Tables.all()) if (await this.shared.Tables.hasChanged(uri)) changed.push(uri);
        const fresh = asked.filter(path => !this.documentAt(URI.file(path).toString()) && changed.some(uri => uri.fsPath === path));
        if (changed.length + removed.length > 0) await this.shared.DocumentBuilder.update(changed, removed);
        await this.add(fresh);
        return changed.length + removed.length > 0;
    }

    /**
     * Everything that was asked for and everything that it is made from, in the order of the paths. `closely`: with the
     * findings that take longer, which the editor shows when the hand rests. `known`: what is known of a file already, from elsewhere.
     * `forHouses`: pieces are wanted of every room.
     */
    async check({ closely = false, forHouses = false, known }: HowChecked = {}): Promise<Checked[]> {
        const wanted = new Set([...this.asked, ...madeFrom([...this.asked], this.services.shared)]);
        const documents = this.shared.LangiumDocuments.all.toArray()
            .filter(document => wanted.has(document.uri.toString()) && !isBuiltin(document.uri))
            .sort((a, b) => (a.uri.toString() < b.uri.toString() ? -1 : 1));
        const checked: Checked[] = [];
        for (const document of documents) {
            this.terminal.progress(`Checking ${checked.length + 1} of ${documents.length} files ...`);
            if (checked.length % 10 === 9) await setImmediate();
            const before = known?.(document.uri.toString());
            if (before) {
                checked.push(before);
                continue;
            }
            const content = readFile(document);
            const { findings, ...rest } = inspect(content);
            const all = closely ? [...findings, ...inspectClosely(content)].sort(compareFindings) : findings;
            const takeOffs = forHouses ? rest.layouts.flatMap(({ ceiling }) => (ceiling ? takeOffOf(ceiling) : [])) : [];
            checked.push({ content, document, ...rest, findings: all, ...forHouses && { takeOffs } });
        }
        this.terminal.progress('');
        return checked;
    }

    /** Addresses of all files in use, sorted. */
    uris(): string[] {
        return this.shared.LangiumDocuments.all.toArray().filter(({ uri }) => !isBuiltin(uri)).map(({ uri }) => uri.toString()).sort();
    }

    /** What a file says. */
    contentOf(uri: string): FileContent | undefined {
        const document = this.documentAt(uri);
        return document && !isBuiltin(document.uri) ? readFile(document) : undefined;
    }

    /** Addresses of the files that a file imports, through any chain, and of the job and the rates it stands under. */
    madeFrom(uri: string): string[] {
        return madeFrom([uri], this.services.shared);
    }

    /** Asks something of the document of that address. */
    ask<T>(uri: string, of: (document: LangiumDocument) => T): T | undefined {
        const document = this.documentAt(uri);
        return document && of(document);
    }

    /** Whether a file was there and could not be read, so that nothing is known of it. */
    isUnread(uri: string): boolean {
        return this.disk.unreadable.has(URI.parse(uri).fsPath);
    }

    /** What could not be read, in words. */
    problems(): string[] {
        return [...this.disk.unreadable].map(([path, reason]) => `${this.nameOf(URI.file(path).toString())} ${reason}`).sort();
    }

    /** Files that were reached by an import, or hold for others, and lie outside through a link: what is read is there. Each is told once. */
    async leadingOut(): Promise<string[]> {
        const { realpath } = this.disk.files, folders = await Promise.all([...new Set([this.cwd, ...this.tops.values()])].map(folder => realpath(folder)));
        const isNews = (path: string, target: string): boolean => {
            return !this.asked.has(URI.file(path).toString()) && !this.told.has(path) && !folders.some(folder => isWithin(target, folder));
        };
        const news = [...this.disk.elsewhere].filter(([path, target]) => isNews(path, target));
        return news.sort(([a], [b]) => (a < b ? -1 : 1)).map(([path, target]) => {
            this.told.add(path);
            return `${this.nameOf(URI.file(path).toString())} is behind a link to ${target}, outside of the folder: what is read is there`;
        });
    }

    /** All that the tables say which a file names. */
    private tablesOf(uri: string): string {
        const document = this.documentAt(uri);
        return document ? this.shared.Tables.saidIn(document) : '';
    }

    /** Whether what lies at a path is a table that a file in use names. */
    isTable(path: string): boolean {
        return this.shared.Tables.at(URI.file(path)) !== undefined;
    }

    /** Full paths of the files in use, and of the tables they name. */
    paths(): string[] {
        return [...this.documentPaths(), ...this.shared.Tables.all().filter(uri => uri.scheme === 'file').map(uri => uri.fsPath)];
    }

    private documentPaths(): string[] {
        return this.shared.LangiumDocuments.all.toArray().filter(d => d.uri.scheme === 'file').map(d => d.uri.fsPath);
    }

    /** Full paths of files that are imported and are not there. */
    missing(): string[] {
        const imported = this.shared.LangiumDocuments.all.toArray().flatMap(document => this.shared.Imports.followed(document).map(each => each.uri));
        return imported.filter(uri => uri.scheme === 'file' && !this.shared.LangiumDocuments.hasDocument(uri)).map(uri => uri.fsPath);
    }

    private documentAt(uri: string): LangiumDocument | undefined {
        return this.shared.LangiumDocuments.getDocument(URI.parse(uri));
    }

    private nameOf(uri: string): string {
        const known = this.names.get(uri);
        if (known !== undefined) return known;
        const parsed = URI.parse(uri);
        if (parsed.scheme !== 'file') return uri;
        const path = relative(this.cwd, parsed.fsPath);
        return (path === '' || isAbsolute(path) ? parsed.fsPath : path).split(sep).join('/');
    }

    /**
     * Finds the folder that a file may import from, and whose job and rates hold for it: the repository it lies in, wherever the program
     * was called; outside of one the folder that was asked for, or the one the program was called in where that is further up.
     */
    private async findTop(folder: string): Promise<void> {
        if (this.tops.has(folder)) return;
        const above = [this.cwd, ...this.askedFolders].filter(asked => isWithin(folder, asked)).sort((a, b) => a.length - b.length);
        this.tops.set(folder, (await repositoryOf(URI.file(folder), this.disk))?.fsPath ?? above[0] ?? folder);
    }

    /**
     * Files in the folders above that may hold a job or rates: what they say holds for the file. One that cannot be read and was not asked
     * for is passed over.
     */
    private async jobFilesFor(paths: readonly string[]): Promise<string[]> {
        const folders = new Map(paths.flatMap(path => foldersAbove(URI.file(dirname(path)), this.topOf(path))).map(folder => [folder.toString(), folder]));
        const before = new Set(this.disk.unreadable.keys());
        const found = (await houseWideFiles([...folders.values()], this.disk)).map(uri => uri.fsPath);
        for (const path of [...this.disk.unreadable.keys()]) {
            if (!before.has(path) && !this.asked.has(URI.file(path).toString())) this.disk.unreadable.delete(path);
        }
        return found;
    }

    private topOf(path: string): URI | undefined {
        const top = this.tops.get(dirname(path));
        return top === undefined ? undefined : URI.file(top);
    }
}

/** All findings, file by file. */
export function findingsOf(checked: readonly Checked[]): Finding[] {
    return checked.flatMap(c => c.findings).sort(compareFindings);
}

