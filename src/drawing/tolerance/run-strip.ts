import { group, line, rectangle, sheet, text, type Group, type Item, type Sheet } from '../display-list.ts';
import { drawnFractions } from '../figures.ts';
import { paneGround } from '../paper.ts';
import { hatch } from '../fill/hatch.ts';
import { textWidth } from '../text/measure-text.ts';
import { patched } from '../patch.ts';
import type { RunPart, RunStrip } from './model.ts';

const TOP = 18, HEIGHT = 30, UNDER = 24, SIZE = 8.6;

/** A run from wall to wall, to scale along its length: lines cut through, coffers with the size they are cut at. */
export function drawRunStrip({ id, title, description, parts }: RunStrip, width: number): Sheet {
    const run = parts.reduce((sum, part) => sum + part.width, 0);
    const left = 8, k = (width - 16) / Math.max(1, run);
    let at = left;
    const stretches = parts.map(part => {
        const from = at;
        at += part.width * k;
        return { part, from, to: at };
    });
    const foot = TOP + HEIGHT;
    return sheet({ id, title, description }, paneGround(width, foot + UNDER), [
        line([left, TOP - 6], [left, foot + 6], 'border'), line([at, TOP - 6], [at, foot + 6], 'border'),
        ...stretches.map(({ part, from, to }, i) => drawn(part, from, to, i)),
    ]);
}

function drawn(part: RunPart, from: number, to: number, i: number): Group {
    const foot = TOP + HEIGHT, middle = (from + to) / 2;
    const fits = (words: string) => textWidth(words, SIZE, 600) <= to - from - 4;
    const items: Item[] = [];
    if (part.kind === 'coffer') {
        items.push(rectangle(from, TOP, to, foot, null, 'paper'));
        if (part.differs !== undefined) items.push(rectangle(from + 1, TOP, to - 1, foot, null, 'wash'));
        items.push(line([from, TOP], [to, TOP], 'thin'));
        const figure = drawnFractions(part.figure);
        if (fits(figure)) items.push(text([middle, TOP + HEIGHT / 2 + 3], figure, { size: SIZE, anchor: 'middle' }));
        if (part.differs !== undefined && fits(part.differs)) items.push(text([middle, foot + 12], drawnFractions(part.differs), { size: SIZE, weight: 600, anchor: 'middle' }), line([middle, foot + 3], [middle, foot - 4], 'tick'));
    } else {
        items.push(rectangle(from, TOP, to, foot, 'edge', part.kind === 'band' ? 'tint' : 'paper'));
        if (part.kind === 'line') items.push(...hatch([[from, TOP], [to, TOP], [to, foot], [from, foot]], 3.4, true));
        if (part.kind === 'line') items.push(...patched(text([middle, TOP - 7], part.name, { size: SIZE, weight: 600, anchor: 'middle' }), 'paper'));
    }
    return group(`part.${i}`, { title: part.name === '' ? part.figure : `${part.name}, ${part.figure}` }, items);
}
