import { closest, distance } from 'fastest-levenshtein';
import { columns, type Paint } from '../../report/look.ts';
import { EXIT, UsageError, type ExitCode } from '../exit-code.ts';
import type { World } from '../input.ts';
import { PAGES, type RulePage } from '../rule-pages.ts';

/** The page of a rule; the list of all of them where none is named. */
export function explain(name: string | undefined, { terminal }: Pick<World, 'terminal'>): ExitCode {
    if (name === undefined) {
        terminal.result(`${columns(PAGES.map(page => [page.name, page.severity, page.title])).join('\n')}\n`);
        return EXIT.clean;
    }
    const page = PAGES.find(p => p.name === name);
    if (!page) throw new UsageError(`There is no rule ${name}.${near(name)}`);
    terminal.result(text(page, terminal.paint));
    return EXIT.clean;
}

/** Markdown, as in the reference of the rules. */
function text({ name, severity, title, rule }: RulePage, paint: Paint): string {
    const head = [paint.strong(`# ${name}`), '', `${paint[severity](severity)}: ${title}`, ''];
    if (!rule) return head.join('\n');
    return [
        ...head,
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
    const best = closest(name, PAGES.map(page => page.name));
    return distance(name, best) <= Math.max(2, name.length / 3) ? ` Did you mean ${best}?` : ' `cofferwright explain` lists them.';
}
