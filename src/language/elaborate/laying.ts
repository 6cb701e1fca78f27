import type { Grid, Laying, RoomWall } from '../../job/model.ts';
import { listed } from '../../plain/words.ts';
import type { Given } from '../../provenance/source.ts';
import type { Raise } from './raised.ts';
import type { Reading } from './reading.ts';

type Lays = Pick<Grid, 'alongNorth' | 'alongEast' | 'layNorthSouth' | 'layEastWest'>;

/** Along which walls lines are divided, and how they lie. Undefined where a wall is named that is not there. */
export function readLaying(grid: Reading, walls: readonly RoomWall[], raise: Raise): Lays | undefined {
    let sound = true;
    const there = (named: Given<string> | undefined): Given<string> | undefined => {
        if (!named || walls.some(({ name }) => name === named.value)) return named;
        sound = false;
        raise({ rule: 'unknown-wall', at: named.at, message: `There is no wall ${named.value}; the room has ${listed(walls.map(({ name }) => name))}.` });
        return undefined;
    };
    const along = (wall: 'north' | 'east'): Given<string> | undefined =>
        there([`lines-${wall}`, `coffers-${wall}`].flatMap(name => (grid.block.entries.has(name) ? grid.text(name, 'along') ?? [] : []))[0]);
    const squareTo = there(grid.text('square-to'));
    const laying = (name: 'lay-north-south' | 'lay-east-west'): Laying | undefined => {
        const how = grid.word<Laying['how']>(name), wall = there(grid.text(name, 'wall')) ?? squareTo;
        if (!how && !squareTo) return undefined;
        return { how: how?.value ?? 'by-wall', ...wall && { wall }, at: (how ?? squareTo!).at };
    };
    const alongNorth = along('north'), alongEast = along('east'), layNorthSouth = laying('lay-north-south'), layEastWest = laying('lay-east-west');
    const lays = { ...alongNorth && { alongNorth }, ...alongEast && { alongEast }, ...layNorthSouth && { layNorthSouth }, ...layEastWest && { layEastWest } };
    return sound ? lays : undefined;
}
