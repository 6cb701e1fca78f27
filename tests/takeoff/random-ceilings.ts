import fc from 'fast-check';

/**
 * Ceilings of all kinds together, as somebody would write them: rooms of any walls, something else along each of them, lines by the grid, by hand,
 * part way and of two depths. Many of them cannot be built; then it has to be said why.
 */
export const YARD = `edition 1

stock board-4 { thickness 3/4"; width 3 1/2"; lengths 40' }
stock board-6 { thickness 3/4"; width 5 1/2"; lengths 40' }
stock board-8 { thickness 3/4"; width 7 1/4"; lengths 40' }
stock board-10 { thickness 3/4"; width 9 1/4"; lengths 40' }
stock strip-2 { thickness 3/4"; width 1 1/2"; lengths 40' }
stock strip-8 { thickness 3/4"; width 1 1/2"; lengths 8' }
stock timber-6 { thickness 3 1/2"; width 5 1/2"; lengths 40' }
stock timber-8 { thickness 5 1/2"; width 7 1/4"; lengths 40' }
stock thick-6 { thickness 1"; width 5 1/2"; lengths 40' }
stock thick-8 { thickness 1 1/4"; width 7"; lengths 40' }
stock crown { thickness 5/8"; width 3 5/8"; lengths 40' }

profile low {
  blocking { stock board-4; relief 0" }
  sides { stock board-6 }
  cleats { rip 3/4" x 3/4" from strip-8 }
  bottom { stock board-4; gap 0" to 0" }
  trim { stock strip-2 }
}
profile low-under like low { bottom { stock board-6; place under-sides overhang 1/4" } }
profile deep-under like deep { bottom { stock board-8; place under-sides overhang 1/8" } }
profile low-let-in like low { bottom { stock board-6; rip 4 7/32"; place in-rabbets let-in 3/8"; gap 0" to 1/32" } }
profile deep-let-in like deep { bottom { stock board-8; rip 6 7/32"; place in-rabbets let-in 3/8"; gap 0" to 1/32" } }
profile low-bench like low { blocking { rip 3 3/8"; fit bench-box }; spacers { stock board-4; height 2" }; bottom { rip 3 15/32"; gap 0" to 1/32" } }
profile deep-bench like deep { blocking { rip 5 3/8"; fit bench-box }; bottom { rip 5 15/32"; gap 0" to 1/32" } }
profile low-solid { solid { stock timber-6 }; trim { stock strip-2 } }
profile deep-solid { solid { stock timber-8 }; trim { stock strip-2 } }
profile low-molded like low { under { stock strip-2; place under-beam overhang 1/2" } }
profile deep-molded like deep { under { stock strip-2; place under-beam overhang 1/2" } }
profile low-butted like low { sides { corners butted past east-west } }
profile deep like low { blocking.stock board-6; sides.stock board-8; bottom.stock board-6; spacers { stock board-6; height 4" } }
profile deep-butted like deep { sides { corners butted past east-west } }
profile low-unlike like low { other-side { stock thick-6; rip 5 3/8" } }
profile deep-unlike like deep { other-side { stock thick-8 } }
profile low-unlike-under like low-unlike { bottom { stock board-8; place under-sides overhang 1/4" } }
profile deep-unlike-under like deep-unlike { bottom { stock board-10; place under-sides overhang 1/8" } }
profile low-unlike-let-in like low-unlike { sides.rabbet 3/8" x 3/4" on lower-back; other-side.rabbet 1/2" x 3/4" on lower-back; bottom { stock board-6; rip 4 11/32"; place in-rabbets; gap 0" to 1/32" } }
profile deep-unlike-let-in like deep-unlike { sides.rabbet 3/8" x 3/4" on lower-back; other-side.rabbet 5/8" x 3/4" on lower-back; bottom { stock board-8; rip 6 15/32"; place in-rabbets; gap 0" to 1/32" } }
profile low-unlike-bench like low-bench { other-side { stock thick-6; rip 5 3/8" } }
profile deep-unlike-bench like deep-bench { other-side { stock thick-8 } }
profile low-unlike-molded like low-molded { other-side { stock thick-6; rip 5 3/8" } }
profile deep-unlike-molded like deep-molded { other-side { stock thick-8 } }
profile low-unlike-butted like low-butted { other-side { stock thick-6; rip 5 3/8" } }
profile deep-unlike-butted like deep-butted { other-side { stock thick-8 } }
`;
const KINDS = ['', '-butted', '-under', '-let-in', '-bench', '-molded', '-solid', '-unlike', '-unlike-butted', '-unlike-under', '-unlike-let-in', '-unlike-bench', '-unlike-molded'];
const NAMES = ['board-8', 'crown', ...['low', 'deep'].flatMap(depth => KINDS.map(kind => depth + kind))].join(', ');

export interface RandomCeiling { readonly text: string; readonly shape: RoomShape }
type RoomShape = 'rectangle' | 'L' | 'U' | 'breast' | 'bay' | 'turned-bay' | 'taper' | 'parted';

/** `length` null: nobody took it, it is what closes the room. */
interface Wall { readonly way: 'east' | 'south' | 'south-west' | 'west' | 'north-west' | 'north'; readonly length: number | null }

const inches = (least: number, most: number): fc.Arbitrary<number> => fc.integer({ min: least * 8, max: most * 8 }).map(eighths => eighths / 8);
const size = (length: number): string => `${length}"`;

const rooms: fc.Arbitrary<{ shape: RoomShape; wide: number; high: number; walls: Wall[]; diagonal?: string }> = fc.record({
    shape: fc.constantFrom<RoomShape>('rectangle', 'L', 'U', 'breast', 'bay', 'turned-bay', 'taper', 'parted'), wide: inches(140, 260), high: inches(120, 220),
    notch: fc.tuple(inches(15, 70), inches(12, 60)), off: fc.tuple(inches(-4, 4), inches(-4, 4), inches(-2, 2)),
}).map(({ shape, wide, high, notch: [w, h], off: [a, b, c] }) => {
    const to = (way: Wall['way'], length: number | null): Wall => ({ way, length });
    const beside = (wide - w) / 2;
    switch (shape) {
        case 'rectangle': return { shape, wide, high, walls: [to('east', wide), to('south', high), to('west', wide), to('north', high)] };
        case 'parted': return { shape, wide, high, walls: [to('east', wide - w), to('east', w), to('south', h), to('south', high - h), to('west', wide), to('north', high)] };
        case 'L': return { shape, wide, high, walls: [to('east', wide), to('south', high - h), to('west', w), to('south', h), to('west', wide - w), to('north', high)] };
        case 'U': return { shape, wide, high, walls: [to('east', wide), to('south', high), to('west', beside), to('north', h), to('west', w), to('south', h), to('west', beside), to('north', high)] };
        case 'breast': return { shape, wide, high, walls: [to('east', beside), to('south', h / 2), to('east', w), to('north', h / 2), to('east', beside), to('south', high), to('west', wide), to('north', high)] };
        case 'bay': return { shape, wide, high, walls: [to('east', wide), to('south', high), to('west', beside), to('south', h / 2), to('west', w), to('north', h / 2), to('west', beside), to('north', high)] };
        case 'turned-bay': return { shape, wide, high, walls: [
            to('west', beside), to('south-west', h / 2), to('west', Math.max(12, w - h / 2)), to('north-west', h / 2), to('west', beside), to('north', high),
            to('east', null), to('south', null),
        ] };
        case 'taper': {
            const diagonal = Math.round((Math.hypot(wide, high) + c) * 8) / 8;
            return { shape, wide, high, walls: [to('east', wide), to('south', high), to('west', wide + a), to('north', high + b)], diagonal: `diagonal north-west to south-east measures ${size(diagonal)}` };
        }
    }
});

const perimeters = fc.constantFrom('band', 'half-beam', 'none');
/** `beams`: of a half beam another depth than the grid's. */
const perimeter = (kind: string, half: number, splices: string, beams?: string): string => kind === 'band' ? `kind band; stock board-8; splices ${splices}`
    : kind === 'half-beam' ? `kind half-beam; width ${size(half)}; splices ${splices}${beams ? `; beams ${beams}` : ''}` : 'kind none';

/** In so many equal coffers, or lines at shares of the room. */
const division = fc.oneof(
    fc.integer({ min: 1, max: 4 }).map(count => ({ count, shares: [] as number[] })),
    fc.uniqueArray(fc.integer({ min: 1, max: 8 }), { minLength: 1, maxLength: 3 })
        .map(ninths => ({ count: 0, shares: ninths.sort((x, y) => x - y).map(ninth => ninth / 9) })),
);
interface Division { readonly count: number; readonly shares: readonly number[] }
const UPRIGHT = ['1', '2', '3'], LEVEL = ['A', 'B', 'C'];
const RING = new Set(['1', '2', 'A', 'B']);
/** What is said of one line. `wall`: the wall that it is set off from, of those there are. */
const line = fc.record({
    name: fc.constantFrom(...UPRIGHT, ...LEVEL, 'elm', 'fir'), place: fc.option(fc.record({ by: inches(20, 150), wall: fc.nat(7) }), { freq: 1, nil: undefined }),
    from: fc.option(fc.nat(9), { nil: undefined, freq: 1 }), until: fc.option(fc.nat(9), { nil: undefined, freq: 1 }),
    deep: fc.option(fc.boolean(), { nil: undefined }),
    dies: fc.integer({ min: 0, max: 5 }).map(n => n === 0),
    // of beams with two kinds of sides: which of its flanks has the other one, or that its own are alike
    other: fc.constantFrom(undefined, 0, 1, 'alike' as const),
});
/** Four lines that stop at each other, and what is free around them is one coffer, or many where other lines come to them. */
const ring = fc.record({
    north: fc.uniqueArray(fc.integer({ min: 1, max: 8 }), { minLength: 2, maxLength: 2 }),
    east: fc.uniqueArray(fc.integer({ min: 1, max: 8 }), { minLength: 2, maxLength: 2 }), deep: fc.boolean(),
});
const shared = (ninths: readonly number[]): Division => ({ count: 0, shares: [...ninths].sort((x, y) => x - y).map(ninth => ninth / 9) });
const laying = fc.constantFrom('', '', '', '', 'lay-north-south split', 'lay-north-south fanned', 'lay-east-west fanned', 'lay-north-south falling\n    lay-east-west rising');

export const randomCeilings: fc.Arbitrary<RandomCeiling> = fc.record({
    room: rooms, north: division, east: division, lines: fc.uniqueArray(line, { maxLength: 4, selector: ({ name }) => name }),
    around: perimeters, own: fc.array(fc.option(perimeters, { nil: undefined, freq: 1 }), { minLength: 8, maxLength: 8 }),
    depths: fc.array(fc.option(fc.boolean(), { nil: undefined, freq: 1 }), { minLength: 8, maxLength: 8 }),
    half: inches(1, 5), longest: fc.option(fc.integer({ min: 8, max: 12 }), { nil: undefined, freq: 1 }), alike: fc.boolean(),
    deep: fc.boolean(), kind: fc.constantFrom('', '', '', '-butted', '-butted', '-under', '-let-in', '-bench', '-molded', '-solid', '-unlike', '-unlike', '-unlike-butted', '-unlike-under', '-unlike-let-in', '-unlike-bench', '-unlike-molded'), crown: fc.integer({ min: 0, max: 5 }), through: fc.constantFrom('north-south', 'east-west'),
    crossings: fc.uniqueArray(fc.record({ up: fc.constantFrom('1', '2'), level: fc.constantFrom('A', 'B'), which: fc.boolean() }), { maxLength: 2, selector: ({ up, level }) => level + up }),
    laying, ring: fc.oneof({ weight: 5, arbitrary: fc.constant(undefined) }, { weight: 1, arbitrary: ring }),
}).map(({ ring: standing, ...drawn }) => {
    // where a ring stands, what is drawn of its lines themselves says nothing
    const others = drawn.lines.filter(({ name }) => !RING.has(name));
    const made = standing ? { ...drawn, north: shared(standing.north), east: shared(standing.east), lines: others, crossings: [] } : drawn;
    const { room: { shape, walls, diagonal }, through, lines, around, half, longest, depths } = made, splices = longest ? 'on-crossings' : 'never';
    const isUnlike = made.kind.includes('unlike'), beams = (deep: boolean, alike = false): string => `${deep ? 'deep' : 'low'}${alike ? made.kind.replace('-unlike', '') : made.kind}`;
    const spacing = ({ count, shares }: Division, side: string, whole: number): string =>
        count > 0 ? `coffers-${side} ${count}` : `lines-${side} ${shares.map(share => size(Math.round(whole * share * 8) / 8)).join(', ')}`;
    const named = (names: readonly string[], { count, shares }: Division): string[] => names.slice(0, count > 0 ? count - 1 : shares.length);
    const has = [named(UPRIGHT, made.north), named(LEVEL, made.east)] as const, grid = has.flat();
    const wide = made.room.wide, high = made.room.high;
    const across = (name: string): string[] => [...has[0].includes(name) ? has[1] : has[1].includes(name) ? has[0] : grid, 'wall-w1', 'wall-w2', 'wall-w3', 'wall-w4'];
    const lay = shape === 'taper' || made.laying.includes('falling') ? made.laying : '';
    return {
        shape,
        text: [
            'edition 1', ...longest ? [`job "Den" { longest-board ${longest}' }`] : [], `from "./yard.coffer" use ${NAMES}`, '', 'room den {',
            ...walls.map(({ way, length }, i) => {
                const own = made.alike ? undefined : made.own[i];
                return `  wall w${i + 1}${length === null ? '' : ` ${size(length)}`}${diagonal || length === null ? '' : ` heading ${way}`}${own ? ` { perimeter { ${perimeter(own, half, splices, depths[i] === undefined ? undefined : beams(depths[i]))} } }` : ''}`;
            }),
            ...diagonal ? [`  ${diagonal}`] : [],
            ...made.crown < 2 ? [`  trim { stock crown; spring 38°${made.crown === 0 ? '; corners coped' : ''} }`] : [],
            '  grid {', `    ${spacing(made.north, 'north', wide)}`, `    ${spacing(made.east, 'east', high)}`, `    beams ${beams(made.deep)}`, `    through ${lay.includes('falling') ? 'falling' : through}`, `    splices ${splices}`,
            ...lay ? [`    ${lay}`] : [], `    perimeter { ${perimeter(around, half, splices)} }`, '  }',
            ...lines.filter(({ name, place }) => place !== undefined || grid.includes(name)).map(({ name, place, from, until, deep, dies, other }) => {
                const upright = UPRIGHT.includes(name), level = LEVEL.includes(name);
                const off = place && (place.wall > 3 || !grid.includes(name)) ? walls.flatMap(({ way }, i) => ((way === 'north' || way === 'south') === upright || !upright && !level ? [`wall-w${i + 1}`] : [])) : undefined;
                const end = (n: number): string => across(name)[n % across(name).length]!;
                return `  line ${name} { ${[
                    ...off ? [`at ${size(place!.by)} from ${off[place!.wall % off.length]!}`] : [],
                    ...from !== undefined ? [`from ${end(from)}`] : [], ...until !== undefined ? [`until ${end(until)}`] : [],
                    ...deep !== undefined || isUnlike && other === 'alike' ? [`beams ${beams(deep ?? made.deep, other === 'alike')}`] : [],
                    ...isUnlike && typeof other === 'number' && (upright || level) ? [`other-side ${(upright ? ['west', 'east'] : ['north', 'south'])[other]!}`] : [], ...dies ? ['meets dies-into'] : [],
                ].join('; ')} }`;
            }),
            ...standing ? [...RING].map((name, i) => `  line ${name} { ${i < 2 ? 'from A; until B' : 'from 1; until 2'}${standing.deep ? `; beams ${beams(!made.deep)}` : ''} }`) : [],
            ...made.crossings.filter(({ up, level }) => grid.includes(up) && grid.includes(level)).map(({ up, level, which }) => `  crossing ${level}${up} { through ${which ? up : level} }`),
            '}', '',
        ].join('\n'),
    };
});
