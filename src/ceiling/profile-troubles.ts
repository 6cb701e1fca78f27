import type { Nails, Screws } from '../job/model.ts';
import type { Given } from '../provenance/source.ts';
import type { Measure } from '../quantity/measure.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Section, Trouble } from './model.ts';
import type { BoardPart } from './part-sizes.ts';

/** What a section says that no ceiling can be laid out with: sizes that are nothing or less, a crown that stands upright or lies flat. */
export function profileTroubles(section: Section): Trouble[] {
    return [...notPositive(section), ...moldingTroubles(section)];
}

/** Moldings of two sides that would be in each other under the beam, or one that nothing holds. */
function moldingTroubles({ moldingWidth, outerWidth, profile: { under } }: Section): Trouble[] {
    if (!under || !moldingWidth || !outerWidth || under.place.value !== 'under-beam') return [];
    const inside = moldingWidth.ticks - under.overhang.value.ticks, at = (under.rip ?? under.stock ?? under).at;
    if (inside <= 0) {
        const what = 'a molding that stands out beyond the side by all of its width';
        return [{ kind: 'not-supported', what, because: 'nothing would hold it', instead: 'less overhang', at: under.overhang.at }];
    }
    if (2 * inside <= outerWidth.ticks) return [];
    return [{
        kind: 'not-supported', what: 'a molding wider than half of the beam that it lies under', because: 'those of its two sides would be in each other',
        instead: 'a narrower one, or more overhang', at,
    }];
}

function notPositive({ profile, heldDown }: Section): Trouble[] {
    const troubles: Trouble[] = [];
    const check = (what: string, ticks: Ticks | undefined, given: Given<unknown> | undefined, least: Ticks = 1): void => {
        if (given && !(ticks! >= least)) troubles.push({ kind: 'not-positive', what, ticks: ticks!, at: given.at });
    };
    const size = (what: string, given: Given<Measure> | undefined, least: Ticks = 1): void => check(what, given?.value.ticks, given, least);
    const board = (name: string, part: BoardPart | undefined): void => {
        const stock = part?.stock?.value;
        if (part?.rip) size(`the width of the ${name}`, part.rip);
        else size(`the width of ${stock?.name}`, stock?.width);
        size(`the thickness of ${stock?.name}`, stock?.thickness);
    };
    const spaced = (what: string, given: Given<Nails> | Given<Screws> | undefined): void => {
        check(`the distance between the ${what}`, given?.value.every, given);
    };
    const { blocking, spacers, sides, cleats, bottom, trim, under, solid, back } = profile;
    board('blocking', blocking);
    board('spacers', spacers);
    board('sides', sides);
    board('bottom', bottom);
    board('trim', trim);
    board('molding', under);
    board('timber', solid);
    check('what is left open between panels', back?.gap.value, back?.gap, 0);
    size('the height of the spacers', spacers?.height);
    check('the distance between spacers', spacers?.every.value, spacers?.every);
    check('the distance of the first spacer from the end', spacers?.fromEnd.value, spacers?.fromEnd, 0);
    size(heldDown?.said === false && profile.otherSide ? 'what the other side, which hangs as low, is held down' : 'what the sides are held down', heldDown, 0);
    size('the thickness of the cleats', cleats?.thickness);
    size('the height of the cleats', cleats?.height);
    check('what the cleats are short at each end', cleats?.shortEachEnd.value, cleats?.shortEachEnd, 0);
    check('what the bottom is pressed by', bottom?.press?.value, bottom?.press, 0);
    if (trim?.spring && !(trim.spring.value > 0 && trim.spring.value < 90)) {
        troubles.push({
            kind: 'not-supported', what: `a crown that leans ${trim.spring.value}° from the side`, because: 'it would lie flat against one of the two that it leans between',
            instead: 'a spring of more than 0° and less than 90°', at: trim.spring.at,
        });
    }
    spaced('screws of the blocking', blocking?.screws);
    spaced('nails of the sides', sides?.nails);
    spaced('nails of the cleats', cleats?.nails);
    spaced('nails of the bottom', bottom?.nails);
    spaced('nails of the trim', trim?.nails);
    spaced('nails of the molding', under?.nails);
    spaced('nails of the panels', back?.nails);
    return troubles;
}
