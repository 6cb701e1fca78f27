import { readdirSync, readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Finding } from '../../src/findings/finding.ts';
import { readFile } from '../../src/language/read-file.ts';
import { RULES } from '../../src/rules/index.ts';
import { applied } from '../support/applied.ts';
import { FULL } from '../support/full.ts';
import { mismatches, readMarked } from '../support/marked.ts';
import { TestWorkspace } from '../support/workspace.ts';
import { toldOf } from './told.ts';
import { allFindings } from './found.ts';

const folder = new URL('.', import.meta.url);
const fixtures = readdirSync(folder).filter(name => name.endsWith('.coffer')).sort();
const read = (name: string) => readMarked(readFileSync(new URL(name, folder), 'utf8'));

function findingsOf(workspace: TestWorkspace, texts: Readonly<Record<string, string>>): (readonly Finding[])[] {
    return Object.keys(texts).map(path => allFindings(readFile(workspace.document(path))));
}

it('every rule has a fixture of its name, and every fixture is of a rule', () => {
    expect(fixtures).toEqual(RULES.map(rule => `${rule.name}.coffer`).sort());
});

describe.each(fixtures)('%s', name => {
    const files = read(name);
    const texts = Object.fromEntries(files.map(file => [file.path, file.text]));
    const rule = name.replace('.coffer', '');

    let workspace: TestWorkspace;
    beforeAll(async () => { workspace = await TestWorkspace.open(texts); });

    it('has exactly the findings that are marked in it', () => {
        const found = findingsOf(workspace, texts);
        expect(mismatches(files.map((file, i) => ({ file, findings: found[i]! })))).toEqual([]);
        expect(found.flat().some(finding => finding.rule === rule)).toBe(true);
        // whole words, of which the marks have parts, the other half of each, and its fixes, as they were
        expect(found.flat().flatMap(toldOf).join('\n')).toMatchSnapshot();
    });

    it('each quick fix takes its finding away and brings no other', async () => {
        const before = findingsOf(workspace, texts).flat();
        // mended, what is allowed leaves a comment that allows nothing any more
        const done = new Set<string>();
        for (const finding of before.filter(one => !one.allowed)) {
            for (const fix of finding.fixes) {
                // everyday one of each kind, whatever its figures
                const kind = `${finding.rule}: ${fix.title.replaceAll(/[\d/ '"-]+/g, ' ')}`;
                if (!FULL && done.has(kind)) continue;
                done.add(kind);
                const mended = applied(fix, texts), written = Object.keys(texts).filter(path => mended[path] !== texts[path]);
                await workspace.edit(Object.fromEntries(written.map(path => [path, mended[path]])));
                const after = findingsOf(workspace, texts).flat();
                await workspace.edit(Object.fromEntries(written.map(path => [path, texts[path]])));
                const kept = before.filter(other => other !== finding).map(named);
                const left = after.map(named);
                expect(left.filter(one => !kept.includes(one)), `${fix.title}: new findings`).toEqual([]);
                expect(left.filter(one => one === named(finding)).length, `${fix.title}: still there`).toBeLessThan(before.map(named).filter(one => one === named(finding)).length);
            }
        }
    });
});

function named({ rule, severity, message, room }: Finding): string {
    return `${severity} ${rule} ${room ?? ''}: ${message}`;
}
