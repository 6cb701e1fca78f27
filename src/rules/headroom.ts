import type { Ceiling } from '../ceiling/model.ts';
import { inches } from '../quantity/rational.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { wordsOf } from './support/places.ts';
import { sizesOf } from './support/words.ts';

/** Of a habitable room; under beams that are far enough apart; and how far these are: clear in the 2024 edition, on center in the older wording. */
const ROOM = inches(84), UNDER_BEAMS = inches(78), CLEAR_2024 = inches(36), APART_BEFORE = inches(48);
/** What makers ask for under the blades of a fan. */
const UNDER_BLADES = inches(84);

const wrong = changed(HALL, `  wall east   9' 5"\n`, `  wall east   9' 5"\n  ceiling { height 6' 11" }\n`);

export const headroom = defineRule({
    name: 'headroom',
    severity: 'warning',
    title: 'Less than 7\' is left under the beams, or under the blades of a fan',
    explanation: `
    under a beam = height of the ceiling - panel over the coffers - depth of the beam, with what hangs under it

The model code for houses asks for 7' in a habitable room. Beams may come lower: in the 2024 edition, where they are 36" or more apart,
clear, down to 6' 6"; in the older wording, where they are 4' or more apart, 6" below the height that is asked for. A ceiling at 6' 11"
with beams 5 3/4" deep leaves 6' 5 1/4".

Where the beams are lower than 7' and both wordings allow it, it is a **hint**. A bath, a hall, a basement, a stair have other figures,
and your place may have another edition, or none of it: the code official decides. Makers of fans ask for 7' under the blades.

It is looked at where the ceiling says its \`height\`.`,
    wrong,
    right: changed(wrong, `6' 11"`, `7' 6"`),
    basis: 'IRC 2024, ceiling height (R305, numbered R313 there): read; the older wording of its beams: read second-hand. 7\' under the blades of a fan: from memory. The code official decides.',
    check: {
        room({ layout: { room, ceiling }, job }, report) {
            if (!ceiling || !room.height) return;
            const size = sizesOf(job), height = room.height.value - (ceiling.beams?.profile.back?.thickness?.value.ticks ?? 0);
            const lowest = lowestOf(ceiling);
            if (lowest && height - lowest.foot < ROOM) {
                const under = height - lowest.foot;
                const clear = Math.min(...ceiling.coffers.map(({ west, east, north, south }) => Math.min(east - west, south - north)));
                const apart = clear + Math.min(...ceiling.lines.map(({ low, high }) => high - low));
                const by2024 = under >= UNDER_BEAMS && clear >= CLEAR_2024, before = under >= UNDER_BEAMS && apart >= APART_BEFORE;
                const said = (is: boolean): string => (is ? 'allows that' : 'does not allow that');
                report({
                    ...wordsOf(room.height), severity: by2024 && before ? 'hint' : 'warning',
                    message: `${size(Math.round(under))} is left under ${lowest.name}: ${size(height)} to the ceiling, less ${size(lowest.foot)}. A habitable room has ${size(ROOM)}. `
                        + `The 2024 model code (beams ${size(CLEAR_2024)} or more apart, clear: ${size(UNDER_BEAMS)}) ${said(by2024)}, with ${size(Math.round(clear))} between them; `
                        + `its older wording (${size(APART_BEFORE)} or more apart: 6" below the height asked for) ${said(before)}. The code official decides.`,
                });
            }
            for (const { name, kind, hangs } of room.fixtures) {
                if (kind !== 'fan' || !hangs || room.height.value - hangs.value >= UNDER_BLADES) continue;
                report({ ...wordsOf(hangs), message: `${size(room.height.value - hangs.value)} is left under the blades of ${name}. Makers ask for ${size(UNDER_BLADES)} at least (from memory): see its label, and the local code.` });
            }
        },
    },
});

/** What hangs lowest. A band or a half beam stands at its wall, and counts as well. */
function lowestOf({ lines, around, walls }: Ceiling): { readonly name: string; readonly foot: Ticks } | undefined {
    const edges = walls.flatMap(({ name }) => {
        const own = around[name];
        if (!own) return [];
        return [{ name: `the ${own.kind === 'band' ? 'band' : 'half beam'} along the ${name} wall`, foot: own.kind === 'band' ? own.lowerEdge.ticks : own.section.depth.ticks + moldingUnder(own.section) }];
    });
    const all = [...lines.map(({ name, section }) => ({ name: `line ${name}`, foot: section.depth.ticks + moldingUnder(section) })), ...edges];
    return all.reduce<(typeof all)[number] | undefined>((most, one) => (!most || one.foot > most.foot ? one : most), undefined);
}

function moldingUnder({ profile: { under }, moldingThickness }: Ceiling['lines'][number]['section']): Ticks {
    return under?.place.value === 'under-beam' ? moldingThickness?.ticks ?? 0 : 0;
}
