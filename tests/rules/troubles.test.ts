import { NO_RATES } from '../support/no-rates.ts';
import { describe, expect, it } from 'vitest';
import type { Trouble } from '../../src/ceiling/model.ts';
import type { FileContent } from '../../src/job/file.ts';
import { runRules } from '../../src/rules/run.ts';
import { inches } from '../../src/quantity/rational.ts';
import { build, room } from './built.ts';

/** One of each kind of trouble that a layout may meet; a new kind does not compile until it is listed here. */
const troubles: { [K in Trouble['kind']]: Extract<Trouble, { kind: K }>[] } = {
    'grid-doesnt-close': [{ kind: 'grid-doesnt-close', along: 'east-west', wanted: inches(20), has: inches(18), at: build.at(), parts: '4 x beam 5"' }],
    'no-coffer-size-fits': [{ kind: 'no-coffer-size-fits', along: 'north-south', at: build.at(), nearest: [{ coffers: 2, size: inches(54) }] }],
    'not-rectangular': [{ kind: 'not-rectangular', walls: ['north', 'south'], a: inches(100), b: inches(101), at: build.at(), other: build.at() }],
    'out-of-square': [{ kind: 'out-of-square', measured: inches(200), square: inches(199), at: build.at() }],
    'tape-doesnt-close': [{ kind: 'tape-doesnt-close', gap: { x: inches(1), y: 0 }, stretched: [], at: build.at() }],
    'diagonal-differs': [{ kind: 'diagonal-differs', from: 'north-east', to: 'south-west', measured: inches(200), is: inches(199), at: build.at() }],
    'no-such-triangle': [{ kind: 'no-such-triangle', from: 'north-west', to: 'south-east', measured: inches(400), walls: ['north', 'east'], a: inches(200), b: inches(100), at: build.at() }],
    'no-room': (['too-few-lengths', 'runs-backwards', 'crosses-itself', 'counterclockwise'] as const).map(why => ({ kind: 'no-room', why, walls: ['north', 'porch'], at: build.at() })),
    'lines-overlap': [{ kind: 'lines-overlap', lines: ['1', '2'], by: inches(1), at: build.at() }],
    'unknown-line': [{ kind: 'unknown-line', name: 'C', has: ['1', '2', 'A'], at: build.at() }, { kind: 'unknown-line', name: '1', has: [], at: build.at() }],
    'unknown-meeting': [{ kind: 'unknown-meeting', of: 'line 1', name: 'C', has: ['wall-north', 'A'], at: build.at() }],
    'line-goes-nowhere': [
        { kind: 'never-gets-there' as const, to: '2' }, { kind: 'misses' as const, to: 'A' }, { kind: 'leaves-the-room' as const, to: 'east' },
        { kind: 'in-the-way' as const, on: 'A', other: '2', by: inches(1) }, { kind: 'deeper-than-its-end' as const, to: 'north', deep: inches(7), has: inches(5) },
    ].map(why => ({ kind: 'line-goes-nowhere', line: '1', why, at: build.at() })),
    'no-other-side': [
        { kind: 'no-other-side', of: 'line', line: 'A', runs: 'east-west', has: ['north', 'south'], said: 'west', at: build.at() },
        { kind: 'no-other-side', of: 'line', line: '1', runs: 'north-south', said: 'west', at: build.at() }, { kind: 'no-other-side', of: 'half-beam', at: build.at() },
    ],
    'too-many-coffers': [{ kind: 'too-many-coffers', within: 'one direction', count: 1_000_000, most: 41, at: build.at() }],
    'too-much-in-file': [
        { kind: 'too-much-in-file', of: 'rooms', what: 'coffers', count: 420, most: 400, at: build.at() },
        { kind: 'too-much-in-file', of: 'alternates', what: 'spacers', count: 5000, most: 4000, at: build.at() },
    ],
    'bad-count': [{ kind: 'bad-count', value: 2.5, at: build.at(), what: 'coffers along the north wall' }],
    'not-positive': [{ kind: 'not-positive', what: 'the north wall', ticks: 0, at: build.at() }],
    'band-too-high': [{ kind: 'band-too-high', height: inches(8), room: inches('7 3/4'), at: build.at() }],
    'not-supported': [{ kind: 'not-supported', what: 'line 1, which is deeper than the half beam along the north wall that it meets', instead: 'a half beam as deep as the lines, or deeper', at: build.at() }],
};

const file: FileContent = {
    uri: build.at().uri, job: build.settings(), rates: NO_RATES, stocks: [], profiles: [], rooms: [], alternates: [], findings: [], allowances: [],
};

describe('troubles of a layout', () => {
    it.each(Object.values(troubles).flat())('$kind is said exactly once, by an error at its place', trouble => {
        const layout = { room: room(), sections: new Map(), troubles: [trouble] };
        const findings = runRules(file, [layout]);
        expect(findings).toHaveLength(1);
        expect(findings[0]).toMatchObject({ at: trouble.at, severity: 'error', room: 'test-room' });
        expect(findings[0]!.message.length).toBeGreaterThan(20);
    });

    it('nothing is said of the layout of a room that could not be read', () => {
        const layout = { room: room({ broken: true }), sections: new Map(), troubles: Object.values(troubles).flat() };
        expect(runRules(file, [layout])).toEqual([]);
    });
});
