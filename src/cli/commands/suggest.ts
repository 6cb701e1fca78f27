import { kept } from '../../plain/kept.ts';
import type { RoomPieces } from '../../report/house.ts';
import { humanLeaves } from '../../report/leaf.ts';
import { csvSuggestions } from '../../report/suggest/csv.ts';
import { jsonSuggestions } from '../../report/suggest/json.ts';
import { suggestLeaf } from '../../report/suggest/leaf.ts';
import { suggestionsFor } from '../../suggest/suggestions.ts';
import { EXIT, worst, type ExitCode } from '../exit-code.ts';
import { isSound } from '../houses.ts';
import type { World } from '../world.ts';
import { housesAsked, type ListOptions } from './lists.ts';

/** Other grids for each room that are clear of everything it says, the best first. */
export async function suggest(options: ListOptions, world: World): Promise<ExitCode> {
    const { houses, files, workspace, code } = await housesAsked(options, world);
    const { terminal } = world, count = houses.reduce((sum, { rooms }) => sum + rooms.length, 0);
    let done = 0;
    const ofRoom = kept((room: RoomPieces) => {
        terminal.progress(`Trying other grids: room ${++done} of ${count} ...`);
        return suggestionsFor(room.room, workspace.contentOf(room.room.at.uri)!, room.standing);
    });
    const all = houses.flatMap(({ rooms }) => rooms).map(ofRoom);
    terminal.progress('');
    switch (options.format) {
        case 'human': {
            const leaves = houses.map(house => suggestLeaf(house, ofRoom));
            terminal.result(humanLeaves(leaves, 'the grids below are measured against nothing', terminal.paint));
            break;
        }
        case 'json': terminal.result(jsonSuggestions(houses, ofRoom, files)); break;
        case 'csv': terminal.result(csvSuggestions(houses, ofRoom)); break;
    }
    return worst(code, isSound(houses) && all.every(({ nothing }) => nothing === undefined) ? EXIT.clean : EXIT.findings);
}
