import { describe, expect, it } from 'vitest';
import type { Finding } from '../../src/findings/finding.ts';
import { readFile } from '../../src/language/read-file.ts';
import { inspect } from '../../src/pipeline/inspect.ts';
import { foundIn, ownSection } from '../../src/rules/sections.ts';
import { mismatches, readMarked } from '../support/marked.ts';
import { TestWorkspace } from '../support/workspace.ts';

/** One cause is said once, in the file whose words cause it, wherever it comes to light. Findings are marked in the texts. */
const DETAILS = `// file details.coffer
edition 1

stock poplar-1x4 { size 1x4 }
stock poplar-1x6 { size 1x6 }
stock poplar-1x8 { size 1x8 }
stock strip-1x2 { size 1x2 }
`;
const room = (name: string, beams: string, rest = ''): string => `
room ${name} {
  wall north  13' 2"
  wall east   9' 7"
  grid {
    coffers-north  3
    coffers-east   2
    beams          ${beams}
    through        north-south
  }
${rest}}
`;
const rooms = (used: string, ...texts: string[]): string => `
// file rooms.coffer
edition 1
from "./details.coffer" use ${used}
${texts.join('')}`;

const GROOVED = `
profile grooved(groove: Length = 1/4", wide: Stock = poplar-1x6) {
  blocking { stock poplar-1x6 }
  sides {
    stock   poplar-1x8
    rabbet  groove x 1/4" on lower-back
  }
  bottom { stock wide }
}
`;
const FLAWED = `
profile flawed(groove: Length = 1/4") {
  blocking { stock poplar-1x6 }
  sides {
    stock   poplar-1x8
    rabbet  groove x 1/4" on lower-back
  }
  bottom {
    stock  poplar-1x6
    rip    »5 1/4"«                                  // error bottom-gap-shows
  }
}
`;

const cases: Record<string, string> = {
    'a profile that is wrong by itself: in its own file, not in the rooms that use it':
        DETAILS + FLAWED + rooms('flawed', room('one', 'flawed'), room('two', 'flawed')),

    'an argument that makes it wrong: at the argument, in each room that gives it':
        DETAILS + GROOVED + rooms('grooved', room('one', 'grooved'), room('two', 'grooved(groove: »7/16"«)    // error groove-leaves-no-lip'),
            room('three', 'grooved(groove: »7/16"«)    // error groove-leaves-no-lip')),

    'an argument of another kind': DETAILS + GROOVED + rooms('grooved, poplar-1x4', room('one', 'grooved(wide: »poplar-1x4«)    // error bottom-gap-shows')),

    'arguments that are right, of a profile that is wrong by itself':
        DETAILS + FLAWED + rooms('flawed', room('one', 'flawed(groove: 1/8")')),

    'arguments that are wrong, of a profile that is wrong by itself at other words':
        DETAILS + FLAWED + rooms('flawed', room('one', 'flawed(groove: »1/2"«)    // error groove-leaves-no-lip')),

    'a parameter without a default: at its argument':
        `${DETAILS}
profile told(groove: Length) {
  blocking { stock poplar-1x6 }
  sides {
    stock   poplar-1x8
    rabbet  groove x 1/4" on lower-back
  }
  bottom { stock poplar-1x6 }
}
${rooms('told', room('one', 'told(groove: »7/16"«)    // error groove-leaves-no-lip'), room('two', 'told(groove: 1/8")'))}`,

    'a profile that is like one that is wrong, in the same file and in another':
        `${DETAILS}${FLAWED}
profile flawed-too like flawed { spacers { stock poplar-1x6; height 3" } }
${rooms('flawed', 'profile flawed-as-well like flawed { trim.corners mitered }\n', room('one', 'flawed-as-well'))}`,

    'a profile that changes what was right: at the change':
        `${DETAILS}${GROOVED}
profile narrow-blocked like grooved { blocking.rip »5 7/16"« }        // error bottom-wont-fit
profile wide-grooved like grooved(groove: »1/2"«) { bottom.ease 1/16" }  // error groove-leaves-no-lip
${rooms('grooved', 'profile narrow-here like grooved { blocking.rip »5 7/16"« }   // error bottom-wont-fit\n')}`,

    'a profile that is put right again': `${DETAILS}${FLAWED}
profile mended like flawed { bottom.rip 5 1/2" }
${rooms('mended', room('one', 'mended'))}`,

    'a line that holds its sides down too far for the blocking':
        DETAILS + GROOVED + rooms('grooved', room('one', 'grooved', '  line 1 { held-down »5/8"« }          // warning depths-nearly-equal; error side-misses-blocking\n')),

    'a piece that is too long: at the beams of the room, not in the detail':
        `${DETAILS}
stock short-1x6 {
  size     1x6
  lengths  4'
}
profile short-box {
  blocking { stock short-1x6 }
  sides { stock poplar-1x8 }
  bottom { stock short-1x6 }
}
${rooms('short-box', room('one', '»short-box«    // error longer-than-the-board'))}`,

    'a trim of one line that differs from that of the grid: at the line':
        `${DETAILS}
profile trimmed like plain { trim { stock strip-1x2 } }
profile plain {
  blocking { stock poplar-1x6 }
  sides { stock poplar-1x8 }
  bottom { stock poplar-1x6 }
}
profile trimmed-higher like plain { trim { stock poplar-1x4 } }
${rooms('trimmed, trimmed-higher', room('one', 'trimmed', '  line A { beams »trimmed-higher« }    // error not-supported-layout "a ceiling trim along line A"\n'))}`,

    'paint that only the house knows of: in the room, for the detail lies outside of the house':
        `// file shared/details.coffer
edition 1

stock poplar-1x6 { size 1x6 }
stock poplar-1x8 { size 1x8 }
profile box {
  blocking { stock poplar-1x6 }
  sides { stock poplar-1x8 }
  bottom { stock poplar-1x6 }
}

// file lane/house.coffer
edition 1

job "Mill Street 8" { paint-film 0.004" to 0.006" }

// file lane/rooms.coffer
edition 1
from "../shared/details.coffer" use box
${room('one', '»box«    // warning bottom-wont-fit')}`,

    'paint that the detail knows of too: in the detail':
        `// file house.coffer
edition 1

job "Mill Street 8" { paint-film 0.004" to 0.006" }

// file details/box.coffer
edition 1

stock poplar-1x6 { size 1x6 }
stock poplar-1x8 { size 1x8 }
profile box {
  blocking { stock poplar-1x6 }
  sides { stock poplar-1x8 }
  bottom { stock »poplar-1x6« }    // warning bottom-wont-fit
}

// file rooms.coffer
edition 1
from "./details/box.coffer" use box
${room('one', 'box')}`,
};

async function open(source: string) {
    const files = readMarked(source);
    const workspace = await TestWorkspace.open(Object.fromEntries(files.map(file => [file.path, file.text])));
    const contents = files.map(file => readFile(workspace.document(file.path)));
    return { files, workspace, contents, found: contents.map(content => inspect(content).findings) };
}

describe('one cause, one error', () => {
    it.each(Object.entries(cases))('%s', async (_, source) => {
        const { files, found, contents } = await open(source);
        expect(mismatches(files.map((file, i) => ({ file, findings: found[i]! })))).toEqual([]);
        found.forEach((findings, i) => expect(findings.every(({ at }) => at.uri === contents[i]!.uri)).toBe(true));
    });

    it('what is shown at an argument leads to the place in the detail, and offers no change there', async () => {
        const { workspace, found } = await open(cases['an argument that makes it wrong: at the argument, in each room that gives it']!);
        for (const finding of found[1]!) {
            expect(workspace.words(finding.at)).toBe('7/16"');
            expect(finding.related.map(({ at }) => [at.uri.split('/').at(-1), workspace.words(at)])).toEqual([['details.coffer', 'groove'], ['details.coffer', 'poplar-1x8']]);
            expect(finding.fixes).toEqual([]);
        }
        expect(found[1]!.map(finding => finding.room)).toEqual(['two', 'three']);
    });

    it('a profile is looked at once, however many rooms use it and however often they change', async () => {
        const { workspace, contents } = await open(cases['a profile that is wrong by itself: in its own file, not in the rooms that use it']!);
        const profile = contents[1]!.rooms[0]!.grid!.beams!.value;
        const first = foundIn(ownSection(profile), contents[1]!.job);
        await workspace.edit({ 'rooms.coffer': workspace.text('rooms.coffer').replace('13\' 2"', '13\' 3"') });
        const again = readFile(workspace.document('rooms.coffer'));
        expect(again.rooms[0]!.walls[0]!.length!.value.ticks).not.toBe(contents[1]!.rooms[0]!.walls[0]!.length!.value.ticks);
        expect(again.rooms[0]!.grid!.beams!.value).toBe(profile);
        expect(foundIn(ownSection(again.rooms[0]!.grid!.beams!.value), contents[1]!.job)).toBe(first);
    });
});

describe('allowances', () => {
    const flawed = (bottom: string): string => `${DETAILS}
profile flawed {
  blocking { stock poplar-1x6 }
  sides { stock poplar-1x8 }
  bottom {
    stock  poplar-1x6
${bottom}
  }
}
`;
    const findings = async (bottom: string): Promise<Finding[]> => [...(await open(flawed(bottom))).found[0]!];

    it('mark what they allow, with the reason, and leave its severity', async () => {
        const [finding, ...others] = await findings('    rip  5 1/4"    // allow bottom-gap-shows: filled with a bead');
        expect(others).toEqual([]);
        expect(finding).toMatchObject({ rule: 'bottom-gap-shows', severity: 'error', allowed: { reason: 'filled with a bead' } });
        expect(finding!.allowed!.at.range.start.line).toBe(finding!.at.range.start.line);
    });

    it('cover the next line where they stand alone', async () => {
        const found = await findings('    // allow bottom-gap-shows: filled with a bead\n    rip  5 1/4"');
        expect(found.map(({ rule, allowed }) => [rule, allowed?.reason])).toEqual([['bottom-gap-shows', 'filled with a bead']]);
    });

    it('allow their own rule only', async () => {
        const found = await findings('    rip  5 1/4"    // allow bottom-wont-fit: wrong rule');
        expect(found.map(({ rule, allowed }) => [rule, allowed])).toEqual([['bottom-gap-shows', undefined], ['allow-unused', undefined]]);
    });

    it('of a rule that there is not are told so', async () => {
        const found = await findings('    rip  5 1/2"    // allow bottom-wont-go: misspelled');
        expect(found.map(({ rule, message }) => [rule, message])).toEqual([['allow-unused', 'bottom-wont-go is not a rule whose findings can be allowed here.']]);
    });

    it('hold for hints of the language as well, but not for its errors', async () => {
        const hint = await findings('  }\n  spacers {\n    stock   poplar-1x6\n    height  5"\n    every   24" ± 1"    // allow not-computed-yet: next year');
        expect(hint.map(({ rule, allowed }) => [rule, allowed?.reason])).toEqual([['not-computed-yet', 'next year']]);
        const error = await findings('    press  0.5 USD    // allow wrong-type: it costs that much');
        expect(error.map(({ rule, severity, allowed }) => [rule, severity, allowed])).toEqual([['wrong-type', 'error', undefined], ['allow-unused', 'hint', undefined]]);
    });

    /** A bath where somebody allows that the blocking misses the joists; `said` stands among what is said of the room. */
    const bath = (said: string, grid = 'coffers-north  3\n    coffers-east   2'): string => `${DETAILS}
room bath {
  wall north  12' 10"
  wall east   9' 5"
${said}
  ceiling { height 8'; joists 2x8 every 16" running north-south first-center 13" }
  grid {
    ${grid}
    // allow blocking-misses-joist: backing goes in on Monday
    beams          sound
    through        north-south
  }
}
`;
    const SOUND = "profile sound {\n  blocking { stock poplar-1x6 }\n  sides { stock poplar-1x8 }\n  bottom { stock poplar-1x6 }\n}\n";
    const inBath = async (...said: Parameters<typeof bath>): Promise<Finding[]> => [...(await open(`${bath(...said)}${SOUND}`)).found[0]!];

    it('are unused where the room was laid out and nothing is found', async () => {
        expect((await inBath('', 'coffers-north  1\n    coffers-east   3')).filter(({ rule }) => rule === 'allow-unused').map(({ message }) => message))
            .toEqual(['There is no blocking-misses-joist finding here: take the comment out.']);
    });

    it.each<[string, Parameters<typeof bath>]>([
        ['a line cannot be read', ['  height = 8 8\'']],
        ['a property is not known', ['  hight  8\'']],
        ['a wall has no length', ['  wall south  5']],
        ['the coffers do not fit', ['', 'coffers-north  90\n    coffers-east   2']],
    ])('are not judged where the rule was not asked: %s', async (_, said) => {
        const found = await inBath(...said);
        expect(found.some(({ severity }) => severity === 'error')).toBe(true);
        expect(found.filter(({ rule }) => rule === 'allow-unused')).toEqual([]);
    });
});
