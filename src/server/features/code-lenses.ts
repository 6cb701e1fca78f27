import { URI, type LangiumDocument, type LangiumDocuments } from 'langium';
import type { CodeLensProvider } from 'langium/lsp';
import type { CodeLens } from 'vscode-languageserver';
import type { Ceiling } from '../../ceiling/model.ts';
import { sourceOfProperty } from '../../language/types/place.ts';
import { takeOffOf } from '../../pipeline/inspect.ts';
import type { Client } from '../client.ts';
import { SHOW_PIECES, type ShowPiecesParams } from '../messages.ts';
import type { Figures } from './figures.ts';
import { isChangeLens, type ChangeLenses } from './change-lenses.ts';
import { isPriceLens, type PriceLenses } from './price-lenses.ts';
import { isUseLens, type UseLenses } from './use-lenses.ts';
import { coffers, pieces } from './words.ts';

/**
 * Above each room how many pieces and coffers it has. The pieces are taken off when the line comes into view; it leads to
 * them where the editor says that it has a command for that. Prices stand above the job and its alternates (price-lenses.ts), who
 * uses it above what is shared (use-lenses.ts), what changed since the last commit beside the pieces (change-lenses.ts).
 */
export class CofferCodeLenses implements CodeLensProvider {
    constructor(
        private readonly figures: Figures, private readonly client: Client, private readonly documents: LangiumDocuments,
        private readonly prices: PriceLenses, private readonly uses: UseLenses,
        readonly changes: ChangeLenses,
    ) {}

    provideCodeLens(document: LangiumDocument): CodeLens[] {
        return [...this.prices.provide(document), ...this.uses.provide(document), ...this.ofRooms(document), ...this.changes.provide(document)];
    }

    private ofRooms(document: LangiumDocument): CodeLens[] {
        return [...this.figures.of(document).rooms].flatMap(([room, { ceiling }]) => {
            const data: ShowPiecesParams = { uri: document.uri.toString(), room: room.name };
            return ceiling ? [{ range: sourceOfProperty(room, 'name').range, data }] : [];
        });
    }

    resolve(lens: CodeLens): CodeLens {
        if (isPriceLens(lens.data)) return this.prices.resolve(lens);
        if (isUseLens(lens.data)) return this.uses.resolve(lens);
        if (isChangeLens(lens.data)) return this.changes.resolve(lens);
        const { uri, room } = lens.data as ShowPiecesParams;
        const document = this.documents.getDocument(URI.parse(uri));
        const found = document && [...this.figures.of(document).rooms].find(([one, figures]) => one.name === room && figures.ceiling);
        return this.client.lens(lens, found && titleOf(found[1].ceiling!), SHOW_PIECES, lens.data as ShowPiecesParams);
    }
}

/** `193 pieces, 12 coffers`. */
export function titleOf(ceiling: Ceiling): string {
    return `${pieces(takeOffOf(ceiling).pieces.length)}, ${coffers(ceiling.coffers.length)}`;
}
