import { URI } from 'langium';
import type { CofferSharedServices } from '../language/coffer-services.ts';

/**
 * A text that is closed counts no more: what the disk holds does, or nothing where it was never saved. Without this,
 * changes thrown away in the editor would go on being checked, and so would texts nobody can see any more.
 */
export function dropClosedTexts({ workspace }: CofferSharedServices): void {
    workspace.TextDocuments?.onDidClose(({ document }) => {
        const uri = URI.parse(document.uri);
        void workspace.WorkspaceManager.ready.then(() => workspace.WorkspaceLock.write(async token => {
            if (workspace.TextDocuments?.get(uri)) return; // opened again meanwhile
            const saved = await workspace.FileSystemProvider.exists(uri);
            await workspace.DocumentBuilder.update(saved ? [uri] : [], saved ? [] : [uri], token);
        }));
    });
}
