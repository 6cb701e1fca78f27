import type { WorkedPiece } from '../arrangement/worked.ts';

/** Rooms of tests/arrangement/worked.json as jobs; what their walls and lines are called in them, in the order of that file. */
interface WorkedJob {
    readonly name: string;
    readonly text: string;
    readonly walls: readonly string[];
    readonly lines: readonly string[];
    /** Other rooms of the same job, with the pieces of theirs that the model was asked for. */
    readonly also?: Readonly<Record<string, readonly WorkedPiece[]>>;
}
const WALLS = ['north', 'east', 'south', 'west'];

const YARD = `edition 1

stock board-4 { thickness 3/4"; width 3 1/2"; lengths 8', 12', 16', 20' }
stock board-6 { thickness 3/4"; width 5 1/2"; lengths 8', 12', 16', 20' }
stock board-8 { thickness 3/4"; width 7 1/4"; lengths 8', 12', 16', 20' }
stock board-10 { thickness 3/4"; width 9 1/4"; lengths 8', 12', 16', 20' }
stock thin-8 { thickness 1/2"; width 7 1/4"; lengths 8', 12', 16', 20' }
stock crown { thickness 5/8"; width 3 5/8"; lengths 8', 12', 16' }
`;
const CLEATS = 'cleats { rip 3/4" x 3/4" from board-6 }', FLAT = 'trim { stock board-6; rip 1 1/2" }';

function profile(name: string, ...parts: readonly string[]): string {
    return `\nprofile ${name} {\n${parts.map(part => `  ${part}\n`).join('')}}\n`;
}
type Two<T> = readonly [T, T];
function room(name: string, [north, east]: Two<string>, [across, down]: Two<number>, beams: string, ...more: readonly string[]): string {
    return `
room ${name} {
  wall north ${north}
  wall east ${east}
${more.map(line => `  ${line}\n`).join('')}  grid {
    coffers-north ${across}
    coffers-east ${down}
    beams ${beams}
    through north-south
    perimeter { kind band; stock board-8 }
  }
}
`;
}

/** Round every coffer the same: north and south, then east and west. */
function trims(coffers: number, level: Omit<WorkedPiece, 'part' | 'at'>, upright: Omit<WorkedPiece, 'part' | 'at'>): WorkedPiece[] {
    const at = (...sides: readonly string[]): (string | number)[][] => Array.from({ length: coffers }, (_, i) => sides.map(side => [i + 1, side])).flat();
    return [{ part: 'trim', ...level, at: at('north', 'south') }, { part: 'trim', ...upright, at: at('east', 'west') }];
}
/** Bottoms or blocking of two lines each way: through, then between at the walls, then between two lines. */
function lying(part: 'bottom' | 'blocking', width: string, [through, outer, inner]: readonly [string, string, string]): WorkedPiece[] {
    const piece = (of: string, length: string, at: WorkedPiece['at']): WorkedPiece => ({ part, of, width, edges: [length, length], angles: [0, 0], at });
    return [
        ...['1', '2'].map(line => piece(line, through, [['north', 'south']])),
        ...['A', 'B'].flatMap(line => [piece(line, outer, [['west', '1'], ['2', 'east']]), piece(line, inner, [['1', '2']])]),
    ];
}

const STILL = ['16\' 3 1/8"', '13\' 4 1/4"'] as const, MUSIC = ['16\' 2 3/8"', '12\' 9 5/8"'] as const;

export const workedJobs: readonly WorkedJob[] = [
    {
        name: 'Map room', walls: WALLS, lines: ['1', '2', '3', 'A', 'B'],
        text: [
            YARD,
            profile('wide', 'blocking { stock board-6; relief 0" }', 'sides { stock board-8 }', CLEATS, 'bottom { stock board-6 }', FLAT),
            profile('narrow', 'blocking { stock board-4; relief 0" }', 'sides { stock thin-8 }', CLEATS, 'bottom { stock board-4 }', FLAT),
            room('maps', ['17\' 9 3/8"', '14\' 2 3/4"'], [4, 3], 'wide', 'line A { beams narrow }', 'line B { beams narrow }'),
        ].join(''),
    },
    {
        name: 'Still room', walls: WALLS, lines: ['1', '2', 'A', 'B'],
        text: [
            YARD,
            profile('capped', 'blocking { stock board-6; relief 0" }', 'sides { stock board-8 }', CLEATS, 'bottom { stock board-10; place under-sides overhang 1/2" }', FLAT),
            profile('lapped', 'blocking { stock board-6; relief 0" }', 'sides { stock board-8 }', CLEATS,
                'bottom { stock board-8; rip 6 7/32"; place in-rabbets let-in 3/8"; gap 0" to 1/32" }', FLAT),
            room('still', STILL, [3, 3], 'capped'), room('let-in', STILL, [3, 3], 'lapped'),
        ].join(''),
        also: {
            'let-in': [...lying('bottom', '199/32', ['635/4', '3857/64', '1941/32']), ...lying('blocking', '11/2', ['635/4', '485/8', '491/8'])],
        },
    },
    {
        name: 'Music room', walls: WALLS, lines: ['1', '2', 'A'],
        text: [
            YARD,
            profile('crowned', 'blocking { stock board-6; relief 0" }', 'sides { stock board-8 }', CLEATS, 'bottom { stock board-6 }',
                'trim { stock crown; spring 38° projects 2 1/4" }'),
            room('music', MUSIC, [3, 2], 'crowned'),
            room('coped', MUSIC, [3, 2], 'crowned', 'trim { stock crown; corners coped; spring 38° projects 2 1/4" }'),
        ].join(''),
        also: {
            coped: trims(6, { edges: ['477/8', '477/8'], cuts: ['square', 'square'], angles: [0, 0] }, { edges: ['1089/16', '1161/16'], cuts: ['coped', 'coped'], angles: [45, 45] }),
        },
    },
];
