import type { AtWall, Corner, Fixture } from '../../job/model.ts';
import { TICKS_PER_INCH, type Ticks } from '../../quantity/ticks.ts';
import type * as ast from '../generated/ast.ts';
import { sourceOfProperty } from '../types/place.ts';
import { quoted } from '../types/words.ts';
import type { LineReading } from './reading.ts';
import { recordedBy } from './recorded.ts';

/** Along the north and the east wall, and how high it is, as far as that is known. */
interface SizeOfRoom { readonly across?: Ticks; readonly down?: Ticks; readonly height?: Ticks }

/**
 * A light, a sprinkler, a casing. Its place is said from a corner, first along the north wall, then along the east wall;
 * here it is from the north-west corner, so it is unknown where the walls are that it was not measured from.
 */
export function readFixture(thing: ast.Fixture, line: LineReading, { across, down, height }: SizeOfRoom): Fixture {
    const kind = line.word<string>('value')?.value ?? '', isAtWall = AT_THE_WALL.has(kind), atWall = isAtWall ? atWallOf(kind, line, height) : undefined;
    const by = line.thing('reached-by'), reachedBy = by && { ...by, value: by.value.name };
    const pair = line.pair('size'), size = pair && { ...pair, value: { across: pair.value.first.ticks, down: pair.value.second.ticks } };
    const known = recordedBy(line, mod => line.found(mod === 'on' ? 'dated' : mod), sourceOfProperty(thing, 'name'));
    return {
        name: thing.name, at: sourceOfProperty(thing, 'name'), kind, ...isAtWall ? atWall && { atWall } : placeOf(thing, line, across, down),
        diameter: line.length('diameter'), width: line.length('width'), ...size && { size }, keepClear: line.length('keep-clear'), wants: line.word('wants'),
        housing: line.length('housing'), rated: line.word('rated'), hangs: line.length('hangs'), ...reachedBy && { reachedBy },
        ...Object.keys(known).length > 0 && { known },
    };
}

/** What stands at a wall, and is no part of the ceiling. */
const AT_THE_WALL: ReadonlySet<string> = new Set(['casing', 'cabinet', 'soffit', 'pocket', 'stair-opening']);
/** How far a casing stands out from the wall, where nobody says it. Common practice, no source. */
const CASING: Ticks = 3 / 4 * TICKS_PER_INCH;

/** Undefined where its line does not say enough. */
function atWallOf(kind: string, line: LineReading, ceiling: Ticks | undefined): AtWall | undefined {
    const wall = line.text('on'), places = line.lengths('at'), from = line.word<Corner>('from')?.value;
    const begins = places.length > 0 ? line.length('at') : undefined, width = line.length('width');
    const depth = line.length('depth')?.value ?? (kind === 'casing' ? CASING : undefined), height = line.length('height')?.value;
    const below = line.length('below-ceiling')?.value ?? (height !== undefined && ceiling !== undefined ? ceiling - height : undefined);
    const needsTop = kind === 'casing' || kind === 'cabinet';
    const isPlaced = places.length === 0 || places.length === 1 && begins && width;
    if (!wall || depth === undefined || needsTop && below === undefined || !isPlaced) return undefined;
    return { wall, ...begins && { begins }, from: from ?? 'north-west', ...width && { width }, depth, ...needsTop && { below } };
}

function placeOf(thing: ast.Fixture, line: LineReading, across: Ticks | undefined, down: Ticks | undefined): { x?: Ticks; y?: Ticks } {
    const at = thing.mods.find(mod => mod.decl?.ref?.name === 'at');
    if (!at) return {};
    if (at.values.length !== 2) {
        line.evaluator.raise({ rule: 'value-missing', at: sourceOfProperty(at, 'decl'), message: `${quoted('at')} needs two lengths: how far along the north wall, and how far along the east wall, such as at 2' 3", 4' 1" from north-west.` });
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
