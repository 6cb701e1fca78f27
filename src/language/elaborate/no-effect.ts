import type * as ast from '../generated/ast.ts';
import { sourceOfProperty } from '../types/place.ts';
import { factsOf } from '../types/facts.ts';
import { wordsOf } from '../types/values.ts';
import { listed, quoted } from '../types/words.ts';
import type { Source } from '../../provenance/source.ts';
import type { Raise } from './raised.ts';
import type { Reading } from './reading.ts';

/** Warns of what a block says that counts only with other words of another property: where it is said beside those it changes nothing. */
export function warnNoEffect(reading: Reading, raise: Raise): void {
    for (const { property, lines, broken } of reading.block.entries.values()) {
        const line = lines.at(-1)!;
        if (broken) continue;
        warn(property, wordsOf(line), reading, raise);
        for (const mod of line.mods) if (mod.decl?.ref) warn(mod.decl.ref, sourceOfProperty(mod, 'decl'), reading, raise);
    }
    if (reading.block.kind.name === 'Grid') warnUnusedSize(reading, raise);
}

function warn(declaration: ast.PropertyDecl, at: Source, reading: Reading, raise: Raise): void {
    const { countsWith } = factsOf(declaration);
    const deciding = countsWith && reading.word(countsWith.property);
    if (!deciding || countsWith.words.includes(deciding.value)) return;
    raise({
        rule: 'no-effect', severity: 'warning', at, via: deciding.via,
        message: `${quoted(declaration.name)} has no effect with ${quoted(`${countsWith.property} ${deciding.value}`)}: `
            + `it counts with ${listed(countsWith.words.map(quoted))} only. Take it out, or say that.`,
    });
}

/** A range of sizes divides the walls that nothing more particular divides. */
function warnUnusedSize(grid: Reading, raise: Raise): void {
    const size = grid.block.entries.get('coffer-size'), line = size?.lines.at(-1);
    const divided = (['north', 'east'] as const).map(wall => [`lines-${wall}`, `coffers-${wall}`].find(name => grid.block.entries.has(name)));
    if (!line || size?.broken || divided.some(name => name === undefined)) return;
    raise({
        rule: 'no-effect', severity: 'warning', at: wordsOf(line),
        message: `${quoted('coffer-size')} has no effect: ${divided.map(name => quoted(name!)).join(' and ')} divide both walls already. Take it out, or leave one of them to it.`,
    });
}
