import { dressedSize } from '../../../data/dressed-sizes.ts';
import { inches, Rational } from '../../../quantity/rational.ts';
import { printLength } from '../../../quantity/print-length.ts';
import firstJob from '../../builtin/first-job.coffer';
import * as ast from '../../generated/ast.ts';
import { PICTURE, type Suggestion } from './suggestion.ts';

/** A name that can be used here: it is in reach, or is fetched with what `importing` writes. */
export interface Usable<T> { readonly name: string; readonly node: T; readonly importing?: Suggestion['importing'] }

/** What a file can be built with, and the names that are taken in it. */
export interface Around {
    readonly stocks: readonly Usable<ast.Stock>[];
    readonly profiles: readonly Usable<ast.Profile>[];
    readonly taken: ReadonlySet<string>;
}

/** A text that stands as it is, without a mistake, and in which every figure is there to be changed; with what has to be imported for it. */
export interface Template { readonly snippet: string; readonly importing?: Suggestion['importing'] }

/** Boards by their nominal width, as a yard lists them. */
const BOARDS = ['1x6', '1x8', '1x2', '1x4', '1x3', '1x10', '1x12'];
const ROOMS = [['dining', 'Dining room'], ['parlor', 'Parlor'], ['study', 'Study'], ['hall', 'Hall'], ['library', 'Library']] as const;

/** A whole small job, for a file with nothing in it. The built-in one is the same that `New Job` begins with. */
export function wholeJob(): Suggestion {
    return {
        label: 'a small whole job', kind: PICTURE.snippet, detail: 'boards, a beam, a room, to be changed into yours', first: true,
        snippet: firstJob.trimEnd(),
    };
}

export function stockTemplate({ taken }: Around): Template {
    const size = BOARDS.find(one => !taken.has(`poplar-${one}`)) ?? '1x6';
    return { snippet: `stock \${1:poplar-${size}} {\n\tsize     \${2:${size}}\n\tlengths  \${3:8', 10', 12', 14', 16'}\n}` };
}

/** A box beam of the boards there are: the bottom of one that is no narrow strip, the sides of the next wider. None where nothing fits. */
export function profileTemplate({ stocks, taken }: Around): Template | undefined {
    const wide = stocks.map(usable => ({ ...usable, width: widthOf(usable.node) ?? 0 })).filter(({ width }) => width > 0).sort((a, b) => a.width - b.width);
    const bottom = wide.find(({ width }) => width === 6) ?? wide.find(({ width }) => width >= 4);
    if (!bottom) return undefined;
    // what takes an import is one board for all of it: a second would take an import of its own
    const within = bottom.importing ? [bottom] : wide.filter(({ importing }) => !importing);
    const side = within.find(({ width }) => width > bottom.width && width <= 10) ?? bottom, trim = within.find(({ width }) => width <= 3);
    const deep = dressedSize(new Rational(1), new Rational(side.width))!.width;
    const lines = [
        `blocking { stock ${bottom.name} }`,
        // between blocking and cleats, with 1/4" of play: a side, less its 1/4" below the ceiling, two boards and the cleat of 3/4"
        `spacers { stock ${bottom.name}; height \${2:${printLength(deep - inches('2 1/4'))}} }`,
        `sides { stock ${side.name} }`, `cleats { rip 3/4" x 3/4" from ${bottom.name} }`, `bottom { stock ${bottom.name} }`,
        ...trim ? [`trim { stock ${trim.name} }`] : [],
    ];
    const name = ['box-beam', 'deep-beam', 'beam'].find(one => !taken.has(one)) ?? 'box-beam-2';
    return { snippet: `profile \${1:${name}} {\n\t${lines.join('\n\t')}\n}`, ...bottom.importing && { importing: bottom.importing } };
}

/** A room with a grid of a beam there is. None where there is no beam that stands without arguments. */
export function roomTemplate(around: Around): Template | undefined {
    const grid = gridTemplate(around, 5);
    if (!grid) return undefined;
    const [name, title] = ROOMS.find(([one]) => !around.taken.has(one)) ?? ['room-2', 'Room'];
    const inner = grid.snippet.replaceAll('\n', '\n\t');
    return { ...grid, snippet: `room \${1:${name}} "\${2:${title}}" {\n\twall north  \${3:14' 6"}\n\twall east   \${4:12' 2"}\n\n\t${inner}\n}` };
}

export function gridTemplate({ profiles }: Around, place = 1): Template | undefined {
    const beam = profiles.find(({ node }) => node.params.every(parameter => parameter.default));
    if (!beam) return undefined;
    const said = [`coffers-north  \${${place}:4}`, `coffers-east   \${${place + 1}:3}`, `beams          ${beam.name}`, `through        \${${place + 2}|north-south,east-west|}`];
    return { snippet: `grid {\n\t${said.join('\n\t')}\n}`, ...beam.importing && { importing: beam.importing } };
}

/** Nominal inches of a board an inch thick. */
function widthOf(stock: ast.Stock): number | undefined {
    const size = stock.body?.members.find((member): member is ast.Line => ast.isLine(member) && member.path[0]?.$refText === 'size')?.values[0];
    const width = ast.isSizeLit(size) ? /^1[x×](\d+)$/.exec(size.text)?.[1] : undefined;
    return width !== undefined && dressedSize(new Rational(1), new Rational(width)) ? Number(width) : undefined;
}
