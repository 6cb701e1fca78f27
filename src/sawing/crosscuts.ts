import { inches } from '../quantity/rational.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { CrosscutStep, LaidBoard, LaidPiece, LaidStrip, SectionRef, Take } from './model.ts';

/** As far from the blade as a stop usually stands; what is longer is measured. Common practice, no source. */
const LONGEST_STOP: Ticks = inches(96);

/**
 * The settings of the stop, long to short, whatever the stock: each finds its pieces at the near ends of its boards, since
 * all that is longer is cut off by then. Strips of sections come after these are ripped; one that is a piece as it is has got its
 * length where its section was cut off.
 */
export function crosscutsOf(boards: readonly LaidBoard[], of: CrosscutStep['of']): Omit<CrosscutStep, 'number'>[] {
    const settings = new Map<Ticks, { takes: Take[]; sections: SectionRef[]; over: Ticks }>();
    const at = (stop: Ticks): { takes: Take[]; sections: SectionRef[]; over: Ticks } => {
        const setting = settings.get(stop) ?? { takes: [], sections: [], over: 0 };
        settings.set(stop, setting);
        return setting;
    };
    for (const board of boards) {
        if (of === 'boards') for (const section of board.sections) at(section.to - section.from).sections.push({ board, section });
        for (const strip of board.strips) {
            const cut = strip.pieces.filter(laid => !laid.once && (strip.section === undefined || isWholeStrip(strip, laid)) === (of === 'boards'));
            for (const length of new Set(cut.map(p => p.to - p.from))) {
                const setting = at(length);
                const pieces = cut.filter(p => p.to - p.from === length);
                setting.takes.push({ board, strip, pieces });
                setting.over = Math.max(setting.over, ...pieces.map(p => length - p.piece.cutOverall));
            }
        }
    }
    return [...settings].sort(([a], [b]) => b - a).map(([stop, setting]) => ({ do: 'crosscut', of, stop, by: stop > LONGEST_STOP ? 'tape' : 'stop', ...setting }));
}

/** A piece that is as long as the section it is ripped from. */
export function isWholeStrip({ section, along }: LaidStrip, { from, to, once }: LaidPiece): boolean {
    return !once && section !== undefined && from === 0 && to === along;
}
