import { expect, test } from 'vitest';
import { layOut } from '../../src/ceiling/layout.ts';
import { roomText } from '../../src/report/bid/scope.ts';
import { jobBuilder } from '../support/job-builder.ts';

/** The words of a room whose beams are of these, and whose line A is of others. */
function words(sides: string | undefined, bottom: string | undefined, ofLineA = { sides, bottom }): string {
    const b = jobBuilder();
    const profile = (name: string, woods: typeof ofLineA) => b.profile(name, {
        blocking: { stock: b.stock('blocking', { thickness: '3/4"', width: '5 1/2"', species: 'douglas-fir' }) },
        sides: { stock: b.stock('deep', { thickness: '3/4"', width: '7 1/4"', species: woods.sides }) },
        bottom: { stock: b.stock('wide', { thickness: '3/4"', width: '5 1/2"', species: woods.bottom }) },
    });
    const room = b.room('snug', { width: `13' 2"`, length: `9' 7"`, north: { coffers: 3 }, east: { coffers: 2 }, through: 'north-south', beams: profile('box', { sides, bottom }), lines: { A: { beams: profile('other-box', ofLineA) } } });
    return / deep(?: of (.*?))?(?:,|\.) /.exec(roomText(layOut(room).ceiling!))![1] ?? '';
}

test('the client reads what the beams that show are of, and of nothing that is hidden', () => {
    expect(words('yellow-poplar', 'yellow-poplar')).toBe('yellow poplar');
    expect(words('mdf', 'mdf')).toBe('MDF');
});

test('sides of one wood and bottoms of another are named apart', () => {
    expect(words('mdf', 'yellow-poplar')).toBe('MDF sides and yellow poplar bottoms');
});

test('beams that differ are all named, each wood once', () => {
    expect(words('red-oak', 'red-oak', { sides: 'mdf', bottom: 'red-oak' })).toBe('MDF and red oak sides and red oak bottoms');
    expect(words('red-oak', 'red-oak', { sides: 'mdf', bottom: 'mdf' })).toBe('MDF and red oak');
});

test('where the text does not say it of every beam, nothing is said', () => {
    expect(words(undefined, 'mdf')).toBe('');
    expect(words('mdf', 'mdf', { sides: 'mdf', bottom: undefined })).toBe('');
});
