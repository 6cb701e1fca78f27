import { type PlanView, toX, toY } from '../../drawing/plan/view.ts';
import type { Finding, Severity } from '../../findings/finding.ts';
import type { Profile } from '../../job/model.ts';
import { sameSource, type Range, type Source } from '../../provenance/source.ts';
import type { Part, Piece } from '../../takeoff/model.ts';
import type { RoomOnPage } from '../page.ts';
import type { Sources } from '../shared/sources.ts';

/** What of a room findings are placed by. */
type RoomWithFindings = Pick<RoomOnPage, 'ceiling' | 'takeOff' | 'layout' | 'findings'>;

/** A finding with the parts of the plan it is about. */
export interface PlanFinding {
    readonly severity: Severity;
    readonly rule: string;
    readonly message: string;
    /** Number of its place in the text. */
    readonly at: number;
    /** Keys of the parts; none where it is about the room as a whole. */
    readonly keys: readonly string[];
    /** Where its mark stands, in the drawing's points. */
    readonly mark?: readonly [x: number, y: number];
}

/** The findings that bear on this room, the gravest first, each where it is in the plan. Allowed ones are not drawn. */
export function findingsOnPlan(room: RoomWithFindings, view: PlanView, sources: Sources): readonly PlanFinding[] {
    const name = room.layout.room.name;
    const open = room.findings.filter(({ allowed, room: of }) => !allowed && (of === undefined || of === name));
    const marks: (readonly [number, number])[] = [];
    return open.map((finding, order) => ({ finding, order })).sort((a, b) => GRAVITY[a.finding.severity] - GRAVITY[b.finding.severity] || a.order - b.order)
        .map(({ finding }) => {
        const keys = keysOf(finding, room);
        const mark = markOf(keys, room, view, marks);
        return { severity: finding.severity, rule: finding.rule, message: finding.message, at: sources.number(finding.at), keys, ...mark && { mark } };
    });
}
const GRAVITY: Readonly<Record<Severity, number>> = { error: 0, warning: 1, hint: 2 };

/** The parts that are said where the finding stands or, where none are, at its other half. */
function keysOf({ at, related }: Finding, room: RoomWithFindings): readonly string[] {
    for (const place of [at, ...related.map(each => each.at)]) {
        const keys = partsSaidAt(place, room);
        if (keys.length > 0) return keys;
    }
    return [];
}

function partsSaidAt(place: Source, { ceiling, takeOff, layout: { room } }: RoomWithFindings): readonly string[] {
    for (const fixture of room.fixtures) if (onLineOf(place, fixture.at)) return [`fixture.${fixture.name}`];
    for (const line of room.lines) if (onLineOf(place, line.at)) return [`line.${line.name}`, ...takeOff.pieces.filter(piece => piece.line === line.name).map(({ id }) => id)];
    for (const profile of new Set(ceiling.lines.map(line => line.section.profile))) {
        const part = BLOCKS.find(([block]) => within(place, profile[block]?.body));
        if (!part) continue;
        const lines = new Set(ceiling.lines.filter(line => line.section.profile === profile).map(line => line.name));
        const isOf = ({ part: of, source }: Piece): boolean => of === part[1] && (of !== 'side' || profile.otherSide === undefined || sameSource(source, profile[part[0]]!.at));
        return takeOff.pieces.filter(piece => isOf(piece) && (piece.line === null || lines.has(piece.line))).map(({ id }) => id);
    }
    return [];
}
type Block = 'blocking' | 'spacers' | 'sides' | 'otherSide' | 'cleats' | 'bottom' | 'under' | 'solid' | 'trim' | 'back' & keyof Profile;
const BLOCKS: readonly (readonly [Block, Part])[] = [['blocking', 'blocking'], ['spacers', 'spacer'], ['sides', 'side'], ['otherSide', 'side'], ['cleats', 'cleat'], ['bottom', 'bottom'], ['under', 'molding'], ['solid', 'timber'], ['trim', 'trim'], ['back', 'panel']];

/** In the statement whose name stands at `name`, as far as that is on its line. */
function onLineOf({ uri, range }: Source, name: Source): boolean {
    return uri === name.uri && range.start.line === name.range.start.line;
}

function within({ uri, range }: Source, block: Source | undefined): boolean {
    return block !== undefined && uri === block.uri && !before(range.start, block.range.start) && !before(block.range.end, range.end);
}
function before(a: Range['start'], b: Range['start']): boolean {
    return a.line < b.line || (a.line === b.line && a.character < b.character);
}

/** The middle of the part, or of the first of several where no other mark stands. */
function markOf(
    keys: readonly string[], { takeOff, ceiling, layout: { room } }: RoomWithFindings, view: PlanView, taken: (readonly [number, number])[],
): readonly [number, number] | undefined {
    const places = keys.flatMap((key): (readonly [number, number])[] => {
        const fixture = room.fixtures.find(({ name }) => key === `fixture.${name}`);
        if (fixture?.x !== undefined && fixture.y !== undefined) return [[fixture.x, fixture.y]];
        const box = takeOff.pieces.find(({ id }) => id === key)?.box;
        return box ? [[(box.west + box.east) / 2, (box.north + box.south) / 2]] : [];
    }).filter(([x, y]) => x >= 0 && y >= 0 && x <= ceiling.width && y <= ceiling.length).map(([x, y]) => [toX(view, x), toY(view, y)] as const);
    const free = places.find(([x, y]) => taken.every(([a, b]) => Math.hypot(x - a, y - b) > 2 * MARK_RADIUS)) ?? places[0];
    if (free) taken.push(free);
    return free;
}
/** In the drawing's points. */
export const MARK_RADIUS = 7;
