import { describe, expect, test } from 'vitest';
import { readFile } from '../../src/language/read-file.ts';
import { inspect } from '../../src/pipeline/inspect.ts';
import { TestWorkspace } from '../support/workspace.ts';

/** What is found in a hall of three coffers by two, line 1 at 50 1/2", its beams 3 1/2" inside and 5 3/4" deep: rules with their severity. */
async function found(said: string, screws = '', rule = ''): Promise<string[]> {
    const workspace = await TestWorkspace.open({ 'hall.coffer': `edition 1
stock flat-4 { size 1x4 }
stock flat-6 { size 1x6 }
profile box { blocking { stock flat-4${screws} }; sides { stock flat-6 }; bottom { stock flat-4 } }
room hall {
  wall north  12' 10"
  wall east   9' 5"
  ${said}
  grid { coffers-north 3; coffers-east 2; beams box; through north-south }
}
` });
    return inspect(readFile(workspace.document('hall.coffer'))).findings.filter(finding => finding.rule === rule).map(({ severity }) => severity);
}

describe('limits of what the ceiling holds, from both sides', () => {
    test.each([
        // 1 3/4" off the middle of the joist a screw still has 3/8" to the edges of both
        ['48 3/4"', []], ['48 23/32"', ['error']], ['52 1/4"', []], ['52 9/32"', ['error']],
    ])('blocking along a joist at %s', async (at, severities) => {
        // line 2 and line A find others
        const joists = `ceiling { height 9'; joists 2x8 every 48" running north-south first-center 7 1/2"; joist ${at} found extra; joist 55 1/2" found missing; joist 75" found extra }`;
        expect((await found(joists, '', 'blocking-misses-joist')).filter(severity => severity === 'error')).toEqual(severities);
    });
    test.each([['2 5/8"', []], ['2 19/32"', ['hint']], ['2 3/8"', ['hint']], ['2 11/32"', ['error']]])('a screw of %s through 1 3/8"', async (long, severities) => {
        const ceiling = `ceiling { height 9'; covering gypsum thickness 5/8"; joists 2x8 every 16" running east-west first-center 8 1/2" }`;
        expect(await found(ceiling, `; screws #8 x ${long} every 16"`, 'screw-finds-little')).toEqual(severities);
    });
    test.each([['2 1/2"', []], ['2 17/32"', ['warning']]])('a housing of %s in a beam of 3 1/2"', async (wide, severities) => {
        expect(await found(`fixture can light at 50 1/2", 2' diameter 2" housing ${wide} rated non-ic wants beam-center`, '', 'light-too-near-wood')).toEqual(severities);
    });
    // 84" and 78" over beams of 5 3/4", coffers 48" apart
    test.each([['89 3/4"', []], ['89 23/32"', ['hint']], ['83 3/4"', ['hint']], ['83 23/32"', ['warning']]])('a ceiling of %s', async (height, severities) => {
        expect(await found(`ceiling { height ${height} }`, '', 'headroom')).toEqual(severities);
    });
});
