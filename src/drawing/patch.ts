import { polygon, rectangle, type Item, type TextRun } from './display-list.ts';
import { grown, textCorners, textExtent } from './extent.ts';
import type { Tone } from './themes.ts';

/** Text with a patch behind it, so that lines stop short of the words: the same on every output, unlike a stroked halo. */
export function patched(run: TextRun, ground: Tone): readonly Item[] {
    if (run.turned % 90 !== 0) return [polygon(textCorners(run, 1.2), null, ground), run];
    const { left, top, right, foot } = grown(textExtent(run), 1.2);
    return [rectangle(left, top, right, foot, null, ground), run];
}
