import { type LangiumDocument, type LangiumDocuments, URI } from 'langium';
import type { CodeLens } from 'vscode-languageserver';
import * as ast from '../../language/generated/ast.ts';
import { sourceOfProperty } from '../../language/types/place.ts';
import { t } from '../../pages/shared/words.ts';
import type { Client } from '../client.ts';
import { SHOW_USES, type ShowUsesParams } from '../messages.ts';
import type { HouseUses } from './house-uses.ts';

/** Rooms that are told by their names; of more only the first ones are. */
const TOLD = 3;

interface UseLens { readonly uses: true; readonly uri: string; readonly name: string }
export function isUseLens(data: unknown): data is UseLens {
    return typeof data === 'object' && data !== null && 'uses' in data;
}

/** Above each stock and each profile the rooms that are built with it, at any remove; it leads to the places that name it. */
export class UseLenses {
    constructor(private readonly client: Client, private readonly documents: LangiumDocuments, private readonly uses: HouseUses) {}

    provide(document: LangiumDocument): CodeLens[] {
        const uri = document.uri.toString();
        return sharedIn(document).map(item => ({ range: sourceOfProperty(item, 'name').range, data: { uses: true, uri, name: item.name } satisfies UseLens }));
    }

    resolve(lens: CodeLens): CodeLens {
        const { uri, name } = lens.data as UseLens, document = this.documents.getDocument(URI.parse(uri));
        const item = document && sharedIn(document).find(one => one.name === name);
        if (!item) return this.client.lens(lens, undefined);
        const uses = this.uses.now(), title = titleOf(uses.roomsUsing(item).map(room => room.name));
        const shows: ShowUsesParams = { uri, position: sourceOfProperty(item, 'name').range.start };
        return this.client.lens(lens, title, uses.usersOf(item).length > 0 ? SHOW_USES : undefined, shows);
    }
}

/** Whether a file declares what rooms are built with. */
export function hasUses(document: LangiumDocument): boolean {
    return sharedIn(document).length > 0;
}

function sharedIn(document: LangiumDocument): (ast.Stock | ast.Profile)[] {
    const file = document.parseResult.value;
    if (!ast.isFile(file)) return [];
    // names in a recovered tree may be missing
    return file.items.filter(item => ast.isStock(item) || ast.isProfile(item)).filter(({ name }) => name !== undefined);
}

function titleOf(rooms: readonly string[]): string {
    if (rooms.length === 0) return t('used in no room');
    if (rooms.length <= TOLD) return t('used in {0}', rooms.join(', '));
    return t('used in {0} rooms: {1} …', rooms.length, rooms.slice(0, TOLD).join(', '));
}
