import { moldingOf } from '../ceiling/section.ts';
import { term } from '../provenance/why.ts';
import { edgesOf, type Pair } from './lie.ts';
import type { Piece } from './model.ts';
import { pieceOf } from './piece.ts';
import { clearTerm } from './runs.ts';
import { sidesOf } from '../ceiling/flanks.ts';
import { type Setting } from './setting.ts';
import { inPieces } from './sides-and-cleats.ts';
import type { WholeSection } from '../ceiling/model.ts';

/** Moldings along the lower edges of sides: of every line from its west or north end, those on its north or west first; then of half beams. */
export function moldingsOf(setting: Setting): Piece[] {
    const { lines, walls, around } = setting.ceiling;
    const ofLines = lines.flatMap(({ name, section, runs }) => {
        const [low] = sidesOf(runs), place = ({ named: { bay }, exact: { strip } }: Pair): number => 2 * bay! + (strip.on!.includes(low) ? 0 : 1);
        return [...setting.pairs.of('molding', name)].sort((a, b) => place(a) - place(b) || a.exact.from - b.exact.from).flatMap(pair => moldings(pair, name, undefined, section, setting));
    });
    const ofWalls = walls.flatMap(({ name }) => {
        const own = around[name];
        return own?.kind === 'half-beam' ? setting.pairs.of('molding', name).flatMap(pair => moldings(pair, undefined, name, own.section, setting)) : [];
    });
    return [...ofLines, ...ofWalls];
}

function moldings(pair: Pair, line: string | undefined, wall: string | undefined, section: WholeSection, setting: Setting): Piece[] {
    const under = section.profile.under!, { top, foot } = moldingOf(section)!;
    const { exact, cut, named: { bay = null } } = pair, { coffers } = exact.strip, on = exact.strip.on!;
    return pieceOf({
        part: 'molding', ...line === undefined ? { wall, nth: pair.named.nth } : { line, on, nth: pair.named.nth }, bay, coffer: coffers[0], stock: under.stock, ...edgesOf(pair),
        ends: exact.ends, meets: exact.meets,
        width: section.moldingWidth!.ticks, thickness: section.moldingThickness!.ticks, ...under.place.value === 'under-beam' && { lies: true }, fence: under.ripWith?.value,
        where: line === undefined ? `half beam along the ${wall} wall, ${bay === null ? pair.named.nth : `bay ${bay}`}` : `line ${line}, bay ${bay}, ${on} side${typeof pair.named.nth === 'string' ? `, piece ${pair.named.nth}` : ''}`,
        why: whyOf(pair, cut, setting), source: under.at, corners: exact.corners, heights: [top, foot],
    }, setting);
}

/** The coffer, or from face to face; and what the back is longer or shorter at its ends. */
function whyOf({ exact: { strip, back, cuts } }: Pair, cut: Pair['cut'], setting: Setting): Piece['why']['terms'] {
    const clearOf = ({ why }: Pair['exact']['strip']): number => Math.round(why.find(({ what }) => what === 'clear')?.ticks ?? 0), clear = clearOf(strip);
    const over = strip.why.filter(({ what }) => what === 'end').map(({ ticks }) => Math.round(ticks));
    // an odd tick is at the second end
    if (over.length > 0) over[over.length - 1] = Math.round(back) - clear - over.slice(0, -1).reduce((sum, ticks) => sum + ticks, 0);
    return [
        cuts.includes('splice') ? inPieces(cuts, clear, clearOf(cut.strip)) : clearTerm(setting, setting.runsOf(strip.of), strip.coffers.length, clear, clearOf(cut.strip)),
        ...over.map(ticks => term(ticks < 0 ? 'short of the corner' : 'beyond the corner', ticks < 0 ? -1 : 1, Math.abs(ticks))),
    ];
}
