import { relative, sep } from 'node:path';
import { URI, UriUtils, type FileSystemNode } from 'langium';
import { Disk } from '../disk.ts';
import type { FileSystem } from '../file-system.ts';
import type { Tree } from './tree.ts';

/** A folder as it was at a commit, as the language sees it: its files at their places of today, and nothing of what lies there now. */
export class Snapshot extends Disk {
    private readonly folders: ReadonlyMap<string, readonly FileSystemNode[]>;

    constructor(files: FileSystem, private readonly top: string, private readonly tree: Tree) {
        super(files);
        this.folders = foldersOf(URI.file(top), [...tree.texts.keys(), ...tree.problems.keys(), ...tree.tables.keys()].sort());
    }

    override readFile(uri: URI): Promise<string> {
        const way = this.wayOf(uri), text = way === undefined ? undefined : this.tree.texts.get(way);
        if (text !== undefined) return Promise.resolve(text);
        const table = way === undefined ? undefined : this.tree.tables.get(way);
        if (table) return 'text' in table ? Promise.resolve(table.text) : Promise.reject(new Error(table.problem));
        this.unreadable.set(uri.fsPath, (way === undefined ? undefined : this.tree.problems.get(way)) ?? 'is not there');
        return Promise.resolve('');
    }

    override exists(uri: URI): Promise<boolean> {
        const way = this.wayOf(uri);
        // the repository is known by it, wherever its store is
        return Promise.resolve(way !== undefined && (way === '.git' || this.isFile(way) || this.folders.has(way)));
    }

    override async stat(uri: URI): Promise<FileSystemNode> {
        if (!await this.exists(uri)) throw new Error(`${uri.fsPath} is not there`);
        const isFile = this.isFile(this.wayOf(uri)!);
        return { isFile, isDirectory: !isFile, uri };
    }

    override readDirectory(uri: URI): Promise<FileSystemNode[]> {
        return Promise.resolve([...this.folders.get(this.wayOf(uri) ?? '..') ?? []]);
    }

    private isFile(way: string): boolean {
        return this.tree.texts.has(way) || this.tree.problems.has(way) || this.tree.tables.has(way);
    }

    /** From the top, with forward slashes; undefined of what lies elsewhere. */
    private wayOf(uri: URI): string | undefined {
        if (uri.scheme !== 'file') return undefined;
        const way = relative(this.top, uri.fsPath).split(sep).join('/');
        return way === '..' || way.startsWith('../') || /^[A-Za-z]:/.test(way) ? undefined : way;
    }
}

/** What lies in every folder, by its way; '' is the top. */
function foldersOf(top: URI, ways: readonly string[]): Map<string, FileSystemNode[]> {
    const folders = new Map<string, FileSystemNode[]>([['', []]]);
    const within = (way: string): FileSystemNode[] => {
        const known = folders.get(way);
        if (known) return known;
        const nodes: FileSystemNode[] = [];
        folders.set(way, nodes);
        within(above(way)).push({ isFile: false, isDirectory: true, uri: UriUtils.joinPath(top, way) });
        return nodes;
    };
    for (const way of ways) within(above(way)).push({ isFile: true, isDirectory: false, uri: UriUtils.joinPath(top, way) });
    return folders;
}

function above(way: string): string {
    return way.includes('/') ? way.slice(0, way.lastIndexOf('/')) : '';
}
