import { TICKS_PER_INCH, TICKS_PER_MM, type Ticks } from '../quantity/ticks.ts';
import { isSlanted } from './ends.ts';
import type { Consumable, Joint, Piece } from './model.ts';
import type { Setting } from './setting.ts';

const PRACTICE = 'common practice, no source';
const MM_PER_FOOT = 304.8;
const ML_PER_FL_OZ = 29.5735;
/** Glue spread about 0.16 mm thick: 160 mL a square meter, or half a fluid ounce a square foot. */
const GLUE = { metric: { perArea: 160, words: '160 mL a square meter' }, us: { perArea: 0.5, words: '1/2 fl oz a square foot' } };
const HOLES = { metric: { each: 0.3, words: '30 mL' }, us: { each: 0.01, words: '1 fl oz' } };
/** A tube of caulk, and the round bead it is run out as. */
const TUBE_ML = 300;
const BEAD = { metric: { mm: 5, words: '5 mm' }, us: { mm: 3 / 16 * TICKS_PER_INCH / TICKS_PER_MM, words: '3/16"' } };

/** Glue, filler and caulk: amounts to have on the job, rounded up. `holes`: nail holes in what shows. */
export function wetGoods(pieces: readonly Piece[], joints: readonly Joint[], setting: Setting, holes: number): Consumable[] {
    return [...glue(pieces, joints, setting), ...filler(holes, pieces, setting), ...caulk(pieces, setting)];
}

function isMetric({ ceiling }: Setting): boolean {
    return ceiling.room.job.show.value === 'millimeters';
}
/** Milliliters to the next ten, or whole fluid ounces. */
function amount(volume: number, setting: Setting): { count: number; unit: string } {
    return isMetric(setting) ? { count: Math.ceil(volume / 10) * 10, unit: 'mL' } : { count: Math.ceil(volume), unit: 'fl oz' };
}

function squareMm(a: Ticks, b: Ticks): number {
    return (a / TICKS_PER_MM) * (b / TICKS_PER_MM);
}

/** Cleats are glued along their whole length; butts and splices of bottoms across the end; corners along the miter or butt. */
function glue(pieces: readonly Piece[], joints: readonly Joint[], setting: Setting): Consumable[] {
    const byId = new Map(pieces.map(piece => [piece.id, piece]));
    let area = 0;
    for (const { part, back, width } of pieces) if (part === 'cleat') area += squareMm(back, width);
    for (const { kind, pieces: [id] } of joints) {
        if (kind === 'band-corner' || kind === 'band-splice') continue;
        const { width, thickness, ends } = byId.get(id)!;
        area += squareMm(width, thickness) * (ends.some(isSlanted) ? Math.SQRT2 : 1);
    }
    if (area === 0) return [];
    const { perArea, words } = isMetric(setting) ? GLUE.metric : GLUE.us;
    const glued = isMetric(setting) ? area / 1e6 : area / MM_PER_FOOT ** 2;
    const size = isMetric(setting) ? `${glued.toFixed(2)} square meters` : `${glued.toFixed(1)} square feet`;
    return [{ kind: 'glue', what: 'wood glue', ...amount(glued * perArea, setting), by: `${words} on cleats, butts, splices and corners: ${size}`, basis: PRACTICE }];
}

/** Holes of the nails in what shows. */
function filler(holes: number, pieces: readonly Piece[], setting: Setting): Consumable[] {
    if (holes === 0) return [];
    const { each, words } = isMetric(setting) ? HOLES.metric : HOLES.us;
    return [{ kind: 'filler', what: 'wood filler', ...amount(holes * each, setting), by: `${words} for 100 nail holes: ${holes} holes in sides, bottoms, ${pieces.some(({ part }) => part === 'molding') ? 'moldings, ' : ''}band and trim`, basis: PRACTICE }];
}

/** Both edges of the trim, against ceiling and beam, and both edges of the band against the wall. */
function caulk(pieces: readonly Piece[], setting: Setting): Consumable[] {
    let length: Ticks = 0;
    for (const { part, back } of pieces) if (part === 'trim' || part === 'band') length += 2 * back;
    if (length === 0) return [];
    const bead = length / TICKS_PER_MM;
    const round = isMetric(setting) ? BEAD.metric : BEAD.us;
    const beadOfTube = TUBE_ML * 1000 / (Math.PI / 4 * round.mm ** 2);
    const run = (mm: number): string => isMetric(setting) ? `${(mm / 1000).toFixed(0)} m` : `${(mm / MM_PER_FOOT).toFixed(0)} ft`;
    const tube = isMetric(setting) ? `${TUBE_ML} mL` : `${(TUBE_ML / ML_PER_FL_OZ).toFixed(1)} fl oz`;
    return [{
        kind: 'caulk', what: 'painter\'s caulk', count: Math.ceil(bead / beadOfTube), unit: 'tubes',
        by: `both edges of trim and band, ${run(bead)}; a tube of ${tube} makes ${run(beadOfTube)} of a round bead ${round.words} across`,
        basis: 'computed from the volume of the bead; its size is common practice, no source',
    }];
}
