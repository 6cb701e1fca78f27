import { REST_MS, type Typing } from './typing.ts';

/** After a word or two: who types a single figure sees what it comes to before there is anything to be told. From the first key, in milliseconds. */
export const HOLDS_MS = REST_MS + 800;

/** Tells whether pictures, figures and findings hold still, since somebody goes on typing: or their reader would take them for what the text says now. */
export function tellHolding(typing: Typing, tell: (still: boolean) => void): void {
    let waiting: ReturnType<typeof setTimeout> | undefined, told = false;
    typing.onBegin(() => {
        waiting = setTimeout(() => {
            told = true;
            tell(true);
        }, HOLDS_MS);
    });
    typing.onRest(() => {
        clearTimeout(waiting);
        if (!told) return;
        told = false;
        tell(false);
    });
}
