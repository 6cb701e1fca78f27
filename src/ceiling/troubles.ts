import type { Grid, Trim } from '../job/model.ts';
import type { Source } from '../provenance/source.ts';
import type { LineSections } from './lines.ts';
import type { Line, Trouble } from './model.ts';

/** Beams that meet flush must be equally deep. One is told for each line that differs, at what makes it differ. */
export function depthTroubles(lines: readonly Line[], sections: LineSections, grid: Grid): Trouble[] {
    const usual = sections.grid()?.depth?.ticks;
    const first = lines.find(line => line.section.depth.ticks === usual) ?? lines[0];
    if (!first) return [];
    const saidBy = (line: Line): Source => {
        const spec = sections.spec(line.name);
        return (spec?.heldDown ?? spec?.beams ?? grid.beams)?.at ?? line.at;
    };
    return lines.filter(line => line.section.depth.ticks !== first.section.depth.ticks).map(line => ({
        kind: 'depths-differ', lines: [first.name, line.name], a: first.section.depth.ticks, b: line.section.depth.ticks, at: saidBy(line), other: saidBy(first),
    }));
}

/** One trim goes round each coffer, that of the grid's beams: a line's own would not turn the corners with it. */
export function trimTroubles(lines: readonly Line[], grid: Grid): Trouble[] {
    const usual = grid.beams?.value.trim;
    const like = (a: Trim, b: Trim): boolean =>
        a.stock?.value.key === b.stock?.value.key && a.rip?.value.ticks === b.rip?.value.ticks && a.corners.value === b.corners.value
            && a.spring?.value === b.spring?.value && a.projects?.value.ticks === b.projects?.value.ticks;
    return lines.flatMap(({ name, section: { profile: { trim } } }): Trouble[] => {
        if (!trim?.stock || !usual?.stock || like(trim, usual)) return [];
        return [{ kind: 'not-supported', what: `a ceiling trim along line ${name} other than the grid's`, instead: `the same trim round every coffer`, at: trim.at }];
    });
}

/** What two lines or two parts have in common is wrong once. */
export function oncePerPlace(troubles: readonly Trouble[]): Trouble[] {
    const seen = new Set<string>();
    return troubles.filter(trouble => {
        const { uri, range: { start } } = trouble.at;
        const about = 'what' in trouble ? trouble.what : 'lines' in trouble ? trouble.lines.join() : 'along' in trouble ? trouble.along : '';
        const key = `${trouble.kind} ${about} ${uri} ${start.line}:${start.character}`;
        return !seen.has(key) && seen.add(key);
    });
}
