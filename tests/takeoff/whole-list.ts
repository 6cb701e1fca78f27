import { whyText } from '../../src/provenance/why-text.ts';
import { TICKS_PER_INCH } from '../../src/quantity/ticks.ts';
import { endWords } from '../../src/takeoff/ends.ts';
import type { Piece, TakeOff } from '../../src/takeoff/model.ts';

const inch = (ticks: number): string => String(Math.round(ticks / TICKS_PER_INCH * 1e4) / 1e4);

/** Everything that a list says of every piece, or of every bottom, and of every joint and fastener; inches to a ten-thousandth. */
export function listOf({ pieces, joints, consumables, leftOut }: TakeOff, bottomsAlone = false): string {
    return [
        ...pieces.filter(({ part }) => !bottomsAlone || part === 'bottom').map(toldPiece), '',
        ...joints.map(({ kind, at, pieces: [a, b], biscuits }) => `${kind} at ${at}: ${a}, ${b}${biscuits ? `, ${biscuits.count} x ${biscuits.size}` : ''}`), '',
        ...consumables.map(({ kind, what, count, unit, by, basis }) => `${kind}: ${count} ${unit} of ${what}: ${by} (${basis})`),
        `left out: ${leftOut.length}`, '',
    ].join('\n');
}

function toldPiece(piece: Piece): string {
    const { line, bay, coffer, on, ends, meets, hand, width, thickness, ripped, scribe, stands, machining, work, corners, box } = piece;
    const size = `${inch(width)} x ${inch(thickness)}${ripped ? ' ripped' : ''}`;
    const more = `${scribe ? ` scribe ${inch(scribe)}` : ''}${stands ? ` stands ${inch(stands.out)} ${inch(stands.down)}` : ''}`;
    const fences = work.flatMap(each => (each.kind === 'rip' && each.fence ? [each.fence] : []));
    const atEnds = ends.map((end, i) => [endWords(end), end.how, end.longer, meets[i]].filter(Boolean).join(' '));
    return [
        `${piece.id}: ${piece.part} ${[line, bay, coffer, on].map(each => each ?? '-').join(' ')}, ${piece.where}, ${piece.stock.name}`,
        `   ${[piece.face, piece.back, piece.overall].map(inch).join(' ')}, cut ${[piece.cutFace, piece.cutBack, piece.cutOverall].map(inch).join(' ')}, `
            + `${size}${more}; ${[...machining, ...fences].join('; ')}`,
        `   ${atEnds.join(' | ')}${hand ? `, a ${hand}` : ''}`,
        `   ${whyText(piece.why, piece.back, { show: 'feet-inches', step: TICKS_PER_INCH / 128 })}`,
        `   ${corners.map(({ x, y }) => `${inch(x)},${inch(y)}`).join(' ')}; ${inch(box.top)} to ${inch(box.foot)}`,
    ].join('\n');
}
