import type Fraction from 'fraction.js';
import type { Measure } from '../quantity/measure.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Given, Source } from '../provenance/source.ts';
import type { PanelWords } from './back.ts';
import type { Corner, Direction, Side } from './compass.ts';
import type { Fixture } from './fixture.ts';
import type { Joists } from './joists.ts';
import type { ClosingWord } from './closing-word.ts';
import type { GaugeLog, WallBow } from './found.ts';
import type { OnHand } from './on-hand.ts';
import type { Rates } from './rates.ts';
import type { NotComputed } from './not-computed.ts';
import type { JobSettings } from './settings.ts';
import type { PutUpSaidOf, RoomBeforeOf, WaitSaidOf } from './put-up.ts';
import type { Recorded } from './status.ts';
import type { Survey } from './survey.ts';
import type { Seasons } from './seasons.ts';
/**
 * A job as plain data: names resolved, parameters applied, imports followed, every value with the words it comes from.
 * What the text does not (yet) say, or says wrongly, is undefined: whoever reads it skips what is unknown and stays
 * silent, because the language has already reported it. Lengths in ticks.
 */
export type { JobSettings } from './settings.ts';
export { SIDES, type Corner, type Direction, type Side } from './compass.ts';
export type { AtWall, Fixture } from './fixture.ts';
export type { GaugeLog, WallBow } from './found.ts';
export type { FoundJoist, Joists } from './joists.ts';

export interface NominalSize { readonly text: string; readonly thickness: Fraction; readonly width: Fraction }

export interface Stock {
    readonly name: string;
    readonly title?: string;
    /** The name where it is declared, and identity: declared once, one `key`. */
    readonly at: Source;
    readonly key: string;
    readonly size?: Given<NominalSize>;
    readonly species?: Given<string>;
    /** Dressed thickness and width: said, or from the published table for `size`. */
    readonly thickness?: SizeOfStock;
    readonly width?: SizeOfStock;
    readonly rippedWith?: Given<string>;
    /** Of a sheet good: the size of a sheet. Then `width` is its width, and `lengths` its length where nothing else is said. */
    readonly sheet?: Given<Sheet>;
    readonly lengths: readonly Given<Ticks>[];
    readonly prices: readonly Price[];
    readonly supplier?: Given<string>;
    /** Working days from order to delivery. */
    readonly leadDays?: Given<number>;
    readonly comes?: Given<'raw' | 'primed' | 'finished'>;
    /** Share of the boards bought that is expected to be unusable, less than 1; and so many boards at least are bought besides those that are cut. */
    readonly defects?: Given<Fraction>;
    readonly spare?: Given<number>;
    /** What is there before the first board is cut, in the order of the text. */
    readonly onHand: readonly Given<OnHand>[];
}
/** With how it is known, where that is said. */
export interface SizeOfStock extends Given<Measure>, Recorded {}
/**
 * `width` lies across the grain, `length` along it; without grain a strip may be ripped either way. `stages`: 3 (also where undefined), across, along,
 * across again; or 2, along the whole sheet, then across.
 */
export interface Sheet { readonly width: Ticks; readonly length: Ticks; readonly grain: 'lengthwise' | 'none'; readonly stages?: 2 | 3 }
export interface Price {
    /** Exact money per tick of length, in the currency's major unit, also of a board or sheet with a price of its own. Rounded only on the printed line. */
    readonly perTick: Fraction;
    readonly currency: string;
    /** The one length it holds for; undefined: every length. */
    readonly for?: Given<Ticks>;
    readonly at: Source;
}

/** One beam detail with its arguments applied. */
export interface Profile {
    readonly name: string;
    /** The name where it is declared. */
    readonly at: Source;
    /**
     * Same declaration, same arguments: same key. It is also the same object, as long as nothing it is made from changes, for
     * the defaults, and for arguments that stand at the same place (its values know the arguments they came through).
     */
    readonly key: string;
    /** True where every argument is the declared default: its findings belong to the file it is declared in. */
    readonly isDefault: boolean;
    /** Key of the declaration's default instance (equal to `key` where `isDefault`); undefined where a parameter has no default. */
    readonly defaultKey?: string;
    /**
     * The instance this one varies: with arguments, the declaration's own defaults; by default, that of the profile it is
     * `like`. What is wrong there too is reported there, and nowhere else. Undefined where there is none.
     */
    readonly variesFrom?: Profile;
    /** Arguments as written out, for names on drawings: `shadow-box(groove: 1/4")`. */
    readonly label: string;
    readonly blocking?: Blocking;
    readonly spacers?: Spacers;
    readonly sides?: Sides;
    /** The side on one flank, where that differs from the other: all of it, with what it has in common. Held down so that it hangs as low as `sides`. */
    readonly otherSide?: Sides;
    readonly cleats?: Cleats;
    readonly bottom?: Bottom;
    readonly trim?: Trim;
    readonly under?: Under;
    /** In place of the box: no other part is known then but trim and back. */
    readonly solid?: Solid;
    /** What stands there and is boxed in: how wide it is, how far it hangs down, what is left clear on either side. */
    readonly wraps?: Given<{ readonly width: Measure; readonly height: Measure }> & Recorded & { readonly clearance: Given<Ticks> };
    /** A panel between the ceiling and all that hangs from it. */
    readonly back?: Back;
    readonly requires: readonly Requirement[];
    /** Parts that are said and not computed yet: the section then has no depth. */
    readonly notComputed: readonly Source[];
}
/** `require` of a profile, evaluated. `holds` undefined: unknown, stay silent. */
export interface Requirement {
    readonly at: Source;
    readonly holds?: boolean;
    readonly text: string;
    readonly message?: string;
    /** The two sides as they came out, in words, for the message. */
    readonly left?: string; readonly operator?: string; readonly right?: string;
    readonly via: readonly Source[];
}

interface PartBase {
    /** The part's word ("blocking") where its block stands. */
    readonly at: Source;
    /** Its block from brace to brace, where it stands in one piece: there a quick fix adds a line. */
    readonly body?: Source;
    readonly stock?: Given<Stock>;
    /** Ripped width; undefined: the stock's full width. */
    readonly rip?: Given<Measure>;
    /** Name of the fence setting it is ripped at, where said (`rip 5 7/16" with "fence A"`). */
    readonly ripWith?: Given<string>;
}
export interface Blocking extends PartBase {
    readonly screws?: Given<Screws>;
    readonly fit: Given<'full-width' | 'bench-box'>;
    /** What a piece that is cut between others is shorter than its place; undefined: what is usual, see src/ceiling/relief.ts. */
    readonly relief?: Given<Ticks>;
    /** How far it stays clear of a deeper beam that it dies into; undefined: what is usual, see src/ceiling/relief.ts. */
    readonly clearance?: Given<Ticks>;
}
export interface Screws { readonly gauge: number; readonly length: Ticks; readonly every: Ticks }
export interface Spacers extends PartBase {
    readonly height?: Given<Measure>;
    readonly every: Given<Ticks>;
    /** The first spacer stands within this of each end of a bay. */
    readonly fromEnd: Given<Ticks>;
}
export interface Sides extends PartBase {
    readonly heldDown: Given<Measure>;
    readonly rabbet?: Given<Rabbet>;
    readonly corners: Given<'mitered' | 'butted'>;
    /** Butted corners: the direction whose sides run past. */
    readonly past?: Given<Direction>;
    readonly nails?: Given<Nails>;
}
export interface Rabbet {
    readonly width: Measure; readonly height: Measure;
    /** Which long edge of the side, as it hangs, and which of its faces it is cut into: the hidden back or the front, which shows. */
    readonly edge: 'lower' | 'upper';
    readonly face: 'back' | 'front';
    readonly widthAt: Source; readonly heightAt: Source;
}
/** `length` is the nail's, `every` its spacing along the part; diameter by gauge from the published table. */
export interface Nails { readonly gauge: number; readonly length: Ticks; readonly every: Ticks }
export interface Cleats {
    readonly at: Source;
    readonly body?: Source;
    /** The stock they are ripped from. */
    readonly stock?: Given<Stock>;
    /** How far it stands off the side, and its height. */
    readonly thickness?: Given<Measure>;
    readonly height?: Given<Measure>;
    /** Thickness of the gauge block it is set with; undefined: the bottom's own stock. */
    readonly gauge?: Given<Measure>;
    readonly nails?: Given<Nails>;
    readonly shortEachEnd: Given<Ticks>;
}
/** One timber, as deep as it is wide, and as wide as it is thick. */
type Solid = PartBase;
export interface Back extends PanelWords { readonly stock?: Given<Stock>; readonly nails?: Given<Nails> }
/** A molding along the lower edges of the sides: flat under the beam, `overhang` beyond the face of each, or against their faces. */
export interface Under extends PartBase {
    readonly place: Given<'under-beam' | 'against-sides'>;
    readonly overhang: Given<Measure>;
    readonly nails?: Given<Nails>;
}
export interface Bottom extends PartBase {
    readonly place: Given<'between-sides' | 'under-sides' | 'in-rabbets'>;
    /** Of one under the sides: how far it stands out beyond each. */
    readonly overhang?: Given<Measure>;
    /** Of one in rabbets: how far it is let into each side. */
    readonly letIn?: Given<Measure>;
    /** Play allowed between the sides, in all. */
    readonly gap: Given<{ readonly least: Ticks; readonly most: Ticks }>;
    /** How far the back edges are eased. */
    readonly ease?: Given<Ticks>;
    readonly biscuits?: Given<Biscuits>;
    /** How those get in that biscuits keep from going straight up; undefined: nobody says. */
    readonly closing?: Given<ClosingWord>;
    /** Cut long by this to press its end joints. */
    readonly press?: Given<Ticks>;
    readonly nails?: Given<Nails>;
}
export interface Biscuits { readonly count: number; readonly size: string /* "#20" */ }
export interface Trim extends PartBase {
    readonly corners: Given<'mitered' | 'coped'>;
    /** Of a crown: degrees between its back and the side, and what it reaches along the ceiling and down the side, where that is said. */
    readonly spring?: Given<number>;
    readonly projects?: Given<Measure>; readonly drops?: Given<Measure>;
    /** How these two are known. */
    readonly springKnown?: Recorded;
    readonly nails?: Given<Nails>;
}

export type PutUpSaid = PutUpSaidOf<Room>;
export type WaitSaid = WaitSaidOf<Room>;
export type RoomBefore = RoomBeforeOf<Room>;

export interface Room {
    readonly name: string;
    readonly title?: string;
    /** The name where the room is declared. */
    readonly at: Source;
    /** Its own block, from brace to brace. */
    readonly body?: Source;
    readonly key: string;
    readonly job: JobSettings;
    /** The rates that hold where the room is declared. */
    readonly rates: Rates;
    /** Clockwise, as one walks round the room with a tape: each begins where the one before it ends. */
    readonly walls: readonly RoomWall[];
    readonly height?: Given<Ticks> & Recorded;
    readonly covering?: { readonly kind: Given<string>; readonly thickness?: Given<Ticks> } & Recorded;
    readonly joists?: Joists;
    /** Its own, where they differ from the house's. */
    readonly seasons?: Seasons;
    readonly grid?: Grid;
    /** Trim that takes the place of the profile's. */
    readonly trim?: Trim;
    /** Whether it shares boards with other rooms; undefined: as the job says. */
    readonly boards?: Given<'shared' | 'own'>;
    readonly lines: readonly LineSpec[];
    /** Where what runs along a wall is spliced, by the wall's name. */
    readonly wallSplices?: Readonly<Record<string, readonly SaidSplice[]>>;
    /** Walls that are not straight or not plumb, by their names. */
    readonly bows?: Readonly<Record<string, WallBow>>;
    readonly crossings: readonly CrossingSpec[];
    readonly fixtures: readonly Fixture[];
    /** How level the ceiling is; undefined: nobody surveyed it, and nothing is said of it. */
    readonly survey?: Survey;
    /** How it is put up, where that is said. */
    readonly putUp?: PutUpSaid;
    readonly measuredBoards: readonly MeasuredBoard[];
    /** Logs of the gauge, in the order of the text. */
    readonly gauges?: readonly GaugeLog[];
    /** Names of pieces that were spoiled after they were cut, without the room: `bottom-2`. One that was spoiled twice is here twice. */
    readonly spoiled: readonly Given<string>[];
    readonly cutBoards: readonly CutBoard[];
    /** True where something in the room could not be read (a syntax error, an unknown name): lay out what is known, be silent on the rest. */
    readonly broken: boolean;
    /** What is said of it and not computed yet, where no rule of the layout tells it by itself. */
    readonly notComputed: readonly NotComputed[];
    /** Diagonals as they were measured, in the order of the text. */
    readonly diagonals: readonly Diagonal[];
    /** The rooms of its file come to more than is laid out, with this one: see said-much.ts. */
    readonly tooMuch?: TooMuch;
}
export interface RoomWall {
    readonly name: string;
    /** Its name, where it is said. */
    readonly at: Source;
    /** Undefined where nobody says it: it is what closes the room. */
    readonly length?: MeasuredWall;
    /** Its length is said, and could not be read: nothing can be known of the room. */
    readonly lost?: boolean;
    /** Nobody measured it: it is taken to be as long as the one across. */
    readonly assumed?: boolean;
    /** The way one walks along it: degrees clockwise from north, so that a north wall has 90. */
    readonly bearing: number;
    /** The words that say its heading or its turn. */
    readonly bearingAt?: Source;
}
/** The length of a wall, with how it is known. */
export interface MeasuredWall extends Given<Measure>, Recorded {}
/** From corner to corner. */
export interface Diagonal extends Recorded { readonly at: Source; readonly ticks: Ticks; readonly from: Corner; readonly to: Corner }
export interface Grid {
    readonly at: Source;
    readonly body?: Source;
    /** How the lines that divide the north wall (1, 2, 3) and those that divide the east wall (A, B) are placed. */
    readonly north?: Spacing;
    readonly east?: Spacing;
    readonly beams?: Given<Profile>;
    readonly through?: Given<Direction>;
    readonly residue: Given<'outer-coffers' | 'band' | 'spread'>;
    readonly centeredOn?: Given<Fixture>;
    /** The wall along which lines 1, 2, 3 (or A, B) are divided, where it is not the whole room. */
    readonly alongNorth?: Given<string>;
    readonly alongEast?: Given<string>;
    /** How the lines of either direction lie, where they do not run along the compass. */
    readonly layNorthSouth?: Laying;
    readonly layEastWest?: Laying;
    /** What runs along each wall, by its name: the grid's, overruled by what the wall says. Null: nothing runs along it. */
    readonly around: Readonly<Record<string, Perimeter | null>>;
    /** Splices of a line longer than the board: on the crossings, or only where a line says one (none: an error), or none at all. */
    readonly splices: Given<'on-crossings' | 'where-said' | 'never'>;
    /** The lines of text that divide it, where each stands by itself in the grid's own block: `coffers-north 4`. */
    readonly statements?: Readonly<Record<string, Source>>;
}
/** `of`: the rooms that are the file's own, or those that its alternates make. `count`: with the room that is told so. */
export interface TooMuch { readonly of: 'rooms' | 'alternates'; readonly what: 'coffers' | 'spacers'; readonly count: number; readonly most: number }
/** By a wall: parallel to it where it runs their way, else square to it. `wall`: not the first of the room. */
export interface Laying { readonly how: 'by-wall' | 'split' | 'fanned' | 'falling' | 'rising'; readonly wall?: Given<string>; readonly at: Source }
export type Spacing =
    | { readonly by: 'number'; readonly coffers: Given<number> }
    | { readonly by: 'size'; readonly size: Given<{ readonly least: Ticks; readonly most: Ticks }> }
    | { readonly by: 'lines'; readonly centers: readonly Given<Ticks>[]; readonly from: Given<Corner> };
export interface Perimeter {
    readonly at: Source;
    readonly kind: Given<'band' | 'half-beam' | 'none'>;
    readonly stock?: Given<Stock>;
    readonly rip?: Given<Measure>;
    /** Name of the fence setting it is ripped at, where said. */
    readonly ripWith?: Given<string>;
    /** Of a half beam: from the wall to the back of its side, and the beam that it is half of, where that is not the grid's. */
    readonly width?: Given<Measure>;
    readonly beams?: Given<Profile>;
    /** The side of its beam that it has; not said: `sides`. */
    readonly shows?: Given<'sides' | 'other-side'>;
    /** Of its bottom: what its edge at the wall is left wider, to be scribed. */
    readonly scribe?: Given<Ticks>;
    /** How far the band's lower edge is below the beams' undersides. */
    readonly belowBeams: Given<Measure>;
    readonly splices: Given<'on-crossings' | 'never'>;
    readonly nails?: Given<Nails>;
}
/** `line B { beams fine-box }` */
export interface LineSpec {
    readonly name: string;
    readonly at: Source;
    readonly beams?: Given<Profile>;
    readonly heldDown?: Given<Measure>;
    /** The flank that has the other side of its beam; undefined: the one to the east or south. */
    readonly otherSide?: Given<Side>;
    /** `from`: a side that it ends at, or a wall or a line that it meets; not said: where it begins, at its west or north end. */
    readonly splices: readonly SaidSplice[];
    /** Where it differs from the grid's. */
    readonly splicing?: Grid['splices'];
    /** Where its center stands, square from a wall or a line that it runs along; undefined: as the grid divides the room. */
    readonly place?: { readonly by: Given<Ticks>; readonly from?: Given<string> };
    /** The walls or lines that it runs between, by name, where that is not from wall to wall. */
    readonly from?: Given<string>; readonly until?: Given<string>;
    /** It dies into lines that are as deep as it. */
    readonly meets?: Given<'flush' | 'dies-into'>;
}
export type SaidSplice = Given<Ticks> & { readonly from?: string };
/** `crossing B2 { through 2 }` */
export interface CrossingSpec {
    readonly name: string;
    readonly at: Source;
    readonly through?: Given<string>;
}
export interface MeasuredBoard extends Recorded {
    readonly name: string;
    readonly at: Source;
    readonly stock?: Given<Stock>;
    /** Depth of the rabbet as found on the board, and its own sizes, where they were measured. */
    readonly rabbet?: Given<Ticks>;
    readonly width?: Given<Ticks>; readonly thickness?: Given<Ticks>; readonly length?: Given<Ticks>;
    /** Names of pieces that were cut from it, without the room. */
    readonly into: readonly Given<string>[];
}
/** A board that is cut already: `cut 16' of poplar-1x6 into bottom-2, side-A-1-north left 31"`. */
export interface CutBoard {
    /** The word `cut`. */
    readonly at: Source;
    /** As long as the board was. */
    readonly length: Given<Ticks>;
    readonly stock: Given<Stock>;
    /** Names of pieces, without the room, each with how it was cut. */
    readonly into: readonly CutName[];
    /** From the first `into` to the last record, where nothing else stands between: a quick fix writes them anew. */
    readonly intoAt?: Source;
    /** What is left of it in full width, measured; undefined: nobody says, and it is reckoned. */
    readonly left?: readonly Given<Ticks>[];
}
/** `asCut` undefined: nobody says how it was cut. `unknown`: it is said, and could not be read. */
export interface CutName extends Given<string> { readonly asCut?: AsCut | 'unknown' }
/** How a piece was cut: between its long points, with the angles of its mitered ends in degrees. */
export interface AsCut {
    readonly length: Ticks;
    readonly miters: readonly number[];
    /** The mitered end, as in a cut list; null where there is none, or where it does not matter. */
    readonly hand: 'left' | 'right' | null;
    /** The words of the length. */
    readonly at?: Source;
}
