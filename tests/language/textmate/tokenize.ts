import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import oniguruma from 'vscode-oniguruma';
import textmate from 'vscode-textmate';

const require = createRequire(import.meta.url);
const grammarFile = new URL('../../../syntaxes/coffer.tmLanguage.json', import.meta.url);

/** A stretch of a line and the scopes it is painted by, outermost first. */
export interface Painted { readonly text: string; readonly start: number; readonly end: number; readonly scopes: readonly string[] }

/** Paints a text as the editor does, line by line. */
export async function painter(): Promise<(text: string) => Painted[][]> {
    await oniguruma.loadWASM(readFileSync(require.resolve('vscode-oniguruma/release/onig.wasm')).buffer as ArrayBuffer);
    const registry = new textmate.Registry({
        onigLib: Promise.resolve({
            createOnigScanner: patterns => new oniguruma.OnigScanner(patterns),
            createOnigString: text => new oniguruma.OnigString(text),
        }),
        loadGrammar: async scope => scope === 'source.coffer' ? textmate.parseRawGrammar(readFileSync(grammarFile, 'utf8'), grammarFile.pathname) : null,
    });
    const grammar = (await registry.loadGrammar('source.coffer'))!;
    return text => {
        let state = textmate.INITIAL;
        return text.split(/\r?\n/).map(line => {
            const { tokens, ruleStack } = grammar.tokenizeLine(line, state);
            state = ruleStack;
            return tokens.map(({ startIndex, endIndex, scopes }) =>
                ({ text: line.slice(startIndex, endIndex), start: startIndex, end: endIndex, scopes: scopes.slice(1) }));
        });
    };
}
