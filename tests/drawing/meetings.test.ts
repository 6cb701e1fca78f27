import { readFile } from 'node:fs/promises';
import { describe, expect, test } from 'vitest';
import { meetingsOf } from '../../src/drawing/meetings/kinds.ts';
import { cutAlong } from '../../src/drawing/meetings/slice.ts';
import { drawMeetings, drawPaneMeeting, meetingSheets, shownMeetings } from '../../src/drawing/meetings/sheets.ts';
import { toSvg } from '../../src/drawing/index.ts';
import { solidsOf } from '../../src/dryfit/solids.ts';
import { TICKS_PER_INCH } from '../../src/quantity/ticks.ts';
import { takeOff } from '../../src/takeoff/take-off.ts';
import { layoutsOf } from '../support/layouts-of.ts';
import { outside, touching } from './support/checks.ts';
import { groups, leaves } from './support/walk.ts';

/** How beams meet: crossings, T's, rings, what dies, ends at walls, corners of walls. */
const RING = `edition 1

stock six { thickness 3/4"; width 5 1/2"; lengths 16' }
stock eight { thickness 3/4"; width 7 1/4"; lengths 16' }

profile plain {
  blocking { stock six; relief 0" }
  sides { stock eight; corners butted }
  cleats { rip 3/4" x 3/4" from six }
  bottom { stock six }
}
room gallery {
  wall north 16'
  wall east 14'
  grid { coffers-north 3; coffers-east 3; beams plain; through north-south }
  line 1 { from A; until B }
  line 2 { from A; until B }
  line A { from 1; until 2 }
  line B { from 1; until 2; meets dies-into }
}
`;
const NAMES = ['supper-room', 'angle-parlor', 'lantern-room', 'hearth-and-window', 'crooked-parlor', 'ballroom', 'reading-room', 'gallery'] as const;
const textOf = (name: string) =>
    (name === 'gallery' ? RING.replace('; meets dies-into', '') : readFile(new URL(`../takeoff/worked/${name}.coffer`, import.meta.url), 'utf8'));
async function laid(name: string) {
    const [layout] = await layoutsOf(await textOf(name)), ceiling = layout!.ceiling!;
    return { ceiling, pieces: takeOff(ceiling) };
}

describe.each(NAMES)('%s', name => {
    test('no two texts touch, all stands on its sheet and within its frame, and every way is drawn once', async () => {
        const { ceiling, pieces } = await laid(name), sheets = drawMeetings(ceiling, pieces, Array.from({ length: meetingSheets(ceiling) }, () => ({})));
        const drawn = sheets.flatMap(sheet => groups(sheet.items)).filter(({ id }) => /^meeting\.\d+$/u.test(id));
        expect(drawn.map(({ title }) => title)).toEqual(meetingsOf(ceiling).map(({ title }) => title));
        for (const sheet of sheets) {
            expect(touching(sheet)).toEqual([]);
            expect(outside(sheet)).toEqual([]);
            expect(JSON.stringify(leaves(sheet.items))).not.toMatch(/null,null|NaN/u);
        }
        const [first] = shownMeetings(ceiling, pieces), pane = drawPaneMeeting(first!, 'one', ceiling, pieces.pieces, solidsOf(ceiling, pieces), 420);
        expect(touching(pane)).toEqual([]);
    });
});

test.each(['ballroom', 'lantern-room', 'gallery'])('%s as a picture', async name => {
    const { ceiling, pieces } = await laid(name);
    await expect(toSvg(drawMeetings(ceiling, pieces, [{}])[0]!, { theme: 'light', fonts: 'named', as: 'part of a page' })).toMatchFileSnapshot(`./snapshots/meetings-${name}.svg`);
});

test('kinds, each with all its places', async () => {
    const kinds = async (name: string) => meetingsOf((await laid(name)).ceiling).map(({ title, places }) => `${title}: ${places.length}`);
    expect(await kinds('supper-room')).toEqual(['Lines cross: sides mitered: 4', 'A line ends at another: sides mitered: 4', 'A line ends at a band: 12',
        'Two bands in an inside corner: 4']);
    expect(await kinds('ballroom')).toEqual(['Lines cross: the shallower dies into the deeper: 6', 'A line ends at a band: 4', 'A line ends at a band: 6',
        'Two bands in an inside corner: 4']);
    expect(await kinds('gallery')).toEqual(['Two lines end at each other: sides butted: 4']);
    expect(await kinds('hearth-and-window')).toContain('Two bands in an outside corner: 4');
    expect(await kinds('lantern-room')).toContain('A line ends at a band, at 45 degrees: 8');
});

test('what is said of a meeting is what the cut list says of its pieces', async () => {
    const { ceiling, pieces } = await laid('ballroom'), [dies] = shownMeetings(ceiling, pieces);
    expect(dies!.words).toEqual([
        'Sides: ends at the face, square.', 'Bottom of line 1: runs through.', 'Bottom of line A: ends at the face, square.',
        'Blocking of line 1: runs through.', 'Blocking of line A: ends at the face, square.',
        'Trim: mitered 45°.', 'Line 1 hangs 3 3⁄4" lower.',
    ]);
});

test('a plane along a line cuts what lies in it, and sees its far side', async () => {
    const { ceiling, pieces } = await laid('ballroom'), [{ at, along }] = meetingsOf(ceiling) as [ReturnType<typeof meetingsOf>[number]];
    const { cut, beyond } = cutAlong(solidsOf(ceiling, pieces), at, along, [-8 * TICKS_PER_INCH, 8 * TICKS_PER_INCH], 4 * TICKS_PER_INCH);
    const inches = (of: string, part: string) => cut.filter(({ piece }) => piece.line === of && piece.part === part)
        .map(({ from, to }) => [from, to].map(ticks => Math.round(ticks / TICKS_PER_INCH * 16) / 16));
    // line 1 is 5 1/2" inside with sides of 3/4": its faces 3 1/2" off its center; the blocking of line A stays 3/16" clear of them
    expect(inches('1', 'side').sort((a, b) => a[0]! - b[0]!)).toEqual([[-3.5, -2.75], [2.75, 3.5]]);
    expect(inches('A', 'blocking').sort((a, b) => a[0]! - b[0]!)).toEqual([[-8, -3.6875], [3.6875, 8]]);
    expect(cut.filter(({ piece }) => piece.line === '1').every(({ across }) => across)).toBe(true);
    expect(new Set(beyond.map(({ piece }) => piece.part))).toEqual(new Set(['side', 'cleat', 'trim']));
});

test('half beams that are spliced just where the plane goes through are cut by it', async () => {
    const text = RING.replace(/ {2}line[^}]*\}\n/gu, '').replace('north 16\'', 'north 24\'').replace('coffers-north 3', 'coffers-north 2')
        .replace('through north-south', 'through north-south; perimeter { kind half-beam; width 2 1/2" }');
    const [layout] = await layoutsOf(text), ceiling = layout!.ceiling!, pieces = takeOff(ceiling);
    expect(pieces.pieces.filter(({ on, part }) => on === 'north' && (part === 'bottom' || part === 'blocking')).map(({ id }) => id)).toHaveLength(4);
    const atHalfBeam = meetingsOf(ceiling).find(({ title }) => title === 'A line ends at a half beam as deep')!, { at, along } = atHalfBeam;
    expect(atHalfBeam.places[0]).toBe('line 1 at wall north');
    const { cut } = cutAlong(solidsOf(ceiling, pieces), at, along, [-8 * TICKS_PER_INCH, 8 * TICKS_PER_INCH], 4 * TICKS_PER_INCH);
    const ofWall = cut.filter(({ piece }) => piece.on === 'north')
        .map(({ piece, from, to, across }) => [piece.part, Math.round(1000 * (to - from) / TICKS_PER_INCH), across]);
    expect(ofWall).toEqual(expect.arrayContaining([['blocking', 2500, true], ['bottom', 2500, true], ['cleat', 750, true]]));
});

test('of timbers it is told which is cut at which, and nothing of sides', async () => {
    const text = RING.replace(/ {2}line[^}]*\}\n/gu, '').replace('beams plain', 'beams post')
        .replace('room gallery', `stock fir-6x8 { thickness 5 1/2"; width 7 1/2"; lengths 20' }
profile post { solid { stock fir-6x8 } }
room gallery`);
    const [layout] = await layoutsOf(text), ceiling = layout!.ceiling!, [crossing] = shownMeetings(ceiling, takeOff(ceiling));
    expect([crossing!.meeting.title, ...crossing!.words])
        .toEqual(['Lines cross: timbers', 'Timber of line 1: runs through.', 'Timber of line A: cut between, square.']);
});
