/** A run of numbers between 0 and 1 that is the same for the same seed (mulberry32). */
export function seeded(seed: number): () => number {
    let state = seed >>> 0;
    return () => {
        state = (state + 0x6D2B79F5) >>> 0;
        let t = state;
        t = Math.imul(t ^ (t >>> 15), t | 1);
        t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
        return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
    };
}

/** What a hand types, pastes by mistake or leaves half done. */
const SCRAPS = [
    '{', '}', '(', ')', '"', '\'', '/', '// ', '/* ', ';', ',', ':', '=', ' ', '\n', '\n\n', '  ', '1', '3/8', '1/2"', ' 5\' 6 1/4"', ' 12 mm', 'x', ' to ', ' per ', '#20', '16 ga',
    'room den {\n', 'room den "Den" {\n  grid {\n    coffers-north 3\n  }\n}\n', 'stock pine-1x6 {\n  size 1x6\n}\n', 'profile slim(groove: Length = 1/8") like groove-box {\n}\n', 'wall north 12\' 2"\n',
    'coffers-north 5\n', 'coffer-size 3\' to 4\'\n', 'line B { beams groove-box }\n', 'fixture lamp light at 3\', 4\'\n', 'beams ', 'north-south', 'mitered', 'from "../yard.coffer" use poplar-1x6\n',
    'job "Other" { currency "EUR" }\n', 'let a = 1/4"\n', '// allow depths-nearly-equal: seen\n', 'require groove < 1"\n', '\u00bd', '\u2033', '\r\n', '\u0000', '\ud83d\ude00', 'edition 1\n',
];

/** The text after one more edit; now and then the editor's undo brings back the whole. */
export function edited(text: string, original: string, random: () => number): string {
    const pick = (below: number): number => Math.floor(random() * below);
    if (random() < 0.04 || text.length > 2 * original.length + 400) return original;
    const at = pick(text.length + 1), lines = text.split('\n'), line = pick(lines.length);
    switch (pick(6)) {
        case 0: case 1: return text.slice(0, at) + SCRAPS[pick(SCRAPS.length)]! + text.slice(at);
        case 2: return text.slice(0, at) + text.slice(at + 1 + pick(12));
        case 3: return lines.toSpliced(line, 1).join('\n');
        case 4: return lines.toSpliced(line, 0, lines[pick(lines.length)]!).join('\n');
        default: return text.replace(/\d+/g, (number, offset: number) => offset >= at && offset < at + 60 ? String(pick(20)) : number);
    }
}
