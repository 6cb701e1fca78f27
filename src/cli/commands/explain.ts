import { closest, distance } from 'fastest-levenshtein';
import { columns } from '../../report/look.ts';
import { explainRule } from '../../rules/reference.ts';
import { EXIT, UsageError, type ExitCode } from '../exit-code.ts';
import type { World } from '../world.ts';
import { terminalLines } from '../../text/terminal.ts';
import { PAGES, type RulePage } from '../rule-pages.ts';

/** The page of a rule; the list of all of them where none is named. */
export function explain(name: string | undefined, { terminal }: Pick<World, 'terminal'>): ExitCode {
    if (name === undefined) {
        terminal.result(terminalLines(columns(PAGES.map(page => [page.name, page.severity, page.title]))));
        return EXIT.clean;
    }
    const page = PAGES.find(p => p.name === name);
    if (!page) throw new UsageError(`There is no rule ${name}.${near(name)}`);
    terminal.result(terminalLines(text(page).replace(/\n$/, '').split('\n')));
    return EXIT.clean;
}

/** A rule of the language has no page beyond its line. */
function text({ name, severity, title, rule }: RulePage): string {
    return rule ? explainRule(rule) : `${name} (${severity})\n${title}\n`;
}

function near(name: string): string {
    const best = closest(name, PAGES.map(page => page.name));
    return distance(name, best) <= Math.max(2, name.length / 3) ? ` Did you mean ${best}?` : ' `cofferwright explain` lists them.';
}
