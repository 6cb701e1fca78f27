import type { Line } from '../../ceiling/model.ts';
import type { RoomOnPage } from '../../pages/page.ts';
import { sameSource } from '../../provenance/source.ts';

/** What a property of a room's grid sets, by the keys of pages; of a word that is none, or sets nothing that is drawn, nothing. */
export function gridKeys(property: string, room: RoomOnPage): readonly string[] {
    return (SETS[property] ?? (() => []))(room);
}

type Keys = (room: RoomOnPage) => readonly string[];

const SETS: Readonly<Record<string, Keys>> = {
    grid: room => [...linesWith(room, () => true), ...coffers(room)],
    'coffers-north': room => [...linesWith(room, dividesNorth), ...coffers(room), ...strings('across')],
    'coffers-east': room => [...linesWith(room, dividesEast), ...coffers(room), ...strings('down')],
    'coffer-size': room => coffers(room),
    'lines-north': room => [...linesWith(room, dividesNorth), ...strings('across')],
    'lines-east': room => [...linesWith(room, dividesEast), ...strings('down')],
    'lay-north-south': room => linesWith(room, dividesNorth),
    'lay-east-west': room => linesWith(room, dividesEast),
    'square-to': room => linesWith(room, () => true),
    'centered-on': room => {
        const fixture = room.layout.room.grid?.centeredOn?.value;
        return [...fixture ? [`fixture.${fixture.name}`] : [], ...linesWith(room, ({ byHand }) => !byHand)];
    },
    beams: room => {
        const profile = room.layout.room.grid?.beams?.value;
        return linesAndPieces(room, ({ section }) => profile !== undefined && sameSource(section.profile.at, profile.at));
    },
    through: room => linesAndPieces(room, ({ through }) => through, 'bottom'),
    // where bottoms are spliced; where none is, those that might be
    splices: room => {
        const spliced = linesAndPieces(room, ({ splices }) => splices.length > 0, 'bottom');
        return spliced.length > 0 ? spliced : linesAndPieces(room, ({ through }) => through, 'bottom');
    },
    residue: room => {
        const place = room.layout.room.grid?.residue.value;
        return place === 'band' ? aroundWalls(room) : place === 'spread' ? coffers(room) : outerCoffers(room);
    },
    perimeter: aroundWalls,
};

const dividesNorth = ({ runs }: Line): boolean => runs === 'north-south', dividesEast = ({ runs }: Line): boolean => runs === 'east-west';

/** The plan's strings of figures that tell of the division one way. */
function strings(direction: 'across' | 'down'): readonly string[] {
    return ['parts', 'centers'].map(name => `dimensions.${direction}.${name}`);
}

function linesWith({ ceiling }: RoomOnPage, is: (line: Line) => boolean): readonly string[] {
    return ceiling.lines.filter(is).map(({ name }) => `line.${name}`);
}

function linesAndPieces(room: RoomOnPage, is: (line: Line) => boolean, part?: string): readonly string[] {
    const names = new Set(room.ceiling.lines.filter(is).map(({ name }) => name));
    const pieces = room.takeOff.pieces.filter(piece => piece.line !== null && names.has(piece.line) && (part === undefined || piece.part === part));
    return [...linesWith(room, is), ...pieces.map(({ id }) => id)];
}

function coffers({ ceiling }: RoomOnPage): readonly string[] {
    return ceiling.coffers.map(({ number }) => `coffer.${number}`);
}

/** Those that lie at a wall. */
function outerCoffers({ ceiling: { coffers: all } }: RoomOnPage): readonly string[] {
    const [west, east] = [Math.min(...all.map(c => c.west)), Math.max(...all.map(c => c.east))];
    const [north, south] = [Math.min(...all.map(c => c.north)), Math.max(...all.map(c => c.south))];
    return all.filter(c => c.west === west || c.east === east || c.north === north || c.south === south).map(({ number }) => `coffer.${number}`);
}

/** Whatever runs along the walls: a band, or the pieces of half beams. */
function aroundWalls({ takeOff, ceiling: { around } }: RoomOnPage): readonly string[] {
    return takeOff.pieces.filter(({ line, coffer, on }) => line === null && coffer === null && on !== null && on in around).map(({ id }) => id);
}
