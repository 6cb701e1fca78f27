import { type AstNode, type LangiumDocument, type Lexer } from 'langium';
import * as ast from '../../generated/ast.ts';

export interface Word { readonly text: string; readonly type: string }

/** The half-written statement before the cursor. */
export interface Statement {
    /** What is being typed: it is replaced by what is chosen. */
    readonly prefix: string;
    readonly start: number;
    /** The tokens of the statement before that. */
    readonly before: readonly Word[];
    /** The block it stands in; undefined at the margin of the file. */
    readonly body: ast.Body | undefined;
    /** What the names in it are looked up from: the block, or the declaration whose head it is. */
    readonly from: AstNode;
}

/**
 * The statement at the cursor; undefined inside comments and texts. It is read from the tokens before the cursor and not
 * from the tree, because half a line has no tree to speak of; the blocks around it are found in the tree.
 */
export function statementAt(document: LangiumDocument<ast.File>, offset: number, lexer: Lexer): Statement | undefined {
    const text = document.textDocument.getText();
    const prefix = /[A-Za-z_][\w-]*$/.exec(text.slice(Math.max(0, offset - LONGEST_PREFIX), offset))?.[0] ?? '';
    const start = offset - prefix.length;
    // A word stands for the one that is typed, so that the lines before it are joined as they will be.
    const { tokens, errors } = lexer.tokenize(`${text.slice(0, start)}z`, { mode: 'partial' });
    const last = tokens.at(-1);
    if (!last || last.startOffset !== start) return undefined;
    const before: Word[] = [];
    let begins = start;
    for (let i = tokens.length - 2; i >= 0 && !ENDS.has(tokens[i]!.tokenType.name); i--) {
        before.unshift({ text: tokens[i]!.image, type: tokens[i]!.tokenType.name });
        begins = tokens[i]!.startOffset;
    }
    if (errors.some(error => error.offset >= begins && !(error as { harmless?: boolean }).harmless)) return undefined;
    const file = document.parseResult.value;
    const body = innermostBody(file, start, text);
    return { prefix, start, before, body, from: body ?? itemAt(file, begins) ?? file };
}

/** No word that is offered is longer. */
const LONGEST_PREFIX = 200;

const ENDS = new Set(['EOL', '{', '}']);

/** The innermost block around an offset. A block whose brace is forgotten goes on while the text stays indented deeper. */
function innermostBody(file: ast.File, offset: number, text: string): ast.Body | undefined {
    let body: ast.Body | undefined;
    for (let members: readonly AstNode[] = file.items; ;) {
        const around = members.findLast(member => isAround(bodyOf(member), member, offset, text));
        if (!around) return body;
        body = bodyOf(around)!;
        members = body.members;
    }
}

function bodyOf(node: AstNode): ast.Body | undefined {
    return (node as { body?: ast.Body }).body;
}

function isAround(body: ast.Body | undefined, owner: AstNode, offset: number, text: string): boolean {
    const braces = body?.$cstNode;
    if (!braces || braces.offset >= offset) return false;
    if (offset < braces.end) return true;
    return !braces.text.endsWith('}') && indentation(text, offset) > indentation(text, owner.$cstNode?.offset ?? 0);
}

function indentation(text: string, offset: number): number {
    const line = text.slice(text.lastIndexOf('\n', offset - 1) + 1);
    return /^[ \t]*/.exec(line)![0].length;
}

function itemAt(file: ast.File, offset: number): AstNode | undefined {
    return file.items.find(item => item.$cstNode && item.$cstNode.offset <= offset && offset <= item.$cstNode.end);
}
