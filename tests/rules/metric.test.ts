import { describe, expect, it } from 'vitest';
import { readFile } from '../../src/language/read-file.ts';
import { inspect } from '../../src/pipeline/inspect.ts';
import { mismatches, readMarked } from '../support/marked.ts';
import { TestWorkspace } from '../support/workspace.ts';

/** A metric job is spoken of in millimeters, and what its fixes write is metric too. */
const METRIC = `edition 1

job "Gartenweg 5" {
  show           millimeters
  cut-to         0.5 mm
  cut-tolerance  2 mm
}

stock board-140 {
  thickness  19 mm
  width      140 mm
}
stock board-185 {
  thickness  19 mm
  width      185 mm
}
stock strip-38 {
  thickness  19 mm
  width      38 mm
}

profile metric-box {
  blocking {
    stock  board-140
    rip    138 mm
  }
  spacers {
    stock   board-140
    rip     138 mm
    height  »140 mm«                       // error spacer-hits-cleat "it is 140 mm high and there is 134 mm between the blocking and the cleats" "Cut spacers to 134 mm or less."
  }
  sides {
    stock      board-185
    held-down  6 mm
    rabbet     »11 mm« x 6 mm on lower-back   // error groove-leaves-no-lip "8 mm of lip is left" "make the rabbet 9.5 mm at most"
  }
  cleats {
    rip    19 mm x 19 mm from strip-38
    nails  »18 ga x 38 mm« every 200 mm    // error nail-shows "The nail reaches the face of the side" "Use 30 mm."
  }
  bottom {
    stock     »board-140«                  // error bottom-wont-fit "it is 140 mm wide and there is 138 mm between the sides (the blocking is 138 mm)" "Rip the bottom to 138 mm"
    biscuits  »2 x #20«                    // warning slots-wont-fit "2.8 mm is left"
  }
  trim {
    stock  strip-38
    rip    »12 mm«                         // error trim-wont-cover "laps the side only 6 mm"
  }
}

profile right-box {
  blocking { stock board-140 }
  sides {
    stock      board-185
    held-down  6 mm
  }
  bottom {
    stock  board-140
    rip    139.5 mm
    gap    0 mm to 1 mm
  }
}

room hall {
  wall north  4 m
  wall east   3 m
  grid {
    coffers-north  »3«                     // warning run-pinches-channel "2 mm long or short" "3 x 2 mm / 2 = 3 mm each at worst, 1.73 mm as root-sum-square" "has 0.5 mm of play"
    coffers-east   »2«                     // warning run-pinches-channel
    beams          right-box
    through        north-south
  }
}
`;

describe('a metric job', () => {
    it('is spoken of in millimeters', async () => {
        const files = readMarked(METRIC);
        const workspace = await TestWorkspace.open(Object.fromEntries(files.map(file => [file.path, file.text])));
        const { findings } = inspect(readFile(workspace.document('main.coffer')));
        expect(mismatches([{ file: files[0]!, findings }])).toEqual([]);
        for (const { message, related, fixes } of findings) {
            const words = [message, ...related.map(place => place.message), ...fixes.flatMap(fix => [fix.title, ...fix.edits.map(edit => edit.text)])];
            expect(words.join(' ')).not.toMatch(/\d["']/);
        }
        expect(findings.flatMap(({ fixes }) => fixes.flatMap(fix => fix.edits.map(edit => edit.text.trim()))).sort())
            .toEqual(['1 x #20', '134 mm', '18 ga x 30 mm', '2 x #10', '9.5 mm', 'rip 138 mm']);
    });

    it('has a lip in the round figure of its tape: what is asked for is enough', async () => {
        const lipOf = async (groove: string): Promise<readonly string[]> => {
            const { document } = await TestWorkspace.open({ 'main.coffer': `edition 1

job "Gartenweg 5" { show millimeters; cut-to 0.5 mm }
stock board-140 { thickness 19 mm; width 140 mm }
stock mdf-185 { species mdf; thickness 12.5 mm; width 185 mm }
profile thin { blocking { stock board-140 }; sides { stock mdf-185; rabbet ${groove} x 6 mm on lower-back }; bottom { stock board-140 } }
` }).then(workspace => ({ document: workspace.document('main.coffer') }));
            return inspect(readFile(document)).findings.filter(({ rule }) => rule === 'groove-leaves-no-lip').flatMap(({ message, fixes }) => [message, ...fixes.flatMap(fix => fix.edits.map(edit => edit.text))]);
        };
        expect(await lipOf('3 mm')).toEqual([]);
        expect(await lipOf('3.2 mm')).toEqual(['9.3 mm of lip is left: the rabbet is 3.2 mm wide and the side 12.5 mm thick. 9.5 mm is the least, or the edge breaks and the nails show: make the rabbet 3 mm at most.', '3 mm']);
    });
});
