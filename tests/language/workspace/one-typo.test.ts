import { expect, test } from 'vitest';
import { some } from '../../support/full.ts';
import { EXAMPLE_PATHS, EXAMPLES } from '../../support/examples.ts';
import { TestWorkspace } from '../../support/workspace.ts';

const PATHS = EXAMPLE_PATHS;

/** Two letters in the wrong order: `stokc`; where that is no other word, one letter too many. */
function misspelled(word: string): string {
    const end = word.slice(-2);
    return end[0] === end[1] || word.length < 4 ? `${word}q` : word.slice(0, -2) + end[1] + end[0];
}

test.each(PATHS)('each word of %s, misspelled, is one finding in the whole house, at that word, and says what was meant', async path => {
    const workspace = await TestWorkspace.open(EXAMPLES);
    const text = EXAMPLES[path]!;
    const words = workspace.document(path).references.map(reference => ({ offset: reference.$refNode!.offset, word: reference.$refText }));
    expect(words.length).toBeGreaterThan(2);
    const wrong: string[] = [];
    for (const { offset, word } of some(words, 8)) {
        const written = misspelled(word);
        await workspace.edit({ [path]: text.slice(0, offset) + written + text.slice(offset + word.length) });
        const found = PATHS.flatMap(each => workspace.findings(each));
        const [only] = found;
        const says = found.map(each => `${each.rule}: ${each.message}`).join(' | ');
        if (found.length !== 1 || workspace.words(only!.at) !== written || !only!.message.includes(`did you mean \`${word}\`?`)) wrong.push(`${offset} ${written}: ${says}`);
    }
    expect(wrong).toEqual([]);
});
