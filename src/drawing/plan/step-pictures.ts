import type { Group, Item, Sheet } from '../display-list.ts';
import { coordinate, pathData } from '../svg/path-data.ts';
import { SHEET_CLASS } from '../svg/style-sheet.ts';
import { toPaneSvg } from '../svg/svg.ts';
import { stepNumber } from './steps-plan.ts';
import { escapeAttribute } from '../../text/xml.ts';

/** Pictures of the plan at each of its steps, for one page that shows them all. */
export interface StepPictures {
    /** What the pictures are made of: markup to stand once in the page, before them. */
    readonly parts: string;
    /**
     * The plan while the step of this number is done: groups of the classes `up`, `now` and `later`, which the page gives fill and stroke.
     * `words`: what it shows.
     */
    pictureOf(number: number, words: string): string;
}

/**
 * Every picture names its parts and repeats none: the walls, all pieces as they are to be, what is up by blocks of 1, 2, 4, 8 … steps, and what goes up. So a
 * page with all of them grows hardly faster than its steps.
 */
export function stepPictures(sheet: Sheet): StepPictures {
    const { paper: { width, height }, items } = sheet, steps = items.filter((item): item is Group => item.kind === 'group' && stepNumber(item) !== undefined);
    const count = steps.length, ground = toPaneSvg({ ...sheet, items: items.filter(item => !steps.includes(item as Group)) });
    const blocks: string[] = [];
    for (let size = 2; size <= count; size *= 2) {
        for (let from = 0; from + size <= count; from += size) blocks.push(`<g id="${blockId(from, size)}">${use(blockId(from, size / 2))}${use(blockId(from + size / 2, size / 2))}</g>`);
    }
    const box = `viewBox="0 0 ${coordinate(width)} ${coordinate(height)}"`;
    return {
        // not hidden: what is not laid out is not drawn where it is named either
        parts: [
            '<svg class="parts" width="0" height="0" aria-hidden="true"><defs>',
            // where it is named it is looked at as if it stood there alone, so its class is its own
            `<g id="step-ground" class="${SHEET_CLASS}">${inner(ground)}</g>`,
            ...steps.map((step, i) => `<g id="${blockId(i, 1)}">${step.items.map(outline).join('')}</g>`), ...blocks,
            `<g id="step-all">${blocksOf(count).map(([from, size]) => use(blockId(from, size))).join('')}</g>`, '</defs></svg>',
        ].join('\n'),
        pictureOf: (number, words) => {
            const nth = steps.findIndex(step => stepNumber(step) === number);
            const up = blocksOf(nth).map(([from, size]) => use(blockId(from, size))).join('');
            return `<svg ${box} role="img" aria-label="${escapeAttribute(words)}">${use('step-all', 'later')}<g class="up">${up}</g>${use(blockId(nth, 1), 'now')}${use('step-ground')}</svg>`;
        },
    };
}

function blockId(from: number, size: number): string {
    return `steps-${from}-${size}`;
}

/** The first so many, in blocks as large as there are. */
function blocksOf(count: number): (readonly [from: number, size: number])[] {
    const blocks: (readonly [number, number])[] = [];
    for (let from = 0; from < count;) {
        const size = 2 ** Math.floor(Math.log2(count - from));
        blocks.push([from, size]);
        from += size;
    }
    return blocks;
}

function use(id: string, look?: string): string {
    return `<use href="#${id}"${look === undefined ? '' : ` class="${look}"`}/>`;
}

/** A piece without a look of its own: it takes that of the picture it is named in. */
function outline(piece: Item): string {
    return piece.kind === 'group' ? piece.items.map(item => (item.kind === 'polyline' ? `<path d="${pathData([item])}"/>` : '')).join('') : '';
}

/** What stands in a drawing, without the drawing round it. */
function inner(svg: string): string {
    return svg.slice(svg.indexOf('</desc>') + '</desc>'.length, svg.lastIndexOf('</svg>'));
}
