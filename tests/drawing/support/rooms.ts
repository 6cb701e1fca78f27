import { layOut } from '../../../src/ceiling/layout.ts';
import type { Ceiling } from '../../../src/ceiling/model.ts';
import { drawSheets, type Sheet } from '../../../src/drawing/index.ts';
import type { Fixture, JobSettings, Profile, Room } from '../../../src/job/model.ts';
import { kept } from '../../../src/plain/kept.ts';
import { takeOff } from '../../../src/takeoff/take-off.ts';
import type { TakeOff } from '../../../src/takeoff/model.ts';
import { FULL } from '../../support/full.ts';
import { jobBuilder, ticksOf, type JobBuilder, type Length, type RoomWords } from '../../support/job-builder.ts';

/** What a test wants to be different in a room that is otherwise usual. */
export interface RoomWishes {
    readonly width?: Length; readonly length?: Length;
    readonly across?: number; readonly down?: number;
    readonly through?: 'north-south' | 'east-west';
    readonly band?: boolean; readonly trim?: boolean;
    readonly corners?: 'mitered' | 'butted';
    readonly metric?: boolean;
    readonly residue?: RoomWords['residue'];
    readonly title?: string; readonly roomTitle?: string; readonly client?: string; readonly profileName?: string;
    readonly fixtures?: readonly {
        readonly name: string;
        readonly kind: string;
        readonly x: Length;
        readonly y: Length;
        readonly diameter?: Length;
        readonly keepClear?: Length;
    }[];
    readonly lengths?: Length[];
    /** Lines that are built of a second profile: the same beam under another name. */
    readonly otherBeams?: readonly string[];
    readonly covering?: boolean;
}

/** A box beam of 1-by boards, or of 19 mm ones. */
function boxBeam(b: JobBuilder, wishes: RoomWishes): { readonly profile: Profile; readonly stock: ReturnType<JobBuilder['stock']> } {
    const lengths = wishes.lengths ?? (wishes.metric ? ['2400 mm', '3600 mm', '4800 mm'] : ["8'", "12'", "16'"]);
    const sizes = wishes.metric
        ? { thickness: '19 mm', wide: '140 mm', deep: '185 mm', strip: '38 mm', cleat: '19 mm', spacer: '120 mm', down: '6 mm', groove: '6 mm' }
        : { thickness: '3/4"', wide: '5 1/2"', deep: '7 1/4"', strip: '1 1/2"', cleat: '3/4"', spacer: '5"', down: '1/4"', groove: '1/4"' };
    const board = (name: string, width: Length) => b.stock(name, { thickness: sizes.thickness, width, lengths });
    const wide = board('wide', sizes.wide);
    const deep = board('deep', sizes.deep);
    const strip = board('strip', sizes.strip);
    const butted = wishes.corners === 'butted';
    return {
        stock: wide,
        profile: b.profile(wishes.profileName ?? 'plain-box', {
            blocking: { stock: wide, screws: { gauge: 8, length: wishes.metric ? '64 mm' : '2 1/2"', every: wishes.metric ? '400 mm' : '16"' } },
            spacers: { stock: wide, height: sizes.spacer },
            sides: { stock: deep, heldDown: sizes.down, corners: wishes.corners ?? 'mitered', ...(butted ? {} : { rabbet: [sizes.groove, sizes.groove] as [Length, Length] }), nails: { gauge: 15, length: wishes.metric ? '50 mm' : '2"', every: wishes.metric ? '400 mm' : '16"' } },
            cleats: { stock: strip, thickness: sizes.cleat, height: sizes.cleat, nails: { gauge: 18, length: wishes.metric ? '32 mm' : '1 1/4"', every: wishes.metric ? '200 mm' : '8"' } },
            bottom: { stock: wide, ease: wishes.metric ? '1.5 mm' : '1/16"', biscuits: [1, '#20'] },
            trim: wishes.trim === false ? null : { stock: strip },
        }),
    };
}

function settings(b: JobBuilder, wishes: RoomWishes): JobSettings {
    return b.settings({
        title: wishes.title ?? 'Quince Lane 4', ...(wishes.client === undefined ? {} : { client: wishes.client }),
        ...(wishes.metric ? { show: 'millimeters' as const, cutTo: ticksOf('0.5 mm') } : {}),
    });
}

function roomWith(wishes: RoomWishes): Room {
    const b = jobBuilder('file:///work%20shop/quince-lane/parlor.coffer');
    const { profile, stock } = boxBeam(b, wishes);
    const second = boxBeam(b, { ...wishes, profileName: 'fine-box' });
    const room = b.room('parlor', {
        job: settings(b, wishes), width: wishes.width ?? "14' 3 1/2\"", length: wishes.length ?? "11' 2\"",
        north: { coffers: wishes.across ?? 3 }, east: { coffers: wishes.down ?? 2 }, beams: profile, through: wishes.through ?? 'north-south',
        ...(wishes.residue === undefined ? {} : { residue: wishes.residue }),
        ...(wishes.otherBeams === undefined ? {} : { lines: Object.fromEntries(wishes.otherBeams.map(line => [line, { beams: second.profile }])) }),
        band: wishes.band === false ? null : { stock, belowBeams: wishes.metric ? '6 mm' : '1/4"' },
    });
    const fixtures = (wishes.fixtures ?? []).map((words): Fixture => ({
        name: words.name, kind: words.kind, at: b.at(), x: ticksOf(words.x), y: ticksOf(words.y),
        ...(words.diameter === undefined ? {} : { diameter: b.said(ticksOf(words.diameter)) }),
        ...(words.keepClear === undefined ? {} : { keepClear: b.said(ticksOf(words.keepClear)) }),
    }));
    const covering = wishes.covering === false ? {} : { covering: { kind: b.said('gypsum'), thickness: b.said(ticksOf(wishes.metric ? '12.5 mm' : '1/2"')) } };
    return { ...room, ...covering, title: wishes.roomTitle ?? 'Parlor', fixtures };
}

export interface LaidRoom { readonly ceiling: Ceiling; readonly pieces: TakeOff }

/** Null where the wishes cannot be laid out. Made anew each time. */
export function laidOut(wishes: RoomWishes): LaidRoom | null {
    const { ceiling } = layOut(roomWith(wishes));
    return ceiling === undefined ? null : { ceiling, pieces: takeOff(ceiling) };
}

/** The same wishes, by identity, are laid out once for all tests, and so are their sheets drawn. */
export const laid = kept((wishes: RoomWishes): LaidRoom => {
    const room = laidOut(wishes);
    if (room === null) throw new Error(`no ceiling for ${JSON.stringify(wishes)}`);
    return room;
});
export const drawn = kept((wishes: RoomWishes): readonly Sheet[] => drawSheets(laid(wishes).ceiling, laid(wishes).pieces));

/** The rooms whose drawings are looked at in most tests. */
export const ROOMS: Readonly<Record<string, RoomWishes>> = {
    'three by two': { fixtures: [
        { name: 'lamp-1', kind: 'light', x: "2' 4\"", y: "2' 8\"", diameter: '6"' },
        { name: 'head-1', kind: 'sprinkler', x: "7' 1\"", y: "8' 0\"", diameter: '2"', keepClear: '4"' },
        { name: 'vent', kind: 'register', x: "12' 2\"", y: "8' 3\"" },
    ], client: 'the Harrows' },
    'one coffer, nothing round it': { width: "6' 0\"", length: "5' 1\"", across: 1, down: 1, band: false },
    'ten by eight': { width: "44' 0\"", length: "33' 0\"", across: 10, down: 8 },
    'butted, no trim, no board named': { width: "14' 7 5/16\"", length: "12' 1 1/32\"", corners: 'butted', band: false, trim: false, residue: 'spread', covering: false },
    metric: { metric: true, width: '5400 mm', length: '4310 mm', down: 3 },
    narrow: { width: "4' 0\"", length: "38' 0\"", across: 1, down: 10, through: 'east-west' },
    wide: { width: "60' 0\"", length: "7' 0\"", across: 14, down: 1, band: false },
    'many small': FULL ? { width: "40' 0\"", length: "30' 0\"", across: 30, down: 24 } : { width: "16' 0\"", length: "12' 6\"", across: 12, down: 10 },
    'two sections': { otherBeams: ['2'], through: 'east-west', residue: 'band' },
    hostile: {
        title: '<script>alert("x")</script> & Söhne \u202Egnp.exe \u{1F3DA}\uFE0F \u65E5\u672C\u306E\u5BB6 \u05E9\u05DC\u05D5\u05DD',
        client: `]]> --> ${'a long name that will never fit '.repeat(40)}`,
        roomTitle: '\u0141\u00F3d\u017A \u2014 \u2018Grand\u2019 \u017Di\u017Eka \uD800 \u0000 e\u0301\u0301\u0301\u0301\u0301\u0301\u0301',
        profileName: '${process.env}&amp;</style><x>', fixtures: [
            { name: '</text><image href="x"/>', kind: 'light', x: "2' 4\"", y: "2' 8\"" },
            { name: 'W'.repeat(300), kind: '"onload="x', x: "12' 2\"", y: "8' 3\"" },
        ],
    },
};
