import { grouped } from '../plain/groups.ts';
import { listed } from '../plain/words.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Around } from './model.ts';

/** What runs along the walls, as one says it: "a band 7 1/4" high round the walls", "a half beam 3 1/4" wide along the north and the east wall". */
export function aroundWords(around: Around, show: (ticks: Ticks) => string): string[] {
    const along = Object.entries(around).flatMap(([side, own]) => (own ? [{ side, own }] : []));
    const walls = grouped(along, ({ own }) =>
        (own.kind === 'band' ? `a band ${show(own.height.ticks)} high` : `a half beam ${show(own.width.ticks + own.section.sideThickness.ticks)} wide`));
    return [...walls].map(([words, own]) => {
        const all = own.length === Object.keys(around).length;
        return `${words} ${all ? 'around the walls' : `along the ${listed(own.map(({ side }, i) => (i > 0 ? `the ${side}` : side)))} wall`}`;
    });
}
