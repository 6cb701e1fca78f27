import { aroundWords } from '../../ceiling/around-words.ts';
import { flanksOf } from '../../ceiling/flanks.ts';
import { isFullGrid } from '../../ceiling/coffer-size.ts';
import type { Ceiling } from '../../ceiling/model.ts';
import { printLength } from '../../quantity/print-length.ts';
import { grouped } from '../../plain/groups.ts';
import { counted, listed } from '../../plain/words.ts';

/**
 * What the beams that show are of: one wood where all their sides and bottoms are of it, else which part is of which. Nothing where
 * the text does not say it of all of them: half of it would read as the whole.
 */
function woodWords({ lines }: Ceiling): string {
    const of = (part: 'sides' | 'bottom'): string[] | undefined => {
        const species = lines.flatMap(line => flanksOf(line.section)).map(({ profile }) => profile[part]?.stock?.value.species?.value);
        return species.some(one => one === undefined) ? undefined : [...new Set(species.map(one => NAMES[one!] ?? one!.replaceAll('-', ' ')))].sort();
    };
    const sides = of('sides'), bottoms = of('bottom');
    if (!sides || !bottoms || sides.length === 0) return '';
    const [a, b] = [sides.join(' and '), bottoms.join(' and ')];
    return a === b ? a : `${a} sides and ${b} bottoms`;
}
const NAMES: Readonly<Record<string, string>> = { mdf: 'MDF' };

/** Both ways of a rectangle; of other rooms, which the drawing shows, the most they reach. */
function sizeWords({ walls, square, width, length }: Ceiling, show: (ticks: number) => string): string {
    if (walls.length === 4 && square) return `${show(width)} by ${show(length)}`;
    if (walls.length !== 4) return `with ${walls.length} walls, at most ${show(width)} by ${show(length)}`;
    return `walls of ${listed(walls.map(wall => show(wall.length)))}`;
}

/** How large the beams are; where they are of several sizes, each with its lines, as the drawing names them. */
function beamWords(lines: Ceiling['lines'], show: (ticks: number) => string): string {
    const sizes = grouped(lines, ({ section: { outerWidth, depth } }) => `${show(outerWidth.ticks)} wide and ${show(depth.ticks)} deep`);
    if (sizes.size === 0) return '';
    if (sizes.size === 1) return `, in box beams ${[...sizes.keys()][0]}`;
    const each = [...sizes].map(([size, own]) => `${size} (${own.length > 1 ? 'lines' : 'line'} ${listed(own.map(({ name }) => name))})`);
    return `, in box beams of ${each.length} sizes: ${each.join(', ')}`;
}

/** One room as its client would be told of it. */
export function roomText(ceiling: Ceiling): string {
    const { room, coffers, across, down, lines, around, beams } = ceiling;
    const show = (ticks: number): string => printLength(ticks, room.job.show.value).replace('/', '\u2044');       // the font makes a fraction of it
    const woods = woodWords(ceiling);
    return [
        `${room.title ?? room.name}, ${sizeWords(ceiling, show)}: a coffered ceiling of ${counted(coffers.length, 'coffer')}`,
        ...isFullGrid(ceiling) ? [`, ${across.coffers.length} by ${down.coffers.length}`] : [],
        beamWords(lines, show),
        ...woods !== '' ? [` of ${woods}`] : [],
        ...aroundWords(around, show).map(words => `, with ${words}`),
        ...beams?.profile.trim ? [`, and trim against the ceiling in every coffer`] : [],
        '. Cut, fitted, fastened, holes filled and sanded.',
    ].join('');
}
