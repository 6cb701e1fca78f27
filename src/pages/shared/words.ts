import * as l10n from '@vscode/l10n';

/** A text that is shown, in the reader's language where it has been translated: `t('{0} of {1} cut', done, all)`. */
export const t: (message: string, ...values: (string | number)[]) => string = (message, ...values) => l10n.t(message, ...values);

/** Translations by the English text, as the editor hands them out. Whoever shows pages says so once, before the first. */
export function setWords(words: Readonly<Record<string, string>>): void {
    l10n.config({ contents: { ...words } });
}
