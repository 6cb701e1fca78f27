import type { LangiumDocument } from 'langium';
import * as ast from '../generated/ast.ts';
import { atKey } from '../../plain/at-key.ts';

/** What is said once for a house: the job, the rates of labor, the bid. */
type HouseWide = ast.Job | ast.Labor | ast.Bid;
function isHouseWide(item: ast.Item): item is HouseWide {
    return ast.isJob(item) || ast.isLabor(item) || ast.isBid(item);
}

/** What holds for a folder and all below it, in the order of the files. */
interface Said { readonly jobs: readonly ast.Job[]; readonly labor: readonly ast.Labor[]; readonly bids: readonly ast.Bid[] }

/** Of each kind so many in one folder are read: every file below would have to look at every one of them. */
export const MOST_IN_FOLDER = 50;

/**
 * Which folders hold a `job`, a `labor`, a `bid`. What they say holds in their folder and below: a job until a nearer folder
 * has one, rates wherever a nearer folder does not say the same.
 */
export class Jobs {
    private readonly folders = new Map<string, Map<string, readonly HouseWide[]>>();
    /** What holds in a folder, put in order when somebody first asks. */
    private readonly said = new Map<string, Said>();
    /** Changes whenever anything here does. */
    version = 0;
    /** Folders whose job was touched since somebody last asked: everything below them has to be looked at again. */
    private touched = new Set<string>();

    /** Called whenever a document has been parsed. */
    update(document: LangiumDocument): void {
        const file = document.parseResult.value;
        const jobs = ast.isFile(file) ? file.items.filter(isHouseWide) : [];
        const key = document.uri.toString();
        if (this.forget(key) || jobs.length > 0) this.touched.add(folderOf(key));
        if (jobs.length === 0) return;
        this.version++;
        this.said.delete(folderOf(key));
        atKey(this.folders, folderOf(key), () => new Map()).set(key, jobs);
    }

    /** Called when a document is gone. */
    remove(key: string): void {
        if (this.forget(key)) this.touched.add(folderOf(key));
    }

    /** The jobs of the nearest folder upward that has any, in the order of their files. More than one is a mistake. */
    nearest(document: LangiumDocument): readonly ast.Job[] {
        return this.upward(document).find(({ jobs }) => jobs.length > 0)?.jobs ?? [];
    }

    /** All labor rates, or all bids, that hold for a document, those of the nearest folder first. */
    labor(document: LangiumDocument): readonly ast.Labor[] {
        return this.upward(document).flatMap(({ labor }) => labor);
    }
    bids(document: LangiumDocument): readonly ast.Bid[] {
        return this.upward(document).flatMap(({ bids }) => bids);
    }

    /** Whether any rates hold for a document, or for some room in the folders below it. */
    hasRatesNear(document: LangiumDocument): boolean {
        const below = `${folderOf(document.uri.toString())}/`;
        return this.labor(document).length + this.bids(document).length > 0
            || [...this.folders].some(([folder, files]) => folder.startsWith(below) && [...files.values()].some(items => items.some(item => !ast.isJob(item))));
    }

    /** Addresses of the files that hold for a document without being imported. */
    holdFor(document: LangiumDocument): string[] {
        const all = [...this.nearest(document), ...this.labor(document), ...this.bids(document)];
        return [...new Set(all.flatMap(item => item.$container?.$document?.uri.toString() ?? []))];
    }

    /** What is said in a document's own folder. */
    beside(document: LangiumDocument): Said {
        return this.saidIn(folderOf(document.uri.toString()));
    }

    /** What the folders upward hold, the document's own first. */
    private upward(document: LangiumDocument): Said[] {
        const all: Said[] = [];
        for (let folder = folderOf(document.uri.toString()); folder !== ''; folder = folderOf(folder)) {
            if (this.folders.has(folder)) all.push(this.saidIn(folder));
        }
        return all;
    }

    private saidIn(folder: string): Said {
        let said = this.said.get(folder);
        if (!said) {
            const items = inOrder(this.folders.get(folder) ?? new Map());
            const first = <T extends HouseWide>(is: (item: HouseWide) => item is T): readonly T[] => items.filter(is).slice(0, MOST_IN_FOLDER);
            said = { jobs: first(ast.isJob), labor: first(ast.isLabor), bids: first(ast.isBid) };
            if (this.folders.has(folder)) this.said.set(folder, said);
        }
        return said;
    }

    /** The folder whose job holds for a file, by address: files of one house have the same. Undefined where there is no job. */
    houseOf(key: string): string | undefined {
        for (let folder = folderOf(key); folder !== ''; folder = folderOf(folder)) {
            if (this.folders.has(folder) && this.saidIn(folder).jobs.length > 0) return folder;
        }
        return undefined;
    }

    /** Has the whole house that a file is of looked at again. */
    touch(key: string): void {
        const house = this.houseOf(key);
        if (house !== undefined) this.touched.add(house);
    }

    /** True for documents in or below a folder whose job or rates were touched. */
    takeTouched(): (key: string) => boolean {
        const { touched } = this;
        this.touched = new Set();
        return key => {
            if (touched.size === 0) return false;
            for (let folder = folderOf(key); folder !== ''; folder = folderOf(folder)) if (touched.has(folder)) return true;
            return false;
        };
    }

    private forget(key: string): boolean {
        const folder = this.folders.get(folderOf(key));
        const had = folder?.delete(key) ?? false;
        if (had) { this.version++; this.said.delete(folderOf(key)); }
        if (folder?.size === 0) this.folders.delete(folderOf(key));
        return had;
    }
}

function inOrder(jobs: ReadonlyMap<string, readonly HouseWide[]>): readonly HouseWide[] {
    if (jobs.size === 1) return [...jobs.values()][0]!;
    return [...jobs].sort(([a], [b]) => (a < b ? -1 : 1)).flatMap(([, each]) => each);
}

/** `file:///house/rooms` of `file:///house/rooms/den.coffer`; nothing above the root. */
function folderOf(key: string): string {
    return key.slice(0, Math.max(0, key.lastIndexOf('/')));
}
