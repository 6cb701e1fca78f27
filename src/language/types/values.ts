import * as ast from '../generated/ast.ts';
import { declarationOf, targetOf } from '../scope/kind-of.ts';
import type { Vocabulary } from '../scope/vocabulary.ts';
import { isBroken } from './broken.ts';
import { blockKindOf, declaredType } from './declared.ts';
import { checkRecords, saidAgainWith } from './cut-record.ts';
import { factsOf } from './facts.ts';
import { decimalCommas } from './decimal-comma.ts';
import type { Inference } from './infer.ts';
import { sourceOf, sourceOfProperty } from './place.ts';
import type { Report } from './report.ts';
import { slipOfWall } from './wall-slip.ts';
import { quoted, wantedInWords } from './words.ts';
import { replacing } from '../../findings/finding.ts';

/** The values and modifiers of one line, held against what its property declares. */
export function checkMember(member: ast.Line | ast.Fixture, vocabulary: Vocabulary, inference: Inference, report: Report): void {
    if (isBroken(member)) return;
    const named = quoted(ast.isFixture(member) ? `${member.kind} ${member.name ?? ''}`.trim() : member.path.at(-1)?.$refText);
    const meant = ast.isFixture(member) && member.kind === 'wall' ? slipOfWall(member) : undefined;
    if (ast.isFixture(member) && meant) {
        const at = sourceOfProperty(member, 'name');
        report({
            rule: 'no-such-wall', at, message: `Did you mean wall ${meant}? A wall ${member.name} that is another one says its heading: wall ${member.name} 8' heading east.`,
            fixes: [replacing(at, meant)],
        });
    }
    const declaration = declarationOf(member, vocabulary);
    if (declaration) {
        const kind = blockKindOf(declaration);
        if (kind) return checkBlock(member, named, report);
        checkValues(member.values, declaration, named, () => wordsOf(member), inference, report);
        checkMods(member, declaration, named, inference, report);
        if (ast.isLine(member) && member.body && !ast.isFixture(targetOf(member))) {
            report({ rule: 'no-block-here', at: wordsOf(member), message: `${named} takes ${wantedInWords(declaredType(declaration.type))}, not a block.` });
        }
    } else if (ast.isFixture(member) && member.values[0]) {
        report({ rule: 'too-many-values', at: sourceOf(member.values[0]), message: `${named} takes no value; its lines go in its block.` });
    }
}

/** `sides { ... }`: a block and nothing else. */
function checkBlock(member: ast.Line | ast.Fixture, named: string, report: Report): void {
    if (member.values[0]) report({ rule: 'too-many-values', at: sourceOf(member.values[0]), message: `${named} takes no value; its lines go in its block, between { and }.` });
    else if (!member.body) report({ rule: 'no-block-here', at: wordsOf(member), message: `${named} is written with a block: ${nameOf(member, false)} { ... }.` });
}

function checkValues(
    values: readonly ast.Expr[], declaration: ast.PropertyDecl, named: string, at: () => ReturnType<typeof sourceOf>, inference: Inference, report: Report,
): void {
    const type = declaredType(declaration.type);
    if (values.length === 0) {
        if (declaration.name !== 'value' || !declaration.optional) report({ rule: 'value-missing', at: at(), message: `${named} needs ${wantedInWords(type)}.` });
        return;
    }
    const place = { want: type, what: named, isLarge: factsOf(declaration).mostlyInFeet };
    const commas = decimalCommas(values, type?.is === 'many');
    for (const comma of commas) {
        report({ rule: 'decimal-comma', at: comma.at, message: `A decimal takes a point, since a comma stands between two values: write ${comma.meant}.`, fixes: [replacing(comma.at, comma.meant)] });
    }
    for (const [i, value] of values.entries()) {
        if (commas.some(comma => comma.before === value || comma.after === value)) continue;
        if (i > 0 && type && type.is !== 'many') {
            report({ rule: 'too-many-values', at: sourceOf(value), message: `${named} takes one value.` });
            break;
        }
        inference.check(value, place);
    }
}

function checkMods(member: ast.Line | ast.Fixture, declaration: ast.PropertyDecl, named: string, inference: Inference, report: Report): void {
    const seen = new Map<ast.PropertyDecl, ast.Mod>();
    let unknown = false;
    for (const mod of member.mods) {
        const wanted = mod.decl?.ref;
        if (!wanted) { unknown = true; continue; }
        if (seen.has(wanted)) for (const again of saidAgainWith(wanted, declaration)) seen.delete(again);
        const first = seen.get(wanted);
        if (first) report({ rule: 'said-twice', at: sourceOfProperty(mod, 'decl'), message: `${quoted(wanted.name)} is given twice on this line.`, related: [{ at: sourceOf(first), message: 'First given here.' }] });
        else {
            const other = [...seen].find(([one]) => isInstead(one, wanted))?.[1];
            if (other) report({ rule: 'said-twice', at: sourceOfProperty(mod, 'decl'), message: `${quoted(wanted.name)} stands instead of ${quoted(other.decl!.$refText)}, which is on this line too. Which one counts?`, related: [{ at: sourceOf(other), message: 'First given here.' }] });
            seen.set(wanted, mod);
        }
        checkValues(mod.values, wanted, quoted(wanted.name), () => sourceOfProperty(mod, 'decl'), inference, report);
    }
    checkRecords(member.mods, report);
    if (unknown || member.values.length === 0) return;
    const missing = declaration.mods.filter(mod => !mod.optional && !mod.default && !seen.has(mod));
    if (missing.length === 0) return;
    const wants = missing.map(mod => `${quoted(mod.name)}, ${wantedInWords(declaredType(mod.type))}`).join(', and ');
    report({ rule: 'not-said', at: wordsOf(member), message: `${named} also needs ${wants}.` });
}

/** Two modifiers of which a line says one; those that tell how pieces were cut are looked at record by record. */
function isInstead(one: ast.PropertyDecl, other: ast.PropertyDecl): boolean {
    const first = factsOf(one), second = factsOf(other);
    return first.follows === undefined && (first.insteadOf.includes(other.name) || second.insteadOf.includes(one.name));
}

/** What a line or a named thing is called in a message: `nails`, `wall north`. */
export function nameOf(member: ast.Line | ast.Fixture, marked = true): string {
    const name = ast.isFixture(member) ? `${member.kind} ${member.name ?? ''}`.trim() : member.path.map(word => word.$refText).join('.');
    return marked ? quoted(name) : name;
}

/** The words it begins with. */
export function wordsOf(member: ast.Line | ast.Fixture): ReturnType<typeof sourceOf> {
    return ast.isFixture(member) ? sourceOfProperty(member, 'name') : sourceOfProperty(member, 'path', member.path.length - 1);
}
