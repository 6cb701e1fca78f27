import { URI } from 'langium';
import { READING_RULES } from '../language/findings/rules.ts';
import { LANGUAGE_RULES } from '../language/types/rules.ts';
import { isBuiltin } from '../language/workspace/builtin.ts';
import { RULES } from '../rules/index.ts';
import { rulePage } from '../rules/reference.ts';

/** A rule of the language has no page beyond its line. */
const OF_LANGUAGE: Readonly<Record<string, string>> = { ...READING_RULES, ...LANGUAGE_RULES };

/** The page of a rule as Markdown, by its address `builtin:///rules/NAME.md`; undefined where there is none. */
export function rulePageText(uri: string): string | undefined {
    const page = URI.parse(uri), name = isBuiltin(page) ? /^\/rules\/([a-z0-9-]+)\.md$/.exec(page.path)?.[1] : undefined;
    if (name === undefined) return undefined;
    const rule = RULES.find(one => one.name === name);
    if (rule) return rulePage(rule);
    return Object.hasOwn(OF_LANGUAGE, name) ? `## ${name}\n\n${OF_LANGUAGE[name]!}\n` : undefined;
}
