import type { Layout, Section } from '../ceiling/model.ts';
import { sectionOf } from '../ceiling/section.ts';
import type { Profile } from '../job/model.ts';
import { perimetersOf } from '../job/perimeters.ts';
import { kept } from '../plain/kept.ts';
import { sameSource, type Source } from '../provenance/source.ts';
import { ownSection, type Located } from './sections.ts';

/** Where a room uses a profile: the grid's beams, or those of one line, or a line that only holds its sides down otherwise. */
interface Use {
    readonly profile: Profile;
    readonly section: Section;
    readonly at: Source;
    readonly heldDown?: Source;
    /** Whether words belong to this use. */
    readonly isOwn: (at: Source) => boolean;
}

export function usesOf({ room, troubles }: Layout): Use[] {
    const uses: Use[] = [];
    // What is said of a line that is not there is used nowhere: that there is no such line is all there is to say.
    const unknown = new Set(troubles.flatMap(trouble => trouble.kind === 'unknown-line' ? [trouble.name] : []));
    const grid = room.grid?.beams;
    const add = (profile: Profile, section: Section, at: Source, heldDown?: Source): void => {
        uses.push({ profile, section, at, heldDown, isOwn: words => contains(at, words) || (heldDown !== undefined && sameSource(words, heldDown)) });
    };
    if (grid) add(grid.value, ownSection(grid.value), grid.at);
    for (const { beams } of perimetersOf(room)) if (beams) add(beams.value, ownSection(beams.value), beams.at);
    for (const { name, beams, heldDown } of room.lines) {
        if (unknown.has(name)) continue;
        if (beams) add(beams.value, ownSection(beams.value), beams.at);
        const profile = (beams ?? grid)?.value;
        if (heldDown && profile) add(profile, sectionOf(profile, heldDown), heldDown.at, heldDown.at);
    }
    return uses;
}

/** Whether words of that file are the room's own, and none of a profile's: of these a room says some itself, `beams.bottom.closing swung`. */
export function ownOfRoom({ room: { body } }: Layout, uri: string, uses: readonly Use[]): (at: Source) => boolean {
    const sites = uses.map(use => sitesOf(use.profile));
    return at => at.uri === uri && (body !== undefined && contains(body, at) || !sites.some(set => isOneOf(set, at)));
}

/** The use whose profile says these words: one of a line of its own before the grid's; a line that only holds the sides down otherwise says nothing else. */
export function useOf(uses: readonly Use[], at: Source): Use | undefined {
    return uses.findLast(use => !use.heldDown && isOneOf(sitesOf(use.profile), at)) ?? uses[0];
}

/**
 * The finding at words of its own: as it is, or at an argument it came through, or at the other half of the contradiction,
 * or, where none of them is its own, at `otherwise`. What it was found at becomes a related place, and fixes that would
 * change what others use are left away.
 */
export function moved(one: Located, isOwn: (at: Source) => boolean, isArgument: (at: Source) => boolean, otherwise: Source): Located {
    if (isOwn(one.at) && !one.via?.length) return one;
    const related = one.related ?? [];
    const at = one.via?.findLast(isArgument) ?? (isOwn(one.at) ? one.at : related.find(place => isOwn(place.at))?.at ?? otherwise);
    if (sameSource(at, one.at)) return one;
    return {
        ...one, at,
        related: [{ at: one.at, message: one.at.uri.startsWith(BUILT_IN) ? 'this is the default' : 'this is where it goes wrong' }, ...related.filter(place => !sameSource(place.at, at))],
        fixes: one.fixes?.filter(fix => fix.edits.every(({ uri, range }) => isOwn({ uri, range }))),
    };
}

/** A default of the library, which no job can change. */
const BUILT_IN = 'builtin:';

/** The places of everything a profile says itself. */
export const sitesOf = kept((profile: Profile): ReadonlySet<string> => {
    const { blocking, spacers, sides, otherSide, cleats, bottom, trim, requires } = profile;
    const values = [blocking, spacers, sides, otherSide, cleats, bottom, trim].flatMap(part => part ? [part, ...Object.values(part) as unknown[]] : []);
    const rabbets = [sides, otherSide].flatMap(side => side?.rabbet?.value ?? []);
    const places = [...values.flatMap(placeOf), ...rabbets.flatMap(({ widthAt, heightAt }) => [widthAt, heightAt]), ...requires.map(({ at }) => at)];
    return new Set(places.map(keyOf));
});

export function isOneOf(sites: ReadonlySet<string>, at: Source): boolean {
    return sites.has(keyOf(at));
}

function placeOf(value: unknown): Source[] {
    return typeof value === 'object' && value !== null && 'at' in value ? [value.at as Source] : [];
}

function keyOf({ uri, range: { start, end } }: Source): string {
    return `${uri} ${start.line}:${start.character}-${end.line}:${end.character}`;
}

function contains(outer: Source, inner: Source): boolean {
    const before = (a: Source['range']['start'], b: Source['range']['start']): boolean => a.line < b.line || (a.line === b.line && a.character <= b.character);
    return outer.uri === inner.uri && before(outer.range.start, inner.range.start) && before(inner.range.end, outer.range.end);
}
