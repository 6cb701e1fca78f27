import { expect } from 'vitest';
import type { Layout } from '../../src/ceiling/model.ts';
import { readFile } from '../../src/language/read-file.ts';
import { inspect } from '../../src/pipeline/inspect.ts';
import { TestWorkspace } from './workspace.ts';

/** The rooms of a text that has no errors, laid out. */
export async function layoutsOf(text: string): Promise<readonly Layout[]> {
    const house = await TestWorkspace.open({ 'house.coffer': text });
    const { findings, layouts } = inspect(readFile(house.document('house.coffer')));
    const language = house.published('house.coffer').filter(({ rule }) => !rule.startsWith('unused')), errors = findings.filter(({ severity }) => severity === 'error');
    expect([...language, ...errors].map(({ message }) => message)).toEqual([]);
    return layouts;
}
