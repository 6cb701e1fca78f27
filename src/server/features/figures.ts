import { AstUtils, type LangiumDocument } from 'langium';
import type { Ceiling, Layout, Section } from '../../ceiling/model.ts';
import type { JobSettings } from '../../job/model.ts';
import * as ast from '../../language/generated/ast.ts';
import { readFile } from '../../language/read-file.ts';
import { brokenLines, hasBroken, isBroken } from '../../language/types/broken.ts';
import { sourceOfProperty } from '../../language/types/place.ts';
import { inspect } from '../../pipeline/inspect.ts';
import { placeKey } from '../../provenance/source.ts';
import { ownSection } from '../../rules/sections.ts';
import { atKey } from '../../plain/at-key.ts';

/** A room as it is laid out. Not `current`: as it was when its text could last be read. */
export interface RoomFigures { readonly layout: Layout; readonly ceiling?: Ceiling; readonly current: boolean }
/** A profile's own section, with its defaults. */
export interface ProfileFigures { readonly section: Section; readonly job: JobSettings; readonly current: boolean }
export interface FileFigures {
    readonly rooms: ReadonlyMap<ast.Room, RoomFigures>;
    readonly profiles: ReadonlyMap<ast.Profile, ProfileFigures>;
}

interface Kept {
    root?: object; of?: object; still?: boolean; figures?: FileFigures;
    readonly rooms: Map<string, Layout>; readonly profiles: Map<string, ProfileFigures>;
}

/**
 * What is computed of the rooms and profiles of a file, for what the editor shows beside the text. While one of them is
 * broken, halfway through a word, nobody can tell what it comes to, and a figure made from the readable rest would be wrong:
 * then it is what was last known of the thing by that name, or nothing. So it is while somebody types: `5` on the way to `5 1/2"` is whole,
 * and was never meant.
 */
export class Figures {
    private readonly kept = new WeakMap<LangiumDocument, Kept>();

    constructor(private readonly typing: { readonly now: boolean }) {}

    /** The document has to be linked. */
    of(document: LangiumDocument): FileFigures {
        const kept = atKey(this.kept, document, (): Kept => ({ rooms: new Map(), profiles: new Map() }));
        const root = document.parseResult.value, content = readFile(document);
        const still = this.typing.now;
        if (kept.figures && kept.root === root && kept.of === content && kept.still === still) return kept.figures;
        Object.assign(kept, { root, of: content, still });
        return kept.figures = figuresOf(document, kept, still);
    }
}

function figuresOf(document: LangiumDocument, kept: Kept, still: boolean): FileFigures {
    const root = document.parseResult.value, content = readFile(document);
    const { layouts } = inspect(content);
    const items = ast.isFile(root) ? root.items : [];
    if (brokenLines(root).size === 0) forgetOthers(kept, items);
    const rooms = new Map<ast.Room, RoomFigures>();
    for (const [i, room] of items.filter(ast.isRoom).entries()) {
        const layout = layouts[i];
        const known = layout && isKnown(layout) && !(still && kept.rooms.has(room.name));
        if (known) kept.rooms.set(room.name, layout);
        const shown = known ? layout : kept.rooms.get(room.name);
        if (shown) rooms.set(room, { layout: shown, ...shown.ceiling && { ceiling: shown.ceiling }, current: known === true });
    }
    const profiles = new Map<ast.Profile, ProfileFigures>(), dangling = withDanglingNames(document);
    const read = new Map(content.profiles.map(profile => [placeKey(profile.at), profile]));
    for (const item of items.filter(ast.isProfile)) {
        const profile = isSound(item, dangling) && !(still && kept.profiles.has(item.name)) ? read.get(placeKey(sourceOfProperty(item, 'name'))) : undefined;
        const figures = profile && { section: ownSection(profile), job: content.job, current: true };
        if (figures) kept.profiles.set(item.name, figures);
        const last = kept.profiles.get(item.name);
        if (figures ?? last) profiles.set(item, figures ?? { ...last!, current: false });
    }
    return { rooms, profiles };
}

/** Laid out, or told why it cannot be. Where neither is so, something is not said or not readable, here or in a file it uses. */
export function isKnown({ room, ceiling, troubles }: Layout): boolean {
    return !room.broken && (ceiling !== undefined || troubles.length > 0);
}

function isSound(profile: ast.Profile, dangling: ReadonlySet<ast.Profile>): boolean {
    return profile.body !== undefined && !hasBroken(profile.body) && !isBroken(profile) && !dangling.has(profile);
}

/** Profiles in which something is named that is not there. */
function withDanglingNames(document: LangiumDocument): Set<ast.Profile> {
    const nodes = document.references.flatMap(({ error, $refNode }) => (error && $refNode ? $refNode.astNode : []));
    return new Set(nodes.flatMap(node => AstUtils.getContainerOfType(node, ast.isProfile) ?? []));
}

/** In a file that can be read from end to end, what is not there is gone for good. */
function forgetOthers(kept: Kept, items: readonly ast.Item[]): void {
    const names = (is: (item: ast.Item) => boolean) => new Set(items.filter(is).map(item => (item as { name?: string }).name));
    const rooms = names(ast.isRoom), profiles = names(ast.isProfile);
    for (const name of kept.rooms.keys()) if (!rooms.has(name)) kept.rooms.delete(name);
    for (const name of kept.profiles.keys()) if (!profiles.has(name)) kept.profiles.delete(name);
}
