import { AstUtils } from 'langium';
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { describe as explain } from '../../../src/language/elaborate/describe.ts';
import * as ast from '../../../src/language/generated/ast.ts';
import { readMarked } from '../../support/marked.ts';
import { TestWorkspace } from '../../support/workspace.ts';

/** `// comes-to ...` about the line's own statement, or the marked expression, name or modifier; `// comes-to nothing` where it is unknown. */
const [file] = readMarked(readFileSync(new URL('describe.coffer', import.meta.url), 'utf8'), { verbs: ['comes-to'] });
const workspace = await TestWorkspace.open({ [file!.path]: file!.text });
const document = workspace.document(file!.path);

test.each(file!.expectations.map(one => [file!.text.split('\n')[one.line]!.trim(), one] as const))('%s', (_, { line, range, rest }) => {
    const nodes = AstUtils.streamAst(document.parseResult.value).filter(node => node.$cstNode?.range.start.line === line);
    const here = range
        ? nodes.filter(node =>
            node.$cstNode!.range.start.character === range.start.character && node.$cstNode!.range.end.character === range.end.character).toArray().at(-1)
        : nodes.find(node => ast.isStock(node) || ast.isParam(node) || ast.isLet(node) || ast.isLine(node) || ast.isFixture(node));
    expect(here).toBeDefined();
    expect(explain(here!) ?? 'nothing').toBe(rest);
});
