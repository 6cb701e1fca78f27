import { resolve } from 'node:path';
import { URI, type FileSystemNode } from 'langium';
import { SnapshotFiles } from '../../language/workspace/snapshot-files.ts';
import { Disk } from '../disk.ts';
import type { FileSystem } from '../file-system.ts';
import type { Tree } from './tree.ts';

/** A folder as it was at a commit, in place of the disk. */
export class Snapshot extends Disk {
    private readonly held: SnapshotFiles;
    /** Why a job file has no text, and why a table has none, by path. */
    private readonly problems: ReadonlyMap<string, string>;
    private readonly tableProblems = new Map<string, string>();

    constructor(files: FileSystem, top: string, { texts, problems, tables }: Tree) {
        super(files);
        this.held = new SnapshotFiles(URI.file(top));
        this.problems = new Map([...problems].map(([way, words]) => [resolve(top, way), words]));
        for (const way of [...texts.keys(), ...problems.keys(), ...tables.keys()].sort()) {
            const table = tables.get(way), path = resolve(top, way);
            this.held.hold(URI.file(path), table ? 'text' in table ? table.text : undefined : texts.get(way));
            if (table && 'problem' in table) this.tableProblems.set(path, table.problem);
        }
    }

    override readFile(uri: URI): Promise<string> {
        const text = this.held.textOf(uri), tableProblem = this.tableProblems.get(uri.fsPath);
        if (text !== undefined) return Promise.resolve(text);
        if (tableProblem !== undefined) return Promise.reject(new Error(tableProblem));
        this.unreadable.set(uri.fsPath, this.problems.get(uri.fsPath) ?? 'is not there');
        return Promise.resolve('');
    }

    override exists(uri: URI): Promise<boolean> {
        return this.held.exists(uri);
    }

    override stat(uri: URI): Promise<FileSystemNode> {
        return this.held.stat(uri);
    }

    override readDirectory(uri: URI): Promise<FileSystemNode[]> {
        return this.held.readDirectory(uri);
    }
}
