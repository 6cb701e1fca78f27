/** What takes the focus by the Tab key. */
const STOPS = 'button:not(:disabled),select,summary,input:not(:disabled),[tabindex="0"]';

/**
 * Does a change of what is on the screen so that the focus is not lost with what had it: it goes to what stands at that place now, else to
 * what stands before it. A list that gets shorter, a card that closes and a search that ends leave the keyboard where it was at work.
 */
export function keepingFocus(root: Element, change: () => void): void {
    const had = document.activeElement, around = had && had !== root && root.contains(had) ? placesOf(had, root) : [];
    change();
    if (around.length === 0 || had!.isConnected) return;
    for (const { parent, at } of around) {
        if (!parent.isConnected) continue;
        const stops = [...parent.querySelectorAll<HTMLElement>(STOPS)].filter(stop => stop.checkVisibility());
        const behind = [...parent.children].slice(at), next = stops.find(stop => behind.some(child => child.contains(stop))) ?? stops.at(-1);
        if (next) return next.focus({ preventScroll: true });
    }
}

/** An element's place in what holds it, then the place of that, up to the root. */
function placesOf(element: Element, root: Element): readonly { readonly parent: Element; readonly at: number }[] {
    const places: { parent: Element; at: number }[] = [];
    for (let at: Element = element; at !== root && at.parentElement; at = at.parentElement) {
        places.push({ parent: at.parentElement, at: [...at.parentElement.children].indexOf(at) });
    }
    return places;
}

/**
 * A browser forgets what had the focus in a frame when the focus goes to another one. So who picks a part by Enter, reads its words in the text and comes back
 * would begin at the top: what had the focus last has it again. Not where somebody points at something.
 */
export function comeBackTo(root: Element): void {
    let last: Element | undefined, isPointed = false;
    root.addEventListener('focusin', ({ target }) => { last = target as Element; });
    document.addEventListener('pointerdown', () => { isPointed = true; }, true);
    window.addEventListener('blur', () => { isPointed = false; });
    window.addEventListener('focus', () => {
        const isLost = document.activeElement === null || document.activeElement === document.body;
        if (!isPointed && isLost && last?.isConnected) (last as HTMLElement | SVGElement).focus({ preventScroll: true });
    });
}
