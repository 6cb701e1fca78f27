import { compareFindings, type Finding } from '../../src/findings/finding.ts';
import type { FileContent } from '../../src/job/file.ts';
import { readFile } from '../../src/language/read-file.ts';
import { dryFitOf, inspectClosely } from '../../src/pipeline/inspect-closely.ts';
import { inspect, layoutOf } from '../../src/pipeline/inspect.ts';
import { standingOf } from '../../src/pipeline/standing.ts';
import type { Offer, Suggestions } from '../../src/suggest/model.ts';
import { suggestionsFor } from '../../src/suggest/suggestions.ts';
import { applied } from '../support/applied.ts';
import { TestWorkspace } from '../support/workspace.ts';

/** Stocks and a beam 7" wide and 7 1/2" deep, band of 3/4". */
const BEAMS = `edition 1

stock board-6 { size 1x6; lengths 8', 12', 16'; price 3.10 USD per ft }
stock board-8 { size 1x8; lengths 8', 12', 16'; price 4.20 USD per ft }
stock strip-2 { size 1x2; lengths 8', 16'; price 1 USD per ft }

profile box {
  blocking { stock board-6; screws #8 x 3" every 16" }
  spacers { stock board-6; height 5" }
  sides { stock board-8 }
  cleats { rip 3/4" x 3/4" from strip-2 }
  bottom { stock board-6 }
  trim { stock strip-2 }
}
`;

/** A room of these beams: `words` before its grid, `grid` in it. */
export function roomOf(width: string, length: string, grid: string, words = '', through = 'north-south'): string {
    return `${BEAMS}
room hall {
  wall north  ${width}
  wall east   ${length}
${words}
  grid {
    ${grid}
    beams    box
    through  ${through}
    perimeter { kind band; stock board-8 }
  }
}
`;
}

interface Read { readonly file: FileContent; readonly found: readonly Finding[]; readonly text: string }

/** A text as the checker sees it, the dry fit included. */
export async function read(text: string): Promise<Read> {
    const house = await TestWorkspace.open({ 'house.coffer': text }), file = readFile(house.document('house.coffer'));
    return { file, text, found: [...inspect(file).findings, ...inspectClosely(file)].sort(compareFindings) };
}

export function suggested({ file, found }: Read): Suggestions {
    const room = file.rooms[0]!;
    return suggestionsFor(room, file, standingOf(room, found, () => false, uri => uri));
}

export async function suggestionsOf(text: string): Promise<Suggestions> {
    return suggested(await read(text));
}

/** The text with an offer taken over, and what is then found. */
export async function takenOver({ changes }: Offer, { text }: Pick<Read, 'text'>): Promise<Read> {
    return read(applied({ title: '', edits: changes ?? [] }, { 'house.coffer': text })['house.coffer']!);
}

export function errorsIn({ found }: Read): string[] {
    return found.filter(({ severity, allowed }) => severity === 'error' && !allowed).map(({ rule, message }) => `${rule}: ${message}`);
}

/** How many faults the dry fit of the first room has; undefined where it cannot be laid out. */
export function faultsIn({ file }: Read): number | undefined {
    const { ceiling } = layoutOf(file.rooms[0]!);
    return ceiling && dryFitOf(ceiling).faults.length;
}
