import { AstUtils, type AstNode } from 'langium';
import * as ast from '../../language/generated/ast.ts';
import { sourceOf } from '../../language/types/place.ts';
import type { Position } from '../../provenance/source.ts';

/** A place in the text that something is shown behind: by its path in the tree, with the words it stands behind. */
export interface Anchor {
    /** `grid/coffers-north`, `line B/beams`: where it is in its room or profile, whatever stands around it. */
    readonly path: string;
    readonly words: string;
    readonly position: Position;
}

/**
 * The last lines of a block that say a property, such as `coffers-north` in `grid`; the property may also stand behind a dot
 * (`grid.coffers-north 4`). The one said last is the one that holds.
 */
export function lineSaying(body: ast.Body | undefined, ...path: readonly string[]): ast.Line | undefined {
    for (const member of (body?.members ?? []).toReversed()) {
        if (!ast.isLine(member)) continue;
        const said = member.path.map(word => word.$refText);
        if (said.length > path.length || said.some((word, i) => word !== path[i])) continue;
        const found = said.length === path.length ? member : lineSaying(member.body, ...path.slice(said.length));
        if (found) return found;
    }
    return undefined;
}

/** Behind the values of a line, or behind its words where it has none; before the block it opens. */
export function anchorBehind(path: string, statement: ast.Line | ast.Fixture): Anchor {
    return anchorAt(path, statement, statement.mods.at(-1) ?? statement.values.at(-1));
}

/** Behind the head of a declaration, or of a block. */
export function anchorBehindHead(path: string, statement: ast.Room | ast.Line): Anchor {
    return anchorAt(path, statement, undefined);
}

function anchorAt(path: string, statement: AstNode & { body?: ast.Body }, last: AstNode | undefined): Anchor {
    const { range } = sourceOf(statement);
    const text = AstUtils.getDocument(statement).textDocument;
    const from = text.offsetAt(range.start);
    const to = last ? text.offsetAt(sourceOf(last).range.end) : statement.body ? text.offsetAt(sourceOf(statement.body).range.start) : text.offsetAt(range.end);
    const words = text.getText().slice(from, to).trimEnd();
    return { path, words: words.replace(/\s+/g, ' '), position: text.positionAt(from + words.length) };
}
