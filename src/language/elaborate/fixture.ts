import type { Corner, Fixture } from '../../job/model.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import type * as ast from '../generated/ast.ts';
import { sourceOfProperty } from '../types/place.ts';
import { quoted } from '../types/words.ts';
import type { LineReading } from './reading.ts';

/**
 * A light, a sprinkler, a casing. Its place is said from a corner, first along the north wall, then along the east wall;
 * here it is from the north-west corner, so it is unknown where the walls are that it was not measured from.
 */
export function readFixture(thing: ast.Fixture, line: LineReading, across: Ticks | undefined, down: Ticks | undefined): Fixture {
    return {
        name: thing.name, at: sourceOfProperty(thing, 'name'), kind: line.word('value')?.value ?? '', ...placeOf(thing, line, across, down),
        diameter: line.length('diameter'), width: line.length('width'), keepClear: line.length('keep-clear'), wants: line.word('wants'),
    };
}

function placeOf(thing: ast.Fixture, line: LineReading, across: Ticks | undefined, down: Ticks | undefined): { x?: Ticks; y?: Ticks } {
    const at = thing.mods.find(mod => mod.decl?.ref?.name === 'at');
    if (!at) return {};
    if (at.values.length !== 2) {
        line.evaluator.raise({ rule: 'value-missing', at: sourceOfProperty(at, 'decl'), message: `${quoted('at')} wants two lengths: how far along the north wall, and how far along the east wall, such as at 2' 3", 4' 1" from north-west.` });
        return {};
    }
    const [x, y] = line.lengths('at');
    const from = line.word<Corner>('from')?.value;
    if (!from) return {};
    const measured = (along: Ticks | undefined, fromFarSide: boolean, whole: Ticks | undefined): Ticks | undefined => {
        if (along === undefined || !fromFarSide) return along;
        return whole === undefined ? undefined : whole - along;
    };
    return { x: measured(x, from.endsWith('east'), across), y: measured(y, from.startsWith('south'), down) };
}
