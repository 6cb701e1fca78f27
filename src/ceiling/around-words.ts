import type { Ticks } from '../quantity/ticks.ts';
import type { Around } from './model.ts';

/** What runs along the walls, as one says it: "a band 7 1/4" high round the walls", "a half beam 3 1/4" wide along the north and the east wall". */
export function aroundWords(around: Around, show: (ticks: Ticks) => string): string[] {
    const walls = new Map<string, string[]>();
    for (const [side, own] of Object.entries(around)) {
        const words = own && (own.kind === 'band' ? `a band ${show(own.height.ticks)} high` : `a half beam ${show(own.width.ticks + own.section.sideThickness.ticks)} wide`);
        if (words) walls.set(words, [...walls.get(words) ?? [], side]);
    }
    return [...walls].map(([words, sides]) => `${words} ${sides.length === Object.keys(around).length ? 'round the walls' : `along the ${listed(sides)} wall`}`);
}

function listed(sides: readonly string[]): string {
    return sides.length < 2 ? sides.join('') : `${sides.slice(0, -1).join(', the ')} and the ${sides.at(-1)}`;
}
