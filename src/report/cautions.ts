import type { Piece } from '../takeoff/model.ts';

/**
 * The usual cautions for the cuts that a list asks for (common practice, no source). They are reminders: the makers'
 * instructions, local codes and licensed people come first, and nothing here says that any of it is safe.
 */
export function cautionsFor(pieces: readonly Piece[]): string[] {
    if (pieces.length === 0) return [];
    const narrowest = Math.min(...pieces.filter(p => p.ripped).map(p => Math.min(p.width, p.thickness)));
    return [
        'Follow the makers\' instructions for every saw and router; eyes, ears and lungs protected, dust collected.',
        ...(Number.isFinite(narrowest) ? ['Ripping narrow strips: riving knife or splitter in place, push stick, nobody behind the blade.'] : []),
        ...(pieces.some(p => p.work.some(({ kind }) => kind === 'rabbet' || kind === 'ease'))
            ? ['Routing: feed against the rotation of the bit; a climb cut can pull the router away.'] : []),
        'Work overhead on a platform, not at arm\'s length from a ladder; two people on long pieces. Before fastening, know what the ceiling hides: wiring, pipes, ducts, sprinklers, alarms.',
        'In a house from before 1978 presume lead in paint, and asbestos in old texture and plaster, until they are tested.',
    ];
}
