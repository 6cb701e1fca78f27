import { OperationCancelled } from 'langium';
import { CancellationToken, CancellationTokenSource, CodeActionTriggerKind, type CodeAction, type CodeActionContext } from 'vscode-languageserver';
import { describe, expect, test } from 'vitest';
import { layoutOf } from '../../../src/pipeline/inspect.ts';
import { price } from '../../../src/pipeline/price.ts';
import type { Room } from '../../../src/job/model.ts';
import { readFile } from '../../../src/language/read-file.ts';
import type { TestWorkspace } from '../../support/workspace.ts';
import { applied, openRested } from './house.ts';

const HALL = 'hall.coffer';
/** Bottoms with biscuits between two that run through, in bays of 4' and of 5': run the other way, none is left over, and other pieces are cut. */
const TEXT = `edition 1
stock poplar-1x6 { size 1x6; lengths 8', 10', 12'; price 2 USD per ft }
stock poplar-1x8 { size 1x8; lengths 8', 10', 12'; price 3 USD per ft }
labor { crew 2 rate 64 USD per h; blocking 3 min per ft; sides 5 min per ft; bottom 4 min per ft; closing 20 min per piece }
profile box {
  blocking { stock poplar-1x6 }
  sides { stock poplar-1x8 }
  bottom { stock poplar-1x6; biscuits 2 x #10 }
}
room hall {
  wall north  12' 11 1/2"
  wall east   9' 6 1/2"
  grid {
    coffers-north  3
    coffers-east   2
    beams          box
    through        north-south
    perimeter { kind band; stock poplar-1x8 }
  }
}
`;

async function actions(house: TestWorkspace, context: Partial<CodeActionContext>, cancelled = CancellationToken.None): Promise<CodeAction[]> {
    const document = house.document(HALL), diagnostics = (document.diagnostics ?? []).filter(({ code }) => code === 'closing-piece');
    expect(diagnostics).toHaveLength(1);
    const { range } = diagnostics[0]!, textDocument = { uri: document.uri.toString() };
    const asked = { textDocument, range, context: { diagnostics, only: ['quickfix'], ...context } };
    return await house.coffer.lsp.CodeActionProvider!.getCodeActions(document, asked, cancelled) as CodeAction[];
}
const byHand = { triggerKind: CodeActionTriggerKind.Invoked };

describe('fixes that choose otherwise what runs through', () => {
    test('say what happens to boards and hours, where somebody asks for them by hand', async () => {
        const house = await openRested({ [HALL]: TEXT }), offered = (await actions(house, byHand)).filter(({ title }) => title.startsWith('Run '));
        expect(offered.map(({ title }) => title)).toMatchInlineSnapshot(`
          [
            "Run line A through at A2 (boards 19 as now, by a plan made at once; hours 8.6 h, not 8.9 h)",
            "Run bottoms through east-west (boards 19 as now, by a plan made at once; hours 8.6 h, not 8.9 h)",
          ]
        `);
        // the same as of the room with the fix in it, planned and priced by itself
        for (const { title, edit } of offered) {
            const mended = applied(house, edit?.changes, [HALL])[HALL]!, then = figuresOf(await openRested({ [HALL]: mended })), now = figuresOf(house);
            const told = /boards (\d+)(?: as now|, not (\d+))/.exec(title)!;
            expect(Number(told[1]), title).toBe(then.boards);
            expect(Number(told[2] ?? told[1]), title).toBe(now.boards);
            expect(title.includes(' as now, by'), title).toBe(then.boards === now.boards);
            expect(then.minutes, title).not.toBe(now.minutes);
        }
    });
    test('say nothing of them where the cursor only rests there: their plans take too long for that', async () => {
        const house = await openRested({ [HALL]: TEXT });
        for (const context of [{}, { triggerKind: CodeActionTriggerKind.Automatic }]) {
            const titles = (await actions(house, context)).map(({ title }) => title).filter(title => title.startsWith('Run '));
            expect(titles.length).toBeGreaterThan(0);
            for (const title of titles) expect(title).not.toMatch(/boards|hours/);
        }
    });
    test('who cancels ends it', async () => {
        const house = await openRested({ [HALL]: TEXT }), source = new CancellationTokenSource();
        const asked = expect(actions(house, byHand, source.token)).rejects.toBe(OperationCancelled);
        source.cancel();
        await asked;
    });
});

function figuresOf(house: TestWorkspace): { readonly boards: number; readonly minutes: number } {
    const room: Room = readFile(house.document(HALL)).rooms[0]!;
    expect(layoutOf(room).ceiling).toBeDefined();
    const { plan, estimate } = price([room], room.job);
    return { boards: plan.stocks.flatMap(({ buy }) => buy).reduce((sum, { count }) => sum + count, 0), minutes: estimate.minutes.valueOf() };
}
