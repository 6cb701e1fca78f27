import { is, type Change, type Trial } from './trial.ts';

export const WRAPPED: Change = ['profile slim { blocking { stock flat-6 }; ', 'profile slim { wraps 5" x 4" clearance 1/4"; '];

/** A stock whose width and thickness are known so: its least known size is told. */
function known(width: string, thickness: string): Change {
    return ['width        5 1/2" ± 1/64"\n  thickness    3/4"', `width        5 1/2" ± 1/64" ${width}\n  thickness    3/4" ${thickness}`];
}

/** The east wall with what its block says. */
export function eastWith(words: string): Change {
    return ['wall east   7\' 2"\n', `wall east   7' 2" { ${words} }\n`];
}

/** A length that says how it is known, when and by whom. */
function knownThrice(of: string, says: string, ...before: readonly Change[]): Readonly<Record<string, Trial>> {
    return {
        [`${of}/as`]: is('as told', 'as drawn', ...before, [says, `${says} as told`]),
        [`${of}/on`]: is('on 2026-03-07', 'on 2026-03-08', ...before, [says, `${says} on 2026-03-07`]),
        [`${of}/by`]: is('by "Wren"', 'by "Ruiz"', ...before, [says, `${says} as told by "Wren"`]),
    };
}

/** How dimensions are known, when and by whom: as in said.ts, of which this is a part. */
export const KNOWN_TRIALS: Readonly<Record<string, Trial>> = {
    'Stock.width/as': is('as told', 'as drawn', known('as told', 'as verified')),
    'Stock.width/on': is('on 2026-03-07', 'on 2026-03-08', known('on 2026-03-07', 'as verified')),
    'Stock.width/by': is('by "Wren"', 'by "Ruiz"', known('as told by "Wren"', 'as verified')),
    'Stock.thickness/as': is('as told', 'as drawn', known('as verified', 'as told')),
    'Stock.thickness/on': is('on 2026-03-07', 'on 2026-03-08', known('as verified', 'on 2026-03-07')),
    'Stock.thickness/by': is('by "Wren"', 'by "Ruiz"', known('as verified', 'as told by "Wren"')),
    'Profile.wraps/as': is('as told', 'as drawn', WRAPPED, ['clearance 1/4"', 'clearance 1/4" as told']),
    'Profile.wraps/on': is('on 2026-03-07', 'on 2026-03-08', WRAPPED, ['clearance 1/4"', 'clearance 1/4" on 2026-03-07']),
    'Profile.wraps/by': is('by "Wren"', 'by "Ruiz"', WRAPPED, ['clearance 1/4"', 'clearance 1/4" as told by "Wren"']),
    ...knownThrice('Job.longest-board', 'longest-board    12\''), ...knownThrice('Job.longest-piece', 'longest-piece    6\'', ['longest-board    12\'', 'longest-board    12\'\n  longest-piece    6\'']),
    ...knownThrice('Stock.on-hand', '2 x 7\' worth 4 USD'), ...knownThrice('Trim.spring', 'drops 2"', ['corners  mitered', 'corners  mitered; spring 38° drops 2"']),
    ...knownThrice('Room.longest-piece', 'longest-piece 6\'', ['room den "The den" {\n', 'room den "The den" {\n  longest-piece 6\'\n']),
    ...knownThrice('Wall.hump', 'hump 1/4" at 3\'', eastWith('hump 1/4" at 3\'')), ...knownThrice('Wall.hollow', 'hollow 1/4" at 3\'', eastWith('hollow 1/4" at 3\'')), ...knownThrice('Wall.leans-in', 'leans-in 1/4"', eastWith('leans-in 1/4"')), ...knownThrice('Wall.leans-out', 'leans-out 1/4"', eastWith('leans-out 1/4"')),
    'Ceiling.height/as': is('as told', 'as drawn', ['height    8\' 6"', 'height    8\' 6" as told']),
    'Ceiling.height/on': is('on 2026-03-07', 'on 2026-03-08', ['height    8\' 6"', 'height    8\' 6" on 2026-03-07']),
    'Ceiling.height/by': is('by "Wren"', 'by "Ruiz"', ['height    8\' 6"', 'height    8\' 6" as told by "Wren"']),
    'Ceiling.joists/as': is('as told', 'as drawn', ['of spruce-pine-fir', 'of spruce-pine-fir as told']),
    'Ceiling.joists/on': is('on 2026-03-07', 'on 2026-03-08', ['of spruce-pine-fir', 'of spruce-pine-fir on 2026-03-07']),
    'Ceiling.joists/by': is('by "Wren"', 'by "Ruiz"', ['of spruce-pine-fir', 'of spruce-pine-fir as told by "Wren"']),
    'Ceiling.covering/as': is('as told', 'as drawn', ['thickness 1/2"', 'thickness 1/2" as told']),
    'Ceiling.covering/on': is('on 2026-03-07', 'on 2026-03-08', ['thickness 1/2"', 'thickness 1/2" on 2026-03-07']),
    'Ceiling.covering/by': is('by "Wren"', 'by "Ruiz"', ['thickness 1/2"', 'thickness 1/2" as told by "Wren"']),
    'Survey.method/as': is('as told', 'as drawn', ['method  laser', 'method  laser as told']),
    'Survey.method/on': is('on 2026-03-07', 'on 2026-03-08', ['method  laser', 'method  laser on 2026-03-07']),
    'Survey.method/by': is('by "Wren"', 'by "Ruiz"', ['method  laser', 'method  laser as told by "Wren"']),
    'Survey.point/as': is('as told', 'as drawn', ['7\' 2" up 14 5/8"', '7\' 2" up 14 5/8" as told']),
    'Survey.point/on': is('on 2026-03-07', 'on 2026-03-08', ['7\' 2" up 14 5/8"', '7\' 2" up 14 5/8" on 2026-03-07']),
    'Survey.point/by': is('by "Wren"', 'by "Ruiz"', ['7\' 2" up 14 5/8"', '7\' 2" up 14 5/8" as told by "Wren"']),
    'Board.value/as': is('as told', 'as verified', ['rabbet 1/4" }', 'width 7 1/4"; thickness 3/4" }'], ['b1 wide-8', 'b1 wide-8 as told']),
    'Board.value/on': is('on 2026-03-07', 'on 2026-03-08', ['rabbet 1/4" }', 'width 7 1/4"; thickness 3/4" }'], ['b1 wide-8', 'b1 wide-8 on 2026-03-07']),
    'Board.value/by': is('by "Wren"', 'by "Ruiz"', ['rabbet 1/4" }', 'width 7 1/4"; thickness 3/4" }'], ['b1 wide-8', 'b1 wide-8 by "Wren"']),
};
