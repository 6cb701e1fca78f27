import type { Ceiling, WholeSection } from '../ceiling/model.ts';
import { sideFootOf } from '../ceiling/section.ts';
import { arrangedOf } from '../ceiling/plan.ts';
import { grouped } from '../plain/groups.ts';
import type { Given } from '../provenance/source.ts';
import { distance } from '../plane/point.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { FirstBay } from './model.ts';

/** What is measured at the first bay, what it should be, and what of the text is to be changed where it is otherwise. */
export interface Measure {
    readonly kind: 'edge' | 'diagonal' | 'channel' | 'underside' | 'side-width' | 'side-thickness' | 'bottom-width';
    readonly of: string;
    readonly wanted: Ticks;
    /** The words of the text where it goes back: what it is of, and its stock where that is what says it. */
    readonly goesTo: { readonly words: 'lines' | 'blocking' | 'sides' | 'bottom'; readonly stock?: string };
}

/** All edges of the coffer, its diagonals where it has four corners, and of each beam round it the channel, the sides and the bottom. */
export function measuresOf({ coffer }: FirstBay, ceiling: Ceiling): Measure[] {
    const { exact } = arrangedOf(ceiling), own = exact.coffers.find(({ number }) => number === coffer);
    if (!own) return [];
    const edges = own.edges.map(({ on, length }): Measure => ({ kind: 'edge', of: on, wanted: Math.round(length), goesTo: { words: 'lines' } }));
    const [a, b, c, d] = own.outline, hasFour = own.outline.length === 4 && own.holes.length === 0;
    const across = hasFour ? [['from the first corner to the third', a!, c!] as const, ['from the second corner to the fourth', b!, d!] as const] : [];
    const round = new Set(own.edges.flatMap(({ along }) => along));
    const lines = ceiling.lines.filter(({ name, section: { profile } }) => round.has(name) && !profile.solid);
    const sections = grouped(lines, ({ section }) => section);
    return [
        ...edges, ...across.map(([of, from, to]): Measure => ({ kind: 'diagonal', of, wanted: Math.round(distance(from, to)), goesTo: { words: 'lines' } })),
        ...[...sections].flatMap(([section, all]) => ofBeam(section, all.map(({ name }) => name).join(', '), ceiling.room.survey !== undefined)),
    ];
}

/** Below a ceiling that was surveyed the sides hang on a plane, and what is over them differs from place to place: how wide they are is measured then. */
function ofBeam(section: WholeSection, of: string, isSurveyed: boolean): Measure[] {
    const { profile, channelWidth, sideThickness, sideHeight, bottomWidth } = section;
    const stock = (given: Given<{ readonly name: string }> | undefined) => given && { stock: given.value.name };
    return [
        ...channelWidth ? [{ kind: 'channel', of, wanted: channelWidth.ticks, goesTo: { words: 'blocking', ...stock(profile.blocking?.stock) } } as const] : [],
        { kind: 'side-thickness', of, wanted: sideThickness.ticks, goesTo: { words: 'sides', ...stock(profile.sides?.stock) } },
        { kind: isSurveyed ? 'side-width' : 'underside', of, wanted: isSurveyed ? sideHeight.ticks : sideFootOf(section), goesTo: { words: 'sides', ...stock(profile.sides?.stock) } },
        { kind: 'bottom-width', of, wanted: bottomWidth.ticks, goesTo: { words: 'bottom', ...stock(profile.bottom?.stock) } },
    ];
}
