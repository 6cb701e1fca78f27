import { DocumentState } from 'langium';
import type { CofferSharedServices } from '../../language/coffer-services.ts';
import { Uses } from '../../language/features/uses.ts';

/** Who uses what in the open house, read off its links once for each time something was linked anew. */
export class HouseUses {
    private readonly workspace: CofferSharedServices['workspace'];
    private known: Uses | undefined;

    constructor({ workspace }: CofferSharedServices) {
        this.workspace = workspace;
        const forget = (): void => { this.known = undefined; };
        workspace.DocumentBuilder.onUpdate(forget);
        workspace.DocumentBuilder.onBuildPhase(DocumentState.Linked, forget);
    }

    now(): Uses {
        return this.known ??= new Uses(this.workspace.LangiumDocuments.all);
    }
}
