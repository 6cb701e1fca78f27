import type { Ceiling } from '../../ceiling/model.ts';
import type { Point } from '../../plane/point.ts';
import { listed } from '../../plain/words.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import type { EndCut, Part, Piece } from '../../takeoff/model.ts';
import type { Meeting } from './kinds.ts';

/** How the pieces end where lines or walls meet, in words: a line for each part, from what the cut list says of these very pieces. */
export function meetingWords({ at, wide, carriers }: Meeting, ceiling: Ceiling, pieces: readonly Piece[], f: (ticks: Ticks) => string): readonly string[] {
    const near = (spot: Point): boolean => Math.hypot(spot.x - at.x, spot.y - at.y) < wide * 0.8 + 40_000;
    const ends = pieces.flatMap(piece => piece.ends.flatMap((end, i) => {
        const [a, b, c, d] = piece.corners, [p, q] = i === 0 ? [a, d] : [b, c], spot = { x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 };
        return near(spot) && end.how !== 'splice' ? [{ piece, end }] : [];
    }));
    const told = (part: Part, name: string, of?: string): readonly string[] => {
        const mine = ends.filter(({ piece }) => piece.part === part && (of === undefined || piece.line === of));
        const words = [...new Set(mine.map(({ end }) => endWords(end)))];
        return words.length === 0 ? [] : [`${name}: ${listed(words)}.`];
    };
    const lines = carriers.filter(name => ceiling.lines.some(line => line.name === name));
    const lies = (part: 'bottom' | 'blocking' | 'timber', name: string): readonly string[] => {
        const isOf = (line: string) => (piece: Piece): boolean => piece.part === part && piece.line === line;
        const cut = lines.flatMap(line => told(part, `${name} of line ${line}`, line));
        const whole = lines.filter(line => !ends.some(({ piece }) => isOf(line)(piece)) && pieces.some(isOf(line)));
        return [...whole.map(line => `${name} of line ${line}: runs through.`), ...cut];
    };
    const along = ceiling.walls.some(({ name }) => carriers.includes(name));
    return [
        ...told('side', 'Sides'), ...lies('timber', 'Timber'), ...lies('bottom', 'Bottom'), ...lies('blocking', 'Blocking'),
        ...along && lines.length === 0 ? [...told('bottom', 'Bottoms'), ...told('blocking', 'Blocking')] : [],
        ...told('band', 'Band'), ...told('molding', 'Molding'), ...told('trim', 'Trim'), ...depthWords(lines, ceiling, f),
    ];
}

function depthWords(names: readonly string[], ceiling: Ceiling, f: (ticks: Ticks) => string): readonly string[] {
    const [a, b] = names.flatMap(name => ceiling.lines.find(line => line.name === name) ?? []);
    if (!a || !b || a.section.depth.ticks === b.section.depth.ticks) return [];
    const [low, high] = a.section.depth.ticks > b.section.depth.ticks ? [a, b] : [b, a];
    return [`Line ${low.name} hangs ${f(low.section.depth.ticks - high.section.depth.ticks)} lower.`];
}

/** The angle is the saw's, from square. */
function endWords({ cut, how, degrees }: EndCut): string {
    const angle = degrees === undefined || Math.abs(degrees) < 0.05 ? '' : `${Math.round(Math.abs(degrees) * 10) / 10}°`;
    switch (how) {
        case 'miter': return cut === 'coped' ? `coped, cut at ${angle} first` : `mitered ${angle}`;
        case 'outside-miter': return `outside miter ${angle}`;
        case 'past': return 'runs past, square';
        case 'butt': return angle ? `butts at ${angle}` : 'butts, square';
        case 'dies': return angle ? `ends along the face, ${angle} from square` : 'ends at the face, square';
        case 'between': return angle ? `cut between, ${angle} from square` : 'cut between, square';
        case 'runs-through': return 'runs on to the far edge';
        case 'coped': return angle ? `coped, cut at ${angle} first` : 'coped';
        case undefined: case 'square': case 'splice': return angle ? `${angle} from square` : 'square';
    }
}
