import type { JobSettings } from '../../job/model.ts';
import type { Figures, Offer, Suggestions } from '../../suggest/model.ts';
import { capitalized } from '../../plain/words.ts';
import { titleOf, type House, type RoomPieces } from '../house.ts';
import type { Leaf, LeafSection } from '../leaf.ts';
import { CLEAR_OF_WHAT_IS_SAID, costText, HOW_RANKED, hoursOf, movedText, reasonsText, shareText, spreadText, throughText, triedText } from './words.ts';

/** Other grids for the rooms of a house. */
export function suggestLeaf(house: House, of: (room: RoomPieces) => Suggestions): Leaf {
    const rooms = house.rooms.map(room => ({ room, suggestions: of(room) })), offers = rooms.some(({ suggestions }) => suggestions.offers.length > 0);
    return {
        title: 'OTHER GRIDS', of: titleOf(house.job), house,
        sections: rooms.map(({ room, suggestions }) => sectionOf(room, suggestions, house.job)),
        notes: offers ? [HOW_RANKED] : [], cautions: offers ? [CLEAR_OF_WHAT_IS_SAID] : [],
    };
}

function sectionOf({ room }: RoomPieces, suggestions: Suggestions, job: JobSettings): LeafSection {
    const { present, offers, nothing, notTried, tried } = suggestions, heading = `room ${room.name}`;
    if (nothing !== undefined) return { heading, words: [nothing] };
    const rows = [...present ? [rowOf('now', present, job)] : [], ...offers.map(({ figures }, i) => rowOf(String(i + 1), figures, job))];
    return {
        heading, words: [triedText(suggestions, job), ...reasonsText(tried)],
        ...rows.length > 0 && { table: tableOf(rows) },
        after: [...offers.flatMap((offer, i) => toWrite(offer, i, job)), ...notTried],
    };
}

/** Without the columns in which nothing is known of any grid. */
function tableOf(rows: readonly (readonly string[])[]): NonNullable<LeafSection['table']> {
    const isKnown = (column: number): boolean => !UNKNOWN.includes(column) || rows.some(row => row[column] !== '');
    const shown = <T>(cells: readonly T[]): T[] => cells.filter((_, i) => isKnown(i));
    return { head: shown(HEAD), rows: rows.map(shown), figures: shown(HEAD).flatMap((_, i) => (i === 0 || i > THROUGH ? [i] : [])) };
}

const THROUGH = 4, UNKNOWN = [8, 9];
const HEAD = ['', 'coffers', 'east-west', 'north-south', 'through', 'unequal', 'off square', 'conflicts', 'joists', 'closing', 'boards', 'they cost', 'hours'];
function rowOf(rank: string, figures: Figures, job: JobSettings): string[] {
    const { across, down, width, length, unequal, offSquare, errors, conflicts, joists, closing, boards } = figures;
    return [
        rank, `${across} by ${down}`, spreadText(width, job), spreadText(length, job), throughText(figures), shareText(unequal), shareText(offSquare),
        `${conflicts}${errors > 0 ? ` and ${errors} wrong` : ''}`,
        joists === undefined ? '' : String(joists), closing === undefined ? '' : String(closing), String(boards), costText(figures), hoursOf(figures),
    ];
}

/** The words to write, and what speaks against them. */
function toWrite(offer: Offer, i: number, job: JobSettings): string[] {
    const moved = movedText(offer, job), warnings = offer.warnings.map(({ message }) => ` ${message}`).join('');
    const says = offer.says.map(words => `\`${words}\``).join(' and '), how = moved.length > 0 ? ` ${capitalized(moved.join('; '))}.` : '';
    return [`${i + 1}: write ${says}.${how}${warnings}`];
}
