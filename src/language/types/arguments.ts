import * as ast from '../generated/ast.ts';
import { parameterOf } from '../scope/expected.ts';
import { declaredType } from './declared.ts';
import { sourceOf, sourceOfProperty } from './place.ts';
import type { Report } from './report.ts';
import { quoted, wantedInWords } from './words.ts';

/** Whether what stands in the parentheses behind a name is asked for, once, and all of it. A named argument that leads nowhere is the linker's to report. */
export function checkArguments(ref: ast.Ref, report: Report): void {
    const target = ref.target?.ref;
    if (!target) return;
    const name = quoted(ref.target.$refText);
    if (!ast.isProfile(target)) {
        if (ref.call) report({ rule: 'no-such-argument', at: sourceOf(ref), message: `${name} takes nothing in parentheses; only a profile does.` });
        return;
    }
    const given = new Map<ast.Param, ast.Arg>();
    let unknown = false;
    for (const argument of ref.args ?? []) {
        const parameter = parameterOf(argument);
        if (!parameter) {
            unknown = true;
            if (!argument.param) report({ rule: 'no-such-argument', at: sourceOf(argument), message: tooMany(name, target) });
            continue;
        }
        const first = given.get(parameter);
        if (first) report({ rule: 'said-twice', at: sourceOf(argument), message: `${quoted(parameter.name)} is given twice.`, related: [{ at: sourceOf(first), message: 'Given here first.' }] });
        else given.set(parameter, argument);
    }
    if (unknown) return;        // one of them is likely meant for what is missing
    for (const parameter of target.params) {
        if (parameter.default || !parameter.name || given.has(parameter)) continue;
        report({
            rule: 'argument-missing', at: sourceOf(ref), message: `${name} needs ${quoted(parameter.name)}, ${wantedInWords(declaredType(parameter.type))}: it has no default. Write ${ref.target.$refText}(${parameter.name}: ...).`,
            related: [{ at: sourceOfProperty(parameter, 'name'), message: 'Asked for here.' }],
        });
    }
}

function tooMany(name: string, profile: ast.Profile): string {
    const names = profile.params.map(parameter => parameter.name).filter(one => one);
    if (names.length === 0) return `${name} takes no arguments.`;
    return `${name} takes ${names.length === 1 ? 'one argument' : `${names.length} arguments`}: ${names.join(', ')}.`;
}
