import type { LangiumDocument } from 'langium';
import { CodeActionTriggerKind, type CodeAction, type CodeActionParams, type Position, type TextEdit } from 'vscode-languageserver';
import type { Grid } from '../../job/model.ts';
import { t } from '../../pages/shared/words.ts';
import type { Range } from '../../provenance/source.ts';
import { spacingSaidBy } from '../../rules/support/places.ts';
import type { Offer, Suggestions } from '../../suggest/model.ts';
import { suggestionsFor } from '../../suggest/suggestions.ts';
import type { Rooms, RoomThere } from '../panes/rooms.ts';

export const GRID = 'refactor.rewrite.grid';
/** As many as are read in a menu. */
const MOST = 4;

/**
 * Other grids, on the words that say how a room is divided, to be taken over. Trying them takes up to a second, so it is done where somebody asks
 * for actions by hand, and not wherever the cursor rests.
 */
export class GridActions {
    constructor(private readonly rooms: Rooms) {}

    at(document: LangiumDocument, { range, context: { only, triggerKind } }: CodeActionParams): CodeAction[] {
        const isByHand = triggerKind === CodeActionTriggerKind.Invoked || only !== undefined;
        const there = isByHand ? this.roomAt(document.uri.toString(), range.start) : undefined;
        return there ? this.suggestions(there).offers.slice(0, MOST).flatMap(action) : [];
    }

    private roomAt(uri: string, position: Position): RoomThere | undefined {
        return this.rooms.in(uri).find(({ layout: { room: { grid, at } } }) => grid && at.uri === uri && isOnGrid(grid, uri, position));
    }

    private suggestions({ file, layout: { room } }: RoomThere): Suggestions {
        return suggestionsFor(room, file, this.rooms.standing(room, file.uri));
    }
}

function action({ says, changes, across, down, figures: { conflicts } }: Offer): CodeAction[] {
    if (!changes || changes.length === 0) return [];
    const edits: Record<string, TextEdit[]> = {};
    for (const { uri, range, text } of changes) (edits[uri] ??= []).push({ range, newText: text });
    const grid = `${across.coffers} x ${down.coffers}`, words = says.join('; ');
    const title = conflicts === 0 ? t('Another grid, {0}: {1}', grid, words) : t('Another grid, {0} (warnings: {1}): {2}', grid, conflicts, words);
    return [{ title, kind: GRID, edit: { changes: edits } }];
}

/** On its first word, or on a line that says how it is divided or what runs through. */
function isOnGrid({ at, statements, through, north, east }: Grid, uri: string, { line }: Position): boolean {
    const spans = (range: Range): boolean => range.start.line <= line && line <= range.end.line;
    const values = [north, east].flatMap(said => (said?.by === 'lines' ? said.centers : said && spacingSaidBy(said)) ?? []).map(given => given.at);
    return [at, ...Object.values(statements ?? {}), ...values, ...through ? [through.at] : []].some(source => source.uri === uri && spans(source.range));
}
