import { URI, type LangiumDocument } from 'langium';
import { CodeLensRefreshRequest, type CodeLens, type Connection } from 'vscode-languageserver';
import * as ast from '../../language/generated/ast.ts';
import { sourceOfProperty } from '../../language/types/place.ts';
import type { ChangesFound, ChangesKnown } from '../../pages/changes/known.ts';
import { t } from '../../pages/shared/words.ts';
import type { Piece } from '../../takeoff/model.ts';
import { differenceText } from '../../report/estimate/words.ts';
import type { Comparisons } from '../changes/comparisons.ts';
import type { Client } from '../client.ts';
import { SHOW_CHANGES, type ShowPiecesParams } from '../messages.ts';
import type { Rooms } from '../panes/rooms.ts';

interface ChangeLens extends ShowPiecesParams { readonly since: 'last-commit' }
export function isChangeLens(data: unknown): data is ChangeLens {
    return typeof data === 'object' && data !== null && 'since' in data;
}

/**
 * Above a room whose pieces are otherwise than at the last commit, how many and what the whole change of its house costs; it leads to the pane of
 * changes. Nothing where nothing is otherwise, or there is no earlier state.
 */
export class ChangeLenses {
    private comparisons: Comparisons | undefined;
    private shown = '';

    constructor(private readonly client: Client, private readonly rooms: Rooms) {}

    /** From now on houses are compared; the editor is told to ask again when a line would say something else. */
    compareBy(comparisons: Comparisons, connection: Connection): void {
        this.comparisons = comparisons;
        comparisons.onFound(known => {
            if (!this.client.refreshesCodeLenses || 'house' in known && known.isLooking) return;
            const shows = 'house' in known && known.against === 'last' ? JSON.stringify(known.house.rooms.map(({ name }) => titleIn(known, name))) : Object.keys(known).join();
            if (shows === this.shown) return;
            this.shown = shows;
            connection.sendRequest(CodeLensRefreshRequest.method).catch((error: unknown) => connection.console.log(`${CodeLensRefreshRequest.method}: ${String(error)}`));
        });
    }

    provide(document: LangiumDocument): CodeLens[] {
        const root = document.parseResult.value, uri = document.uri.toString();
        if (!this.comparisons || !ast.isFile(root)) return [];
        return root.items.filter(ast.isRoom).flatMap((room): CodeLens[] =>
            this.titleOf(uri, room.name) === undefined ? [] : [{ range: sourceOfProperty(room, 'name').range, data: { since: 'last-commit', uri, room: room.name } satisfies ChangeLens }]);
    }

    resolve(lens: CodeLens): CodeLens {
        const { uri, room } = lens.data as ChangeLens;
        return this.client.lens(lens, this.titleOf(uri, room), SHOW_CHANGES, { uri, room } satisfies ShowPiecesParams);
    }

    private titleOf(uri: string, name: string): string | undefined {
        const room = this.rooms.in(URI.parse(uri).toString()).find(({ layout }) => layout.room.name === name), known = room && this.comparisons?.of(room);
        return known && titleIn(known, name);
    }
}

/** `since the last commit: 12 pieces new, 4 from old ones; the house costs $310.00 more`; undefined where the room's pieces are what they were. */
function titleIn(known: ChangesKnown, name: string): string | undefined {
    if (!('house' in known)) return undefined;
    const { house } = known, room = house.rooms.find(one => one.after?.room.name === name);
    if (!room?.after?.takeOff) return undefined;
    const { fresh, from, gone } = house.pieces, before = room.before?.room.name;
    const count = (pieces: readonly Piece[], of: string | undefined): number => pieces.filter(piece => piece.room === of).length;
    const [isNew, fromOld, isGone] = [count(fresh, name), count(from.map(({ after }) => after), name), before === undefined ? 0 : count(gone, before)];
    if (isNew + fromOld + isGone === 0) return undefined;
    const pieces = [
        isNew > 0 ? isNew === 1 ? t('1 piece new') : t('{0} pieces new', isNew) : '', fromOld > 0 ? t('{0} from old ones', fromOld) : '',
        isGone > 0 ? t('{0} no longer wanted', isGone) : '',
    ].filter(words => words !== '').join(', ');
    return [t('since the last commit: {0}', pieces), costOf(known)].filter(words => words !== '').join('; ');
}

/** Of the whole house: what one room of several costs by itself nobody can say, since they share boards. */
function costOf({ house: { price, before } }: ChangesFound): string {
    if (!price || !before || price.total.equals(0)) return '';
    const difference = differenceText(price.total, price.currency);
    return price.lacks.length > 0 ? t('the house costs {0}, without what has no price', difference) : t('the house costs {0}', difference);
}
