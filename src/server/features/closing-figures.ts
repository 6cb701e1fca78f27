import { OperationCancelled, type LangiumDocument } from 'langium';
import { CodeActionTriggerKind, type CancellationToken, type CodeAction, type CodeActionParams } from 'vscode-languageserver';
import type { Ceiling } from '../../ceiling/model.ts';
import { inTurns } from '../../plain/steps.ts';
import { bestThrough } from '../../putup/closing/best-through.ts';
import { costInSteps, costWords } from '../../report/put-up/other-choice.ts';
import { closingPiece } from '../../rules/closing-piece.ts';
import { titleOfOtherWay, titleOfTurn } from '../../rules/support/closing-words.ts';
import { bandSaid } from '../../takeoff/closing/said.ts';
import { breath } from '../breath.ts';
import type { Rooms } from '../panes/rooms.ts';

/**
 * Boards and hours in the titles of fixes that choose otherwise what runs through. Both are planned for the room as it is and as it would be, so it
 * is done where somebody asks for actions by hand, and not wherever the cursor rests; meanwhile whatever else is asked is answered, and who cancels
 * it ends it.
 */
export class ClosingFigures {
    constructor(private readonly rooms: Rooms) {}

    /** Nothing to wait for where no such fix is among them. */
    said(
        actions: readonly CodeAction[], document: LangiumDocument, { context: { triggerKind } }: CodeActionParams, cancelled: CancellationToken,
    ): CodeAction[] | Promise<CodeAction[]> {
        const isAsked = triggerKind === CodeActionTriggerKind.Invoked && actions.some(isOfClosing);
        return isAsked ? this.allSaid(actions, document, cancelled) : [...actions];
    }

    private async allSaid(actions: readonly CodeAction[], document: LangiumDocument, cancelled: CancellationToken): Promise<CodeAction[]> {
        const said: CodeAction[] = [];
        for (const action of actions) said.push(isOfClosing(action) ? await this.withFigures(action, document, cancelled) : action);
        return said;
    }

    private async withFigures(action: CodeAction, document: LangiumDocument, cancelled: CancellationToken): Promise<CodeAction> {
        const { textDocument: { uri, version } } = document, { line } = action.diagnostics![0]!.range.start;
        const room = this.rooms.in(uri).find(({ layout: { room: { grid } } }) => grid?.through?.at.uri === uri && grid.through.at.range.start.line === line);
        const then = room?.layout.ceiling && otherOf(room.layout.ceiling, action.title);
        if (!then) return action;
        const cost = await inTurns(costInSteps(room.layout.room, then.room), async () => {
            await breath();
            // of a text that is another one by now nothing is to be told
            if (cancelled.isCancellationRequested || document.textDocument.version !== version) throw OperationCancelled;
        });
        const words = costWords(cost).join('; ');
        return words === '' ? action : { ...action, title: `${action.title} (${words})` };
    }
}

const isOfClosing = ({ diagnostics }: CodeAction): boolean => diagnostics?.length === 1 && diagnostics[0]!.code === closingPiece.name;

/** The ceiling as it is once the fix of this title is taken. */
function otherOf(ceiling: Ceiling, title: string): Ceiling | undefined {
    const best = bestThrough(ceiling, bandSaid(ceiling.room));
    if (best?.as && title.startsWith(titleOfTurn(best.turned))) return best.as;
    return best?.otherWay && title.startsWith(titleOfOtherWay(best.otherWay.through)) ? best.otherWay.as : undefined;
}
