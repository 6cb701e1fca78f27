import { defineRule, type Found } from './rule.ts';
import { reachingInto, standingAtWalls, type Reaching } from '../ceiling/at-the-wall.ts';
import { capitalized } from '../plain/words.ts';
import { changed, HALL_WITH_BAND } from './support/examples.ts';
import { replacing, spelledLike } from './support/fixes.ts';
import { sizesOf, type Sizes } from './support/words.ts';

const wrong = changed(HALL_WITH_BAND, `  wall east   9' 6 1/2"\n`, `  wall east   9' 6 1/2"\n  fixture window casing on east at 3' width 3' 4" below-ceiling 5 1/8"\n`);

export const bandHitsCasing = defineRule({
    name: 'band-hits-casing',
    severity: 'error',
    title: 'A band, a half beam or a beam hangs over a casing or a cabinet',
    explanation: `
The head casing of a window or a door, or a cabinet, ends some way below the ceiling. What runs along that wall above it, or ends there,
has to stay higher than that.

    too low by = lower edge below the ceiling - top of the casing below the ceiling

A band whose lower edge is 6" down hangs 7/8" lower than the top of a head casing that ends 5 1/8" below
the ceiling. Hang it higher, make the beams less
deep, or let nothing run along that wall, \`perimeter { kind none }\`. A line that ends over it is moved clear of it, or is less deep.

The fixture's line gives the place: the wall, along it where it begins (from its west or north end) and how wide it is; and
\`below-ceiling\`, or \`height\` from the floor beside the ceiling's own. Without a width it is checked along the whole wall. A casing
stands 3/4" out from the wall, unless its \`depth\` is given.`,
    wrong,
    right: changed(wrong, '5 1/8"', '6"'),
    basis: 'Geometry of the plan and the section. Thickness of a casing, 3/4": common practice, no source.',
    check: {
        room({ layout: { ceiling, room }, job }, report) {
            if (!ceiling) return;
            const size = sizesOf(job);
            for (const standing of standingAtWalls(ceiling)) {
                const { fixture: { name, kind, at }, atWall: { below, width }, wall } = standing;
                if (below === undefined) continue;
                if (below < 0) {
                    report({ at, message: `${name} is ${size(-below)} higher than the ceiling${room.height ? `, which is ${size(room.height.value)} high` : ''}. Measure it again, or write how far below the ceiling it ends: \`below-ceiling\`.` });
                    continue;
                }
                // of a casing that has no width on its line, nobody knows which lines end over it
                const over = reachingInto(standing, ceiling, below).filter(({ what }) => width || kind !== 'casing' || what === ceiling.around[wall.name]);
                for (const reaching of over) {
                    const by = reaching.foot - below;
                    report({
                        at,
                        message: `${capitalized(reaching.name)} hangs ${size(by)} lower than the top of the ${kind} ${name}${isEdging(reaching) ? '' : ` at the ${wall.name} wall`}: `
                            + `its lower edge is ${size(reaching.foot)} below the ceiling, and the top of the ${kind} ${size(below)}. ${advice(reaching, by, size)}`,
                        ...fixed(reaching, by),
                    });
                }
            }

            function fixed({ what }: Reaching, by: number): Pick<Found, 'fixes' | 'related'> {
                if (what === 'trim') return {};
                if (!('kind' in what)) return { related: [{ at: what.at, message: 'the beam of the line is set here' }] };
                const { perimeter } = what, { belowBeams } = perimeter, higher = belowBeams.value.ticks - by;
                const text = what.kind === 'band' && higher >= 0 ? spelledLike(belowBeams.value, higher, job) : undefined;
                return { fixes: replacing(belowBeams, text, `Hang the band ${size(by)} higher: ${text}`), related: [{ at: perimeter.at, message: 'what runs along the wall is set here' }] };
            }
        },
    },
});

function isEdging({ what }: Reaching): boolean {
    return what !== 'trim' && 'kind' in what;
}

function advice({ what, of }: Reaching, by: number, size: Sizes): string {
    if (what === 'trim') return 'Measure the room to its face, or end it below the trim.';
    if (!('kind' in what)) return `Move the line clear of it, or make it ${size(by)} less deep.`;
    const belowBeams = what.kind === 'band' ? what.perimeter.belowBeams.value.ticks : 0;
    // a band hangs as far below the beams as it did, so that it rises with them
    const higher = belowBeams >= by ? `Hang it ${size(by)} higher` : `Make the beams ${size(by)} less deep`;
    return `${higher}, or let nothing run along the ${of} wall: \`perimeter { kind none }\`.`;
}
