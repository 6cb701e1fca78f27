/** How many strips of each lane lie abreast; index 0 is lane 1. */
export type Ripping = readonly number[];

/** Every way to rip a width that no further strip of these lanes could be added to. Undefined where there are more than `most`. */
export function rippingsOf(strips: readonly number[], lanes: readonly number[], across: number, most: number): Ripping[] | undefined {
    const all: Ripping[] = [];
    const narrowest = Math.min(...lanes.map(lane => strips[lane - 1]!));
    const chosen = strips.map(() => 0);
    let tried = 0;
    const search = (from: number, room: number): void => {
        if (++tried > 20 * most || all.length > most) return;
        if (room < narrowest || from === lanes.length) {
            if (room < narrowest && chosen.some(count => count > 0)) all.push([...chosen]);
            return;
        }
        const lane = lanes[from]! - 1, width = strips[lane]!;
        for (let count = Math.floor(room / width); count >= 0; count--) {
            chosen[lane] = count;
            search(from + 1, room - count * width);
        }
        chosen[lane] = 0;
    };
    search(0, across);
    return tried > 20 * most || all.length > most ? undefined : all;
}
