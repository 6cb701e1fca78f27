import type { Room } from '../../src/job/model.ts';
import { TICKS_PER_INCH } from '../../src/quantity/ticks.ts';
import { exampleRoom } from '../support/example-room.ts';
import { jobBuilder } from '../support/job-builder.ts';

/** Small rooms that have much in them. */
const { stock, profile, settings, said } = jobBuilder('file:///yard.coffer');
const lengths = ["8'", "10'", "12'", "16'"];
const four = stock('b4', { thickness: '3/4"', width: '3 1/2"', lengths }), eight = stock('b8', { thickness: '3/4"', width: '7 1/4"', lengths });
const six = stock('b6', { thickness: '3/4"', width: '5 1/2"', lengths }), ten = stock('b10', { thickness: '3/4"', width: '9 1/4"', lengths });
const nails = { gauge: 18, length: '2"', every: '12"' };
const deepBox = profile('deep-box', {
    blocking: { stock: four, screws: { gauge: 8, length: '3"', every: '16"' } }, sides: { stock: ten },
    cleats: { stock: four, thickness: '3/4"', height: '3/4"' }, bottom: { stock: four, biscuits: [1, '#20'] },
});
const small = { north: { coffers: 2 }, east: { coffers: 2 } };

export const ROOMS: Readonly<Record<string, () => Room>> = {
    'spliced-through-lines': () => exampleRoom({
        width: `17' 1 1/4"`, length: `11' 2"`, ...small, through: 'east-west', job: { ...settings({ longestBoard: 10 * 12 * TICKS_PER_INCH }) },
        lines: { A: { splices: [`6' 3"`] } },
    }, {
        bottom: { stock: six, rip: '5 7/16"', ripWith: 'fence B', biscuits: [1, '#20'], press: '1/32"', gap: ['1/64"', '1/16"'], nails },
        sides: { stock: eight, rabbet: ['1/8"', '1/4"'], ripWith: 'fence S', rip: '7"', nails },
    }),
    'half-beams-and-a-deeper-line': () => exampleRoom({
        width: `12' 7"`, length: `10' 5 3/8"`, north: { coffers: 3 }, east: { coffers: 2 }, lines: { A: { beams: deepBox } },
        around: {
            north: { kind: 'half-beam', width: '2 1/2"', beams: deepBox }, east: { stock: eight, nails },
            south: { kind: 'half-beam', width: '3 1/4"' }, west: null,
        },
    }, { trim: { stock: stock('cove', { thickness: '1/2"', width: '1 1/2"', lengths }), corners: 'coped', nails }, spacers: null }),
    'bottoms-under-the-sides': () => exampleRoom({ width: `11' 1"`, length: `9' 7 1/2"`, ...small, band: null }, {
        sides: { stock: four, corners: 'butted', past: 'north-south' }, blocking: { stock: four, relief: '1/8"' }, spacers: null,
        bottom: { stock: eight, place: 'under-sides', overhang: '1/4"', biscuits: [3, '#0'] },
    }),
    'out-of-square-in-millimeters': () => exampleRoom({
        ...small, job: { ...settings({ show: 'millimeters', cutTo: TICKS_PER_INCH / 25.4 }), longestBoard: said(16 * 12 * TICKS_PER_INCH) },
        wallList: [
            { name: 'north', length: '4100 mm', bearing: 90 }, { name: 'east', length: '3205 mm', bearing: 181 },
            { name: 'south', bearing: 270 }, { name: 'west', bearing: 0 },
        ],
    }, { spacers: null }),
};
