import type { URI } from 'langium';
import type { FileSystemNode } from 'langium';
import { SnapshotFiles } from '../../language/workspace/snapshot-files.ts';
import { TABLE_ENDING } from '../../language/workspace/tables.ts';
import type { NoText } from '../../pages/changes/known.ts';
import type { OldFilesResult } from '../messages.ts';

/** So many files are asked for at once: whatever changes meanwhile is heard between two questions. */
const AT_ONCE = 20;

/** A folder as it was at a commit; what is not known of it yet is asked for when somebody wants to read it. */
export class OldFiles extends SnapshotFiles {
    /** Files that were there without a text, by address. */
    readonly unread = new Map<string, NoText>();
    private readonly asked = new Set<string>();

    constructor(top: URI, private readonly ask: (files: readonly string[]) => Promise<OldFilesResult>) {
        super(top);
    }

    /** Asks for those that were not asked for. `goOn`: false where nobody waits for them any more. */
    async fetch(uris: readonly URI[], goOn: () => boolean = () => true): Promise<void> {
        const byAddress = new Map(uris.filter(uri => isRead(uri) && !this.asked.has(uri.toString())).map(uri => [uri.toString(), uri]));
        const open = [...byAddress.keys()];
        for (let from = 0; from < open.length && goOn(); from += AT_ONCE) {
            const some = open.slice(from, from + AT_ONCE);
            for (const file of await this.ask(some)) {
                const uri = byAddress.get(file.uri);
                if (!uri) continue;
                this.hold(uri, 'text' in file ? file.text : undefined);
                if ('noText' in file) this.unread.set(file.uri, file.noText);
            }
            for (const each of some) this.asked.add(each);
        }
    }

    override async stat(uri: URI): Promise<FileSystemNode> {
        await this.fetch([uri]);
        return super.stat(uri);
    }

    override async readFile(uri: URI): Promise<string> {
        await this.fetch([uri]);
        return super.readFile(uri);
    }
}

/** Job files, and the tables that they name. */
function isRead({ path }: URI): boolean {
    return path.endsWith('.coffer') || TABLE_ENDING.test(path);
}
