import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { Finding, Fix } from '../../../src/findings/finding.ts';
import { readFile } from '../../../src/language/read-file.ts';
import { LANGUAGE_RULES } from '../../../src/language/types/rules.ts';
import { applied } from '../../support/applied.ts';
import { readMarked } from '../../support/marked.ts';
import { TestWorkspace } from '../../support/workspace.ts';

const folders = ['../types/findings', 'findings'].map(path => new URL(`${path}/`, import.meta.url));
const fixtures = folders.flatMap(folder => readdirSync(folder).map(name => [name, readMarked(readFileSync(new URL(name, folder), 'utf8'))] as const));

/** Only what types and evaluation find; the fixes of names and of syntax are tested where they are made. */
const isOwn = (finding: Finding): boolean => finding.rule in LANGUAGE_RULES;
const named = ({ at, rule, message }: Finding): string => `${at.uri} ${at.range.start.line} ${rule}: ${message}`;

test.each(fixtures)('every fix offered in %s takes its finding away and breaks nothing', async (_, files) => {
    const texts = Object.fromEntries(files.map(file => [file.path, file.text]));
    const workspace = await TestWorkspace.open(texts);
    const findings = (): readonly Finding[] => Object.keys(texts).flatMap(path => readFile(workspace.document(path)).findings);
    const before = findings();
    for (const finding of before.filter(isOwn)) {
        for (const fix of finding.fixes as readonly Fix[]) {
            await workspace.edit(applied(fix, texts));
            const after = findings();
            const count = (list: readonly Finding[], name: string): number => list.filter(one => named(one) === name).length;
            expect(count(after, named(finding)), `${fix.title} for ${named(finding)}`).toBeLessThan(count(before, named(finding)));
            expect(after.filter(one => one.rule === 'syntax').length, fix.title).toBe(before.filter(one => one.rule === 'syntax').length);
        }
    }
});
