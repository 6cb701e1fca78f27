import { writeFile } from 'node:fs/promises';
import { URI } from 'langium';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { EXIT, UsageError, worst, type ExitCode } from '../exit-code.ts';
import { openAsked, type Asked, type World } from '../input.ts';
import { reasonOf, readText } from '../read-text.ts';
import type { Workspace } from '../workspace.ts';

export interface FormatOptions extends Asked { readonly check: boolean }

/**
 * Lays texts out the one way: rewrites files in place, or only names those that would change; standard input goes to
 * standard output. A text that cannot be parsed is left as it is, and said.
 */
export async function format(options: FormatOptions, world: World): Promise<ExitCode> {
    const { terminal } = world;
    const { workspace, paths, code } = await openAsked(options, world);
    const fromStdin = options.stdinFilePath !== undefined || options.files.includes('-');
    if (fromStdin && paths.length > 1) throw new UsageError('Standard input is formatted by itself; name no other files with it');
    let worstCode = code;
    let changed = 0;
    for (const path of paths) {
        const name = workspace.files.nameOf(URI.file(path).toString());
        if (workspace.disk.unreadable.has(path)) continue;
        const text = workspace.files.textOf(URI.file(path).toString()) ?? '';
        const formatted = await formattedText(path, workspace);
        if (formatted === undefined) terminal.say(`${name} has errors that keep it from being formatted; \`cofferwright check\` shows them`);
        if (formatted === undefined) worstCode = worst(worstCode, EXIT.findings);
        if (fromStdin && !options.check) terminal.result(formatted ?? text);
        else if (formatted !== undefined && formatted !== text) {
            changed++;
            if (options.check) terminal.result(`${name}\n`);
            else worstCode = worst(worstCode, await write(path, formatted, name, terminal));
        }
    }
    if (!fromStdin) terminal.say(options.check ? `${changed} of ${paths.length} files would change` : `${changed} of ${paths.length} files changed`);
    return options.check && changed > 0 ? worst(worstCode, EXIT.findings) : worstCode;
}

/** The formatted text of an opened file; undefined where its text cannot be parsed. */
async function formattedText(path: string, { services }: Workspace): Promise<string | undefined> {
    const document = services.shared.workspace.LangiumDocuments.getDocument(URI.file(path));
    const formatter = services.coffer.lsp.Formatter;
    if (!document || !formatter) return undefined;
    const { lexerErrors, parserErrors } = document.parseResult;
    if (lexerErrors.length + parserErrors.length > 0) return undefined;
    const edits = await formatter.formatDocument(document, { textDocument: { uri: document.uri.toString() }, options: { tabSize: 2, insertSpaces: true } });
    return TextDocument.applyEdits(document.textDocument, edits);
}

/** Keeps the byte order mark of a file that has one. */
async function write(path: string, text: string, name: string, terminal: World['terminal']): Promise<ExitCode> {
    try {
        const { hasMark } = await readText(path);
        await writeFile(path, hasMark ? `\ufeff${text}` : text);
        return EXIT.clean;
    } catch (error) {
        terminal.say(`${name} ${error instanceof Error && !('code' in error) ? error.message : reasonOf(error)}`);
        return EXIT.usage;
    }
}
