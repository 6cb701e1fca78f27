/**
 * A snippet for an editor that has none: without its places to fill in, indented by spaces as the formatter does. What is
 * left of a line that only waited for a value ends behind its word.
 */
export function filledIn(snippet: string, indentation: string): string {
    const text = snippet.replace(/\$\{\d+:([^}]*)\}/g, '$1').replace(/\$\{\d+\|([^,|]*)[^}]*\|\}/g, '$1').replace(/\$\d+/g, '').replace(/\t/g, '  ');
    const lines = text.split('\n').map((line, i) => (i === 0 ? line : indentation + line));
    return lines.length === 1 ? lines[0]!.replace(/[ ]+$/, ' ') : lines.map(line => line.trimEnd()).join('\n');
}
