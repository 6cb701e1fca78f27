import type { Joint as Met, Piece as Strip } from '../arrangement/model.ts';
import type { HalfBeam, Splice } from '../ceiling/model.ts';
import { arrangedOf } from '../ceiling/plan.ts';
import type { Biscuits, Side } from '../job/model.ts';
import { compareEach } from '../plain/order.ts';
import type { Joint, Piece } from './model.ts';
import { idOf } from './ids.ts';
import { endsOf, type Setting } from './setting.ts';

/**
 * The joints that show, from the arrangement: bottoms that butt against the one that runs through, splices of bottoms, corners of sides, of
 * the band and of the trim, and splices of the band. Biscuits are the profile's, in every butt and splice of bottoms.
 */
export function jointsOf(pieces: readonly Piece[], setting: Setting): Joint[] {
    const { exact } = arrangedOf(setting.ceiling), listed = new Set<string>();
    for (const { id } of pieces) listed.add(id);
    const found = exact.joints.flatMap((met): Told[] => {
        const strips = met.pieces.map(i => exact.pieces[i]!) as [Strip, Strip];
        const told = tell(met.kind, strips, setting);
        return told && told.pieces.every(id => listed.has(id)) ? [told] : [];
    });
    return found.sort((a, b) => compareEach(a.order, b.order)).map(({ kind, at, pieces, biscuits }) => ({ kind, at, pieces, biscuits }));
}

interface Told extends Joint { readonly order: readonly number[] }
const KINDS: readonly Joint['kind'][] = ['butt', 'splice', 'corner', 'side-splice', 'band-corner', 'band-splice', 'trim-corner', 'trim-splice'];
const CORNERS: readonly string[] = ['north-west', 'north-east', 'south-west', 'south-east'];

function tell(kind: Met['kind'], strips: readonly [Strip, Strip], setting: Setting): Told | undefined {
    const joint = (as: Joint['kind'], at: string, order: readonly number[], both: readonly [Strip, Strip], biscuits?: Biscuits): Told => ({
        kind: as, at, pieces: [idFor(both[0], setting), idFor(both[1], setting)],
        biscuits: biscuits && biscuits.count > 0 ? { count: biscuits.count, size: biscuits.size } : null, order: [KINDS.indexOf(as), ...order],
    });
    switch (kind) {
        case 'butt': {
            const { at, order } = meetingPlace(strips, setting), [butting, passing] = strips, end = liesTo(butting, passing, setting);
            return joint('butt', `${at}${end === undefined ? '' : `, ${end}`}`, [...order, end === undefined ? 0 : SIDES_BY_END.indexOf(end)], strips, setting.beam(butting.of)!.section.profile.bottom?.biscuits?.value);
        }
        case 'splice': {
            const [{ part, of, coffers: [coffer], on }] = strips;
            if (part === 'trim') return joint('trim-splice', `coffer ${coffer}, ${on}`, [coffer!, strips[0].nth], strips);
            if (part !== 'bottom' && part !== 'band' && part !== 'side') return undefined;
            const line = setting.placeOf(of), all = setting.pairs.of(part, of), inRun = all.map(({ exact }) => exact.strip);
            const both = [...strips].sort((a, b) => inRun.indexOf(a) - inRun.indexOf(b)) as [Strip, Strip], nth = inRun.indexOf(both[0]);
            const { to } = all[nth]!.exact, nearest = [...splicesOf(both[0], setting)].sort((a, b) => Math.abs(a.at - to) - Math.abs(b.at - to))[0]!;
            const at = `${line < 0 ? `${of} wall` : `line ${of}`}, ${part === 'side' && line >= 0 ? `${on} side, ` : ''}${nearest.place}`;
            return joint(part === 'band' ? 'band-splice' : part === 'side' ? 'side-splice' : 'splice', at, [line < 0 ? 1000 + wallIndex(of, setting) : line, nth], both,
                part === 'bottom' ? setting.beam(of)!.section.profile.bottom!.biscuits?.value : undefined);
        }
        case 'corner': {
            const both = levelFirst(strips, setting), { at, order } = meetingPlace(both, setting);
            const corner = `${both[0].on}-${both[1].on}`;
            return joint('corner', setting.isWall(both[0].of) && setting.isWall(both[1].of) ? at : `${at}, ${corner}`, [...order, CORNERS.indexOf(corner)], both);
        }
        case 'band-corner': {
            const both = levelFirst(strips, setting), corner = `${both[0].of}-${both[1].of}`;
            return joint('band-corner', corner, [CORNERS.indexOf(corner)], both);
        }
        case 'trim-corner': {
            const both = strips[0].on === 'north' || strips[0].on === 'south' ? strips : [strips[1], strips[0]] as const, corner = `${both[0].on}-${both[1].on}`;
            return joint('trim-corner', `coffer ${both[0].coffers[0]}, ${corner}`, [both[0].coffers[0]!, CORNERS.indexOf(corner)], both);
        }
    }
}
/** The splices of the run that a piece is of. */
function splicesOf({ part, of, flank }: Strip, { ceiling: { lines, around } }: Setting): readonly Splice[] {
    const line = lines.find(({ name }) => name === of), own = around[of];
    if (part !== 'side') return (line ?? own!).splices;
    return line ? line.sideSplices![flank!] : (own as HalfBeam).sideSplices!;
}
const SIDES_BY_END: readonly Side[] = ['west', 'east', 'north', 'south'];

function idFor(strip: Strip, { ceiling: { room }, pairs }: Setting): string {
    return idOf(room.name, pairs.partOf(strip), pairs.nameOf(strip));
}

function wallIndex(of: string, { ceiling: { walls } }: Setting): number {
    return walls.findIndex(({ name }) => name === of);
}

/** What runs east-west first. */
function levelFirst([a, b]: readonly [Strip, Strip], setting: Setting): readonly [Strip, Strip] {
    return setting.runsOf(a.of) === 'east-west' ? [a, b] : [b, a];
}

/** Where two lines cross, a line meets a half beam, or two of these each other. */
function meetingPlace(strips: readonly [Strip, Strip], setting: Setting): { at: string; order: readonly number[] } {
    const [level, upright] = levelFirst(strips, setting), place = setting.placeOf;
    const walls = [level, upright].map(({ of }) => setting.isWall(of));
    if (walls[0] && level.of === upright.of) return { at: `return of the ${level.of} half beam`, order: [2000 + wallIndex(level.of, setting), 1] };
    if (walls[0] && walls[1]) return { at: `${level.of}-${upright.of}, half beams`, order: [2000 + CORNERS.indexOf(`${level.of}-${upright.of}`), 0] };
    if (walls[0] || walls[1]) {
        const [wall, line] = walls[0] ? [level, upright] : [upright, level];
        return { at: `line ${line.of} at the ${wall.of} wall`, order: [1000 + wallIndex(wall.of, setting), place(line.of)] };
    }
    return { at: `crossing ${level.of}${upright.of}`, order: [place(level.of), place(upright.of)] };
}

/** On which side of the passing piece the butting one lies; nothing to tell at a wall. */
function liesTo(butting: Strip, passing: Strip, setting: Setting): Side | undefined {
    if (setting.isWall(passing.of)) return undefined;
    const middle = ({ corners }: Strip, axis: 'x' | 'y'): number => corners.reduce((sum, point) => sum + point[axis], 0);
    const runs = setting.runsOf(butting.of), axis = runs === 'east-west' ? 'x' : 'y';
    return endsOf(runs)[middle(butting, axis) < middle(passing, axis) ? 0 : 1];
}
