import { URI } from 'langium';
import type { CofferSharedServices } from '../language/coffer-services.ts';

/**
 * A text that is closed counts no more: what the disk holds does, or nothing where it was never saved. Without this,
 * changes thrown away in the editor would go on being checked, and so would texts nobody can see any more.
 */
export function dropClosedTexts({ workspace, ServiceRegistry }: CofferSharedServices): void {
    workspace.TextDocuments?.onDidClose(({ document }) => {
        const uri = URI.parse(document.uri);
        void workspace.WorkspaceManager.ready.then(() => workspace.WorkspaceLock.write(async token => {
            // opened again meanwhile, or never known
            if (workspace.TextDocuments?.get(uri) || !workspace.LangiumDocuments.hasDocument(uri)) return;
            // A text of this language under another ending was one only while the editor said so. And what a disk takes for no address is not there. An
            // update that failed for either would leave files that are closed just then unread.
            const saved = ServiceRegistry.hasServices(uri) && await workspace.FileSystemProvider.exists(uri).catch(() => false);
            await workspace.DocumentBuilder.update(saved ? [uri] : [], saved ? [] : [uri], token);
        }));
    });
}
