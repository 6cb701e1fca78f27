import type { LangiumDocument } from 'langium';
import * as ast from '../generated/ast.ts';

/** Which folders hold a `job`. What a job says holds in its folder and below, until a nearer folder has one. */
export class Jobs {
    private readonly folders = new Map<string, Map<string, readonly ast.Job[]>>();
    /** Folders whose job was touched since somebody last asked: everything below them has to be looked at again. */
    private touched = new Set<string>();

    /** Called whenever a document has been parsed. */
    update(document: LangiumDocument): void {
        const file = document.parseResult.value;
        const jobs = ast.isFile(file) ? file.items.filter(ast.isJob) : [];
        const key = document.uri.toString();
        if (this.forget(key) || jobs.length > 0) this.touched.add(folderOf(key));
        if (jobs.length === 0) return;
        const folder = this.folders.get(folderOf(key));
        if (folder) folder.set(key, jobs);
        else this.folders.set(folderOf(key), new Map([[key, jobs]]));
    }

    /** Called when a document is gone. */
    remove(key: string): void {
        if (this.forget(key)) this.touched.add(folderOf(key));
    }

    /** The jobs of the nearest folder upward that has any, in the order of their files. More than one is a mistake. */
    nearest(document: LangiumDocument): readonly ast.Job[] {
        for (let folder = folderOf(document.uri.toString()); folder !== ''; folder = folderOf(folder)) {
            const jobs = this.folders.get(folder);
            if (jobs) return inOrder(jobs);
        }
        return [];
    }

    /** The jobs of a document's own folder. */
    beside(document: LangiumDocument): readonly ast.Job[] {
        const jobs = this.folders.get(folderOf(document.uri.toString()));
        return jobs ? inOrder(jobs) : [];
    }

    /** True for documents in or below a folder whose job was touched. */
    takeTouched(): (key: string) => boolean {
        const folders = [...this.touched];
        this.touched = new Set();
        return key => folders.some(folder => key.startsWith(folder + '/'));
    }

    private forget(key: string): boolean {
        const folder = this.folders.get(folderOf(key));
        const had = folder?.delete(key) ?? false;
        if (folder?.size === 0) this.folders.delete(folderOf(key));
        return had;
    }
}

function inOrder(jobs: ReadonlyMap<string, readonly ast.Job[]>): readonly ast.Job[] {
    if (jobs.size === 1) return [...jobs.values()][0]!;
    return [...jobs].sort(([a], [b]) => (a < b ? -1 : 1)).flatMap(([, each]) => each);
}

/** `file:///house/rooms` of `file:///house/rooms/den.coffer`; nothing above the root. */
function folderOf(key: string): string {
    return key.slice(0, Math.max(0, key.lastIndexOf('/')));
}
