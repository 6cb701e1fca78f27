import type { Change } from '../../estimate/compare.ts';
import type { Addition, LaborBasis, Sums } from '../../estimate/model.ts';
import type { Severity } from '../../findings/finding.ts';
import type { Count, LengthJson, MoneyJson, Whole } from '../amounts-json.ts';
import type { SourceJson } from '../place-json.ts';
import type { StandingJson, ToldJson } from '../standing-json.ts';

/**
 * What `cofferwright estimate --format json` prints.
 * @title Estimate
 */
export interface EstimatesJson {
    readonly version: 1;
    readonly kind: 'cofferwright.estimate';
    readonly standing: StandingJson;
    /** Rooms under the same job settings are one house. */
    readonly houses: readonly House[];
}

interface House {
    readonly job: string | null;
    /** Rooms that cannot be laid out. */
    readonly leftOut: readonly string[];
    /** Of the job as if nothing were cut yet. */
    readonly estimate: EstimateJson;
    /** What is bought where something is cut or spoiled already, which no price here holds; null: nothing is. */
    readonly after?: After | null;
    readonly alternates: readonly Alternate[];
}

/** One sum a currency each. */
interface After {
    /** Boards that are cut, and pieces that are spoiled. */
    readonly boards: Count;
    readonly spoiled: Count;
    /** What the boards that are cut were bought for; those that were on hand, or left of another, were not. */
    readonly bought: readonly MoneyJson[];
    /** Of how many nobody says the price. */
    readonly unpriced: Count;
    /** What the rest still costs: the total of `boards` and `order`. */
    readonly toBuy: readonly MoneyJson[];
    readonly together: readonly MoneyJson[];
    /** What the estimate has. */
    readonly planned: readonly MoneyJson[];
}

interface Alternate {
    /** Of several together, joined by +. */
    readonly name: string;
    readonly title: string | null;
    readonly source: SourceJson;
    /** Errors that the job itself has not: it cannot be built this way. */
    readonly errors: Count;
    readonly leftOut: readonly string[];
    /** What was found with it and not with the job as it is: errors first. */
    readonly findings: readonly Found[];
    /** Only what differs. */
    readonly changes: Changes;
    readonly estimate: EstimateJson;
}

interface Found extends ToldJson { readonly severity: Severity }

interface Changes {
    readonly total: Change<MoneyJson>;
    readonly minutes: Change<NumberJson>;
    readonly days: Change<NumberJson> | null;
    readonly boards: readonly BoardChange[];
    readonly pieces: readonly PieceChange[];
}
interface BoardChange extends Change<Whole> { readonly stock: string; readonly length: LengthJson }
interface PieceChange extends Change<Whole> { readonly part: string; readonly length: Change<LengthJson> }

/** A figure. */
export interface NumberJson {
    /** To read; rounded to six places. */
    readonly value: number;
    /** As a fraction. */
    readonly exact: string;
}

export interface EstimateJson {
    /** ISO 4217 code of all money in it. */
    readonly currency: string;
    readonly rooms: readonly string[];
    /** True where everything in it has a rate. */
    readonly complete: boolean;
    readonly materials: readonly Material[];
    readonly supplies: readonly Supply[];
    readonly labor: readonly Labor[];
    /** What is set aside and added, in that order. */
    readonly additions: readonly Added[];
    /** Sums of the lines as they are rounded. */
    readonly sums: { readonly [Sum in keyof Sums]: MoneyJson };
    readonly minutes: NumberJson;
    readonly crew: Whole | null;
    /** Of the whole crew; null where it is not said. */
    readonly days: NumberJson | null;
    /** What has no rate, and is in no sum. */
    readonly missing: readonly Missing[];
}

interface Material {
    readonly stock: string;
    readonly length: LengthJson;
    /** Of what is on hand, where it is less wide than its stock. */
    readonly width?: LengthJson;
    readonly count: Whole;
    /** How many of them are bought besides those that are cut, for boards that turn out unusable. */
    readonly spare?: Count;
    readonly each: MoneyJson;
    /** Not bought: on hand, and reckoned at a worth, or at nothing. On hand it is this house's own: what another house takes is not there. */
    readonly onHand: boolean;
    readonly amount: MoneyJson;
}

interface Supply {
    readonly what: string;
    readonly count: number;
    readonly unit: string;
    readonly each: MoneyJson;
    readonly amount: MoneyJson;
    readonly source: SourceJson;
}

interface Labor {
    readonly phase: string;
    /** null: all rooms together. */
    readonly room: string | null;
    readonly what: string;
    /** In words. */
    readonly why: string;
    readonly basis: Basis;
    readonly minutes: NumberJson;
    /** null where nobody says what an hour costs. */
    readonly amount: MoneyJson | null;
    readonly source: SourceJson;
}

interface Basis {
    readonly by: LaborBasis['by'];
    readonly ticks?: Whole;
    readonly perTick?: string;
    readonly count?: Whole;
    readonly unit?: string;
    readonly each?: string;
    readonly share?: string;
    readonly minutes?: string;
    readonly of?: string;
}

interface Added {
    readonly kind: Addition['kind'];
    readonly what: string;
    readonly why: string | null;
    readonly amount: MoneyJson;
    readonly source: SourceJson;
}

interface Missing {
    /** The word that would say it. */
    readonly rate: string;
    readonly of: string;
    readonly room: string | null;
    readonly source: SourceJson | null;
}
