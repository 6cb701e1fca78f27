/** What an empty page of a pane is made of. */
interface PaneDocument {
    readonly title: string;
    readonly language: string;
    readonly nonce: string;
    /** Where the extension's files come from, as a policy names it. */
    readonly origin: string;
    readonly script: string;
    readonly letters: string;
    /** Translations by the English text. */
    readonly words: Readonly<Record<string, unknown>>;
}

/**
 * The empty page of a pane. Its policy lets in its own script and style sheets, by a nonce, and the letters of the drawings;
 * nothing from elsewhere, and nothing that markup brings along.
 */
export function paneDocument({ title, language, nonce, origin, script, letters, words }: PaneDocument): string {
    const policy = `default-src 'none'; script-src 'nonce-${nonce}'; style-src 'nonce-${nonce}'; font-src ${origin}; img-src data: blob:`;
    return `<!doctype html>
<html lang="${language.replace(/[^\w-]/g, '')}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${title}</title>
<link rel="stylesheet" nonce="${nonce}" href="${letters}">
</head>
<body>
<script type="application/json" id="translations">${inElement(words)}</script>
<script nonce="${nonce}" src="${script}"></script>
</body>
</html>`;
}

/** An element that holds data ends at the next `</`, so there is none in it. */
function inElement(data: object): string {
    return JSON.stringify(data).replaceAll('<', '\\u003c');
}
