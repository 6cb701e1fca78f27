import { dressedSize } from '../../data/dressed-sizes.ts';
import type { Direction, FoundJoist, Joists, Side } from '../../job/model.ts';
import { quoted } from '../types/words.ts';
import type { Raise } from './raised.ts';
import type { Reading } from './reading.ts';
import { recordedBy } from './recorded.ts';

/** The walls that joists of a direction can be counted from, the one first that it is where nobody says. */
const COUNTED_FROM = { 'north-south': ['west', 'east'], 'east-west': ['north', 'south'] } as const satisfies Record<Direction, readonly Side[]>;

/** The joists of a ceiling; none where its line does not say which way they run and how far apart they are. */
export function readJoists(ceiling: Reading, raise: Raise): Joists | undefined {
    const size = ceiling.given(ceiling.found('joists'), ({ known: { value } }) => value.is === 'size' ? value.size : undefined);
    const every = ceiling.length('joists', 'every'), running = ceiling.word<Direction>('joists', 'running');
    if (!size || !every || !running) return undefined;
    const from = ceiling.word<Side>('joists', 'from'), sides: readonly Side[] = COUNTED_FROM[running.value];
    const isAcross = !from || sides.includes(from.value);
    if (from && !isAcross) {
        raise({
            rule: 'no-effect', severity: 'warning', at: from.at, ...from.via && { via: from.via },
            message: `${quoted(`from ${from.value}`)} has no effect: joists that run ${running.value} lie along the ${from.value} wall, so it is not known where they are. Measure to the first one from ${sides[0]} or from ${sides[1]}.`,
        });
    }
    const first = ceiling.length('joists', 'first-center'), of = ceiling.word<string>('joists', 'of');
    const dressed = dressedSize(size.value.thickness, size.value.width)?.thickness, width = ceiling.length('joists', 'width')?.value ?? dressed;
    return {
        at: size.at, size: size.value.text, every, running, from: from && isAcross ? from.value : sides[0]!, found: foundJoists(ceiling),
        ...recordedBy(ceiling, mod => ceiling.found('joists', mod), size.at), ...first && isAcross && { first }, ...width !== undefined && { width }, ...of && { of },
    };
}

function foundJoists(ceiling: Reading): FoundJoist[] {
    return ceiling.each('joist', (found, line) => {
        const ticks = ceiling.ticks(found), how = ceiling.modOn(line, 'joist', 'found')?.known.value;
        return ticks === undefined || how?.is !== 'word' ? undefined : { ticks, how: how.word as FoundJoist['how'] };
    }).map(({ value: { ticks, how }, ...words }) => ({ ...words, value: ticks, how }));
}
