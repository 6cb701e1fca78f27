import type { TextRun } from './display-list.ts';
import { grown, overlap, textExtents, type Extent } from './extent.ts';

/** Ground of the sheet that is taken: what comes later stands beside it, not on it. */
export class Claims {
    private readonly taken: Extent[] = [];

    isFree(extent: Extent): boolean {
        return !this.taken.some(other => overlap(other, extent));
    }

    take(extent: Extent): void {
        this.taken.push(extent);
    }

    /** Takes the first place that is free for all of a label's lines, or gives null and takes nothing. */
    placeFirst(candidates: Iterable<readonly TextRun[]>, allowed: (extent: Extent) => boolean = () => true): readonly TextRun[] | null {
        for (const runs of candidates) {
            const extents = runs.flatMap(textExtents).map(extent => grown(extent, 1.5));
            if (!extents.every(extent => allowed(extent) && this.isFree(extent))) continue;
            extents.forEach(extent => this.take(extent));
            return runs;
        }
        return null;
    }
}
