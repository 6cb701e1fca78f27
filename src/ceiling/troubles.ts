import { placeKey } from '../provenance/source.ts';
import type { Grid, Trim } from '../job/model.ts';
import type { Line, Trouble } from './model.ts';

/** One trim goes round each coffer, that of the grid's beams: a line's own would not turn the corners with it. */
export function trimTroubles(lines: readonly Pick<Line, 'name' | 'section'>[], grid: Grid): Trouble[] {
    const usual = grid.beams?.value.trim;
    const like = (a: Trim, b: Trim): boolean =>
        a.stock?.value.key === b.stock?.value.key && a.rip?.value.ticks === b.rip?.value.ticks && a.corners.value === b.corners.value
            && a.spring?.value === b.spring?.value && a.projects?.value.ticks === b.projects?.value.ticks;
    return lines.flatMap(({ name, section: { profile: { trim } } }): Trouble[] => {
        if (!trim?.stock || !usual?.stock || like(trim, usual)) return [];
        return [{
            kind: 'not-supported', what: `a ceiling trim along line ${name} other than the grid's`, because: 'two that are unlike do not turn the corner of a coffer',
            instead: 'the same trim around every coffer', at: trim.at,
        }];
    });
}

/** What two lines or two parts have in common is wrong once. */
export function oncePerPlace(troubles: readonly Trouble[]): Trouble[] {
    const seen = new Set<string>();
    return troubles.filter(trouble => {
        const about = 'what' in trouble ? trouble.what : 'lines' in trouble ? trouble.lines.join() : 'along' in trouble ? trouble.along : '';
        const key = `${trouble.kind} ${about} ${placeKey(trouble.at)}`;
        return !seen.has(key) && seen.add(key);
    });
}
