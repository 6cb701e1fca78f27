import type { LangiumDocument } from 'langium';
import { LSPErrorCodes, ResponseError, type RenameParams, type WorkspaceEdit } from 'vscode-languageserver';
import { CofferRenameProvider, RenameRefused } from '../../language/features/rename.ts';

/** Renames, or has the editor show why not. */
export class SayingRename extends CofferRenameProvider {
    override async rename(document: LangiumDocument, params: RenameParams): Promise<WorkspaceEdit | undefined> {
        try {
            return await super.rename(document, params);
        } catch (error) {
            throw error instanceof RenameRefused ? new ResponseError(LSPErrorCodes.RequestFailed, error.message) : error;
        }
    }
}
