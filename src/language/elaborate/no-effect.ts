import * as ast from '../generated/ast.ts';
import { sourceOfProperty } from '../types/place.ts';
import { wordsOf } from '../types/values.ts';
import { listed, quoted } from '../types/words.ts';
import type { Source } from '../../provenance/source.ts';
import type { Raise } from './raised.ts';
import type { Reading } from './reading.ts';

/**
 * What is read and counts only with some words of another property: this one table of ways that exclude each other. Where it is said
 * with another word it changes nothing, and that is told at it.
 */
interface Row {
    /** `property`, or `property/modifier`, of the kind. */
    readonly what: string;
    /** The property that decides, and the words of it with which this one counts. */
    readonly by: string;
    readonly counts: readonly string[];
}
const WITH_SOMETHING_ROUND_THE_WALLS = ['stock', 'rip', 'below-beams', 'splices', 'nails'].map(what => ({ what, by: 'kind', counts: ['band', 'half-beam'] }));
export const COUNTS_WITH: Readonly<Record<string, readonly Row[]>> = {
    Bottom: [{ what: 'place/overhang', by: 'place', counts: ['under-sides'] }, { what: 'place/let-in', by: 'place', counts: ['in-rabbets'] }],
    Sides: [{ what: 'corners/past', by: 'corners', counts: ['butted'] }],
    Perimeter: [...WITH_SOMETHING_ROUND_THE_WALLS, { what: 'width', by: 'kind', counts: ['half-beam'] }],
};

/** Warns of what a block says and nothing reads beside what else it says. */
export function warnNoEffect(reading: Reading, raise: Raise): void {
    for (const { what, by, counts } of COUNTS_WITH[reading.block.kind.name] ?? []) {
        const [name, modifier] = what.split('/') as [string, string | undefined];
        const at = placeOf(reading, name, modifier), deciding = at && reading.word(by);
        if (!deciding || counts.includes(deciding.value)) continue;
        raise({
            rule: 'no-effect', severity: 'warning', at, via: deciding.via,
            message: `${quoted(modifier ?? name)} has no effect with ${quoted(`${by} ${deciding.value}`)}: it counts with ${listed(counts.map(quoted))} only. Take it out, or say that.`,
        });
    }
    if (reading.block.kind.name === 'Grid') warnUnusedSize(reading, raise);
}

/** A range of sizes divides the walls that nothing more particular divides. */
function warnUnusedSize(grid: Reading, raise: Raise): void {
    const at = placeOf(grid, 'coffer-size', undefined);
    const divided = (['north', 'east'] as const).map(wall => [`lines-${wall}`, `coffers-${wall}`].find(name => grid.block.entries.has(name)));
    if (!at || divided.some(name => name === undefined)) return;
    raise({
        rule: 'no-effect', severity: 'warning', at,
        message: `${quoted('coffer-size')} has no effect: ${divided.map(name => quoted(name!)).join(' and ')} divide both walls already. Take it out, or leave one of them to it.`,
    });
}

/** Where it is said, and can be read. */
function placeOf({ block }: Reading, name: string, modifier: string | undefined): Source | undefined {
    const entry = block.entries.get(name), line: ast.Line | undefined = entry?.lines.at(-1);
    if (!line || entry?.broken) return undefined;
    if (modifier === undefined) return wordsOf(line);
    const mod = line.mods.find(({ decl }) => decl?.ref?.name === modifier);
    return mod && sourceOfProperty(mod, 'decl');
}
