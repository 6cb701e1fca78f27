import type { Ceiling } from '../ceiling/model.ts';
import type { ClosingWord } from '../job/closing-word.ts';
import { grouped } from '../plain/groups.ts';
import { capitalized, listed } from '../plain/words.ts';
import { closingPieces } from '../putup/closing/pieces.ts';
import { waysIn, type Way } from '../takeoff/closing/ways.ts';
import type { Placing } from '../putup/model.ts';
import { closingSaid, WAY_OF } from '../takeoff/closing/said.ts';
import { putUpOf } from '../putup/put-up.ts';
import { spokenName } from '../takeoff/ids.ts';
import { defineRule } from './rule.ts';
import { bottomsNamed } from './support/closing-words.ts';
import { changed, HALL_WITH_BAND } from './support/examples.ts';
import { replacing } from './support/fixes.ts';
import { wordsOf } from './support/places.ts';
import { sizesOf, type Sizes } from './support/words.ts';

const wrong = changed(HALL_WITH_BAND, 'bottom { stock poplar-1x4 }', 'bottom { stock poplar-1x4; biscuits 1 x #10; closing swung }');

export const noWayIn = defineRule({
    name: 'no-way-in',
    severity: 'error',
    title: 'A piece cannot get to its place when its turn comes',
    explanation: `
Every piece is put up in the order of the steps among all that is up by then: lifted straight up, or beside its place and pushed
there, and a closing piece by the way in that the text says, leaning or bent as it is on that way. What something hangs in the way of
is tried beside its place, one end first, and turned on the plan in its coffer. Where it runs into something, or the way is not one for
it, the piece cannot be put up as it is written.

\`closing swung\` is for a bottom with biscuits at one end: that end goes onto them, and the other is swung up. One of 48" between two
bottoms that run through has biscuits at both ends, 11/32" each, and cannot be swung onto the second. With its slots opened to the back,
or the biscuits left out at one end and a block glued behind that joint, it gets in.`,
    wrong,
    right: changed(wrong, 'closing swung', 'closing slots-opened'),
    basis: 'Worked out on the solids of the dry fit. That edges give 1/64": common practice, no source.',
    check: {
        fit({ layout: { ceiling }, job }, report) {
            // what nobody says anything of gets in: where all else fails without its biscuits
            if ((ceiling.room.putUp?.orders ?? []).length === 0 && !ceiling.lines.some(({ section }) => section.profile.bottom?.closing)
                && !Object.values(ceiling.around).some(own => own?.kind === 'half-beam' && own.section.profile.bottom?.closing)) return;
            const order = putUpOf(ceiling), lost = order.steps.flatMap(({ placings }) => placings).filter(({ path }) => !path);
            if (lost.length === 0) return;
            const closings = new Map(closingPieces(ceiling, order).map(closing => [closing.piece.id, closing]));
            const said = lost.filter(({ piece }) => closingSaid(piece, ceiling)), size = sizesOf(job);
            const wordAt = ({ piece }: Placing): string => { const { at } = closingSaid(piece, ceiling)!; return at.uri + JSON.stringify(at.range); };
            for (const own of grouped(said, wordAt).values()) {
                const [{ piece, instead = [] }] = own as [Placing], word = closingSaid(piece, ceiling)!, closing = closings.get(piece.id);
                const way = closing && waysIn(closing, ceiling).find(({ kind }) => kind === WAY_OF[word.value]);
                const why = !way ? 'biscuits stand out at both of its ends' : way.works === false ? whyNot(way, size) : 'on that way it runs into what is up by then';
                const others = [...new Set(instead.flatMap(({ kind }) => wordOf(kind) ?? []))];
                report({
                    ...wordsOf(word),
                    message: `${capitalized(bottomsNamed([piece]))} cannot get in \`${word.value}\`: ${why}.${others.length > 0 ? ` It gets in ${listed(others.map(other => `\`${other}\``), 'or')}.` : ''}`
                        + `${own.length > 1 ? ` The same goes for ${own.length - 1} more.` : ''}`,
                    fixes: others.flatMap((other, i) => replacing(word, other, `Write \`${other}\``).map(fix => ({ ...fix, preferred: i === 0 }))),
                });
            }
            const others = lost.filter(one => !said.includes(one));
            if (others.length > 0) report(unsaid(others, ceiling));
        },
    },
});

/** What nobody says how it gets in, and nothing does: told where the order is said, else where the lines are. */
function unsaid(lost: readonly Placing[], { room }: Ceiling) {
    const [{ piece, blockedBy }] = lost as [Placing], order = room.putUp?.orders[0];
    return {
        ...order ? { at: order.at } : wordsOf(room.grid.through),
        message: `There is no way in for ${spokenName(piece.id)} when its turn comes: ${blockedBy.length > 0 ? `${listed(blockedBy.map(spokenName))} in the way` : 'biscuits stand out at its ends, and none of the ways past them goes'}.`
            + `${lost.length > 1 ? ` The same goes for ${lost.length - 1} more.` : ''}`,
    };
}

function whyNot(way: Way, size: Sizes): string {
    return way.kind === 'open-slots' ? `slots opened to its back leave only ${size.gap(way.leaves)} of wood under them` : 'so many kerfs have no room beside each other';
}

function wordOf(kind: Way['kind']): ClosingWord | undefined {
    return (Object.keys(WAY_OF) as ClosingWord[]).find(word => WAY_OF[word] === kind);
}
