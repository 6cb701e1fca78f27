import { roundTo } from '../../quantity/round.ts';
import { type Ticks, TICKS_PER_FOOT, TICKS_PER_MM } from '../../quantity/ticks.ts';
import { group, line, polygon, polyline, rectangle, text, type Group, type Item } from '../display-list.ts';
import { figure } from '../figures.ts';
import { textWidth } from '../text/measure-text.ts';
import { xAt, type BoardView } from './view.ts';

const BLADE = 5;
const TIER = 9.2;
const SIZE = 7.4;

/** The tape under a board: its hook on the left end, a tick every foot (every 250 mm), every cut mark with its reading. */
export function tape(length: Ticks, marks: readonly Ticks[], view: BoardView, top: number, id: string): { readonly group: Group; readonly foot: number } {
    const end = xAt(view, length);
    const foot = top + BLADE;
    const step = view.show === 'millimeters' ? 250 * TICKS_PER_MM : TICKS_PER_FOOT;
    const ticks: Item[] = [];
    for (let n = 1; n * step < length; n++) {
        const whole = view.show !== 'millimeters' || n % 4 === 0;
        ticks.push(line([xAt(view, n * step), foot], [xAt(view, n * step), foot - (whole ? BLADE : BLADE / 2)], 'fine'));
    }
    const { items, tiers } = readings(marks, view, foot);
    return {
        foot: foot + 2 + tiers * TIER,
        group: group(id, {}, [
            rectangle(view.left, top, end, foot, 'fine', 'wash'), ...ticks,
            // the hook, over the end of the board
            polyline([[view.left - 2.2, top - 7], [view.left - 2.2, foot], [view.left + 4, foot]], 'edge'),
            ...items,
        ]),
    };
}

/** Readings under their marks, in as many rows as it takes that none stands on another. */
function readings(marks: readonly Ticks[], view: BoardView, foot: number): { readonly items: readonly Item[]; readonly tiers: number } {
    const ends: number[] = [];
    const items: Item[] = [];
    for (const mark of marks) {
        const x = xAt(view, mark);
        const words = figure(roundTo(mark, view.step), view.show);
        const half = textWidth(words, SIZE) / 2;
        let tier = ends.findIndex(end => end <= x - half - 3);
        if (tier < 0) tier = ends.length;
        ends[tier] = x + half;
        const base = foot + (tier + 1) * TIER;
        items.push(
            polygon([[x, foot - BLADE], [x + 2.1, foot], [x - 2.1, foot]], null, 'ink'),
            ...tier === 0 ? [] : [line([x, foot], [x, base - SIZE * 0.72], 'fine')],
            text([x, base], words, { size: SIZE, anchor: 'middle' }),
        );
    }
    return { items, tiers: ends.length };
}
