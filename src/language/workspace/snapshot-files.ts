import { UriUtils, type FileSystemNode, type URI } from 'langium';
import { atKey } from '../../plain/at-key.ts';
import { NoFiles } from './no-files.ts';

/** A folder as it was in another state, as the language sees it: its files at their places of today, and nothing of what lies there now. */
export class SnapshotFiles extends NoFiles {
    /** Texts by address; undefined: the file is there, and there is no text of it. */
    private readonly texts = new Map<string, string | undefined>();
    /** What lies in each folder, by address. */
    private readonly folders = new Map<string, Map<string, FileSystemNode>>();

    /** `top`: of the repository. */
    constructor(private readonly top: URI) {
        super();
        this.folders.set(top.toString(), new Map());
    }

    /** `text`: undefined where the file was there and cannot be read. What lies outside is not taken. */
    hold(uri: URI, text: string | undefined): void {
        if (!this.isInside(uri)) return;
        this.texts.set(uri.toString(), text);
        let node: FileSystemNode = { isFile: true, isDirectory: false, uri };
        while (node.uri.toString() !== this.top.toString()) {
            const above = UriUtils.dirname(node.uri), isNew = !this.folders.has(above.toString());
            atKey(this.folders, above.toString(), () => new Map<string, FileSystemNode>()).set(node.uri.toString(), node);
            if (!isNew) return;
            node = { isFile: false, isDirectory: true, uri: above };
        }
    }

    textOf(uri: URI): string | undefined {
        return this.texts.get(uri.toString());
    }

    override readFile(uri: URI): Promise<string> {
        const text = this.textOf(uri);
        return text === undefined ? Promise.reject(new Error(`${uri.toString()} is not there.`)) : Promise.resolve(text);
    }

    override exists(uri: URI): Promise<boolean> {
        const address = uri.toString();
        // the repository is known by it, wherever its store is
        return Promise.resolve(this.texts.has(address) || this.folders.has(address) || address === UriUtils.joinPath(this.top, '.git').toString());
    }

    override async stat(uri: URI): Promise<FileSystemNode> {
        if (!await this.exists(uri)) throw new Error(`${uri.toString()} is not there.`);
        const isFile = this.texts.has(uri.toString());
        return { isFile, isDirectory: !isFile, uri };
    }

    override readDirectory(uri: URI): Promise<FileSystemNode[]> {
        return Promise.resolve([...this.folders.get(uri.toString())?.values() ?? []]);
    }

    private isInside(uri: URI): boolean {
        return uri.toString().startsWith(`${this.top.toString()}/`);
    }
}
