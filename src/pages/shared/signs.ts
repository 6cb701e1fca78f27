import { attributes, html, type Html } from './html.ts';

/** Signs on buttons that go along something, drawn filled on a ground of 16 by 16: letters for them are not in every font. */
export const SIGNS = {
    first: 'M3 3h2v10h-2zM13 3v10l-7-5z', back: 'M10.5 2.5l1.5 1.5-4 4 4 4-1.5 1.5-5.5-5.5z', on: 'M5.5 2.5l-1.5 1.5 4 4-4 4 1.5 1.5 5.5-5.5z', last: 'M3 3v10l7-5zM11 3h2v10h-2z',
    play: 'M4.5 2.5v11l8-5.5z', playBack: 'M11.5 2.5v11l-8-5.5z', stop: 'M3.5 3h3.2v10h-3.2zM9.3 3h3.2v10h-3.2z',
} as const;

export function sign(act: string, name: string, path: string, disabled = false): Html {
    return html`<button type="button" class="sign" ${attributes({ id: `act-${act}`, 'data-act': act, title: name, 'aria-label': name, disabled })}><svg viewBox="0 0 16 16" aria-hidden="true"><path ${attributes({ d: path })}/></svg></button>`;
}
