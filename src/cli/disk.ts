import type { URI} from 'langium';
import { type FileSystemNode } from 'langium';
import { NodeFileSystemProvider } from 'langium/node';
import { TABLE_ENDING } from '../language/workspace/tables.ts';
import type { FileSystem } from './file-system.ts';
import { readText } from './read-text.ts';

/**
 * The disk as the language sees it, with the texts that came through standard input laid over it. A file that is there
 * and cannot be read counts as empty, and is remembered: one bad file must not keep the others from being checked.
 */
export class Disk extends NodeFileSystemProvider {
    constructor(readonly files: FileSystem) {
        super();
    }

    /** Texts that stand in for files, by address. */
    readonly laidOver = new Map<string, string>();
    /** Files that could not be read, by path, with the reason. */
    readonly unreadable = new Map<string, string>();
    /** Files that were read through a link, their own or that of a folder, with what was read. */
    readonly elsewhere = new Map<string, string>();

    override async readFile(uri: URI): Promise<string> {
        const over = this.laidOver.get(uri.toString());
        if (over !== undefined) return over;
        this.unreadable.delete(uri.fsPath);
        try {
            const { text } = await readText(uri.fsPath, this.files);
            const target = await this.files.realpath(uri.fsPath);
            if (target === uri.fsPath) this.elsewhere.delete(uri.fsPath);
            else this.elsewhere.set(uri.fsPath, target);
            return text;
        } catch (error) {
            // what names a table says why there is none
            if (TABLE_ENDING.test(uri.path)) throw error;
            this.unreadable.set(uri.fsPath, (error as Error).message);
            return '';
        }
    }

    override async exists(uri: URI): Promise<boolean> {
        return this.laidOver.has(uri.toString()) || (uri.scheme === 'file' && await super.exists(uri));
    }

    override async stat(uri: URI): Promise<FileSystemNode> {
        return this.laidOver.has(uri.toString()) ? { isFile: true, isDirectory: false, uri } : super.stat(uri);
    }
}
