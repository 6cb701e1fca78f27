import * as ast from '../generated/ast.ts';
import { sourceOf, sourceOfProperty } from './place.ts';
import type { Report } from './report.ts';
import { quoted } from './words.ts';

/**
 * How pieces were cut stands behind their names on the line of the board, and the next pieces begin anew:
 * `into bottom-1, bottom-2 at 9' 5" into side-A-1-north at 48 3/4" left-hand 45°`.
 */
export const CUT_INTO = 'into';
const ENDS: readonly string[] = ['left-hand', 'right-hand', 'mitered'];
const OF_RECORD: ReadonlySet<string | undefined> = new Set([CUT_INTO, 'at', ...ENDS]);

/** True for modifiers of `cut` that may stand there again with the next pieces. */
export function isOfRecord(mod: ast.PropertyDecl): boolean {
    return OF_RECORD.has(mod.name);
}

/** A line's modifiers from each `into` to the next; what stands before the first is left out. */
export function recordsOf(mods: readonly ast.Mod[]): ast.Mod[][] {
    const records: ast.Mod[][] = [];
    for (const mod of mods) {
        const name = mod.decl?.ref?.name;
        if (name === CUT_INTO) records.push([mod]);
        else if (OF_RECORD.has(name)) records.at(-1)?.push(mod);
    }
    return records;
}

/** What may not be said again after these modifiers: a new `into` may always follow, with a record of its own. */
export function saidOnce(said: readonly string[]): string[] {
    const last = said.lastIndexOf(CUT_INTO);
    return said.filter((name, i) => !OF_RECORD.has(name) || i > last);
}

/** What a record lacks or says too much. */
export function checkRecords(mods: readonly ast.Mod[], report: Report): void {
    const first = mods.findIndex(mod => mod.decl?.ref?.name === CUT_INTO);
    for (const mod of first < 0 ? mods : mods.slice(0, first)) {
        const name = mod.decl?.ref?.name;
        if (OF_RECORD.has(name)) report({ rule: 'not-said', at: sourceOfProperty(mod, 'decl'), message: `${quoted(name)} says how pieces were cut, so their names come first: into ... ${name} ...` });
    }
    for (const record of recordsOf(mods)) {
        const ends = record.filter(mod => ENDS.includes(mod.decl!.ref!.name));
        if (ends[1]) report({ rule: 'said-twice', at: sourceOfProperty(ends[1], 'decl'), message: `${quoted(ends[0]!.decl!.ref!.name)} says already how its ends were cut. Which of the two holds?`, related: [{ at: sourceOf(ends[0]!), message: 'Said here first.' }] });
        if (ends[0] && record.every(mod => mod.decl!.ref!.name !== 'at')) report({ rule: 'not-said', at: sourceOfProperty(ends[0], 'decl'), message: `${quoted(ends[0].decl!.ref!.name)} also wants \`at\`, the length between the long points.` });
        const third = ends[0]?.values[2];
        if (third) report({ rule: 'too-many-values', at: sourceOf(third), message: 'A piece has two ends.' });
    }
}
