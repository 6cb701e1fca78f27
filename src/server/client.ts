import type { LanguageServer } from 'langium/lsp';
import type { Editor } from '../language/features/editor.ts';
import type { CodeLens, InitializeParams } from 'vscode-languageserver';
import { setWords } from '../pages/shared/words.ts';
import { OPEN_LIST, type Colors, type InitializationOptions } from './messages.ts';

/** What the editor at the other end can do, as it said when it came. */
export class Client implements Editor {
    refreshesInlayHints = false;
    refreshesCodeLenses = false;
    definitionLinks = false;
    snippets = false;
    opensList?: string;
    /** Actions that cannot be done, with why. */
    disabledActions = false;
    markdownInCompletion = false;
    markdownInHover = false;
    markdownInSignature = false;
    /** Pictures and words beside each other. */
    tablesInMarkdown = false;
    /** Whether the editor is light or dark; undefined where it does not tell. */
    colors: Colors | undefined;
    /** Commands of the editor's own that the server may offer. */
    commands: ReadonlySet<string> = new Set();

    listenTo(server: LanguageServer): void {
        server.onInitialize(params => this.learn(params));
    }

    /** Told when it comes, and whenever it changes. */
    take(colors: unknown): void {
        this.colors = colors === 'light' || colors === 'dark' ? colors : undefined;
    }

    /** What stands above a line, leading to a command where the editor has it. */
    lens(lens: CodeLens, title: string | undefined, command?: string, shows?: object): CodeLens {
        return { ...lens, command: title && command && this.commands.has(command) ? { title, command, arguments: [shows] } : { title: title ?? '', command: '' } };
    }

    private learn({ capabilities: { general, workspace, textDocument }, initializationOptions }: InitializeParams): void {
        this.refreshesInlayHints = workspace?.inlayHint?.refreshSupport ?? false;
        this.refreshesCodeLenses = workspace?.codeLens?.refreshSupport ?? false;
        this.definitionLinks = textDocument?.definition?.linkSupport ?? false;
        const { completionItem } = textDocument?.completion ?? {};
        this.snippets = completionItem?.snippetSupport ?? false;
        this.disabledActions = textDocument?.codeAction?.disabledSupport ?? false;
        this.markdownInCompletion = completionItem?.documentationFormat?.includes('markdown') ?? false;
        this.markdownInHover = textDocument?.hover?.contentFormat?.includes('markdown') ?? false;
        this.markdownInSignature = textDocument?.signatureHelp?.signatureInformation?.documentationFormat?.includes('markdown') ?? false;
        this.tablesInMarkdown = general?.markdown?.allowedTags?.includes('table') ?? false;
        const { commands, colors, words } = (initializationOptions ?? {}) as Partial<InitializationOptions>;
        this.take(colors);
        setWords(Object.fromEntries(Object.entries(words ?? {}).filter(([, word]) => typeof word === 'string')));
        const known = new Set(Array.isArray(commands) ? commands.filter(name => typeof name === 'string') : []);
        this.commands = known;
        if (known.has(OPEN_LIST)) this.opensList = OPEN_LIST;
    }
}
