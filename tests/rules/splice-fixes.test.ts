import { expect, test } from 'vitest';
import { readFile } from '../../src/language/read-file.ts';
import { inspect } from '../../src/pipeline/inspect.ts';
import { TestWorkspace } from '../support/workspace.ts';

/** Three coffers by three; the lines run north-south through A and B. */
const jobWith = (splice: string): string => `edition 1
stock wide { size 1x8 }
stock flat { size 1x6 }
profile box { blocking { stock flat }; sides { stock wide }; bottom { stock flat } }
room den {
  wall north  13' 2"
  wall east   10' 1"
  grid { coffers-north 3; coffers-east 3; beams box; through north-south }
  line 1 { splice ${splice} }
}
`;

async function fixed(splice: string): Promise<{ readonly left: number; readonly text: string } | undefined> {
    const inspected = async (text: string) => inspect(readFile((await TestWorkspace.open({ 'job.coffer': text })).document('job.coffer'))).findings;
    const text = jobWith(splice), [found, ...others] = (await inspected(text)).filter(({ rule }) => rule === 'splice-in-sight');
    expect([found !== undefined, others.length]).toEqual([true, 0]);
    const edit = found!.fixes[0]?.edits[0];
    if (!edit) return undefined;
    const lines = text.split('\n'), { start, end } = edit.range, line = lines[start.line]!;
    lines[start.line] = line.slice(0, start.character) + edit.text + line.slice(end.character);
    return { left: (await inspected(lines.join('\n'))).filter(({ rule }) => rule === 'splice-in-sight' || rule === 'not-supported-layout').length, text: lines[start.line]!.trim() };
}

test.each(['30"', '30" from north', '30" from south', '30" from A'])('a splice at %s is moved onto the crossing, by the tape that it was said with', async splice => {
    const mended = await fixed(splice);
    expect(mended?.left).toBe(0);
    expect(mended?.text.endsWith(`${splice.slice(splice.indexOf('"') + 1)} }`)).toBe(true);
});

test('onto a crossing behind the hook there is no figure', async () => expect(await fixed('8" from A')).toBeUndefined());
