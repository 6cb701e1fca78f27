import { AstUtils } from 'langium';
import * as ast from '../generated/ast.ts';
import { isBroken } from '../types/broken.ts';
import { sourceOfProperty } from '../types/place.ts';
import { factsOf } from '../types/facts.ts';
import { wordsOf } from '../types/values.ts';
import { quoted } from '../types/words.ts';
import type { Source } from '../../provenance/source.ts';
import type { Block, Word } from './block.ts';
import type { Raise } from './raised.ts';
import type { LineReading, Reading } from './reading.ts';
import type { Values } from './values.ts';
import { listed } from '../../plain/words.ts';

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

function warn(declaration: ast.PropertyDecl, at: Source, reading: Values, raise: Raise): void {
    const { countsWith } = factsOf(declaration);
    const deciding = countsWith && reading.word(countsWith.property);
    if (!deciding || countsWith.words.includes(deciding.value)) return;
    raise({
        rule: 'no-effect', severity: 'warning', at, via: deciding.via,
        message: `${quoted(declaration.name)} has no effect with ${quoted(countsWith.property === 'value' ? deciding.value : `${countsWith.property} ${deciding.value}`)}: `
            + `it only counts with ${listed(countsWith.words.map(quoted), 'or')}. Take it out, or write ${countsWith.words.length === 1 ? quoted(countsWith.words[0]!) : 'one of those'}.`,
    });
}

/** What a profile says of a box where its beam is one timber. What it is like may have said it: a timber in its place is what `like` is for. */
export function warnUnusedBeside(solid: Block, { profile, block }: { readonly profile: ast.Profile; readonly block: Block }, raise: Raise): void {
    const isOwn = ({ line }: Word): boolean => AstUtils.getContainerOfType(line, ast.isProfile) === profile;
    if (!solid.words.some(({ line }) => !isBroken(line))) return;
    for (const [name, part] of block.blocks) {
        const word = OF_A_BOX.has(name) ? part.words.findLast(isOwn) : undefined;
        if (word) raise({ rule: 'no-effect', severity: 'warning', at: sourceOfProperty(word.line, 'path', word.index), message: besideSolid(name) });
    }
    const wraps = block.entries.get('wraps')?.lines.findLast(line => isOwn({ line, index: 0 }));
    if (wraps) raise({ rule: 'no-effect', severity: 'warning', at: wordsOf(wraps), message: besideSolid('wraps') });
}
const OF_A_BOX: ReadonlySet<string> = new Set(['blocking', 'spacers', 'sides', 'other-side', 'cleats', 'bottom', 'under']);

function besideSolid(name: string): string {
    return `${quoted(name)} has no effect beside ${quoted('solid')}: the beam is one timber, with nothing but a trim and a panel. Take one of them out.`;
}

/** What is said of a fixture and looked at nowhere. `said`: what stands behind its name, there or where it is changed. */
export function warnUnusedOfFixture({ name }: ast.Fixture, said: ast.Fixture | ast.Line, line: LineReading, raise: Raise): void {
    if (isBroken(said) || said.mods.some(({ decl }) => !decl?.ref)) return;
    const mods = new Map(said.mods.map(mod => [mod.decl!.ref!, sourceOfProperty(mod, 'decl')]));
    const placeOf = (property: string): Source | undefined => [...mods].find(([declared]) => declared.name === property)?.[1];
    for (const [declaration, at] of mods) warn(declaration, at, line, raise);
    const width = placeOf('diameter') && placeOf('width');
    if (width) raise({ rule: 'no-effect', severity: 'warning', at: width, message: `${quoted('width')} has no effect beside ${quoted('diameter')}, which already gives its size. Take one of them out.` });
    const isAtWall = placeOf('on') !== undefined || line.word('value') === undefined;
    if (placeOf('at') || isAtWall) return;
    const at = ast.isFixture(said) ? sourceOfProperty(said, 'name') : wordsOf(said);
    raise({ rule: 'no-effect', severity: 'warning', at, message: `${quoted(name)} is checked against nothing, since its line does not say where it is. Give how far along the north wall and how far along the east wall, such as at 2' 3", 4' 1" from north-west.` });
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
