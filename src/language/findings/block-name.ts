import * as ast from '../generated/ast.ts';
import { quoted } from '../types/words.ts';

const BLOCKS: Readonly<Record<string, string>> = {
    Stock: 'a stock', Profile: 'a profile', Room: 'a room', Job: 'the job', Labor: 'labor', Bid: 'the bid', Alternate: 'an alternate',
};

/** What to call a block when speaking of it: `sides`, `wall`, a stock. */
export function blockName(body: ast.Body): string {
    const owner = body.$container;
    if (ast.isLine(owner)) return quoted(owner.path[owner.path.length - 1]?.$refText);
    if (ast.isFixture(owner)) return quoted(owner.kind);
    return BLOCKS[owner.$type] ?? 'this block';
}
