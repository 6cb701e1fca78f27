import type { LangiumDocument } from 'langium';
import type { SignatureHelpProvider } from 'langium/lsp';
import type { SignatureHelp, SignatureHelpParams, SignatureInformation } from 'vscode-languageserver-protocol';
import { describe } from '../elaborate/describe.ts';
import * as ast from '../generated/ast.ts';
import { lookUp } from '../scope/layer.ts';
import { namesAt } from '../scope/reach.ts';
import type { CofferServices } from '../coffer-services.ts';
import { statementAt, type Word } from './completion/statement.ts';
import { asWritten, inWords, together } from '../../text/markdown.ts';
import { markup } from './editor.ts';
import { oneLine } from './explain.ts';

/** The arguments of a profile as far as they are written. */
interface Call { readonly name: string; argument: number; parameter: string | undefined; readonly given: Set<string> }

/** Shows what a profile can be given while its arguments are being written, and which of them is next. */
export class CofferSignatureHelp implements SignatureHelpProvider {
    readonly signatureHelpOptions = { triggerCharacters: ['(', ','], retriggerCharacters: [':'] };

    constructor(private readonly services: CofferServices) {}

    provideSignatureHelp(document: LangiumDocument, { position }: SignatureHelpParams): SignatureHelp | undefined {
        if (!ast.isFile(document.parseResult.value)) return undefined;
        const { textDocument } = document;
        const offset = textDocument.offsetAt(position);
        const statement = statementAt(document as LangiumDocument<ast.File>, offset, this.services.parser.Lexer);
        const call = statement && openCall(statement.before);
        if (!call) return undefined;
        const target = lookUp(namesAt(statement.from, 'Profile', this.services.surroundings), call.name);
        const profile = ast.isUsedName(target) ? target.target?.ref : target;
        if (!ast.isProfile(profile) || profile.params.length === 0) return undefined;
        const named = /^([\w-]*)[ \t]*:/.exec(textDocument.getText().slice(offset));
        const typed = named ? statement.prefix + named[1]! : undefined;
        return {
            signatures: [this.signature(profile)], activeSignature: 0,
            activeParameter: activeParameter(profile, { ...call, parameter: call.parameter ?? typed }),
        };
    }

    private signature(profile: ast.Profile): SignatureInformation {
        const { DocumentationProvider } = this.services.documentation;
        const { markdownInSignature } = this.services.editor;
        const written = DocumentationProvider.getDocumentation(profile);
        const parameters = profile.params.map(parameter => {
            const written = DocumentationProvider.getDocumentation(parameter), comesTo = describe(parameter);
            const about = together([...written ? [asWritten(written)] : [], ...comesTo ? [inWords(comesTo)] : []]);
            return { label: oneLine(parameter), ...about.plain && { documentation: markup(about, markdownInSignature) } };
        });
        return {
            label: `${profile.name}(${parameters.map(({ label }) => label).join(', ')})`, parameters,
            ...written && { documentation: markup(asWritten(written), markdownInSignature) },
        };
    }
}

/** The innermost parenthesis that is open behind a name; that of a profile's own head declares parameters and is none. */
function openCall(before: readonly Word[]): Call | undefined {
    const open: (Call | undefined)[] = [];
    for (const [i, { text }] of before.entries()) {
        const call = open.at(-1);
        if (text === '(') {
            const name = before[i - 1]?.text ?? '';
            const isHead = i === 2 && before[0]!.text === 'profile';
            open.push(/^[A-Za-z_]/.test(name) && !isHead ? { name, argument: 0, parameter: undefined, given: new Set() } : undefined);
        } else if (text === ')') open.pop();
        else if (call && text === ',') {
            call.argument++;
            call.parameter = undefined;
        } else if (call && text === ':') {
            call.parameter = before[i - 1]!.text;
            call.given.add(call.parameter);
        }
    }
    return open.at(-1);
}

/** By its name, or by its place; where its place was given by name already, the first that was not. Past the last: none. */
function activeParameter({ params }: ast.Profile, { argument, parameter, given }: Call): number {
    const none = params.length;
    if (parameter !== undefined) return indexOr(none, params.findIndex(({ name }) => name === parameter));
    const byPlace = params[argument];
    if (byPlace && !given.has(byPlace.name)) return argument;
    return given.size > 0 ? indexOr(none, params.findIndex(({ name }, i) => !given.has(name) && i >= argument - given.size)) : none;
}

function indexOr(other: number, index: number): number {
    return index < 0 ? other : index;
}
