declare const place: unique symbol;

/**
 * Text that is fit for one place, where everything that somebody wrote has been made harmless for whoever reads it there. What
 * the program prints and writes takes nothing else, so that what has not gone through its gate does not compile. Each place has
 * one gate: terminal.ts, xml.ts (with the tag of pages and the writer of drawings), json.ts, csv.ts, dxf.ts, file-name.ts, and for IFC src/exports/ifc/step.ts.
 */
type Fit<Place extends string> = string & { readonly [place]: Place };

export type TerminalText = Fit<'terminal'>;
export type JsonText = Fit<'JSON'>;
export type CsvText = Fit<'CSV'>;
export type XmlText = Fit<'XML'>;
export type SvgText = Fit<'SVG'>;
export type HtmlText = Fit<'HTML'>;
export type DxfText = Fit<'DXF'>;
export type IfcText = Fit<'IFC'>;
export type MarkdownText = Fit<'Markdown'>;
/** Lines that the log of a code host takes for commands. */
export type LogText = Fit<'log'>;
/** Somebody's own text, handed back to them for the file it came from. */
type OwnText = Fit<'own'>;

/** What may go to standard output. */
export type Printed = TerminalText | JsonText | CsvText | MarkdownText | LogText | OwnText;
/** What may be a file's content. */
export type Content = SvgText | HtmlText | CsvText | JsonText | DxfText | IfcText | Uint8Array;

/** Hands somebody's own text back as it is. */
export function ownText(text: string): OwnText {
    return text as OwnText;
}
