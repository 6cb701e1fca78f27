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

/** Lengths, sizes, amounts and what else is a number with its unit or its other half, that a line ends within: by where their letters stand. */
export function brokenNumbers(page: Page): Promise<string[]> {
    return page.evaluate(() => {
        const fraction = String.raw`(?:\d+ )?\d+[\u2044/]\d+`, length = String.raw`(?:\d+' (?:${fraction}|\d+)"|\d+'|(?:${fraction}|\d+)"|\d+(?:\.\d+)? mm\b)`;
        const number = new RegExp(String.raw`${length}(?: [x×±] ${length})*|${fraction}|[\d,]+(?:\.\d+)?(?: (?:h|min|lb|kg|USD|EUR)\b| ?%)`, 'g');
        const blocks = [...document.body.querySelectorAll('*')].filter(element => !(element instanceof SVGElement) && !element.matches('script,style,option,code,input,textarea') && getComputedStyle(element).display !== 'inline'
            && element.closest('.unseen') === null && element.checkVisibility());
        return blocks.flatMap(block => {
            // its own text with what stands in line with it, each letter with the node that it comes from
            const letters: (readonly [Text, number])[] = [];
            let words = '';
            const walk = (element: Node): void => {
                for (const node of element.childNodes) {
                    if (node instanceof Text) {
                        for (let i = 0; i < node.data.length; i++) letters.push([node, i]);
                        words += node.data.replace(/\s/g, ' ');
                    } else if (node instanceof HTMLElement && getComputedStyle(node).display === 'inline') walk(node);
                    else if (node instanceof Element) { letters.push([document.createTextNode('|'), 0]); words += '|'; }
                }
            };
            walk(block);
            return [...words.matchAll(number)].filter(found => {
                const tops = letters.slice(found.index, found.index + found[0].length).filter(([node]) => node.data.trim() !== '').flatMap(([node, at]) => {
                    const range = document.createRange();
                    range.setStart(node, at);
                    range.setEnd(node, at + 1);
                    return [...range.getClientRects()].map(({ top, bottom }) => (top + bottom) / 2);
                });
                return Math.max(...tops) - Math.min(...tops) > 9;
            }).map(found => found[0]);
        });
    });
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
