import { PARTS, type Piece } from './model.ts';
import { compareTexts } from '../plain/order.ts';

/** By room, part, then name, figures by their size: spacer-A-1-2 before spacer-A-1-10. The same on every machine. */
export function comparePieces(a: Piece, b: Piece): number {
    return compareNames(a.room, b.room) || PARTS.indexOf(a.part) - PARTS.indexOf(b.part) || compareNames(a.id, b.id);
}

export function compareNames(a: string, b: string): number {
    if (a === b) return 0;
    const [as, bs] = [a.split(/(\d+)/), b.split(/(\d+)/)];
    for (let i = 0; i < Math.min(as.length, bs.length); i++) {
        // Every second part is a run of figures.
        const order = i % 2 === 1 ? compareFigures(as[i]!, bs[i]!) : compareTexts(as[i]!, bs[i]!);
        if (order !== 0) return order;
    }
    return as.length - bs.length;
}

function compareFigures(a: string, b: string): number {
    return Number(a) - Number(b) || compareTexts(a, b);
}
