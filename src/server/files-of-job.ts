import { URI } from 'langium';
import type { Connection } from 'vscode-languageserver';
import type { CofferSharedServices } from '../language/coffer-services.ts';
import { isBuiltin } from '../language/workspace/builtin.ts';
import { addressIn, fieldsOf } from './fields.ts';
import { FILES_OF_JOB, type FilesOfJobParams, type FilesOfJobResult } from './messages.ts';

/** Answers which files belong together, so that the editor can count what was found in a job and not in a file alone. */
export function answerFilesOfJob(connection: Connection, services: CofferSharedServices): void {
    connection.onRequest(FILES_OF_JOB, async (params: unknown): Promise<FilesOfJobResult> => {
        const uri = addressIn(fieldsOf<FilesOfJobParams>(params).uri);
        if (uri === undefined) return [];
        await services.workspace.WorkspaceManager.ready;
        return filesOfJob(services, uri);
    });
}

/** Addresses of the files of one job with a file, itself the first. */
export function filesOfJob({ workspace }: CofferSharedServices, uri: string): readonly string[] {
    const key = URI.parse(uri).toString();
    const files = new Set([key]);
    for (const importer of workspace.Imports.affectedBy(new Set([key]))) files.add(importer);
    for (const member of [...files]) {
        const document = workspace.LangiumDocuments.getDocument(URI.parse(member));
        if (!document) continue;
        for (const imported of workspace.Imports.reached(document)) files.add(imported);
        // what job and rates say holds for their folder, and it may be said wrongly there
        for (const holder of workspace.Jobs.holdFor(document)) files.add(holder);
    }
    return [...files].filter(file => !isBuiltin(URI.parse(file)));
}
