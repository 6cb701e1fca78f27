import { SOUND, type Standing, type Told } from '../../src/pipeline/standing.ts';
import { readFileSync } from 'node:fs';
import { Ajv, type ValidateFunction } from 'ajv';
import { NO_RATES } from '../support/no-rates.ts';
import { planBoards } from '../../src/cutting/first-plan.ts';
import type { Finding } from '../../src/findings/finding.ts';
import type { JobSettings, Room, Stock } from '../../src/job/model.ts';
import type { Source } from '../../src/provenance/source.ts';
import { inches } from '../../src/quantity/rational.ts';
import { TICKS_PER_FOOT, type Ticks } from '../../src/quantity/ticks.ts';
import type { House, HousePlan } from '../../src/report/house.ts';
import type { Files } from '../../src/report/look.ts';
import type { Piece, TakeOff } from '../../src/takeoff/model.ts';
import { given, job, piece as samplePiece, stock } from '../cutting/samples.ts';

export const text = `edition 1
room den {
  grid {
    beams  small-box
  }
}
profile small-box {
\tbottom { stock pine-1x6 }
}
`;
export const files: Files = { nameOf: uri => uri.replace('file:///house/', ''), textOf: uri => (uri === 'file:///house/den.coffer' ? text : undefined) };

/** The words in the sample text, by line and by what they are. */
function words(line: number, what: string, uri = 'file:///house/den.coffer'): Source {
    const character = text.split('\n')[line]!.indexOf(what);
    return { uri, range: { start: { line, character }, end: { line, character: character + what.length } } };
}

export function finding(over: Partial<Finding> = {}): Finding {
    return { rule: 'bottom-wont-fit', severity: 'error', at: words(7, 'pine-1x6'), message: 'The bottom is 1/16" too wide for the channel.', related: [], fixes: [], ...over };
}

export const findings: readonly Finding[] = [
    finding({ rule: 'end-coffers-differ', severity: 'hint', at: words(3, 'beams'), message: 'The outer coffers are 2 3/4" wider.', room: 'den' }),
    finding({
        related: [{ at: words(3, 'small-box'), message: 'the beam is chosen here' }],
        fixes: [{ title: 'Rip the bottom to 5 7/16"', preferred: true, edits: [{ uri: 'file:///house/den.coffer', range: words(7, 'pine-1x6').range, text: 'pine-1x6\n rip 5 7/16"' }] }],
    }),
    finding({ severity: 'warning', rule: 'bottom-gap-shows', at: words(7, 'bottom'), message: 'A gap of 1/16" shows.', allowed: { reason: 'painted shut', at: words(8, '}') } }),
];

const pine = stock({ name: 'pine-1x6', feet: [8, 12], perFoot: '2.10' });
const fir = stock({ name: 'fir-1x8', width: inches('7 1/4'), feet: [8, 16] });
const miter = { cut: 'miter', degrees: 45 } as const;
const square = { cut: 'square' } as const;

const piece = (id: string, of: Stock, length: Ticks, over: Partial<Piece>): Piece => samplePiece(id, of, length, { room: 'den', ...over });

function side(id: string, over: Partial<Piece>): Piece {
    const face = inches('49 3/8');
    return piece(id, fir, face, {
        part: 'side', why: { terms: [{ what: 'coffer', times: 1, ticks: face }, { what: 'side', times: over.ends?.[0].cut === over.ends?.[1].cut ? 2 : 1, ticks: inches('3/4') }] }, on: 'north', work: [{ kind: 'rabbet', width: inches('1/4'), height: inches('1/4'), edge: 'lower', face: 'back' }], machining: ['rabbet 1/4" x 1/4", lower back edge'], where: `line A, bay ${id.slice(-1)}, north side`,
        ...over,
    });
}

export const pieces: readonly Piece[] = [
    ...[1, 2].map(i => piece(`den.bottom-A-${i}`, pine, inches('50 7/8'), { where: `line A, bay ${i}`, bay: i, why: { terms: [{ what: 'coffer', times: 1, ticks: inches('49 3/8'), at: words(3, 'beams') }, { what: 'side', times: 2, ticks: inches('3/4') }] } })),
    side('den.side-A-1', { back: inches('50 1/8'), cutBack: inches('50 1/8'), ends: [square, miter], hand: 'left' }),
    side('den.side-A-4', { back: inches('50 1/8'), cutBack: inches('50 1/8'), ends: [miter, square], hand: 'right' }),
    side('den.side-A-2', { back: inches('50 7/8'), cutBack: inches('50 7/8'), ends: [miter, miter] }),
    // The same piece turned round: no hand, so it is cut like the one before it.
    side('den.side-A-3', { back: inches('50 7/8'), cutBack: inches('50 7/8'), ends: [miter, miter], on: 'south' }),
    ...[1, 2, 3].map(i => piece(`den.cleat-A-${i}`, pine, inches('50 3/8'), { part: 'cleat', width: inches('3/4'), ripped: true, where: `line A, bay ${i}` })),
    piece('den.bottom-A-long', pine, 20 * TICKS_PER_FOOT, { where: 'line A' }),
];

const room: Room = { name: 'den', title: 'The "den", as built', at: words(1, 'den'), key: 'den', job: job(), rates: NO_RATES, walls: [], diagonals: [], lines: [], crossings: [], fixtures: [], measuredBoards: [], spoiled: [], cutBoards: [], broken: false, notComputed: [] };
const takeOff: TakeOff = {
    room: 'den', pieces,
    joints: [{ kind: 'butt', at: 'A2', pieces: ['den.bottom-A-1', 'den.bottom-A-2'], biscuits: { count: 2, size: '#10' } }],
    consumables: [{ kind: 'screws', what: '#8 x 2 1/2" screws', count: 24, unit: 'screws', by: 'one every 16"', basis: 'common practice, no source' }],
    leftOut: [],
};
export const settings: JobSettings = job({ title: given('Plum Street 4') });
const told = (line: number, message: string): Told => ({ rule: 'grid-doesnt-close', severity: 'error', message, at: words(1, 'den'), file: 'attic.coffer', place: `attic.coffer:${line}:6` });
const wrongTwice: Standing = { errors: [told(3, 'Four coffers do not close.'), told(9, 'Nor do five.')], notComputed: [], notUsed: [], beforeCutting: [] };
export const house: House = { job: settings, alternates: [], rooms: [{ room, takeOff, standing: SOUND }, { room: { ...room, name: 'attic' }, standing: wrongTwice }] };
export const housePlan: HousePlan = { house, plan: planBoards(pieces, settings) };
/** A published schema, tightened so that a property it does not describe is an error too. Made once, which takes longer than what is tried by it. */
export function strictSchema(name: string): ValidateFunction {
    const before = schemas.get(name);
    if (before) return before;
    const schema = JSON.parse(readFileSync(new URL(`../../src/report/schema/${name}.schema.json`, import.meta.url), 'utf8')) as object;
    const valid = new Ajv({ allErrors: true }).compile(tightened(schema) as object);
    schemas.set(name, valid);
    return valid;
}
const schemas = new Map<string, ValidateFunction>();

function tightened(schema: unknown): unknown {
    if (Array.isArray(schema)) return schema.map(tightened);
    if (typeof schema !== 'object' || schema === null) return schema;
    const copy = Object.fromEntries(Object.entries(schema).map(([key, value]) => [key, tightened(value)]));
    return 'properties' in copy && copy.type === 'object' ? { additionalProperties: false, ...copy } : copy;
}
