import type { LangiumDocument } from 'langium';
import { DefaultDefinitionProvider, type LangiumServices } from 'langium/lsp';
import type { DefinitionParams, LocationLink } from 'vscode-languageserver';
import type { Client } from '../client.ts';

/** Where a name is declared: for an editor that knows no links, as plain places. */
export class FittingDefinitions extends DefaultDefinitionProvider {
    constructor(services: LangiumServices, private readonly client: Client) {
        super(services);
    }

    override async getDefinition(document: LangiumDocument, params: DefinitionParams): Promise<LocationLink[] | undefined> {
        const links = await super.getDefinition(document, params);
        if (this.client.definitionLinks || !links) return links;
        // the protocol's answer has either shape; Langium declares only the one
        return links.map(({ targetUri, targetSelectionRange }) => ({ uri: targetUri, range: targetSelectionRange })) as unknown as LocationLink[];
    }
}
