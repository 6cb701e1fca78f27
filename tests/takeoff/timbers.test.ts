import { describe, expect, test } from 'vitest';
import { layOut } from '../../src/ceiling/layout.ts';
import { dryFit } from '../../src/dryfit/dry-fit.ts';
import { sumOf } from '../../src/provenance/why.ts';
import { printInches } from '../../src/quantity/print-length.ts';
import { takeOff } from '../../src/takeoff/take-off.ts';
import { exampleRoom } from '../support/example-room.ts';
import { jobBuilder } from '../support/job-builder.ts';
import { TestWorkspace } from '../support/workspace.ts';

/**
 * The room of tests/support/example-room.ts, its beams timbers of 5 1/2" x 7 1/2". By hand: what runs through goes from band to band as a bottom
 * does, 180 1/2"; the four coffers of a row are what the run leaves beside three timbers, and what is cut between
 * them is as long as the coffer. Common practice, no source.
 */
const { stock } = jobBuilder(), fir = stock('fir-6x8', { thickness: '5 1/2"', width: '7 1/2"', lengths: ["16'", "20'"] });
const NO_BOX = { blocking: null, spacers: null, sides: undefined, cleats: null, bottom: undefined, trim: null };

describe('a solid beam', () => {
    const { ceiling, troubles } = layOut(exampleRoom({}, { ...NO_BOX, solid: { stock: fir } }));
    test('is as deep as its stock is wide, and as wide as it is thick', () => {
        expect(troubles).toEqual([]);
        const { outerWidth, depth } = ceiling!.lines[0]!.section;
        expect([outerWidth.ticks, depth.ticks].map(printInches)).toEqual(['5 1/2"', '7 1/2"']);
    });
    test('runs through, or is cut between others to the coffer; all of it goes together', () => {
        const off = takeOff(ceiling!), fit = dryFit(ceiling!, off), timbers = off.pieces.filter(({ part }) => part === 'timber');
        expect(fit.faults).toEqual([]);
        expect(fit.looked.coffers).toBe(ceiling!.coffers.length);
        for (const piece of off.pieces) expect(`${piece.id} ${sumOf(piece.why)}`).toBe(`${piece.id} ${piece.back}`);
        expect(timbers.filter(({ line }) => line === '1').map(({ back, width, thickness }) => [back, width, thickness].map(printInches))).toEqual([['180 1/2"', '7 1/2"', '5 1/2"']]);
        const between = timbers.filter(({ line }) => line === 'A');
        expect(between.map(({ back }) => back)).toEqual(ceiling!.across.coffers);
    });
    test('wants no sides and no bottom said; they are what is missing without it', async () => {
        const profile = (words: string): string => `edition 1\nstock fir { thickness 5 1/2"; width 7 1/2"; lengths 16' }\nprofile beam {\n  ${words}\n}\n`;
        const workspace = await TestWorkspace.open({ 'a.coffer': profile('solid { stock fir }'), 'b.coffer': profile('trim { stock fir }') });
        const told = (path: string): string[] => workspace.published(path).filter(({ rule }) => rule === 'not-said').map(({ message }) => message);
        expect(told('a.coffer')).toEqual([]);
        expect(told('b.coffer').join()).toContain('`sides` (a block) and `bottom` (a block)');
    });
});
