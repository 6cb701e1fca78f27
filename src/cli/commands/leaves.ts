import { layoutOf } from '../../pipeline/inspect.ts';
import { holdingContent, type RoomHolding } from '../../report/joists/content.ts';
import { csvJoists } from '../../report/joists/csv.ts';
import { jsonJoists } from '../../report/joists/json.ts';
import { joistsLeaf } from '../../report/joists/leaf.ts';
import { humanLeaves } from '../../report/leaf.ts';
import type { RoomPieces } from '../../report/house.ts';
import { EXIT, worst, type ExitCode } from '../exit-code.ts';
import { isSound } from '../houses.ts';
import type { World } from '../world.ts';
import { housesAsked, type ListOptions } from './lists.ts';

/** What holds each beam: joists, screws, thread in wood, and what hangs there. */
export async function joists(options: ListOptions, world: World): Promise<ExitCode> {
    const { houses, files, code } = await housesAsked(options, world);
    const { terminal } = world;
    switch (options.format) {
        case 'human': terminal.result(humanLeaves(houses.map(house => joistsLeaf(house, holdingOf)), 'nothing is known of what holds it', terminal.paint)); break;
        case 'json': terminal.result(jsonJoists(houses, holdingOf, files)); break;
        case 'csv': terminal.result(csvJoists(houses, holdingOf)); break;
    }
    return worst(code, isSound(houses) ? EXIT.clean : EXIT.findings);
}

function holdingOf({ room, takeOff }: RoomPieces): RoomHolding | undefined {
    const { ceiling } = layoutOf(room);
    return ceiling && takeOff && holdingContent(ceiling, takeOff);
}
