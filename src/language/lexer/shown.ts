const LONGEST = 40;

/** Words of the file in a message: between backticks, cut where they go on for long, without what cannot be seen. */
export function shown(text: string): string {
    const seen = text.replace(/\p{C}/gu, '');
    return `\`${seen.length > LONGEST ? `${seen.slice(0, LONGEST).trimEnd()}…` : seen}\``;
}
