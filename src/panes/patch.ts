import morphdom from 'morphdom';

/**
 * Makes what is on the screen like new markup, by changing only what differs: so focus, scroll, open menus and zoom stay.
 * Markup that keeps attributes for itself once it is there names them in `data-keep` ("viewBox").
 */
export function patch(target: Element, markup: string): void {
    const next = target.cloneNode(false) as Element;
    next.innerHTML = markup;
    morphdom(target, next, {
        childrenOnly: true,
        onBeforeElUpdated(from, to) {
            if (from.isEqualNode(to)) return false;
            if (from instanceof HTMLDetailsElement) (to as HTMLDetailsElement).open = from.open;
            // a field that is being used is its user's
            if (from === document.activeElement && from instanceof HTMLInputElement && from.type !== 'checkbox') (to as HTMLInputElement).value = from.value;
            for (const name of (from.getAttribute('data-keep') ?? '').split(' ').filter(Boolean)) {
                const value = from.getAttribute(name);
                if (value !== null) to.setAttribute(name, value);
            }
            // what a canvas or a script has drawn itself
            return !from.hasAttribute('data-own');
        },
    });
}
