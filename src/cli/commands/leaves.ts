import { humanLeaves } from '../../report/leaf.ts';
import { LEAF_REPORTS } from '../../report/leaf-reports.ts';
import { EXIT, worst, type ExitCode } from '../exit-code.ts';
import { isSound } from '../houses.ts';
import type { World } from '../world.ts';
import { housesAsked, type ListOptions } from './lists.ts';

/** Tells a report of tables and sentences. */
export function told(kind: keyof typeof LEAF_REPORTS): (options: ListOptions, world: World) => Promise<ExitCode> {
    const { lacks, leaf, json, csv } = LEAF_REPORTS[kind];
    return async (options, world) => {
        const { houses, files, code } = await housesAsked(options, world), { terminal } = world;
        switch (options.format) {
            case 'human': terminal.result(humanLeaves(houses.map(leaf), lacks, terminal.paint)); break;
            case 'json': terminal.result(json(houses, files)); break;
            case 'csv': terminal.result(csv(houses)); break;
        }
        return worst(code, isSound(houses) ? EXIT.clean : EXIT.findings);
    };
}
