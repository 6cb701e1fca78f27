/** Words one behind the other in lines, in each as many as fit; a word that fits in none has one to itself. */
export function inLines(words: readonly string[], fits: (line: string) => boolean): string[] {
    const lines: string[] = [];
    for (const word of words) {
        const last = lines.at(-1), longer = last ? `${last} ${word}` : word;
        if (last === '' || last !== undefined && fits(longer)) lines[lines.length - 1] = longer;
        else lines.push(word);
    }
    return lines;
}
