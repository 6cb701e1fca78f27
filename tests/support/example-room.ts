import type { Room } from '../../src/job/model.ts';
import { jobBuilder, type ProfileWords, type RoomWords } from './job-builder.ts';

/**
 * A room whose every figure was worked out by hand: 18' 4" x 15' 2", band 3/4", box beams of 5 1/2" blocking and bottom
 * and 7 1/4" sides, rabbeted, four coffers by three. All of it fits to the sixteenth, both ways.
 */
export function exampleRoom(words: RoomWords = {}, beam: ProfileWords = {}): Room {
    const { stock, profile, room, settings, said } = jobBuilder();
    const lengths = ["8'", "10'", "12'", "14'", "16'"];
    const six = stock('poplar-1x6', { thickness: '3/4"', width: '5 1/2"', lengths });
    const eight = stock('poplar-1x8', { thickness: '3/4"', width: '7 1/4"', lengths });
    const strip = stock('strip-1x2', { thickness: '1/2"', width: '1 1/2"', lengths });
    const beams = profile('groove-box', {
        blocking: { stock: six, screws: { gauge: 8, length: '2 1/2"', every: '16"' } },
        spacers: { stock: six, height: '5"' },
        sides: { stock: eight, rabbet: ['1/4"', '1/4"'], nails: { gauge: 16, length: '2"', every: '12"' } },
        cleats: { stock: eight, thickness: '3/4"', height: '3/4"', nails: { gauge: 18, length: '1 1/4"', every: '8"' } },
        bottom: { stock: six, ease: '1/16"', biscuits: [2, '#10'], nails: { gauge: 18, length: '1 1/4"', every: '12"' } },
        trim: { stock: strip, nails: { gauge: 18, length: '2"', every: '12"' } },
        ...beam,
    });
    return room('parlor', {
        width: `18' 4"`, length: `15' 2"`, north: { coffers: 4 }, east: { coffers: 3 }, beams, through: 'north-south',
        band: { stock: eight, belowBeams: '1/4"', nails: { gauge: 16, length: '2 1/2"', every: '16"' } },
        job: { ...settings(), longestBoard: said(16 * 12 * 16256) }, ...words,
    });
}
