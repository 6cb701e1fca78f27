import { cutAlready } from '../../cutting/as-cut.ts';
import { tapeOf } from '../../job/tape.ts';
import type { JobSettings, Room } from '../../job/model.ts';
import { PLURAL } from '../../job/part.ts';
import { knownWords, leastKnown, recordWords } from '../../job/status.ts';
import { stocksKnown } from '../../measure/boards-known.ts';
import { isAsked } from '../../measure/dimensions.ts';
import { layoutOf } from '../../pipeline/inspect.ts';
import { whyText } from '../../provenance/why-text.ts';
import { printInches, printLength, printRun, type Show, type Tape } from '../../quantity/print-length.ts';
import { TICKS_PER_FOOT, type Ticks } from '../../quantity/ticks.ts';
import { shortenedSpacers, type Shortened } from '../../survey/spacers.ts';
import { surveyedOf } from '../../survey/survey.ts';
import { shortenedWords } from '../../survey/words.ts';
import { nameInRoom, placeInRoom } from '../../takeoff/ids.ts';
import type { Consumable, Piece, TakeOff } from '../../takeoff/model.ts';
import { hasNamedEnds, isHanded } from '../../takeoff/cut-alike.ts';
import { degreesOf, edgesText, isTurned, liesFlat } from '../../takeoff/ends.ts';
import { tapingOf } from '../../sawing/tape.ts';
import { cautionsFor } from '../cautions.ts';
import { titleOf, type House } from '../house.ts';
import { columns, wrap, type Paint } from '../look.ts';
import { cleanText } from '../../text/clean-text.ts';
import { marksText } from '../marks.ts';
import { standingText } from '../standing.ts';
import { batchesOf, endsText, type Batch, type StockBatches } from './group.ts';
import { stockNames } from '../../job/stock-names.ts';
import type { TerminalText } from '../../text/fit.ts';
import { terminalParagraphs } from '../../text/terminal.ts';
import { counted, listed, unitOf } from '../../plain/words.ts';

const WIDTH = 100;

/** The list to carry to the saw: one house, by stock, part and length. */
export function humanCutList(houses: readonly House[], paint: Paint): TerminalText {
    return terminalParagraphs(houses.map(house => cutList(house, paint)));
}

function cutList(house: House, paint: Paint): string[] {
    const { job, rooms } = house;
    const pieces = rooms.flatMap(r => r.takeOff?.pieces ?? []), nameOf = stockNames(pieces.map(({ stock }) => stock));
    const show = job.show.value, shortened = shortenedIn(rooms, job);
    return [
        paint.strong(`CUT LIST  ${cleanText(titleOf(job))}`),
        `${counted(pieces.length, 'piece')} for ${rooms.map(r => r.room.name).join(', ')}; cut to ${printLength(job.cutTo.value, show)}`,
        ...standingText(rooms, { dont: 'cut', lacks: 'it has no pieces here' }, paint, WIDTH),
        ...[...howToRead(pieces), ...cutWords(rooms)].flatMap(note => wrap(note, WIDTH)),
        ...batchesOf(pieces).flatMap(stock => ['', ...stockList(stock, { name: nameOf(stock.stock), known: knownAs(stock.stock, rooms.map(each => each.room)), tape: tapeOf(job), shortened, paint })]),
        ...besides(rooms.flatMap(r => r.takeOff?.consumables ?? []), paint),
        ...cautionsFor(pieces).flatMap((caution, i) => [...(i === 0 ? ['', paint.strong('Take care')] : []), ...wrap(caution, WIDTH - 2).map(l => `  ${l}`)]),
    ];
}

/** How lengths, marks and hands of a list are meant. */
export function howToRead(pieces: readonly Piece[]): string[] {
    const mitered = pieces.some(p => p.ends.some(isTurned));
    return [
        ...(mitered ? ['Lengths are between the long points; "face" is between the short points, on the side that shows.', ...pieces.some(p => p.ends.some(end => degreesOf(end) % 45 !== 0)) ? ['Angles are from square, as the saw reads them.'] : []] : []),
        ...(pieces.length > 0 ? ['Pencil each piece\'s mark on it. A mark is the line (1, 2 from the west; A, B from the north), the bay from the west or north end, and the side; for trim the coffer and the side.'] : []),
        ...handNotes(pieces),
        ...(mitered ? [...new Set(pieces.map(tapingOf).flatMap(({ edge, along }) => (edge === 'any' ? []
            : [`A rabbet takes the long point away at the ${edge === 'upper' ? 'lower' : 'upper'} ${along} edge: hook the tape on the ${edge} ${along} edge.`])))] : []),
    ];
}

/** What of it is cut by now; the list keeps it, so that nothing seems to be missing. */
export function cutWords(rooms: readonly { readonly room: Pick<Room, 'cutBoards' | 'spoiled'>; readonly takeOff?: TakeOff | undefined }[]): string[] {
    const cut = rooms.flatMap(({ room, takeOff }) => [...cutAlready(room, takeOff?.pieces ?? [])]);
    const names = cut.map(piece => (rooms.length > 1 ? piece.id : nameInRoom(piece)));
    return cut.length === 0 ? [] : [`Already cut, as the job says: ${listed(names)}. They stay on this list; boards and saw leave them out.`];
}

/** What settles left and right: a groove, or where a piece has none, how it hangs or lies. */
function handNotes(pieces: readonly Piece[]): string[] {
    const told = pieces.filter(p => !hasNamedEnds(p) && isHanded(p)), [lying, hanging] = [told.filter(liesFlat), told.filter(p => !liesFlat(p))];
    const grooved = hanging.some(hasGroove), bare = hanging.some(p => !hasGroove(p));
    const ways = [...grooved ? ['the groove edge down'] : [], ...bare ? [grooved ? 'with no groove as it hangs' : 'as it hangs'] : []];
    return [
        ...(pieces.some(p => p.hand) ? ['Left, right: the end with the miter, the face towards you and the groove edge down.'] : []),
        ...(ways.length > 0 ? [`Left, right of two unlike ends: the face towards you, ${ways.join('; ')}.`] : []),
        ...(lying.length > 0 ? ['Left, right of what lies under a beam: seen from above, its edge to the west or north away from you.'] : []),
        ...(pieces.some(p => p.hand === null && !isHanded(p) && !hasNamedEnds(p) && endsText(p).includes(' one end, ')) ? ['One end, the other: it goes in either way round.'] : []),
    ];
}

function hasGroove({ work }: Piece): boolean {
    return work.some(({ kind }) => kind === 'rabbet');
}

/** What the lines of a stock are told with. */
interface Telling {
    readonly name: string; readonly known: string; readonly tape: Tape; readonly paint: Paint;
    readonly shortened: ReadonlyMap<string, Shortened>;
}

/** Spacers that a low ceiling wants shorter than the rest, by their names. */
function shortenedIn(rooms: House['rooms'], job: JobSettings): Map<string, Shortened> {
    const all = rooms.flatMap(({ room, takeOff }) => {
        const ceiling = room.survey && takeOff && layoutOf(room).ceiling, surveyed = ceiling && surveyedOf(ceiling, takeOff!);
        return surveyed ? shortenedSpacers(surveyed.spacers, job.cutTo.value) : [];
    });
    return new Map(all.flatMap(group => group.spacers.map(({ piece }) => [piece.id, group])));
}

function stockList({ stock, pieces, parts }: StockBatches, telling: Telling): string[] {
    const { name, known, tape, paint } = telling;
    const { show } = tape;
    const size = [stock.thickness, stock.width].flatMap(m => (m ? printLength(m.value.ticks, show) : [])).join(' x ');
    const total = parts.flatMap(p => p.batches).reduce((sum, b) => sum + b.sample.cutOverall * b.pieces.length, 0);
    return [
        `${paint.strong(name)}  ${size}${known && `, ${known}`}  ${counted(pieces, 'piece')}, ${printRun(total, show)} end to end`,
        ...parts.flatMap(({ part, batches }) => {
            const heads = columns(batches.map(b => head(b, show)), [0, 1]);
            return [`  ${PLURAL[part]}`, ...batches.flatMap((b, i) => [`    ${heads[i]!}`, ...details(b, telling).map(l => `          ${l}`)])];
        }),
    ];
}

/** How the sizes of a stock are known, least well of all rooms, once a room is asked for it or the stock says it. */
function knownAs({ key }: Piece['stock'], rooms: readonly Room[]): string {
    const all = rooms.flatMap(room => stocksKnown(room).filter(({ stock }) => stock.key === key && (isAsked(room) || isTold(stock))));
    const worst = leastKnown(all);
    return worst ? cleanText(knownWords(worst)) : '';
}

function isTold({ width, thickness }: Piece['stock']): boolean {
    return [width, thickness].some(size => size !== undefined && recordWords(size) !== '');
}

function head({ sample: p, pieces }: Batch, show: Show): string[] {
    const inches = show === 'feet-inches' && p.cutOverall >= TICKS_PER_FOOT ? `(${printInches(p.cutOverall)})` : '';
    return [
        `${pieces.length} x`, printLength(p.cutOverall, show), inches,
        edgesText(p, ticks => printLength(ticks, show)),
        endsText(p), p.hand ?? '', p.ripped && !saysHowToRip(p) ? `rip to ${ripText(p, show)}` : '',
    ];
}

function saysHowToRip(p: Piece): boolean {
    return p.machining.some(words => words.startsWith('rip'));
}

/** The width it is ripped to; both dimensions where it is thinner than its stock too. */
function ripText(p: Piece, show: Show): string {
    const thickness: Ticks | undefined = p.stock.thickness?.value.ticks;
    return thickness === p.thickness ? printLength(p.width, show) : `${printLength(p.thickness, show)} x ${printLength(p.width, show)}`;
}

function details({ sample, pieces }: Batch, { tape, shortened, paint }: Telling): string[] {
    const width = WIDTH - 10;
    const rooms = [...new Set(pieces.map(p => p.room))];
    const whys = [...new Set(pieces.map(p => whyText(p.why, p.cutBack, tape)))];
    return [
        ...(sample.machining.length > 0 ? wrap(`then: ${sample.machining.join('; ')}`, width) : []),
        ...rooms.flatMap(room => {
            const own = pieces.filter(p => p.room === room), lower = [...new Set(own.flatMap(p => shortened.get(p.id) ?? []))].sort((a, b) => a.most - b.most);
            const where = lower.length > 0 ? `; of these shorter, where the ceiling hangs low: ${shortenedWords(lower, tape).join('; ')}` : '';
            return wrap(`${room}: ${marksText(own, placeInRoom)}${where}`, width);
        }),
        ...whys.flatMap(why => wrap(why, width)).map(paint.faint),
    ];
}

function besides(consumables: readonly Consumable[], paint: Paint): string[] {
    const sums = new Map<string, { count: number; unit: string; item: Consumable }>();
    for (const item of consumables) {
        const key = JSON.stringify([item.what, item.unit, item.by, item.basis]);
        const sum = sums.get(key);
        if (sum) sum.count += item.count; else sums.set(key, { count: item.count, unit: item.unit, item });
    }
    if (sums.size === 0) return [];
    const items = [...sums.values()];
    const heads = columns(items.map(s => [String(s.count), unitOf(s.count, s.unit), s.item.what]), [0]);
    return ['', paint.strong('Besides'), ...items.flatMap(({ item }, i) => [
        `  ${heads[i]!}`, ...wrap(`${item.by} (${item.basis})`, WIDTH - 10).map(line => paint.faint(`          ${line}`)),
    ])];
}
