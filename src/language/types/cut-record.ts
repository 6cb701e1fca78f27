import * as ast from '../generated/ast.ts';
import { factsOf } from './facts.ts';
import { sourceOf, sourceOfProperty } from './place.ts';
import type { Report } from './report.ts';
import { quoted } from './words.ts';

// How pieces were cut stands behind their names on the line of the board, and the next pieces begin anew:
// `into bottom-1, bottom-2 at 9' 5" into side-A-1-north at 48 3/4" left-hand 45°`.

/** The modifiers of a property that say more of one of them. */
function followersOf(leader: string, { mods }: ast.PropertyDecl): ast.PropertyDecl[] {
    return mods.filter(mod => factsOf(mod).follows === leader);
}

/** What may stand on a line again once `leader` does: itself, and what says more of it. */
export function saidAgainWith(leader: ast.PropertyDecl, property: ast.PropertyDecl): ast.PropertyDecl[] {
    const followers = followersOf(leader.name, property);
    return followers.length > 0 ? [leader, ...followers] : [];
}

/** A line's modifiers from each one that others follow to the next; what stands before the first is left out. */
export function recordsOf(mods: readonly ast.Mod[]): ast.Mod[][] {
    const records: ast.Mod[][] = [];
    for (const mod of mods) {
        const declaration = mod.decl?.ref;
        if (!declaration) continue;
        if (isLeader(declaration)) records.push([mod]);
        else if (factsOf(declaration).follows !== undefined) records.at(-1)?.push(mod);
    }
    return records;
}

function isLeader(mod: ast.PropertyDecl): boolean {
    return ast.isPropertyDecl(mod.$container) && followersOf(mod.name, mod.$container).length > 0;
}

/** What may not be said again after these modifiers of a property: the leader of a record may always follow, with a record of its own. */
export function saidOnce(said: readonly string[], { mods }: ast.PropertyDecl): string[] {
    const leader = mods.find(isLeader);
    if (!leader) return [...said];
    const last = said.lastIndexOf(leader.name);
    const again = new Set(saidAgainWith(leader, leader.$container as ast.PropertyDecl).map(({ name }) => name));
    return said.filter((name, i) => !again.has(name) || i > last);
}

/** What a record lacks or says too much. */
export function checkRecords(mods: readonly ast.Mod[], report: Report): void {
    for (const mod of mods) {
        const declaration = mod.decl?.ref;
        if (!declaration) continue;
        if (isLeader(declaration)) break;
        const { name } = declaration, { follows } = factsOf(declaration);
        if (follows === undefined) continue;
        report({ rule: 'not-said', at: sourceOfProperty(mod, 'decl'), message: `${quoted(name)} says how pieces were cut, so their names come first: ${follows} ... ${name} ...` });
    }
    for (const record of recordsOf(mods)) {
        const ends = record.filter(mod => factsOf(mod.decl!.ref!).insteadOf.length > 0);
        if (ends[1]) report({ rule: 'said-twice', at: sourceOfProperty(ends[1], 'decl'), message: `${quoted(ends[0]!.decl!.ref!.name)} already says how its ends were cut. Which one counts?`, related: [{ at: sourceOf(ends[0]!), message: 'First given here.' }] });
        if (ends[0] && record.every(mod => mod.decl!.ref!.name !== 'at')) report({ rule: 'not-said', at: sourceOfProperty(ends[0], 'decl'), message: `${quoted(ends[0].decl!.ref!.name)} also needs \`at\`, the length between the long points.` });
        const third = ends[0]?.values[2];
        if (third) report({ rule: 'too-many-values', at: sourceOf(third), message: 'A piece has two ends.' });
    }
}
