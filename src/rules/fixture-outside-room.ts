import { isOutside } from '../ceiling/room-shape.ts';
import { outlineOf } from '../job/outline.ts';
import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { acrossWords, placed, reachThatWay } from './support/in-the-way.ts';
import { standingAtWalls } from '../ceiling/at-the-wall.ts';
import { wordsOf } from './support/places.ts';
import { sizesOf } from './support/words.ts';
import { listed } from '../plain/words.ts';

const wrong = changed(HALL, `  wall east   9' 5"\n`, `  wall east   9' 5"\n  fixture lamp-1 light at 2', 20' 3" diameter 6"\n`);

const ALONG = { west: { x: 1, y: 0 }, east: { x: 1, y: 0 }, north: { x: 0, y: 1 }, south: { x: 0, y: 1 } } as const;

export const fixtureOutsideRoom = defineRule({
    name: 'fixture-outside-room',
    severity: 'error',
    title: 'A fixture of the ceiling lies outside of the room',
    explanation: `
The place of a fixture is given from a corner of the room, first along the north wall and then along the east wall. What lies beyond a wall
was measured from another corner, in the other order, or with a slip in a figure; it would be left out of every check.

The hall is 12' 10" by 9' 5": 20' 3" along its east wall is 10' 10" outside. Where only its edge reaches into a wall, it is a **warning**.`,
    wrong,
    right: changed(wrong, `20' 3"`, `2' 3"`),
    basis: 'Geometry of the room.',
    check: {
        room({ layout: { room, ceiling }, job }, report) {
            const outline = outlineOf(room);
            if (!outline || 'why' in outline) return;
            const { width: across, length: down, corners } = outline;
            const size = sizesOf(job);
            for (const { name, atWall } of room.fixtures) {
                if (atWall && !room.walls.some(wall => wall.name === atWall.wall.value || `wall-${wall.name}` === atWall.wall.value)) {
                    report({ ...wordsOf(atWall.wall), message: `There is no wall ${atWall.wall.value} for ${name} to stand at; the room has ${listed(room.walls.map(wall => wall.name))}.` });
                }
            }
            for (const { fixture: { name, at }, wall, from, to } of ceiling ? standingAtWalls(ceiling) : []) {
                const beyond = Math.round(Math.max(-from, to - wall.length));
                if (beyond > 0) report({ at, message: `${name} reaches ${size(beyond)} beyond the ${wall.name} wall, which is ${size(wall.length)} long. From which end was it measured?` });
            }
            for (const one of placed(room.fixtures)) {
                const { fixture: { name, at }, x, y } = one;
                const beyond = [['west', -x], ['east', x - across], ['north', -y], ['south', y - down]] as const;
                const [way, by] = beyond.reduce((most, one) => (one[1] > most[1] ? one : most));
                const room_ = `the room is ${size(across)} along the north wall and ${size(down)} along the east wall`;
                if (by <= 0 && isOutside(corners, { x, y })) {
                    report({ at, message: `${name} is outside of the walls: in ${size(Math.round(x))} from the west and ${size(Math.round(y))} from the north there is no room. From which corner was it measured?` });
                    continue;
                }
                if (by > 0) report({ at, message: `${name} is ${size.off(by)} beyond the ${way} wall: ${room_}. From which corner was it measured, and which way first?` });
                else {
                    const reaches = beyond.map(([to, off]) => [to, off + reachThatWay(one, one.half, ALONG[to])] as const);
                    const [wall, reach] = reaches.reduce((most, each) => (each[1] > most[1] ? each : most));
                    if (reach > 0) report({ at, severity: 'warning', message: `${name}${acrossWords(one, size)} reaches ${size.off(reach)} into the ${wall} wall: ${room_}.` });
                }
            }
        },
    },
});
