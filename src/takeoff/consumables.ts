import { sectionLooking } from '../ceiling/flanks.ts';
import type { Blocking, Nails, Profile } from '../job/model.ts';
import { PLURAL } from '../job/part.ts';
import { counted, listed } from '../plain/words.ts';
import type { Given } from '../provenance/source.ts';
import { TICKS_PER_INCH, TICKS_PER_MM } from '../quantity/ticks.ts';
import { abreast, holdingOf } from './holding.ts';
import { inRow, ONE_SCREW_UP_TO } from './in-row.ts';
import type { Consumable, Joint, Piece } from './model.ts';
import type { Setting } from './setting.ts';
import { POCKET_SCREWS_A_SPACER } from './spacers.ts';
import { wetGoods } from './wet-goods.ts';

const PRACTICE = 'common practice, no source';
/** Rows of nails along a piece; of a panel as many as it is wide. */
const ROWS = { side: 1, cleat: 1, bottom: 2, molding: 1, band: 2, trim: 1, panel: 2 } as const;
/** Between two rows of a panel: as far apart as joists mostly are. */
const ROWS_APART = 16 * TICKS_PER_INCH;
const NAILS_A_SPACER_END = 2;

/** Screws, nails, biscuits, glue, filler and caulk, each with the rule it is counted by. What the job does not say how to fasten is not counted. */
export function consumablesOf(pieces: readonly Piece[], joints: readonly Joint[], setting: Setting): Consumable[] {
    // cleats are hidden
    const holes = nailsOf(pieces, setting).reduce((sum, { part, nails: { count } }) => sum + (part === 'cleat' ? 0 : count), 0);
    return [...fastenersOf(pieces, joints, setting), ...wetGoods(pieces, joints, setting, holes)];
}

/** Biscuits of these joints, screws and nails of these pieces. */
export function fastenersOf(pieces: readonly Piece[], joints: readonly Joint[], setting: Setting): Consumable[] {
    return [...biscuits(joints), ...blockingScrews(pieces, setting), ...pocketScrews(pieces, setting), ...nailsOf(pieces, setting).map(({ nails }) => nails)];
}

function biscuits(joints: readonly Joint[]): Consumable[] {
    const bySize = new Map<string, { count: number; butts: number; splices: number }>();
    for (const { kind, biscuits: put } of joints) {
        if (!put) continue;
        const sum = bySize.get(put.size) ?? { count: 0, butts: 0, splices: 0 };
        bySize.set(put.size, { count: sum.count + put.count, butts: sum.butts + (kind === 'butt' ? 1 : 0), splices: sum.splices + (kind === 'splice' ? 1 : 0) });
    }
    return [...bySize].map(([size, { count, butts, splices }]) => ({
        kind: 'biscuits', what: `${size} biscuits`, count, unit: 'pieces', basis: PRACTICE,
        by: `as the profile says, in ${listed([...butts > 0 ? [counted(butts, 'butt joint')] : [], ...splices > 0 ? [counted(splices, 'splice')] : []])} of bottoms`,
    }));
}

/**
 * The profile that a piece belongs to, which one of a band has not: its line's, as the flank has it that it stands on; its half beam's; of trim and panels
 * the grid's.
 */
function profileOf({ line, part, on }: Piece, { ceiling, beam }: Setting): Profile {
    if (part === 'trim' || part === 'panel') return ceiling.beams!.profile;
    const own = beam(line ?? on!)!;
    return ('otherSide' in own ? sectionLooking(own, on) : own.section).profile;
}

function blockingScrews(pieces: readonly Piece[], setting: Setting): Consumable[] {
    const counts = new Counts<NonNullable<Blocking['screws']>['value']>(screw => `#${screw.gauge} x ${setting.size(screw.length)} screws, blocking|${screw.every}`);
    const holding = holdingOf(setting.ceiling, pieces), held = new Map(holding?.held.map(one => [one.piece, one]));
    let backed = 0;
    for (const piece of pieces) {
        const screws = piece.part === 'blocking' ? profileOf(piece, setting).blocking!.screws?.value : undefined;
        if (!screws) continue;
        const one = held.get(piece);
        if (one) backed += one.intoBacking!;
        counts.add(screws, one ? one.screws! + one.intoBacking! : inRow(piece.back, screws.every) * abreast(piece));
    }
    const twoAbreast = `two side by side where it is wider than ${setting.size(ONE_SCREW_UP_TO)}`;
    return counts.list((screws, what, count) => ({
        kind: 'screws', what, count, unit: 'pieces',
        by: holding ? `one at every joist that the blocking crosses, ${twoAbreast}; at most ${setting.size(screws.every)} apart along a joist${backed > 0 ? ', and along backing where there is none' : ''}`
            : `at most ${setting.size(screws.every)} apart with one at each end of every piece, ${twoAbreast}; joists are not known`,
        basis: PRACTICE,
    }));
}

function pocketScrews(pieces: readonly Piece[], setting: Setting): Consumable[] {
    const spacers = pieces.filter(piece => piece.part === 'spacer');
    if (spacers.length === 0) return [];
    const usual = spacers.every(piece => Math.abs(piece.thickness - 0.75 * TICKS_PER_INCH) <= TICKS_PER_MM);
    return [{
        kind: 'screws', what: usual ? `${setting.size(1.25 * TICKS_PER_INCH)} pocket screws, spacers` : 'pocket screws, spacers',
        count: spacers.length * POCKET_SCREWS_A_SPACER, unit: 'pieces',
        by: `${POCKET_SCREWS_A_SPACER} a spacer; coarse thread in softwood, fine in hardwood`, basis: PRACTICE,
    }];
}

function nailsOf(pieces: readonly Piece[], setting: Setting): { readonly part: Nailed; readonly nails: Consumable }[] {
    const spacersIn = new Map<string, number>();
    for (const { part, line, bay } of pieces) if (part === 'spacer') spacersIn.set(`${line} ${bay}`, (spacersIn.get(`${line} ${bay}`) ?? 0) + 1);
    return (['panel', 'side', 'cleat', 'bottom', 'molding', 'band', 'trim'] as const).flatMap(part => {
        const rows = ROWS[part];
        const counts = new Counts<Nails & { readonly into: string }>(({ gauge, length, every, into }) => `${gauge} ga x ${setting.size(length)} nails, ${PLURAL[part]}|${every}|${into}`);
        for (const piece of pieces) {
            const nails = piece.part === part ? nailsFor(part, piece, setting)?.value : undefined;
            if (!nails) continue;
            const spacers = part === 'side' ? spacersIn.get(`${piece.line} ${piece.bay}`) ?? 0 : 0;
            counts.add({ ...nails, into: intoOf(part, piece, setting) }, (part === 'panel' ? inRow(piece.width, ROWS_APART) : rows) * inRow(piece.back, nails.every) + NAILS_A_SPACER_END * spacers);
        }
        const listed = counts.list((nails, what, count) => ({
            kind: 'nails', what, count, unit: 'pieces',
            by: `${part === 'panel' ? `rows along the panel, one at either edge and at most ${setting.size(ROWS_APART)} apart,` : rows === 1 ? 'a row' : `${rows} rows`} ${nails.into}, at most ${setting.size(nails.every)} apart with one at each end`
                + (part === 'side' && spacersIn.size > 0 ? `; ${NAILS_A_SPACER_END} into every spacer` : ''),
            basis: PRACTICE,
        }));
        return listed.map(nails => ({ part, nails }));
    });
}
type Nailed = 'panel' | 'side' | 'cleat' | 'bottom' | 'molding' | 'band' | 'trim';

/** What its nails go into. */
function intoOf(part: Nailed, piece: Piece, setting: Setting): string {
    if (part === 'band') return 'into the wall';
    const { blocking, bottom, cleats, under } = profileOf(piece, setting);
    switch (part) {
        case 'side': return blocking ? 'into the blocking' : 'into what the beam wraps, or blocks on it';
        case 'bottom': switch (bottom!.place.value) {
            case 'under-sides': return 'into the edges of the sides';
            case 'in-rabbets': return 'into the rabbets of the sides';
            case 'between-sides': return cleats ? 'into the cleats' : 'along its edges';
        }
        case 'panel': return 'into the joists and the ceiling';
        case 'molding': return under!.place.value === 'under-beam' ? 'up into side and bottom' : 'into the side';
        case 'cleat': case 'trim': return 'into the side';
    }
}

function nailsFor(part: Nailed, piece: Piece, setting: Setting): Given<Nails> | undefined {
    if (part === 'band') return setting.ceiling.around[piece.on!]!.perimeter.nails;
    const { sides, cleats, bottom, trim, under, back } = profileOf(piece, setting);
    return { side: sides, cleat: cleats, bottom, trim, molding: under, panel: back }[part]!.nails;
}

/** Counts of equal fasteners, in the order they first came. */
class Counts<T> {
    private readonly sums = new Map<string, { of: T; count: number }>();
    constructor(private readonly key: (of: T) => string) {}

    add(of: T, count: number): void {
        const key = this.key(of);
        this.sums.set(key, { of, count: count + (this.sums.get(key)?.count ?? 0) });
    }
    list(make: (of: T, what: string, count: number) => Consumable): Consumable[] {
        return [...this.sums].map(([key, { of, count }]) => make(of, key.split('|')[0]!, count));
    }
}
