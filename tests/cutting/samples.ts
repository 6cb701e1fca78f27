import type { JobSettings, Stock } from '../../src/job/model.ts';
import type { Given, Source } from '../../src/provenance/source.ts';
import { inches, Rational } from '../../src/quantity/rational.ts';
import { TICKS_PER_FOOT, type Ticks } from '../../src/quantity/ticks.ts';
import { exactly } from '../../src/quantity/tolerance.ts';
import type { EndCut, Piece } from '../../src/takeoff/model.ts';

/** Stocks, jobs and pieces put together by hand, for tests that need no text. */
export const nowhere: Source = { uri: 'file:///sample.coffer', range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } } };
export const given = <T>(value: T): Given<T> => ({ value, at: nowhere, said: true });

export function job(over: Partial<JobSettings> = {}): JobSettings {
    return {
        currency: given('USD'), show: given('feet-inches' as const), cutTo: given(inches('1/32')), kerf: given(inches('1/8')), endTrim: given(inches(1)), shortestOffcut: given(inches(24)),
        paintFilm: given({ least: 65, most: 98 }), ...over,
    };
}

export interface StockSample {
    readonly name?: string; readonly width?: Ticks; readonly thickness?: Ticks; readonly feet?: readonly number[];
    /** Dollars a foot for every length; or dollars a board by its length in feet. */
    readonly perFoot?: string; readonly each?: Readonly<Record<number, string>>;
    readonly onHand?: readonly (readonly [count: number, length: Ticks, width?: Ticks])[];
}
export function stock({ name = 'pine-1x6', width = inches('5 1/2'), thickness = inches('3/4'), feet = [8, 12, 16], perFoot, each, onHand = [] }: StockSample = {}): Stock {
    return {
        name, at: nowhere, key: `sample#${name}`, width: given(exactly(width)), thickness: given(exactly(thickness)),
        lengths: feet.map(f => given(f * TICKS_PER_FOOT)),
        prices: [
            ...Object.entries(each ?? {}).map(([f, price]) => ({ perTick: new Rational(price).div(Number(f) * TICKS_PER_FOOT), currency: 'USD', for: given(Number(f) * TICKS_PER_FOOT), at: nowhere })),
            ...(perFoot === undefined ? [] : [{ perTick: new Rational(perFoot).div(TICKS_PER_FOOT), currency: 'USD', at: nowhere }]),
        ],
        onHand: onHand.map(([count, length, width]) => given({ count, length, ...width !== undefined && { width } })),
    };
}

const SQUARE: EndCut = { cut: 'square' };
export function piece(id: string, of: Stock, length: Ticks, over: Partial<Piece> = {}): Piece {
    const width = over.width ?? of.width?.value.ticks ?? 0;
    return {
        id, room: 'sample', part: 'bottom', line: 'A', bay: 1, coffer: null, on: null, stock: of, face: length, back: length, cutFace: length, cutBack: length,
        overall: length, cutOverall: Math.max(over.cutBack ?? length, over.cutFace ?? length),
        ends: [SQUARE, SQUARE], meets: [null, null], hand: null, width, thickness: of.thickness?.value.ticks ?? 0,
        ripped: width !== of.width?.value.ticks, work: [], machining: [],
        where: 'line A, bay 1', why: { terms: [{ what: 'sample', times: 1, ticks: length }] }, source: nowhere,
        corners: cornersOf(length, width, over.on ?? null),
        box: { west: 0, east: length, north: 0, south: width, top: 0, foot: 0 }, ...over,
    };
}

/** Its back along an axis, its face towards the side that it stands on. */
function cornersOf(length: Ticks, width: Ticks, on: Piece['on']): Piece['corners'] {
    const depth = on === 'north' || on === 'west' ? -width : width, upright = on === 'east' || on === 'west';
    const at = (along: Ticks, across: Ticks) => (upright ? { x: across, y: along } : { x: along, y: across });
    return [at(0, 0), at(length, 0), at(length, depth), at(0, depth)];
}
