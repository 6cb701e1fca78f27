import { expect, test } from 'vitest';
import type { Layout } from '../../src/ceiling/model.ts';
import { notLaidOut } from '../../src/rules/not-laid-out.ts';
import type { Found } from '../../src/rules/rule.ts';
import { inches } from '../../src/quantity/rational.ts';
import { beam, build, room } from './built.ts';
import { job } from '../cutting/samples.ts';

/** A room that says all that it has to, laid out or not, with what was met and what its beams are. */
const here = build.at(), elsewhere = { ...here, uri: 'file:///details.coffer' };
function told({ words = {}, ...rest }: { words?: Parameters<typeof room>[0] } & Partial<Layout>): string[] {
    const found: Found[] = [], layout = { room: { ...room(words), at: here }, sections: new Map(), troubles: [], ...rest } as Layout;
    notLaidOut.check.room!({ layout, job: job(), pieces: () => [] }, one => found.push(one));
    return found.flatMap(({ message, related = [] }) => [message, ...related.map(({ at }) => at.uri)]);
}
const impossible = { kind: 'not-positive', what: 'the width of the sides', ticks: 0, at: elsewhere } as const;
const profile = (of: object) => new Map([['box', { profile: { ...beam(), name: 'box', at: elsewhere, ...of } }]]) as unknown as Layout['sections'];

test('what is wrong in another file is told, as far as the room says all that it has to', () => {
    const words = ['test-room is not laid out, so it has no pieces: the width of the sides is impossible. Fix that first.', elsewhere.uri];
    expect(told({ troubles: [impossible] })).toEqual(words);
    expect(told({ troubles: [impossible], ceiling: {} as Layout['ceiling'] })).toEqual([]);
    expect(told({ troubles: [{ kind: 'out-of-square', measured: inches(3), square: inches(2), at: elsewhere }] })[0]).toContain(': something it is made of is impossible.');
    for (const words of [{ north: undefined }, { east: undefined }, { through: undefined }, { beams: undefined }] as object[]) {
        expect(told({ troubles: [impossible], words })).toEqual([]);
    }
});

test('of what is told in its own file already, or by another rule, nothing is said again', () => {
    expect(told({ troubles: [impossible, { ...impossible, at: here }] })).toEqual([]);
    expect(told({ troubles: [{ kind: 'not-supported', what: 'a', instead: 'b', at: elsewhere }] })).toEqual([]);
    expect(told({ sections: profile({}) })).toEqual(['test-room is not laid out, so it has no pieces: box is not complete. Fix that first.', elsewhere.uri]);
    expect(told({ sections: profile({ at: here }) })).toEqual([]);
    expect(told({ sections: profile({ notComputed: [elsewhere] }) })).toEqual([]);
    expect(told({})).toEqual([]);
});
