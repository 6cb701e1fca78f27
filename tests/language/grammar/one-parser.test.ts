import { expect, test } from 'vitest';
import { TestWorkspace } from '../../support/workspace.ts';

/** The parser works for all who read files in this process; what it makes is theirs who asked. */
test('two workspaces find each its own names, whoever was there last', async () => {
    const files = {
        'yard.coffer': 'edition 1\nstock oak-1x4 {\n  size 1x4\n}\n',
        'box.coffer': 'edition 1\nfrom "yard.coffer" use oak-1x4\nprofile box {\n  sides { stock oak-1x4 }\n}\n',
    };
    const first = await TestWorkspace.open(files), second = await TestWorkspace.open(files);
    await first.edit({ 'box.coffer': files['box.coffer'].replace('profile box', 'profile beam') });
    for (const workspace of [first, second]) {
        const own = new Set([...workspace.shared.workspace.LangiumDocuments.all].map(({ parseResult }) => parseResult.value));
        const found = workspace.document('box.coffer').references.map(reference => 'ref' in reference ? reference.ref?.$cstNode?.root.astNode : undefined);
        expect(found).toContain(workspace.file('yard.coffer'));
        expect(found.filter(file => !own.has(file as never))).toEqual([]);
    }
});
