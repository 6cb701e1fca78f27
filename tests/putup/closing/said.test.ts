import { describe, expect, it } from 'vitest';
import type { Ceiling } from '../../../src/ceiling/model.ts';
import { putUp } from '../../../src/putup/put-up.ts';
import { bandSaid } from '../../../src/takeoff/closing/said.ts';
import { takeOffOf } from '../../../src/takeoff/take-off.ts';
import { layoutsOf } from '../../support/layouts-of.ts';
import { roomText } from './room.ts';

async function ceilingOf(words: Parameters<typeof roomText>[0]): Promise<Ceiling> {
    return (await layoutsOf(roomText(words)))[0]!.ceiling!;
}
const machiningOf = (ceiling: Ceiling, name: string): string => takeOffOf(ceiling).pieces.find(({ id }) => id === `den.${name}`)!.machining.join('; ');
const biscuitsOf = (ceiling: Ceiling): number => takeOffOf(ceiling).consumables.filter(({ kind }) => kind === 'biscuits').reduce((sum, { count }) => sum + count, 0);
/** Slots in all, by the work of the pieces: a biscuit sits in two. */
const slotsOf = (ceiling: Ceiling): number => takeOffOf(ceiling).pieces.flatMap(({ work }) => work)
    .reduce((sum, work) => sum + (work.kind === 'slots' ? work.count * work.places : 0), 0);

describe('what is said of closing pieces changes their work, and of nothing else', () => {
    it('slots are opened to the back at both ends of those that close', async () => {
        const plain = await ceilingOf({}), opened = await ceilingOf({ bottom: '; closing slots-opened' });
        expect(machiningOf(opened, 'bottom-A-2')).toBe('slots for 2 #10 biscuits in the west and the east end, opened to the back');
        expect(machiningOf(opened, 'bottom-A-1')).toBe(machiningOf(plain, 'bottom-A-1'));
        expect(machiningOf(opened, 'bottom-2')).toBe(machiningOf(plain, 'bottom-2'));
        expect(biscuitsOf(opened)).toBe(24);
    });
    it('biscuits left out at the east end: none there, none in the edge it meets, and a block', async () => {
        const left = await ceilingOf({ bottom: '; closing biscuits-left-out' });
        // twelve joints of two, less four closing pieces at one end each
        expect(biscuitsOf(left)).toBe(24 - 8);
        expect(slotsOf(left)).toBe(2 * (24 - 8));
        // 4": the channel of 5 1/2" less two cleats
        expect(machiningOf(left, 'bottom-A-2')).toMatch(/^slots for 2 #10 biscuits in the west end, 1\/32" wider towards the back; glue a block 4" wide behind the joint at its east end$/);
        // line 2 takes those of bay 3 from the east, and none of bay 2 from the west
        expect(machiningOf(left, 'bottom-2')).toMatch(/in the east edge, centered .*in the east edge, centered/);
        expect(machiningOf(left, 'bottom-1')).toMatch(/in both edges.*in both edges/);
        const way = putUp(left).steps.flatMap(({ placings }) => placings).find(({ piece }) => piece.id === 'den.bottom-A-2')!;
        expect(way.path!.moves.map(({ kind }) => kind)).toEqual(['lift', 'swing']);
    });
    it('a knee is cut in two, kerfs lie across the back', async () => {
        expect(machiningOf(await ceilingOf({ bottom: '; closing kneed' }), 'bottom-A-2')).toMatch(/wider towards the back; cut in two in its middle, the back of the joint relieved by 1\/32"; glue a block 4" wide behind the joint in its middle$/);
        const kerfed = await ceilingOf({ bottom: '; closing kerfed', biscuits: '1 x #0', species: 'species white-oak; ', north: `60'` });
        expect(machiningOf(kerfed, 'bottom-A-2')).toMatch(/\d+ kerfs across its back, .* apart and .* deep$/);
    });
    it('each line by the words of its own profile', async () => {
        const words = roomText({ bottom: '; closing slots-opened', more: '  line B { beams left-out }\n' })
            .replace('room den {', 'profile left-out like box { bottom.closing biscuits-left-out }\nroom den {');
        const ceiling = (await layoutsOf(words))[0]!.ceiling!;
        expect(machiningOf(ceiling, 'bottom-A-2')).toBe('slots for 2 #10 biscuits in the west and the east end, opened to the back');
        expect(machiningOf(ceiling, 'bottom-B-2')).toMatch(/glue a block 4" wide behind the joint at its east end$/);
    });
    it('with the band up first those at the walls close too', async () => {
        const words = { bottom: '; closing slots-opened', more: '  put-up { order band before bottoms }\n' };
        expect(machiningOf(await ceilingOf(words), 'bottom-A-1')).toBe('slots for 2 #10 biscuits in the east end, opened to the back');
    });
    it.each<[string, 'first' | undefined]>([
        ['band before bottoms', 'first'], ['bottoms after band', 'first'], ['band before line-A', 'first'], ['line-A after wall-north', 'first'], ['wall-east before bottoms', 'first'],
        ['bottoms before band', undefined], ['band after bottoms', undefined], ['band before trim', undefined], ['trim after band', undefined], ['sides before bottoms', undefined],
        ['bottoms after sides', undefined],
    ])('the band is up first where some of it is to be before some bottom: order %s', async (order, band) => {
        expect(bandSaid((await ceilingOf({ more: `  put-up { order ${order} }\n` })).room).band).toBe(band);
    });
});

describe('half beams', () => {
    const words = { perimeter: 'kind half-beam; width 2 3/4"', biscuits: '1 x #0' };
    it('have slots wherever they have biscuits', async () => {
        const ceiling = await ceilingOf(words);
        // twelve crossings with two ends each less the ends of three through lines, six ends of those and four of two lines at the walls, four corners
        expect(biscuitsOf(ceiling)).toBe(takeOffOf(ceiling).joints.filter(({ biscuits }) => biscuits).length);
        expect(slotsOf(ceiling)).toBe(2 * biscuitsOf(ceiling));
        expect(machiningOf(ceiling, 'bottom-north')).toMatch(/centered 1 3\/8" from the west end.*centered .* from the west end/);
    });
    it('and may have them left out on both sides of a joint', async () => {
        const ceiling = await ceilingOf({ ...words, bottom: '; closing biscuits-left-out' });
        expect(slotsOf(ceiling)).toBe(2 * biscuitsOf(ceiling));
        expect(machiningOf(ceiling, 'bottom-east')).toContain('behind the joint at its south end');
    });
});
