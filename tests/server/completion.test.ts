import { expect, test } from 'vitest';
import { createServerServices } from '../../src/server/services.ts';
import { RULES } from '../../src/rules/index.ts';
import { completionAt } from '../language/features/offered.ts';
import { TestWorkspace } from '../support/workspace.ts';

const BOX = `edition 1
stock poplar-6 { size 1x6; species yellow-poplar }
stock poplar-8 { size 1x8; species yellow-poplar }
profile box {
  blocking { stock poplar-6 }
  sides { stock poplar-8; held-down 1/4"; rabbet 1/4" x 1/4" on lower-back }
  cleats { rip 3/4" x 3/4" from poplar-6 }
  bottom { stock poplar-6; rip 5 15/32" }
}
`;
const room = (inside = '') => `from "./box.coffer" use box
room den "Den" {
  wall north 12'
  wall east 10'
  wall south 12'
  wall west 10'
  grid {
    coffer-size 3' to 5'
    beams box
    through north-south
  }
${inside}}
`;

/** What is offered at the | once it has been typed into a room that was whole before. */
async function offered(inside: string): Promise<readonly string[]> {
    const workspace = await TestWorkspace.serve({ 'box.coffer': BOX, 'den.coffer': room() }, createServerServices);
    // the editor has looked at the room
    await workspace.coffer.lsp.InlayHintProvider!.getInlayHints(workspace.document('den.coffer'), { textDocument: { uri: '' }, range: { start: { line: 0, character: 0 }, end: { line: 99, character: 0 } } });
    await workspace.edit({ 'den.coffer': room(inside.replace('|', '')) });
    return (await completionAt(workspace, 'den.coffer', room(inside).indexOf('|'))).map(({ label }) => label);
}

test('the lines of a room, counted by its layout, while another is being typed', async () => {
    expect(await offered('  line |\n')).toEqual(['1', '2', 'A']);
});
test('its crossings', async () => {
    expect(await offered('  crossing |\n')).toEqual(['A1', 'A2']);
});
test('its pieces', async () => {
    const names = await offered('  measured { spoiled | }\n');
    expect(names).toEqual(expect.arrayContaining(['side-A-1-north', 'bottom-1', 'blocking-A-3']));
    expect(await offered('  measured { board | }\n')).toEqual(names);
    expect(await offered("  measured { cut 16' of pine into bottom-1, | }\n")).toEqual(names);
});
test('how a piece was cut, and a piece that was cut otherwise', async () => {
    const names = await offered('  measured { spoiled | }\n');
    expect(await offered("  measured { cut 16' of pine into bottom-1 | }\n")).toEqual(expect.arrayContaining(['at', 'left-hand', 'mitered', 'left']));
    const after = await offered("  measured { cut 16' of pine into bottom-1 at 9' | }\n");
    expect(after).toEqual(expect.arrayContaining(['into', 'left-hand', 'right-hand', 'mitered', 'left']));
    expect(after).not.toContain('at');
    expect(await offered("  measured { cut 16' of pine into bottom-1 at 9' into side-A-1-north | }\n")).toContain('at');
    expect(await offered("  measured { cut 16' of pine into bottom-1 at 9' into | }\n")).toEqual(names);
});
test('rules that a comment can allow', async () => {
    const names = await offered('  // allow |\n');
    expect(names).toEqual(RULES.map(({ name }) => name).filter(name => name !== 'allow-unused'));
    expect(await offered('  // allow not-|\n')).toEqual(names);
    expect(await offered('  // allowing |\n')).toEqual([]);
    expect(await offered('  // allow not-laid-out: |\n')).toEqual([]);
});
