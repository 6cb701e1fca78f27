import { parser } from 'sax';

interface Element { readonly name: string; readonly attributes: Readonly<Record<string, string>>; readonly children: Element[]; text: string }

/** Reads XML as strictly as the standard asks; throws at the first fault. `text` is what stands in the element itself. */
export function readXml(text: string): Element {
    const root: Element = { name: '', attributes: {}, children: [], text: '' };
    const open = [root];
    const reader = parser(true);
    reader.onerror = error => { throw error; };
    reader.onopentag = ({ name, attributes }) => {
        const element: Element = { name, attributes, children: [], text: '' };
        open.at(-1)!.children.push(element);
        open.push(element);
    };
    reader.onclosetag = () => { open.pop(); };
    reader.ontext = words => { open.at(-1)!.text += words; };
    reader.write(text).close();
    return root.children[0]!;
}

export function all(element: Element): readonly Element[] {
    return [element, ...element.children.flatMap(all)];
}

/** Text of an element with that of the elements in it. */
export function wholeText(element: Element): string {
    return element.text + element.children.map(wholeText).join('');
}
