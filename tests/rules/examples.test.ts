import { describe, expect, it } from 'vitest';
import { readFile } from '../../src/language/read-file.ts';
import { RULES, ruleNamed } from '../../src/rules/index.ts';
import { explainRule, ruleReference } from '../../src/rules/reference.ts';
import { publishedValues } from '../data/published.ts';
import { readMarked } from '../support/marked.ts';
import { TestWorkspace } from '../support/workspace.ts';
import { allFindings } from './found.ts';
import { toldOf } from './told.ts';

/** What is found in the example, or in the last of its files. */
async function findingsOf(example: string) {
    const files = readMarked(example);
    const workspace = await TestWorkspace.open(Object.fromEntries(files.map(({ path, text }) => [path, text])));
    const file = readFile(workspace.document(files.at(-1)!.path));
    return allFindings(file);
}

it('rules are sorted, named once, and found by their names', () => {
    const names = RULES.map(rule => rule.name);
    expect(names).toEqual([...new Set(names)].sort());
    expect(RULES.every(rule => ruleNamed(rule.name) === rule)).toBe(true);
    expect(ruleNamed('no-such-rule')).toBeUndefined();
});

const reference = ruleReference(RULES);

describe.each(RULES)('$name', rule => {
    it('has its words', () => {
        expect(rule.name).toMatch(/^[a-z]+(-[a-z]+)*$/);
        expect(rule.title).toMatch(/^[A-Z].*[^.]$/);
        expect(rule.basis).toMatch(/^.{8,}\.$/s);
        expect(rule.explanation.trim().length).toBeGreaterThan(100);
        expect(rule.explanation, 'worked numbers').toMatch(/\d/);
        for (const line of rule.explanation.split('\n')) expect(line.length).toBeLessThanOrEqual(140);
    });

    it('its wrong example triggers it and nothing else', async () => {
        const found = await findingsOf(rule.wrong);
        expect(found.map(finding => finding.rule)).toContain(rule.name);
        expect(found.filter(finding => finding.rule !== rule.name && !finding.allowed)).toEqual([]);
        // all that is told of it, as it was
        expect(found.flatMap(toldOf).join('\n')).toMatchSnapshot();
    });

    it('its mended example is clean', async () => {
        expect(await findingsOf(rule.right)).toEqual([]);
    });

    it('stands in the reference and is explained in the terminal', () => {
        expect(reference).toContain(`## ${rule.name}\n`);
        expect(explainRule(rule).split('\n')[0]).toBe(`${rule.name} (${rule.severity})`);
        expect(explainRule(rule)).not.toContain('`');
        for (const line of rule.wrong.trim().split('\n')) expect(explainRule(rule)).toContain(line);
        expect(explainRule(rule)).toContain(rule.basis);
    });
});

describe('the slot lengths in slots-wont-fit', () => {
    it.each(publishedValues('biscuits', /slotlength/))('$id: $expected mm ($source)', ({ expected }) => {
        expect(ruleNamed('slots-wont-fit')!.explanation).toContain(`${expected.toFixed(1)} mm`);
    });
});
