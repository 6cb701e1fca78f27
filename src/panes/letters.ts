/** The letters that lengths and drawings are set in: src/panes/fonts.css. */
export const FACES = [`400 1em 'Barlow Semi Condensed'`, `600 1em 'Barlow Semi Condensed'`];
/** Longer nobody waits for them, in milliseconds: a picture that moves its lines once is better than none. */
const LIMIT = 500;

/**
 * Hands on what comes in, in its order, once the letters are there: a first picture in other letters would move all its lines when these come. They are
 * asked for at once, and come while the content is still being made.
 */
export function onceLettersAreThere(receive: (message: MessageEvent) => void): (message: MessageEvent) => void {
    let waiting: MessageEvent[] | undefined = [];
    const go = (): void => {
        const all = waiting ?? [];
        waiting = undefined;
        all.forEach(receive);
    };
    const faces = Promise.allSettled(FACES.map(face => document.fonts.load(face)));
    void Promise.race([faces, new Promise(resolve => { setTimeout(resolve, LIMIT); })]).then(go);
    return message => { if (waiting) waiting.push(message); else receive(message); };
}
