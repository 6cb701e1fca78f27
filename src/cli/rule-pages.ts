import type { Severity } from '../findings/finding.ts';
import { READING_RULES } from '../language/findings/rules.ts';
import { LANGUAGE_RULES } from '../language/types/rules.ts';
import { RULES } from '../rules/index.ts';
import type { Rule } from '../rules/rule.ts';

/** A finding's page: a rule of the trade with its explanation and examples, or one of the language with a line. */
export interface RulePage { readonly name: string; readonly title: string; readonly severity: Severity; readonly explanation?: string; readonly rule?: Rule }

const HINTS: readonly string[] = ['not-computed-yet'];

/** Every page, by name. */
export const PAGES: readonly RulePage[] = [
    ...RULES.map((rule): RulePage => ({ name: rule.name, title: rule.title, severity: rule.severity, explanation: rule.explanation, rule })),
    ...Object.entries({ ...READING_RULES, ...LANGUAGE_RULES }).map(([name, title]): RulePage => ({ name, title, severity: HINTS.includes(name) ? 'hint' : 'error' })),
].sort((a, b) => (a.name < b.name ? -1 : 1));
