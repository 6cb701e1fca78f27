import { SIDES, type Bottom, type Blocking, type Cleats, type Fixture, type Grid, type JobSettings, type LineSpec, type Perimeter, type Price, type Profile, type Rabbet, type Room, type RoomWall, type Side, type Sides, type Spacers, type Spacing, type Stock, type Trim, type Under } from '../../src/job/model.ts';
import type { Given, Source } from '../../src/provenance/source.ts';
import type { Measure } from '../../src/quantity/measure.ts';
import { Rational, toTicks } from '../../src/quantity/rational.ts';
import { readLength } from '../../src/quantity/read-length.ts';
import { TICKS_PER_FOOT, type Ticks } from '../../src/quantity/ticks.ts';
import { NO_RATES } from './no-rates.ts';
import { within, exactly } from '../../src/quantity/tolerance.ts';

/** A length as a job writes it, `18' 4"` or `140 mm`, or ticks. */
export type Length = string | Ticks;

export function ticksOf(length: Length): Ticks {
    if (typeof length === 'number') return length;
    const read = readLength(length);
    if (!read) throw new Error(`no length: ${length}`);
    return toTicks(read);
}

type Corners = Sides['corners']['value'];
const edgeOf = (words: string): Pick<Rabbet, 'edge' | 'face'> => ({ edge: words.startsWith('lower') ? 'lower' : 'upper', face: words.endsWith('back') ? 'back' : 'front' });
type Direction = 'north-south' | 'east-west';
export interface StockWords {
    thickness?: Length; width?: Length; widthOff?: Length; thicknessOff?: Length; lengths?: Length[]; rippedWith?: string; species?: string;
    perFoot?: number;
}
interface PartWords { stock?: Stock; rip?: Length; ripOff?: Length; ripWith?: string }
interface NailWords { gauge: number; length: Length; every: Length }
export interface ProfileWords {
    blocking?: (PartWords & { fit?: Blocking['fit']['value']; relief?: Length; clearance?: Length; screws?: NailWords }) | null;
    spacers?: (PartWords & { height?: Length; every?: Length; fromEnd?: Length }) | null;
    sides?: PartWords & { heldDown?: Length; rabbet?: [Length, Length]; edge?: 'lower-back' | 'lower-front' | 'upper-back' | 'upper-front'; corners?: Corners; past?: Direction; nails?: NailWords };
    cleats?: { stock?: Stock; thickness?: Length; height?: Length; gauge?: Length; shortEachEnd?: Length; nails?: NailWords } | null;
    bottom?: PartWords & { place?: Bottom['place']['value']; overhang?: Length; gap?: [Length, Length]; ease?: Length; biscuits?: [number, string]; press?: Length; nails?: NailWords };
    trim?: (PartWords & { corners?: Trim['corners']['value']; nails?: NailWords }) | null;
    solid?: PartWords | null;
    under?: (PartWords & { place?: Under['place']['value']; overhang?: string }) | null;
}
export type SpacingWords = { coffers: number } | { size: [Length, Length] } | { lines: Length[]; from?: 'north-west' | 'north-east' | 'south-west' | 'south-east' };
interface LineWords { beams?: Profile; heldDown?: Length; from?: string; until?: string; splices?: ({ at: Length; from?: string } | Length)[] }
export interface PerimeterWords { stock?: Stock; rip?: Length; belowBeams?: Length; kind?: Perimeter['kind']['value']; nails?: NailWords; width?: Length; beams?: Profile }
export interface RoomWords {
    job?: JobSettings;
    walls?: Partial<Record<Side, Length>>;
    /** Walls of any room, clockwise, each with its way in degrees from north; one without a length is found from the others. */
    wallList?: readonly { readonly name: string; readonly length?: Length; readonly bearing: number }[];
    /** The north and south walls, and the east and west walls: short for `walls`. */
    width?: Length; length?: Length;
    north?: SpacingWords; east?: SpacingWords;
    beams?: Profile;
    through?: Direction;
    residue?: Grid['residue']['value'];
    splices?: Grid['splices']['value'];
    band?: PerimeterWords | null;
    /** Of single walls, where they differ from `band`. */
    around?: Partial<Record<Side, PerimeterWords | null>>;
    lines?: Record<string, LineWords>;
    centeredOn?: { x: Length; y: Length; name?: string };
    broken?: boolean;
    notComputed?: Room['notComputed'];
}

/**
 * Jobs as plain data, for tests of what comes after the language. Every value gets words of its own (each on a line of
 * its own in a text that nobody wrote), and the built-in defaults where nothing else is said.
 */
export function jobBuilder(uri = 'file:///job/house.coffer') {
    let line = 0;
    const at = (): Source => ({ uri, range: { start: { line: ++line, character: 0 }, end: { line, character: 8 } } });
    const said = <T>(value: T): Given<T> => ({ value, at: at(), said: true });
    const byDefault = <T>(value: T): Given<T> => ({ value, at: at(), said: false });
    const orDefault = <T>(value: T | undefined, standing: T): Given<T> => value === undefined ? byDefault(standing) : said(value);
    const maybe = <T, U>(value: T | undefined, make: (value: T) => U): Given<U> | undefined => value === undefined ? undefined : said(make(value));
    const measure = (length: Length, off?: Length, cause = ''): Measure =>
        off === undefined ? exactly(ticksOf(length)) : within(ticksOf(length), cause, ticksOf(off));
    const ticks = (length: Length | undefined): Given<Ticks> | undefined => maybe(length, ticksOf);
    const ticksOr = (length: Length | undefined, standing: string): Given<Ticks> =>
        orDefault(length === undefined ? undefined : ticksOf(length), ticksOf(standing));
    const nails = (words: NailWords | undefined) => maybe(words, n => ({ gauge: n.gauge, length: ticksOf(n.length), every: ticksOf(n.every) }));
    const range = (from: Length, to: Length) => ({ least: ticksOf(from), most: ticksOf(to) });

    const settings = (words: Partial<{ [K in keyof JobSettings]: JobSettings[K] extends Given<infer T> | undefined ? T : never }> = {}): JobSettings => ({
        title: maybe(words.title, x => x), client: maybe(words.client, x => x),
        currency: orDefault(words.currency, 'USD'),
        show: orDefault(words.show, 'feet-inches'),
        cutTo: orDefault(words.cutTo, ticksOf('1/32"')),
        cutTolerance: maybe(words.cutTolerance, x => x),
        kerf: orDefault(words.kerf, ticksOf('1/8"')),
        endTrim: orDefault(words.endTrim, ticksOf('1"')),
        longestBoard: maybe(words.longestBoard, x => x),
        shortestOffcut: orDefault(words.shortestOffcut, ticksOf('24"')), offcutWorth: maybe(words.offcutWorth, x => x),
        paintFilm: orDefault(words.paintFilm, range('0.004"', '0.006"')),
    });

    const stock = (name: string, words: StockWords = {}): Stock => {
        const key = `${uri}#${name}`;
        const perFoot = words.perFoot;
        const prices: Price[] = perFoot === undefined ? [] : [{ perTick: new Rational(perFoot).div(TICKS_PER_FOOT), currency: 'USD', at: at() }];
        return {
            name, at: at(), key, species: maybe(words.species, x => x),
            thickness: maybe(words.thickness, t => measure(t, words.thicknessOff, `stock:${key}`)),
            width: maybe(words.width, w => measure(w, words.widthOff, `stock:${key}`)),
            rippedWith: maybe(words.rippedWith, x => x),
            lengths: (words.lengths ?? []).map(length => said(ticksOf(length))), prices, onHand: [],
        };
    };

    const part = (words: PartWords) => ({
        at: at(), stock: maybe(words.stock, x => x),
        rip: maybe(words.rip, r => measure(r, words.ripOff, `rip:${++line}`)), ripWith: maybe(words.ripWith, x => x),
    });
    const profile = (name: string, words: ProfileWords): Profile => {
        const blocking = (w: NonNullable<ProfileWords['blocking']>): Blocking => ({
            ...part(w), fit: orDefault(w.fit, 'full-width'), relief: maybe(w.relief, ticksOf), clearance: maybe(w.clearance, ticksOf),
            screws: maybe(w.screws, s => ({ gauge: s.gauge, length: ticksOf(s.length), every: ticksOf(s.every) })),
        });
        const spacers = (w: NonNullable<ProfileWords['spacers']>): Spacers => ({
            ...part(w), height: maybe(w.height, h => measure(h)), every: ticksOr(w.every, '24"'), fromEnd: ticksOr(w.fromEnd, '6"'),
        });
        const sides = (w: NonNullable<ProfileWords['sides']>): Sides => ({
            ...part(w), heldDown: orDefault(w.heldDown === undefined ? undefined : measure(w.heldDown), measure('1/4"')),
            rabbet: maybe(w.rabbet, ([width, height]) => ({ width: measure(width), height: measure(height), ...edgeOf(w.edge ?? 'lower-back'), widthAt: at(), heightAt: at() })),
            corners: orDefault(w.corners, 'mitered'), past: maybe(w.past, x => x), nails: nails(w.nails),
        });
        const cleats = (w: NonNullable<ProfileWords['cleats']>): Cleats => ({
            at: at(), stock: maybe(w.stock, x => x), thickness: maybe(w.thickness, t => measure(t)), height: maybe(w.height, h => measure(h)),
            gauge: maybe(w.gauge, g => measure(g)), nails: nails(w.nails), shortEachEnd: ticksOr(w.shortEachEnd, '1/4"'),
        });
        const bottom = (w: NonNullable<ProfileWords['bottom']>): Bottom => ({
            ...part(w), place: orDefault(w.place, 'between-sides'), overhang: maybe(w.overhang, o => measure(o)), gap: orDefault(w.gap && range(...w.gap), range('0"', '1/32"')),
            ease: ticks(w.ease), biscuits: maybe(w.biscuits, ([count, size]) => ({ count, size })), press: ticks(w.press), nails: nails(w.nails),
        });
        const trim = (w: NonNullable<ProfileWords['trim']>): Trim => ({ ...part(w), corners: orDefault(w.corners, 'mitered'), nails: nails(w.nails) });
        const under = (w: NonNullable<ProfileWords['under']>): Under => ({ ...part(w), place: orDefault(w.place, 'under-beam'), overhang: orDefault(w.overhang === undefined ? undefined : measure(w.overhang), measure('0"')) });
        return {
            name, at: at(), key: `${uri}#${name}()`, isDefault: true, defaultKey: `${uri}#${name}()`, label: name,
            blocking: words.blocking ? blocking(words.blocking) : undefined, spacers: words.spacers ? spacers(words.spacers) : undefined,
            sides: words.sides && sides(words.sides), cleats: words.cleats ? cleats(words.cleats) : undefined,
            bottom: words.bottom && bottom(words.bottom), trim: words.trim ? trim(words.trim) : undefined,
            under: words.under ? under(words.under) : undefined, solid: words.solid ? part(words.solid) : undefined,
            requires: [], notComputed: [],
        };
    };

    const spacing = (words: SpacingWords): Spacing => {
        if ('coffers' in words) return { by: 'number', coffers: said(words.coffers) };
        if ('size' in words) return { by: 'size', size: said(range(...words.size)) };
        return { by: 'lines', centers: words.lines.map(center => said(ticksOf(center))), from: orDefault(words.from, 'north-west') };
    };
    const lineSpec = (name: string, words: LineWords): LineSpec => ({
        name, at: at(), beams: maybe(words.beams, x => x), heldDown: maybe(words.heldDown, h => measure(h)),
        splices: (words.splices ?? []).map(s => typeof s === 'object' ? { ...said(ticksOf(s.at)), from: s.from } : said(ticksOf(s))),
        from: maybe(words.from, x => x), until: maybe(words.until, x => x),
    });
    const wallOf = ({ name, length, bearing }: NonNullable<RoomWords['wallList']>[number]): RoomWall => ({ name, at: at(), ...length !== undefined && { length: said(measure(length)) }, bearing, bearingAt: at() });
    /** One that nobody gave is as long as the one across. */
    const wallsOf = (lengths: NonNullable<RoomWords['walls']>): RoomWall[] => {
        const own = new Map(SIDES.flatMap(side => (lengths[side] === undefined ? [] : [[side, said(measure(lengths[side]))] as const])));
        return SIDES.flatMap((side, i): RoomWall[] => {
            const length = own.get(side) ?? own.get(SIDES[(i + 2) % 4]!);
            return length ? [{ name: side, at: at(), length, ...!own.has(side) && { assumed: true }, bearing: 90 * ((i + 1) % 4) }] : [];
        });
    };
    const room = (name: string, words: RoomWords): Room => {
        const walls = words.walls ?? { north: words.width, east: words.length, south: words.width, west: words.length };
        const lamp: Given<Fixture> | undefined = maybe(words.centeredOn, on => ({
            name: on.name ?? 'lamp', at: at(), kind: 'light', x: ticksOf(on.x), y: ticksOf(on.y),
        }));
        const band = words.band;
        const perimeterOf = (own: NonNullable<typeof band>): Perimeter => ({
            at: at(), kind: said(own.kind ?? 'band'), stock: maybe(own.stock, x => x), rip: maybe(own.rip, r => measure(r)),
            belowBeams: orDefault(own.belowBeams === undefined ? undefined : measure(own.belowBeams), measure('0"')), splices: byDefault('on-crossings' as const), nails: nails(own.nails),
            width: maybe(own.width, w => measure(w)), beams: maybe(own.beams, x => x),
        });
        const perimeter = band ? perimeterOf(band) : undefined;
        const around = Object.fromEntries(SIDES.map(side => [side, words.around && side in words.around ? words.around[side] ? perimeterOf(words.around[side]) : null : perimeter ?? null])) as Grid['around'];
        return {
            name, at: at(), key: `${uri}#${name}`, job: words.job ?? settings(), rates: NO_RATES,
            walls: words.wallList ? words.wallList.map(wallOf) : wallsOf(walls), diagonals: [],
            grid: {
                at: at(), north: words.north && spacing(words.north), east: words.east && spacing(words.east),
                beams: maybe(words.beams, x => x), through: maybe(words.through, x => x), residue: orDefault(words.residue, 'outer-coffers'),
                centeredOn: lamp, around, splices: orDefault(words.splices, 'on-crossings'),
            },
            lines: Object.entries(words.lines ?? {}).map(([name, line]) => lineSpec(name, line)), crossings: [],
            fixtures: lamp ? [lamp.value] : [], measuredBoards: [], spoiled: [], cutBoards: [],
            broken: words.broken ?? false, notComputed: words.notComputed ?? [],
        };
    };
    return { at, said, byDefault, measure, settings, stock, profile, room };
}
export type JobBuilder = ReturnType<typeof jobBuilder>;
