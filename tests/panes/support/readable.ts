import type { Page } from 'playwright-core';

/** Words on the screen whose letters are smaller than `least` CSS pixels, a drawing's among them, each with its size. Those of no size stand behind an icon. */
export function smallLetters(page: Page, least: number): Promise<string[]> {
    return page.evaluate(pixels => {
        const seen = (element: Element): boolean => element.checkVisibility() && element.closest('.unseen') === null;
        const sizeOf = (element: Element): number => {
            const scale = element instanceof SVGGraphicsElement ? Math.hypot(element.getScreenCTM()!.a, element.getScreenCTM()!.b) : 1;
            return parseFloat(getComputedStyle(element).fontSize) * scale;
        };
        const own = (element: Element): string => [...element.childNodes].filter(node => node.nodeType === Node.TEXT_NODE).map(node => node.textContent ?? '').join(' ').trim();
        const skip = 'title,desc,style,script,option';
        return [...document.body.querySelectorAll('*')].filter(element => own(element) !== '' && !element.matches(skip) && seen(element))
            .map(element => [sizeOf(element), own(element)] as const).filter(([size]) => size > 0 && size < pixels - 0.05).map(([size, words]) => `${size.toFixed(1)}: ${words}`);
    }, least);
}

/** Lengths that a line ends within. */
export function brokenLengths(page: Page): Promise<string[]> {
    return page.evaluate(() => [...document.querySelectorAll('.len')].filter(element => element.checkVisibility() && element.getClientRects().length > 1).map(element => element.textContent ?? ''));
}

/** What sticks out of the pane sideways, where nothing scrolls it into sight. */
export function overTheEdge(page: Page): Promise<string[]> {
    return page.evaluate(() => {
        const wide = document.documentElement.clientWidth + 1;
        const scrolls = (element: Element | null): boolean => element !== null
            && (['auto', 'scroll'].includes(getComputedStyle(element).overflowX) && element.scrollWidth > element.clientWidth && element.id !== 'page' || scrolls(element.parentElement));
        return [...document.body.querySelectorAll('button,select,summary,td,th,p,h1,h2,h3,li,svg,figure')]
            .filter(element => element.checkVisibility() && element.getBoundingClientRect().right > wide && !scrolls(element) && element.closest('.unseen') === null)
            .map(element => `${element.tagName.toLowerCase()} ${(element.textContent ?? '').trim().slice(0, 40)}`);
    });
}
