import type { Finding } from '../findings/finding.ts';
import type { FileContent } from '../job/file.ts';
import type { Grid, Room } from '../job/model.ts';
import { MOST_COFFERS } from '../job/said-much.ts';
import type { Steps } from '../plain/steps.ts';
import { atKey } from '../plain/at-key.ts';
import { inches } from '../quantity/rational.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Standing } from '../pipeline/standing.ts';
import { ruleNamed } from '../rules/index.ts';
import { candidatesOf, inOrder, isClear, type Candidate, type Now } from './candidates.ts';
import { closingIn, figuresInSteps, lookInSteps, roomWith } from './looked-at.ts';
import type { Divided, Figures, Reason, Suggestions } from './model.ts';
import { optionsOf, type Option } from './options.ts';
import { search, type LookedAt } from './search.ts';
import { waysOf, type Ways } from './ways.ts';
import { writtenOf } from './written.ts';

/** Where no grid can be laid out now, coffers are tried between these. Common practice, no source. */
const USUAL = { least: inches(24), most: inches(72) };

/**
 * Other grids for a room, the best first. Each is the room with other words in its grid: laid out, taken off, put together dry and checked by the
 * same functions as the room itself, and offered only without an error and where its pieces go together. Most are excluded before by plain geometry. The
 * same room gives the same grids in the same order: what is looked at is limited by number, never by time.
 * @param file the room's file, in which it stands
 * @param standing of the room: errors that no grid mends
 */
export function suggestionsFor(room: Room, file: FileContent, standing: Standing): Suggestions {
    const steps = suggesting(room, file, standing);
    for (;;) {
        const { done, value } = steps.next();
        if (done) return value;
    }
}

/**
 * The same step by step, for whoever has other things to do meanwhile: a step is a part of looking at one grid.
 * `most`: coffers that are laid out for it at most.
 */
export function* suggesting(room: Room, file: FileContent, { errors }: Standing, most?: number): Generator<undefined, Suggestions> {
    const { grid } = room, held = grid ? heldBy(room, errors) : 'It has no grid yet: nothing is known of its beams.';
    const ways = grid && held === undefined ? waysOf(room, grid, file) : undefined;
    if (!grid?.through || held !== undefined || !ways) return none(room, held
        ?? 'Nothing can be tried: what surrounds the grid cannot be laid out, whatever the grid is.');
    const look = yield* lookInSteps(room, room, file);
    yield;
    const present = look.ceiling && (yield* figuresInSteps(look, look.ceiling)), before = new Set(look.found.map(wordsOf));
    const now: Now = present ? nowOf(present) : { ...saidNow(grid), through: grid.through.value };
    const limits = limitsOf(grid, present), movable = ways.plain && !grid.centeredOn, step = room.job.cutTo.value;
    const across = optionsOf(ways.across, grid, { ...limits, counts: [now.across], movable, step });
    const down = optionsOf(ways.down, grid, { ...limits, counts: [now.down], movable, step });
    const all = candidatesOf(across, down, now, MOST_COFFERS).filter(candidate => !isNow(candidate, grid, ways, present));
    const clear = inOrder(all.filter(isClear), now), found: string[][] = [];
    const rooms = new Map<Candidate, Room>(), roomOf = (candidate: Candidate): Room => atKey(rooms, candidate, () => roomWith(room, grid, candidate));
    const { offers, lookedAt, isCutShort } = yield* search(clear, now, {
        look: candidate => offered(candidate, roomOf(candidate), { room, grid, file, found, before }), closing: candidate => closingIn(roomOf(candidate)),
    }, most);
    return {
        room, ...present && { present }, offers, notTried: notTried(room, grid, ways, movable),
        tried: {
            grids: all.length, clear: clear.length, byGeometry: ways.excludes, lookedAt, isCutShort, ...limits, found: counted(found),
            inTheWay: counted(all.map(candidate => [...candidate.across.blocked, ...candidate.down.blocked])),
        },
    };
}

interface Tried { readonly room: Room; readonly grid: Grid; readonly file: FileContent; readonly found: string[][]; readonly before: ReadonlySet<string> }

/** The grid as an offer; else what was found wrong with it goes to the others. */
function* offered(candidate: Candidate, as: Room, { room, grid, file, found, before }: Tried): Steps<LookedAt> {
    const written = writtenOf(candidate, room, grid), look = yield* lookInSteps(as, room, file);
    yield;
    if (!written || !look.ceiling || look.wrong.length > 0) {
        const wrong = new Set(look.wrong.map(({ rule, message }) => ruleNamed(rule)?.title ?? message));
        found.push(wrong.size > 0 ? [...wrong] : ['Its lengths cannot be written exactly']);
        return { isLaidOut: look.ceiling !== undefined };
    }
    const { across, down, through } = candidate;
    return { isLaidOut: true, offer: {
        across: divided(across), down: divided(down), through, room: look.room, figures: yield* figuresInSteps(look, look.ceiling), ...written,
        warnings: look.found.filter(finding => finding.severity === 'warning' && !before.has(wordsOf(finding))),
    } };
}

function divided({ coffers, how, by, centers }: Option): Divided {
    return { coffers, how, by, centers };
}

/** Of a room for which nothing is tried. */
export const NO_SUGGESTIONS: Omit<Suggestions, 'room'> = {
    offers: [], notTried: [], tried: { grids: 0, clear: 0, byGeometry: false, lookedAt: 0, isCutShort: false, least: 0, most: 0, inTheWay: [], found: [] },
};

function none(room: Room, nothing: string): Suggestions {
    return { ...NO_SUGGESTIONS, room, nothing };
}

/** What another grid cannot mend: errors of the text itself and of what it uses. */
function heldBy(room: Room, errors: Standing['errors']): string | undefined {
    if (room.broken || room.tooMuch) return 'Nothing is tried while something in the room cannot be read, or its file is too much.';
    const others = errors.filter(({ rule, room: of, at }) => of !== room.name || at.uri !== room.at.uri || !ruleNamed(rule));
    const [first] = others, more = others.length > 1 ? ` and ${others.length - 1} more` : '';
    return first && `Nothing is tried while errors stand that no grid mends: ${first.place}${more}.`;
}

function wordsOf({ rule, message }: Finding): string {
    return `${rule} ${message}`;
}

function nowOf({ across, down, through }: Figures): Now {
    return { across, down, through };
}

function saidNow({ north, east }: Grid): Pick<Now, 'across' | 'down'> {
    const count = (said: Grid['north']): number => (said?.by === 'number' ? said.coffers.value : said?.by === 'lines' ? said.centers.length + 1 : 0);
    return { across: count(north), down: count(east) };
}

/** How big coffers are tried: between the limits that the text says, else from half to twice as big as they are now. */
function limitsOf({ north, east }: Grid, present: Figures | undefined): { readonly least: Ticks; readonly most: Ticks } {
    const said = [north, east].flatMap(each => (each?.by === 'size' ? each.size.value : []))[0];
    if (said) return { least: Math.min(said.least, said.most), most: Math.max(said.least, said.most) };
    if (!present) return USUAL;
    const { width, length } = present, mean = (width.least + width.most + length.least + length.most) / 4;
    return { least: Math.round(mean / 2), most: Math.round(mean * 2) };
}

/** The grid that is there already, whichever way it is said. */
function isNow({ across, down, through }: Candidate, grid: Grid, { across: w, down: l }: Ways, present: Figures | undefined): boolean {
    const isSame = (option: Option, said: Grid['north'], way: Ways['across']): boolean => {
        const sizes = said && way.divide(said)?.sizes;
        return sizes?.length === option.sizes.length && sizes.every((size, i) => Math.abs(size - option.sizes[i]!) < 2);
    };
    return present !== undefined && through === grid.through?.value && isSame(across, grid.north, w) && isSame(down, grid.east, l);
}

function notTried(room: Room, grid: Grid, { plain }: Ways, movable: boolean): string[] {
    const own = room.lines.length > 0 || room.crossings.length > 0;
    return [
        ...plain ? [] : [NOT_PLAIN],
        ...plain && !movable ? [`A coffer stays centered on ${grid.centeredOn!.value.name}: lines are not moved besides.`] : [],
        ...own ? ['What the text says of single lines and crossings stays as it is: a grid without them is not offered.'] : [],
        ...plain ? ['A line is not ended at another one, nor turned.'] : [],
    ];
}
const NOT_PLAIN = 'The room is not four walls along the compass with every line from wall to wall: only other numbers of coffers, and the other direction '
    + 'through, are tried. Lines are not moved.';

function counted(all: readonly (readonly string[])[]): Reason[] {
    const counts = new Map<string, number>();
    for (const reasons of all) for (const what of new Set(reasons)) counts.set(what, (counts.get(what) ?? 0) + 1);
    return [...counts].map(([what, grids]) => ({ what, grids })).sort((a, b) => b.grids - a.grids || (a.what < b.what ? -1 : 1));
}
