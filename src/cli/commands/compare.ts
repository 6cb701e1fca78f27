import { csvChanges } from '../../report/changes/csv.ts';
import { humanChanges } from '../../report/changes/human.ts';
import { jsonChanges } from '../../report/changes/json.ts';
import { markdownChanges } from '../../report/changes/markdown.ts';
import { EXIT, worst, type ExitCode } from '../exit-code.ts';
import { compareStates, type StatesAsked } from '../states.ts';
import type { World } from '../world.ts';

export const CHANGE_FORMATS = ['human', 'json', 'markdown', 'csv'] as const;
export interface CompareOptions extends StatesAsked { readonly format: (typeof CHANGE_FORMATS)[number] }

/** What changed in meaning between two states of a house, and what the change costs. */
export async function compare(options: CompareOptions, world: World): Promise<ExitCode> {
    const { compared, files, isSound, code } = await compareStates(options, world), { terminal } = world;
    switch (options.format) {
        case 'human': terminal.result(humanChanges(compared, terminal.paint)); break;
        case 'json': terminal.result(jsonChanges(compared, files)); break;
        case 'markdown': terminal.result(markdownChanges(compared)); break;
        case 'csv': terminal.result(csvChanges(compared)); break;
    }
    return worst(code, isSound ? EXIT.clean : EXIT.findings);
}
