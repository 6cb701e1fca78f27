import { EQUILIBRIUM, FIBERBOARD_GROWS } from '../../data/moisture.ts';
import { citation } from '../../data/published.ts';
import type { JobSettings } from '../../job/model.ts';
import type { Air } from '../../job/seasons.ts';
import { capitalized } from '../../plain/words.ts';
import { inches } from '../../quantity/rational.ts';
import { percentOf } from '../../rules/support/percents.ts';
import { linesNamed, sizesOf, type Sizes } from '../../rules/support/words.ts';
import { titleOf, type House, type RoomPieces } from '../house.ts';
import type { Leaf, LeafSection } from '../leaf.ts';
import type { RoomSeasons } from './content.ts';

/** What a year does to the ceilings of a house, and what to tell the owner. */
export function seasonsLeaf(house: House, seasonsOf: (room: RoomPieces) => RoomSeasons | undefined): Leaf {
    const rooms = house.rooms.map(room => ({ room, seasons: seasonsOf(room) })), known = rooms.some(({ seasons }) => seasons);
    return {
        title: 'OVER THE YEAR', of: titleOf(house.job), house,
        sections: rooms.flatMap(({ room, seasons }) => sectionsOf(room, seasons, house.job)),
        notes: known ? [
            `Moisture of wood from the air's temperature and humidity: ${citation(EQUILIBRIUM)}. Movement in width: Wood Handbook FPL-GTR-190 (2010), Eq. 13-2, flatsawn boards, good from 6 to 14% with an error of about 5% at the ends; quartersawn boards move less. Fiberboard: its greatest expansion, ${citation(FIBERBOARD_GROWS)}. Wood hardly moves in length.`,
            'These are figures of wood that is free to move. Glue, biscuits, nails and paint hold it back and slow it down: a joint that holds opens less, and what is held may bow or split instead. 1/32" after one heating season: common practice, no source.',
        ] : [],
        cautions: [],
    };
}

function sectionsOf({ room }: RoomPieces, seasons: RoomSeasons | undefined, job: JobSettings): LeafSection[] {
    const heading = `room ${room.name}`;
    if (!seasons) return [{ heading, words: ['Nothing is said of its seasons: `seasons` in the room or in the job.'] }];
    const { year, moving, woods, unknown, startAtMost } = seasons, { said, driest, dampest, middle } = year, size = sizesOf(job);
    const f = (ticks: number): string => size.told(ticks);
    const rows = moving.flatMap(({ lines, play, butt, corner, alike }) => {
        const of = linesNamed(lines.map(({ name }) => name));
        return [
            ...play ? [[of, 'play of the bottom, in all', f(play.built), f(play.driest), f(play.dampest), alike ? `${f(play.unlike)} either way if one is flatsawn and the other quartersawn` : 'unlike woods']] : [],
            ...butt ? [[linesNamed(butt.at), 'bottoms against its bottom', 'closed', opened(butt.driest, f), opened(butt.dampest, f), '']] : [],
            [of, 'corners of its coffers', 'closed', opened(corner.driest, f), opened(corner.dampest, f), ''],
        ];
    });
    return [
        {
            heading,
            words: [
                `Driest ${airWords(said.driest.value, job)}: wood comes to ${percentOf(driest)}. Dampest ${airWords(said.dampest.value, job)}: ${percentOf(dampest)}.`,
                said.goesUpAt ? `The boards go up at ${percentOf(said.goesUpAt.value)}.` : `When the boards go up is not said (\`goes-up-at\`): ${percentOf(middle)}, half way, is taken.`,
                `Let the boards come to about ${percentOf(middle)}${startAtMost === null ? '' : `, and no more than ${percentOf(startAtMost)},`} in the room, with the heating on, before they go up: by a meter, on several boards, in their middle.`,
                ...woods.map(({ wood, source, swing }) => `${wood === 'mdf' ? 'Fiberboard' : capitalized(wood.replaceAll('-', ' '))}, 6" wide: ${f(swing)} from the driest to the dampest season (${source}).`),
                ...unknown.map(name => `No movement is known of stock ${name}: its line says no species, or one that no table has.`),
            ],
            table: { head: ['beam', 'joint', 'as built', 'driest', 'dampest', ''], rows, figures: [2, 3, 4] },
        },
        { heading: `${heading}: for the owner, after one winter`, words: ownerWords(seasons, size.most) },
    ];
}

/** In words for somebody who builds no ceilings. */
function ownerWords({ opensMost, humidified, year: { driest } }: RoomSeasons, most: Sizes['most']): string[] {
    const fine = opensMost && opensMost.by > inches('1/128');
    return [
        'Wood takes up moisture from the air and gives it back: in the heating season its boards get a little narrower, in the damp season wider again, year after year.',
        fine ? `In the first winter fine lines may show in the paint, ${opensMost.what === 'butt' ? 'most of all where beams cross and the boards underneath meet' : 'most of all in the corners of the coffers'}: up to ${most(opensMost.by)} wide where nothing holds the boards together. They close again, for the most part, when the air gets damper.`
            : 'In the first winter hardly a line should show in the paint.',
        'Have such lines filled and painted at the end of the first heating season, when they are widest, and not before it.',
        ...humidified > driest + 0.3 ? [`The drier the air, the wider they get: kept at 35% humidity in winter the wood stays at ${percentOf(humidified)} instead of ${percentOf(driest)}. How damp a house may be kept in winter depends on its windows and walls: ask before you buy a humidifier.`] : [],
        'Paint and caulk that is cracked in an old house may hold lead: have it tested before it is sanded.',
    ];
}

function opened(by: number, f: (ticks: number) => string): string {
    return Math.round(by) === 0 ? 'closed' : by > 0 ? `open ${f(by)}` : `pressed ${f(-by)}`;
}

function airWords({ humidity, celsius }: Air, { show }: JobSettings): string {
    return `${percentOf(humidity * 100)} at ${Math.round(show.value === 'millimeters' ? celsius : celsius * 1.8 + 32)} ${show.value === 'millimeters' ? '°C' : '°F'}`;
}
