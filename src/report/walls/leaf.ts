import type { JobSettings } from '../../job/model.ts';
import { tapeOf } from '../../job/tape.ts';
import { bowsKnown, CAULKED, LEAST_LEFT, type BowedWall } from '../../measure/bowed.ts';
import { stretchWords } from '../../measure/bowed-words.ts';
import { knownWords } from '../../job/status.ts';
import { counted, listed } from '../../plain/words.ts';
import { printLength, printMark } from '../../quantity/print-length.ts';
import { titleOf, type House, type RoomPieces } from '../house.ts';
import type { Leaf, LeafSection } from '../leaf.ts';

/** What walls that are not straight or not plumb do to what runs along them and ends at them, room by room. */
export function wallsLeaf(house: House, wallsOf: (room: RoomPieces) => readonly BowedWall[] | undefined): Leaf {
    const { job } = house, show = job.show.value, rooms = house.rooms.map(room => ({ room, walls: wallsOf(room) ?? [] }));
    const known = rooms.some(({ walls }) => walls.length > 0);
    return {
        title: 'ALONG THE WALLS', of: titleOf(job), house,
        sections: rooms.flatMap(({ room, walls }) => sectionsOf(room, walls, job)),
        notes: known ? [
            `Places along a wall count from its west or north end. Between two readings a wall is taken to be straight. A band is kept straight: what ends at it fits as it is listed, and its back is scribed where the wall stands out. `
                + `Of a band ${printLength(LEAST_LEFT, show)} stays at the least; a gap over ${printLength(CAULKED, show)} is not caulked: common practice, no source. What is cut shorter here is shorter than in the cut list.`,
        ] : [],
        cautions: known ? ['Before a nail goes into a wall, know what is in it: wiring and pipes run just under a ceiling too.'] : [],
    };
}

function sectionsOf({ room: { name } }: RoomPieces, walls: readonly BowedWall[], job: JobSettings): LeafSection[] {
    const heading = `room ${name}`, mark = (ticks: number): string => printMark(Math.round(ticks), tapeOf(job));
    if (walls.length === 0) return [{ heading, words: ['Nothing is said of how straight and how plumb its walls are: `hump`, `hollow`, `leans-in`, `leans-out` of a wall.'] }];
    return [{
        heading, words: [],
        table: {
            head: ['wall', 'known', 'what runs there', 'stands in or back', 'scribe', 'gap behind it'],
            rows: walls.map(({ wall, bow, runs, moved, scribes, gaps }) => [
                wall.name, bowsKnown(bow).map(knownWords).join('; '), runs === null ? 'nothing' : runs.kind === 'band' ? `band, ${mark(runs.thickness.ticks)} thick` : 'half beam', moved === 0 ? '' : `${mark(Math.abs(moved))} ${moved > 0 ? 'in' : 'back'}`,
                scribes.map(each => stretchWords(each, wall.length, mark)).join('; '), gaps.map(each => stretchWords(each, wall.length, mark)).join('; '),
            ]), figures: [],
        },
        after: walls.flatMap(({ wall, ends, bent }) => [
            ...ends.map(({ piece, by, along, at = wall.name }) =>
                `${piece.id}: ${mark(Math.abs(by))} ${by > 0 ? 'shorter' : 'longer'} than listed where it ends at wall ${at}, ${mark(along)} along it.`),
            ...bent.length > 0 ? [`Were the band along wall ${wall.name} bent to it and not kept straight: ${listed(bent.map(({ line, by }) => `line ${line} ${mark(Math.abs(by))} ${by > 0 ? 'shorter' : 'longer'}`))}.`] : [],
        ]),
    }, ...walls.some(({ astray }) => astray.length > 0) ? [{ heading: `${heading}: not used`, words: walls.flatMap(({ wall, astray }) => (astray.length > 0 ? [`${counted(astray.length, 'reading')} of wall ${wall.name} ${astray.length === 1 ? 'is' : 'are'} beyond its ends.`] : [])) }] : []];
}
