import { OperationCancelled, type LangiumDocument } from 'langium';
import { CodeActionTriggerKind, type CancellationToken, type CodeAction, type CodeActionParams, type Position, type TextEdit } from 'vscode-languageserver';
import type { Grid } from '../../job/model.ts';
import { t } from '../../pages/shared/words.ts';
import type { Range } from '../../provenance/source.ts';
import { spacingSaidBy } from '../../rules/support/places.ts';
import type { Offer } from '../../suggest/model.ts';
import { suggesting } from '../../suggest/suggestions.ts';
import { breath } from '../breath.ts';
import type { Rooms, RoomThere } from '../panes/rooms.ts';

export const GRID = 'refactor.rewrite.grid';
/** As many as are read in a menu. */
const MOST = 4;

/**
 * Coffers of a room that are tried at once, and those laid out for it, its own besides: so many take about a second of the processor. What has more
 * is for the pane, which tries one grid after the other while the hand rests. Common practice, no source.
 */
const MOST_OF_ROOM = 64, MOST_LAID_OUT = 96;

/**
 * Other grids, on the words that say how a room is divided, to be taken over. Trying them takes up to a second, so it is done where somebody asks
 * for actions by hand, and not wherever the cursor rests; between two grids whatever else is asked is answered, and who cancels it ends it.
 */
export class GridActions {
    constructor(private readonly rooms: Rooms, private readonly client: { readonly disabledActions: boolean }) {}

    /** Nothing to wait for where none are asked for. */
    at(
        document: LangiumDocument, { range, context: { only, triggerKind } }: CodeActionParams, cancelled: CancellationToken,
    ): CodeAction[] | Promise<CodeAction[]> {
        const isByHand = triggerKind === CodeActionTriggerKind.Invoked || only !== undefined;
        const there = isByHand ? this.roomAt(document.uri.toString(), range.start) : undefined;
        if (!there) return [];
        const coffers = there.layout.ceiling?.coffers.length ?? 0;
        if (coffers > MOST_OF_ROOM) return this.client.disabledActions ? [tooMany(coffers)] : [];
        return this.tried(there, document, cancelled);
    }

    private async tried({ file, layout: { room } }: RoomThere, { textDocument }: LangiumDocument, cancelled: CancellationToken): Promise<CodeAction[]> {
        const { version } = textDocument, steps = suggesting(room, file, this.rooms.standing(room, file.uri), MOST_LAID_OUT);
        for (;;) {
            const { done, value } = steps.next();
            if (done) return value.offers.slice(0, MOST).flatMap(action);
            await breath();
            // of a text that is another one by now nothing is to be written
            if (cancelled.isCancellationRequested || textDocument.version !== version) throw OperationCancelled;
        }
    }

    private roomAt(uri: string, position: Position): RoomThere | undefined {
        return this.rooms.in(uri).find(({ layout: { room: { grid, at } } }) => grid && at.uri === uri && isOnGrid(grid, uri, position));
    }
}

/** Told where it is asked for in particular: editors show what cannot be done nowhere else. */
function tooMany(coffers: number): CodeAction {
    const reason = t('The room has {0} coffers: where there are more than {1} only the Suggestions pane tries others', coffers, MOST_OF_ROOM);
    return { title: t('Another grid'), kind: GRID, disabled: { reason } };
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
