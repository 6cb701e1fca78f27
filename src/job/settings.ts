import type Fraction from 'fraction.js';
import type { Given, Source } from '../provenance/source.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Contract } from './contract.ts';
import type { Part } from './part.ts';
import type { Seasons } from './seasons.ts';
import type { Recorded, Status } from './status.ts';

/** The longest that gets somewhere, with how that is known. */
export type Limit = Given<Ticks> & Recorded;

/** Settings of the house; where no `job` is in reach the built-in defaults stand. */
export interface JobSettings {
    readonly title?: Given<string>;
    readonly client?: Given<string>;
    readonly currency: Given<string>;
    /** How lengths are shown. */
    readonly show: Given<'feet-inches' | 'millimeters'>;
    /** How well a dimension has to be known before anything is cut from it; undefined: asked for only where a room says of one how it is known. */
    readonly cutFrom?: Given<Status>;
    /** Resolution of cut lengths. */
    readonly cutTo: Given<Ticks>;
    /** How far a crosscut may be off, either way, at one setting of the stop. */
    readonly cutTolerance?: Given<Ticks>;
    /** Saw kerf, and what is cut off a board's two ends together before use (each end's share is half). */
    readonly kerf: Given<Ticks>;
    readonly endTrim: Given<Ticks>;
    /** The longest piece that a stop reaches while the saw is at an angle; undefined: there is none. */
    readonly miterStop?: Given<Ticks>;
    /** What may come into the house, whole. */
    readonly longestBoard?: Limit;
    /** What gets up the stair, cut; in a room that says its own, that. */
    readonly longestPiece?: Limit;
    /** The shortest offcut worth keeping, and what a kept one is worth: a share of its price, 0 where nobody says. */
    readonly shortestOffcut: Given<Ticks>;
    readonly offcutWorth?: Given<Fraction>;
    /** By how much hidden pieces of these parts may be cut shorter, so that several are of one length; undefined: not at all. */
    readonly poolHidden?: Given<{ readonly slack: Ticks; readonly of: ReadonlySet<Part> }>;
    /** Whether rooms share boards, where a room does not say it itself; undefined: they do. */
    readonly boards?: Given<'shared' | 'own'>;
    /** Greatest and least thickness of the paint on one edge (primer and coats). */
    readonly paintFilm: Given<{ readonly least: Ticks; readonly most: Ticks }>;
    /** How dry and how damp the rooms get. */
    readonly seasons?: Seasons;
    /** What was signed for the house, and what came of it since. */
    readonly contract?: Contract;
    readonly at?: Source;
}
