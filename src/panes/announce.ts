import { cleanText } from '../text/clean-text.ts';

/** Where words for a screen reader go; it reads what changes there, when it has nothing else to say. */
const region = document.createElement('div');
region.className = 'unseen';
region.setAttribute('role', 'status');
region.setAttribute('aria-live', 'polite');
document.body.append(region);

let said = '';
export function announce(words: string): void {
    if (words === said) return;
    said = words;
    region.textContent = cleanText(words);
}
