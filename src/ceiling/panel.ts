import type { Panel } from '../arrangement/plan.ts';
import type { Vector } from '../plane/point.ts';
import type { Direction } from '../job/model.ts';
import type { Ceiling, Line, Trouble } from './model.ts';
import { longestPiece } from './longest.ts';

interface Under extends Pick<Ceiling, 'beams' | 'room'> { readonly lines: readonly Pick<Line, 'runs' | 'heading'>[] }

/** The panels over all coffers of a room, as the grid's beam has them. Without a stock they are nobody's to cut. */
export function panelOver({ beams, lines, room: { job } }: Under): Panel | undefined {
    const back = beams?.profile.back, stock = back?.stock?.value, thickness = back?.thickness?.value.ticks;
    if (!back || !stock || !thickness || !(thickness > 0)) return undefined;
    const { running, seams, gap } = back, sheet = stock.sheet?.value, across = sheet?.width ?? stock.width?.value.ticks, along = longestPiece(stock, job);
    const ways = (running ? [running.value] : BOTH).map(runs => wayOf(runs, lines)) as [Vector, ...Vector[]];
    return {
        thickness, gap: gap.value, ways, each: !running && sheet?.grain === 'none', seams: seams.value === 'across-coffers',
        ...across !== undefined && Number.isFinite(along) && { sheet: { along, across } },
    };
}
const BOTH: readonly Direction[] = ['east-west', 'north-south'];

/** As the lines run that way, where there are any; else square to those that run the other way. */
function wayOf(runs: Direction, lines: Under['lines']): Vector {
    const own = lines.find(line => line.runs === runs)?.heading, other = lines[0]?.heading;
    return own ?? (other ? { x: 0 - other.y, y: other.x } : runs === 'east-west' ? { x: 1, y: 0 } : { x: 0, y: 1 });
}

/** Panels are those of the grid's beam, over the whole room: a line cannot have others over its coffers alone. */
export function panelTroubles(beams: Ceiling['beams'], lines: readonly Pick<Line, 'section'>[]): Trouble[] {
    const common = beams?.profile.back;
    return lines.flatMap(({ section: { profile: { back } } }): Trouble[] => {
        if (!back || !common?.stock && !back.stock) return [];
        if (back.thickness?.value.ticks === common?.thickness?.value.ticks && back.stock?.value.key === common?.stock?.value.key) return [];
        return [{
            kind: 'not-supported', what: 'panels over the coffers of one line alone', because: 'each of its coffers lies beside other lines too',
            instead: 'the same `back` in the profile of the grid, or none in that of the line', at: (back.stock ?? back.thickness ?? back).at,
        }];
    });
}
