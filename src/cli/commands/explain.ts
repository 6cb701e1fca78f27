import { closest, distance } from 'fastest-levenshtein';
import { RULES } from '../../rules/index.ts';
import type { Rule } from '../../rules/rule.ts';
import { columns, type Paint } from '../../report/look.ts';
import { EXIT, UsageError, type ExitCode } from '../exit-code.ts';
import type { World } from '../input.ts';

/** The page of a rule; the list of all rules where none is named. */
export function explain(name: string | undefined, { terminal }: Pick<World, 'terminal'>): ExitCode {
    if (name === undefined) {
        terminal.result(`${columns(RULES.map(rule => [rule.name, rule.severity, rule.title])).join('\n')}\n`);
        return EXIT.clean;
    }
    const rule = RULES.find(r => r.name === name);
    if (!rule) throw new UsageError(`There is no rule ${name}.${near(name)}`);
    terminal.result(page(rule, terminal.paint));
    return EXIT.clean;
}

/** Markdown, as in the reference of the rules. */
export function page(rule: Rule, paint: Paint): string {
    return [
        paint.strong(`# ${rule.name}`), '',
        `${paint[rule.severity](rule.severity)}: ${rule.title}`, '',
        rule.explanation.trim(), '',
        paint.strong('## Wrong'), '', ...fenced(rule.wrong), '',
        paint.strong('## Right'), '', ...fenced(rule.right), '',
        `Figures: ${rule.basis}`, '',
    ].join('\n');
}

function fenced(text: string): string[] {
    return ['```coffer', text.trim(), '```'];
}

function near(name: string): string {
    const names = RULES.map(rule => rule.name);
    if (names.length === 0) return '';
    const best = closest(name, names);
    return distance(name, best) <= Math.max(2, name.length / 3) ? ` Did you mean ${best}?` : ' `cofferwright explain` lists them.';
}
