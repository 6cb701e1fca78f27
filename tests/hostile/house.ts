/**
 * What somebody may put where text may stand, that is fit for no terminal, page, table or drawing as it is: codes that a terminal obeys
 * (with a single sign for two of them), what turns the reading round, tags, formulas, commands of log files and of drawing
 * programs, ends of lines. `EVIL` is what a text in quotes can hold.
 */
export const MARK = 'INJECTED';
export const EVIL = [
    "=cmd|'/C calc'!A0", '<script>alert(1)</script>', '<img src=x onerror=alert(1)>', ']]>', '&lt;', '\u001b[31m', '\u001b]0;title\u0007', '\u009b2J', '\r'.replace('\r', '\u2028'), `\u0085${MARK}`,
    '\u000b', '\u202e', '\u2066', '\u200b', '\u00ad', '\ufeff', '```', '`x`', '[a](command:b)', '%0A::error::', '%%d', '^J', '\\\\U+0041', '\\\\P', "';", '$(x)', '\u{e0041}', '\ufdd0',
].join(' ');
/** A name of a folder that can be imported from; that of a file which is only met may hold what no path of an import may. */
const EVIL_FOLDER = "=1+1 <b>&' `x` $(x) %0A::error::";
export const EVIL_FILE = `${EVIL_FOLDER} \u001b[31m\u202e\u009b2J\u0007\n${MARK}\r".coffer`;

/** Texts in every place of a job that takes any. */
export function evilHouse(evil: string = EVIL): Record<string, string> {
    const text = `"${evil.replaceAll('"', '\\"')}"`;
    return {
        'yard.coffer': `edition 1
/** ${evil.replaceAll('*/', '')} */
stock pine-1x6 { size 1x6; ripped-with ${text}; lengths 8', 12', 16'; price 2.10 USD per ft; supplier ${text} }
stock pine-1x8 { size 1x8; lengths 8', 12', 16'; price 3.25 USD per ft; supplier ${text} }
stock strip-1x2 { size 1x2; lengths 8', 12' } // allow nothing-here: ${evil}
`,
        [`${EVIL_FOLDER}/box.coffer`]: `edition 1
from "../yard.coffer" use pine-1x6, pine-1x8, strip-1x2
/** ${evil} */
profile box {
  require 1" < 3" ${text}
  blocking { stock pine-1x6; rip 5 1/4" } // allow bottom-too-tight: ${evil}
  spacers { stock pine-1x6; height 5" }
  sides { stock pine-1x8 }
  cleats { rip 3/4" x 3/4" from strip-1x2 }
  bottom { stock pine-1x6 }
}
`,
        'den.coffer': `edition 1
from "yard.coffer" use pine-1x8
from "./${EVIL_FOLDER}/box.coffer" use box
room den ${text} {
  wall north 12' 3 1/2"
  wall east 10' 2"
  grid { coffers-north 3; coffers-east 2; beams box; through north-south; residue outer-coffers; perimeter { kind band; stock pine-1x8 } }
}
alternate other ${text} { den.grid.coffers-north 2 }
`,
        [EVIL_FILE]: `edition 1\nfrom "./${EVIL_FOLDER}/box.coffer" use box\nroom attic { wall north 9'; wall east 8'; grid { coffers-north 2; coffers-east 2; beams box; through north-south } }\n`,
        'job.coffer': `edition 1
job ${text} { cut-to 1/16"; client ${text}
  contract {
    signed 900 USD on 2026-02-09 at ${text}
    phase ${text} done 50%
    change 1 adds 5 USD on 2026-03-02 at ${text} reference ${text} for ${text}
    bill ${text} sum 10 USD on 2026-03-02
    payment 10 USD on 2026-03-03 for ${text}
    remit ${text}
  }
}
labor { crew 2 rate 64 USD per h; sides 5 min per ft }
bid { profit 15% of price; contractor ${text}; scope ${text}; exclusion ${text}; terms ${text}; allowance 250 USD for ${text} }
`,
    };
}
