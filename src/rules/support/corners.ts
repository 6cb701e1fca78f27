import { lookOf, sectionAt, type Flank } from '../../ceiling/flanks.ts';
import type { Crossing, Layout, Line, WholeSection } from '../../ceiling/model.ts';
import { arrangedOf } from '../../ceiling/plan.ts';
import { atKey } from '../../plain/at-key.ts';
import { counted } from '../../plain/words.ts';
import type { Source } from '../../provenance/source.ts';
import { meetings } from './meetings.ts';
import { linesNamed } from './words.ts';

/** Sides of two kinds that meet in corners of coffers: those of lines of different details, or of flanks that are unlike. */
interface CornerMeeting {
    readonly mine: Sides; readonly theirs: Sides;
    readonly at: Source;
    readonly via?: readonly Source[] | undefined;
    /** A sentence behind the rest: in how many other corners it is so. */
    readonly also: string;
}
interface Sides {
    readonly section: WholeSection;
    /** `line A`, `lines 1 and 2`; of a flank `the south side of line A`. */
    readonly of: string;
    /** `the sides of line A are`, `the south side of line A is`; and without the verb, as the second of the two: `those of lines 1 and 2`. */
    readonly are: string; readonly those: string;
}

/** Each difference once: see meetings.ts. Where a line has flanks that are unlike, which of them meet is told by the corners that the ceiling has. */
export function cornerMeetings(layout: Layout): CornerMeeting[] {
    const hasFlanks = ({ ns, ew }: Crossing): boolean => ns.otherSide !== undefined || ew.otherSide !== undefined;
    const alike = meetings(layout, crossing => !hasFlanks(crossing)).map(({ line, others, at, via }): CornerMeeting => {
        const names = linesNamed(others.map(other => other.name)), { section } = others[0]!;
        return {
            at, via, also: '', mine: { section: line.section, of: `line ${line.name}`, are: `the sides of line ${line.name} are`, those: `those of line ${line.name}` },
            theirs: { section, of: names, are: `the sides of ${names} are`, those: `those of ${names}` },
        };
    });
    return layout.ceiling?.crossings.some(hasFlanks) ? [...alike, ...ofFlanks(layout, hasFlanks)] : alike;
}

interface FlankOfLine { readonly line: Line; readonly flank: Flank }

/** Told of the first corner, with how many there are besides. */
function ofFlanks({ room, ceiling }: Layout, hasFlanks: (crossing: Crossing) => boolean): CornerMeeting[] {
    const lines = new Map(ceiling!.lines.map(line => [line.name, line])), { pieces, joints } = arrangedOf(ceiling!).exact;
    const unlike = new Set(ceiling!.crossings.filter(hasFlanks).flatMap(({ ns, ew }) => [`${ns.name} ${ew.name}`, `${ew.name} ${ns.name}`]));
    const found = new Map<string, (readonly [FlankOfLine, FlankOfLine])[]>(), said = new Map(room.lines.map(spec => [spec.name, spec]));
    const standsFor = ({ line, flank }: FlankOfLine): number => (said.has(line.name) ? 2 : 0) + (line.otherSide === flank ? 1 : 0);
    for (const { kind, pieces: both, meets } of joints) {
        if (kind !== 'corner' || !unlike.has(meets.join(' '))) continue;
        const [a, b] = both.map((i): FlankOfLine => ({ line: lines.get(pieces[i]!.of)!, flank: pieces[i]!.flank! })) as [FlankOfLine, FlankOfLine];
        // the line that has a block of its own stands for the difference, or the flank with the other side
        const ends = standsFor(b) > standsFor(a) ? [b, a] as const : [a, b] as const;
        const keys = ends.map(({ line, flank }) => sectionAt(line, flank).profile.key).sort();
        if (keys[0] !== keys[1]) atKey(found, keys.join('\n'), () => []).push(ends);
    }
    return [...found.values()].map(corners => {
        const [one, other] = corners[0]!, spec = said.get(one.line.name), at = spec?.beams ?? spec?.otherSide, more = corners.length - 1;
        return {
            mine: sidesOf(one), theirs: sidesOf(other), at: at?.at ?? one.line.at, via: at?.via,
            also: more > 0 ? ` ${counted(more, 'other corner')} ${more === 1 ? 'is' : 'are'} like it.` : '',
        };
    });
}

function sidesOf({ line, flank }: FlankOfLine): Sides {
    const of = `the ${lookOf(line, flank)} side of line ${line.name}`;
    return { section: sectionAt(line, flank), of, are: `${of} is`, those: of };
}
