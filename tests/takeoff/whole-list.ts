import type { Ceiling } from '../../src/ceiling/model.ts';
import { whyParts } from '../../src/provenance/why-text.ts';
import type { Source } from '../../src/provenance/source.ts';
import { TICKS_PER_INCH } from '../../src/quantity/ticks.ts';
import { bandSaid } from '../../src/takeoff/closing/said.ts';
import { closingAmong } from '../../src/takeoff/closing/pieces.ts';
import { waysIn } from '../../src/takeoff/closing/ways.ts';
import { fingerprintOf } from '../../src/takeoff/cut-alike.ts';
import { edgesText, endWords } from '../../src/takeoff/ends.ts';
import { byBeam, holdingOf } from '../../src/takeoff/holding.ts';
import type { Piece, TakeOff } from '../../src/takeoff/model.ts';
import { comparePieces } from '../../src/takeoff/piece-order.ts';
import { rowsOf } from '../../src/takeoff/rows.ts';
import { threadOf } from '../../src/takeoff/thread.ts';
import { hangingOn } from '../../src/takeoff/weight.ts';

const inch = (ticks: number): string => String(Math.round(ticks / TICKS_PER_INCH * 1e4) / 1e4);

/** `text`: of the file that the room stands in, where it stands in one. */
interface Told { readonly ceiling: Ceiling; readonly text?: string; readonly bottomsAlone?: boolean }

/**
 * Everything that is worked out of a ceiling from its pieces on: every piece (or every bottom) with its number as it goes up, as it is told in lists and told
 * apart at the saw, and the words that each figure comes from; joints, fasteners, rows, what hangs on the beams, what screws find, and ways in. Inches to
 * a ten-thousandth.
 */
export function listOf(off: TakeOff, { ceiling, text, bottomsAlone = false }: Told): string {
    const { pieces, joints, consumables, leftOut } = off, numbers = new Map(pieces.map((piece, i) => [piece, i + 1]));
    return [
        ...pieces.filter(({ part }) => !bottomsAlone || part === 'bottom').sort(comparePieces).map(piece => toldPiece(piece, numbers.get(piece)!, text)), '',
        ...joints.map(({ kind, at, pieces: [a, b], biscuits }) => `${kind} at ${at}: ${a}, ${b}${biscuits ? `, ${biscuits.count} x ${biscuits.size}` : ''}`), '',
        ...consumables.map(({ kind, what, count, unit, by, basis }) => `${kind}: ${count} ${unit} of ${what}: ${by} (${basis})`),
        `left out: ${leftOut.map(({ id }) => id).join(' ')}`, '',
        ...rowsOf(ceiling, pieces).map(({ part, pieces: own, sum, room, longer, shorter }) => `row of ${part} from ${own[0]!.id}: ${inch(sum)} in ${inch(room)}, at most ${inch(longer)} longer or ${inch(shorter)} shorter`),
        ...beamsOf(ceiling, pieces), ...heldOf(ceiling, pieces), ...closingOf(ceiling, pieces), '',
    ].join('\n');
}

function toldPiece(piece: Piece, number: number, text: string | undefined): string {
    const { line, bay, coffer, on, ends, meets, hand, width, thickness, ripped, scribe, stands, machining, work, corners, outline, box } = piece;
    const size = `${inch(width)} x ${inch(thickness)}${ripped ? ' ripped' : ''}`;
    const more = `${scribe ? ` scribe ${inch(scribe)}` : ''}${stands ? ` stands ${inch(stands.out)} ${inch(stands.down)}` : ''}`;
    const fences = work.flatMap(each => (each.kind === 'rip' && each.fence ? [each.fence] : []));
    const atEnds = ends.map((end, i) => [endWords(end), end.how, end.longer, meets[i]].filter(Boolean).join(' ')), edges = edgesText(piece, inch);
    const why = whyParts(piece.why, piece.back, { show: 'feet-inches', step: TICKS_PER_INCH / 128 }).map(part => `${part.text}${wordsOf(part.at, text)}`).join('');
    return [
        `${piece.id}, ${number}: ${piece.part} ${[line, bay, coffer, on].map(each => each ?? '-').join(' ')}, ${piece.where}, ${piece.stock.name}, ${fingerprintOf(piece)}`,
        `   ${[piece.face, piece.back, piece.overall].map(inch).join(' ')}, cut ${[piece.cutFace, piece.cutBack, piece.cutOverall].map(inch).join(' ')}${edges && ` (${edges})`}, `
            + `${size}${more}; ${[...machining, ...fences].join('; ')}`,
        `   ${atEnds.join(' | ')}${hand ? `, a ${hand}` : ''}`, `   ${why}`,
        `   ${cornersText(corners)}${outline ? `, within them ${cornersText(outline)}` : ''}; ${inch(box.top)} to ${inch(box.foot)}`,
    ].join('\n');
}

function cornersText(corners: readonly { readonly x: number; readonly y: number }[]): string {
    return corners.map(({ x, y }) => `${inch(x)},${inch(y)}`).join(' ');
}

/** The words that a figure comes from, as they stand in the room's own file. */
function wordsOf(at: Source | undefined, text: string | undefined): string {
    if (!at || text === undefined || at.uri.includes('builtin')) return '';
    const { start, end } = at.range, lines = text.split('\n').slice(start.line, end.line + 1);
    return ` <${lines[0]!.slice(start.character, start.line === end.line ? end.character : undefined).trim()}>`;
}

function beamsOf(ceiling: Ceiling, pieces: readonly Piece[]): string[] {
    const halves = Object.entries(ceiling.around).flatMap(([name, own]) => (own?.kind === 'half-beam' ? [{ name, section: own.section }] : []));
    return [...ceiling.lines, ...halves].map(({ name, section }) => {
        const { pounds, unknown } = hangingOn(name, ceiling, pieces), thread = threadOf(section, ceiling);
        const screws = thread ? `; screws go through ${Object.values(thread.through).map(inch).join(' ')}, ${inch(thread.inWood)} in wood` : '';
        return `on ${name} hang ${pounds.toFixed(2)} pounds, besides ${unknown.join(' ')}${screws}`;
    });
}

function heldOf(ceiling: Ceiling, pieces: readonly Piece[]): string[] {
    const holding = holdingOf(ceiling, pieces);
    return [...holding ? byBeam(holding) : []].flatMap(([name, held]) => held.map(({ piece: { id }, finds, screws, intoBacking, open, isFarApart }) =>
        `${name} ${id}: ${finds.map(({ from, to, along, screws: own }) => `${along ? 'along' : 'across'} ${inch(from)} to ${inch(to)} ${own}`).join(', ')}; ${screws} and ${intoBacking}; open ${inch(open.from)} to ${inch(open.to)}${isFarApart ? ', far apart' : ''}`));
}

function closingOf(ceiling: Ceiling, pieces: readonly Piece[]): string[] {
    return closingAmong(ceiling, pieces, bandSaid(ceiling.room)).flatMap(closing => [
        `${closing.piece.id} closes, wants ${inch(closing.wanted)}${closing.onlySplice ? ', for a splice' : ''}, of ${closing.run.map(({ piece }) => piece.id).join(' ')}: ${
            closing.ends.map(({ kind, meets, against, sticksOut, room }) => `${kind} ${meets} ${against.map(({ id }) => id).join(' ')} ${inch(sticksOut)} ${inch(room)}`).join(' | ')}`,
        ...waysIn(closing, ceiling).map(way => `   ${JSON.stringify(way, (_, value: unknown) => (typeof value === 'number' ? Math.round(value * 1e4) / 1e4 : value))}`),
    ]);
}
