import { join } from 'node:path';
import { expect, test } from 'vitest';
import { folderWith } from '../cli/folder.ts';
import { cofferwright } from '../cli/world.ts';
import { made, OUTPUTS } from '../standing/outputs.ts';
import { EXAMPLES, filesIn } from '../support/examples.ts';
import { FULL, some } from '../support/full.ts';
import { readMarked } from '../support/marked.ts';

/** Every figure that is printed as a length can be found on a tape: 128ths stand only where the job says them, and what is rounded is rounded to a mark. */
const inchFigure = /(~?)(?:-?\d+'[ -])?(?:\d+ )?(\d+)[/\u2044](\d+)\\?["″]/g, roundedMetric = /~-?\d+(\.\d+)? mm/g;

/** In JSON the words alone: what closes a text is no inch mark, so that the minutes `"59407/288"` are no length. */
function wordsOf(text: string): string {
    if (!text.startsWith('{')) return text.replaceAll('&quot;', '"');
    const texts = (value: unknown): string[] => typeof value === 'string' ? [value] : typeof value === 'object' && value !== null ? Object.values(value).flatMap(texts) : [];
    return texts(JSON.parse(text)).join('\n');
}

function offTape(text: string, said: string): string[] {
    const read = wordsOf(text);
    const inches = [...read.matchAll(inchFigure)].filter(([figure, rounded, over, under]) => !said.includes(`${over!}/${under!}"`)
        && (rounded ? Number(under) > 32 : Number(under) > 64) && !said.includes(figure));
    const metric = [...read.matchAll(roundedMetric)].filter(([, tenths]) => tenths !== undefined && tenths !== '.5');
    return [...new Set([...inches, ...metric].map(([figure]) => figure))];
}

const realJobs = join(import.meta.dirname, '../rules/real-jobs');
const jobs: Readonly<Record<string, Readonly<Record<string, string>>>> = {
    examples: EXAMPLES,
    ...Object.fromEntries(Object.entries(filesIn(realJobs))
        .map(([name, text]) => [name, Object.fromEntries(readMarked(text).map(file => [file.path, file.text]))])),
    'boards in millimeters in a job in inches': {
        'parlor.coffer': `edition 1
stock lath { thickness 19 mm; width 140 mm; lengths 2.4 m, 4 m; price 3 USD per ft }
stock panel { thickness 18.5 mm; width 184 mm; lengths 4 m; price 4 USD per ft }
profile box {
  blocking { stock lath }
  spacers  { stock lath; height 125 mm }
  sides    { stock panel; held-down 1/4" }
  cleats   { rip 19 mm x 19 mm from lath }
  bottom   { stock lath; gap 0 mm to 1 mm; press 1/128" }
}
room parlor {
  wall north 15' 10 1/3"
  wall east  12' 3 1/2"
  grid { coffers-north 4; coffers-east 3; beams box; through north-south; perimeter { kind band; stock panel; below-beams 6.4 mm } }
}
`,
    },
};
/** The lists that are read most, and `check`; all outputs at full count. */
const LISTS = [['check'], ['cut-list'], ['cut-list', '--format', 'csv'], ['saw', '--quick'], ['dry-fit']];

test.each(some(Object.entries(jobs).reverse(), 4))('%s', async (_, files) => {
    const folder = folderWith(files), said = Object.values(files).join('\n');
    const outputs = [{ argv: ['check'] }, ...FULL ? OUTPUTS : OUTPUTS.filter(({ argv }) => LISTS.some(list => list.every((word, i) => argv[i] === word) && (argv.includes('csv') || argv.includes('human'))))];
    let figures = 0;
    for (const output of outputs) {
        const texts = output.argv[0] === 'check' ? [{ name: 'check', text: (await cofferwright(folder, ['check'])).out }] : (await made(folder, output)).texts;
        for (const { name, text } of texts) {
            expect({ name: `${output.argv.join(' ')}: ${name}`, figures: offTape(text, said) }).toEqual({ name: expect.any(String), figures: [] });
            figures += [...text.matchAll(inchFigure)].length + [...text.matchAll(/\d mm/g)].length;
        }
    }
    expect(figures).toBeGreaterThan(100);
});

test('the check finds figures that no tape has', () => {
    expect(offTape(JSON.stringify({ minutes: '59407/288', cut: ['38 49/128"', '~6.4 mm'] }), '')).toEqual(['38 49/128"', '~6.4 mm']);
    expect(offTape(`cut 38 49/128", ~2' 3 43/64" and ~6.4 mm, 3/128", 7/64"`, 'press 3/128"')).toEqual(['38 49/128"', `~2' 3 43/64"`, '~6.4 mm']);
});
