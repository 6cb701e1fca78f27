import { STEPS, type Effort } from './effort.ts';
import { lotsOf, type Lot } from './table.ts';

/**
 * What so many strips of one lane abreast are worth together at most, given that no piece is cut more often than it is wanted: no more than as
 * many times the best strip, and no more than the best content of one strip that is as long as all of them. Alone the best strip would
 * stand there several times over, and what is wanted five times would seem to fill six strips.
 */
export class Abreast {
    private readonly stages: readonly { readonly size: number; readonly lots: readonly Lot[] }[];
    private readonly total: number;
    /** By the number of strips less one, then by place. */
    private readonly worths: Float64Array[];
    private together = new Float64Array(0);

    /** @param places the lengths of strips that are looked at, rising; @param most so many strips lie abreast at the most */
    constructor(
        sizes: readonly number[], counts: readonly number[], among: readonly number[], private readonly places: readonly number[],
        private readonly most: number, private readonly effort: Effort,
    ) {
        this.worths = Array.from({ length: most }, () => new Float64Array(places.length));
        const longest = places.at(-1) ?? 0;
        const scarce = among.some(i => counts[i]! < most * Math.floor(longest / sizes[i]!));
        const rising = [...among].sort((a, b) => sizes[a]! - sizes[b]!);
        this.total = Math.min(most * longest, among.reduce((sum, i) => sum + sizes[i]! * counts[i]!, 0));
        const stages = rising.map(i => ({ size: sizes[i]!, lots: lotsOf(i, sizes[i]!, Math.min(counts[i]!, Math.floor(this.total / sizes[i]!))) }));
        const cells = this.total * stages.reduce((sum, { lots }) => sum + lots.length, 0);
        this.stages = scarce && most > 1 && cells <= MOST_CELLS ? stages : [];
    }

    /** @param strip what the best strip of every length is worth */
    fill(values: ArrayLike<number>, strip: Float64Array): void {
        const { places, stages, total } = this;
        this.effort.spent += places.length * this.most * STEPS.placed;
        if (stages.length === 0) {
            places.forEach((size, p) => { for (let n = 1; n <= this.most; n++) this.worths[n - 1]![p] = n * strip[size]!; });
            return;
        }
        if (this.together.length === 0) this.together = new Float64Array(total + 1);
        const together = this.together.fill(0);
        let p = 0;
        const upTo = (below: number): void => {
            for (; p < places.length && places[p]! < below; p++) {
                const size = places[p]!;
                for (let n = 1; n <= this.most; n++) this.worths[n - 1]![p] = Math.min(n * strip[size]!, together[Math.min(total, n * size)]!);
            }
        };
        // a piece that is longer than the strips lies on none of them
        for (const { size, lots } of stages) {
            upTo(size);
            for (const lot of lots) {
                const value = values[lot.item]! * lot.count;
                if (!(value > 0)) continue;
                for (let room = total; room >= lot.size; room--) {
                    const worth = together[room - lot.size]! + value;
                    if (worth > together[room]!) together[room] = worth;
                }
                this.effort.spent += 2.5 * (total - lot.size) * STEPS.cell;
            }
        }
        upTo(Infinity);
    }

    at(strips: number, place: number): number {
        return this.worths[strips - 1]![place]!;
    }
}
const MOST_CELLS = 2_000_000;
