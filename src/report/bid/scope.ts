import type { Ceiling } from '../../ceiling/model.ts';
import { printLength } from '../../quantity/print-length.ts';
import { counted } from '../look.ts';

/** One room as its client would be told of it. */
export function roomText(ceiling: Ceiling): string {
    const { room, coffers, across, down, lines, band, beams, width, length } = ceiling;
    const show = (ticks: number): string => printLength(ticks, room.job.show.value).replace('/', '\u2044');       // the font makes a fraction of it
    const section = lines[0]?.section;
    const woods = new Set(lines.flatMap(line => line.section.profile.sides?.stock?.value.species?.value ?? []).map(name => name.replaceAll('-', ' ')));
    return [
        `${room.title ?? room.name}, ${show(width)} by ${show(length)}: a coffered ceiling of ${counted(coffers.length, 'coffer')}, ${across.coffers.length} by ${down.coffers.length}`,
        ...section ? [`, in box beams ${show(section.outerWidth.ticks)} wide and ${show(section.depth.ticks)} deep`] : [],
        ...woods.size > 0 ? [` of ${[...woods].sort().join(' and ')}`] : [],
        ...band ? [`, with a band ${show(band.height.ticks)} high round the walls`] : [],
        ...beams?.profile.trim ? [`, and trim against the ceiling in every coffer`] : [],
        '. Cut, fitted, fastened, holes filled and sanded.',
    ].join('');
}
