import { MOST_LINES } from '../ceiling/division.ts';
import type { Given } from '../provenance/source.ts';
import type { Grid, Spacing } from '../job/model.ts';
import { roundTo } from '../quantity/round.ts';
import { inches } from '../quantity/rational.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { spacingSaidBy } from '../rules/support/places.ts';
import { inZone, nearestFree, seenFrom } from './free-places.ts';
import type { Divided, How } from './model.ts';
import type { Way, Zone } from './ways.ts';

/** One way to divide a direction. */
export interface Option extends Divided {
    readonly spacing: Spacing;
    readonly sizes: readonly number[];
    /** What its lines come upon. */
    readonly blocked: readonly string[];
    /** How often something is nearer to it, or farther from the middle of a coffer, than it should be. */
    readonly spoiled: number;
}

/** A beam wants coffers beside it that are so many times as wide: as in the layout. Common practice, no source. */
const TIMES_A_BEAM = 3;
/** No line moves by more than such a share of a coffer: beyond it another number of coffers is nearer. */
const MOST_MOVED = 1 / 4;
/** What an eye takes for the middle, as the rule has it. */
const MIDDLE = inches('1/2');

/** What is asked of the options of a direction. `counts`: numbers of coffers that are looked at whatever their size. */
interface Asked { readonly least: Ticks; readonly most: Ticks; readonly counts: readonly number[]; readonly movable: boolean; readonly step: Ticks }

/** Every way to divide a direction: equal coffers of each number, and where something is in the way of these, lines moved. */
export function optionsOf(way: Way, grid: Grid, asked: Asked): Option[] {
    const options: Option[] = [], beam = way.width(0) ?? 0;
    for (let coffers = 1; coffers <= MOST_LINES + 1; coffers++) {
        const size = (way.end - way.start - (coffers - 1) * beam) / coffers;
        if (size < 1) break;
        const fits = size >= Math.max(asked.least, TIMES_A_BEAM * beam) && size <= asked.most;
        if (!fits && !asked.counts.includes(coffers)) continue;
        const equal = equally(coffers, way, grid);
        if (!equal) continue;
        options.push(equal);
        if (asked.movable && coffers > 1 && (equal.blocked.length > 0 || equal.spoiled > 0)) options.push(...moved(equal, way, grid, asked.step));
    }
    return options;
}

function equally(coffers: number, way: Way, grid: Grid): Option | undefined {
    const spacing: Spacing = { by: 'number', coffers: { ...saying(way, grid), value: coffers } }, spaced = way.divide(spacing);
    if (!spaced) return undefined;
    const centers = spaced.lows.map((low, i) => low + way.toCenter(i));
    return { coffers, how: 'equal', by: 0, centers: [], spacing, sizes: spaced.sizes, ...standing(way, centers, spaced.sizes), ...way.comesUpon && { blocked: way.comesUpon(spacing) } };
}

/** The words that its findings stand at: those that divide it now. */
function saying({ along }: Way, grid: Grid): Omit<Given<never>, 'value'> {
    const now = along === 'east-west' ? grid.north : grid.east, given = now && spacingSaidBy(now);
    return { at: given?.at ?? grid.at, said: true };
}

function standing(way: Way, centers: readonly number[], sizes: readonly number[]): Pick<Option, 'blocked' | 'spoiled'> {
    const blocked = new Set<string>();
    let spoiled = 0;
    centers.forEach((center, i) => {
        const zone = inZone(way.blocked(i), center);
        if (zone) blocked.add(zone.what);
        else if (inZone(way.spared(i), center)) spoiled++;
    });
    const middles = middlesOf(way, centers, sizes);
    for (const at of way.middles) {
        const near = middles.find(({ middle, size }) => Math.abs(at - middle) <= size / 2);
        if (near && Math.abs(at - near.middle) > MIDDLE) spoiled++;
    }
    return { blocked: [...blocked], spoiled };
}

function middlesOf(way: Way, centers: readonly number[], sizes: readonly number[]): { readonly middle: number; readonly size: number }[] {
    return sizes.map((size, i) => {
        const west = i === 0 ? way.start : centers[i - 1]! - way.toCenter(i - 1) + way.width(i - 1)!;
        return { middle: west + size / 2, size };
    });
}

/** Lines of equal coffers moved to where they are clear: all alike, the outer coffers alike, or each by itself; none where even that is in the way. */
function moved(equal: Option, way: Way, grid: Grid, step: Ticks): Option[] {
    const spaced = way.divide(equal.spacing)!, centers = spaced.lows.map((low, i) => low + way.toCenter(i)), n = centers.length;
    const most = MOST_MOVED * Math.min(...equal.sizes), wide = (i: number): readonly Zone[] => [...way.blocked(i), ...way.spared(i)];
    const found: Option[] = [];
    const offer = (how: How, places: readonly number[]): boolean => {
        const marks = places.map(place => roundTo(place, step)), option = placed(marks, how, equal, { way, grid, from: centers });
        const isNew = option && option.blocked.length === 0 && (equal.blocked.length > 0 || option.spoiled < equal.spoiled)
            && !found.some(other => other.centers.every((center, i) => center === marks[i]));
        if (isNew) found.push(option);
        return option?.blocked.length === 0;
    };
    const outer = (i: number): number => 1 - 2 * i / (n - 1);
    const families: readonly (readonly [How, (i: number) => number])[] = [['shifted', () => 1], ...n > 1 ? [['outer', outer] as const] : []];
    for (const zonesOf of [wide, way.blocked]) {
        for (const [how, slopeOf] of families) {
            const zones = centers.map((center, i) => seenFrom(zonesOf(i), center, slopeOf(i)));
            if (zones.includes(null)) continue;
            for (const by of nearestFree(zones.flatMap(each => each!), most)) {
                // a place that is rounded to a mark may lie just within what it was to be clear of: then the next marks
                const isOffered = (further: number): boolean =>
                    offer(how, centers.map((center, i) => center + slopeOf(i) * (by + Math.sign(by) * further * step)));
                for (let further = 0; further < 3 && !isOffered(further);) further++;
            }
        }
        const each = centers.map((center, i) => {
            const free = nearestFree(seenFrom(zonesOf(i), center, 1)!, most).map(by => outward(center, by, step))
                .filter(by => !inZone(zonesOf(i), center + by));
            return free.length === 0 ? undefined : center + free.reduce((best, by) => (Math.abs(by) < Math.abs(best) ? by : best));
        });
        if (each.every(place => place !== undefined)) offer('single', each);
    }
    for (const at of way.middles) {
        const shifts = middlesOf(way, centers, equal.sizes).map(({ middle }) => at - middle).filter(by => Math.abs(by) <= most);
        for (const by of shifts) offer('shifted', centers.map(center => center + by));
    }
    return found;
}

/** On to the next mark of the tape beyond, so that rounding does not bring it back. */
function outward(center: number, by: number, step: Ticks): number {
    if (by === 0) return 0;
    const mark = by < 0 ? Math.floor((center + by) / step + HAIR) : Math.ceil((center + by) / step - HAIR);
    return mark * step - center;
}
const HAIR = 1e-6;

interface Place { readonly way: Way; readonly grid: Grid; readonly from: readonly number[] }

/** Lines at these places; undefined where one would stand in another, or where a coffer is too small. */
function placed(centers: readonly Ticks[], how: How, equal: Option, { way, grid, from }: Place): Option | undefined {
    const said = saying(way, grid), corner = way.along === 'east-west' ? 'north-west' as const : 'north-east' as const;
    const spacing: Spacing = { by: 'lines', centers: centers.map(value => ({ ...said, value })), from: { value: corner, at: said.at, said: false } };
    const sizes = way.divide(spacing)?.sizes;
    if (!sizes || Math.min(...sizes) < TIMES_A_BEAM / 2 * (way.width(0) ?? 0)) return undefined;
    const by = Math.max(...centers.map((center, i) => Math.abs(center - from[i]!)));
    return { coffers: equal.coffers, how, by: Math.round(by), centers, spacing, sizes, ...standing(way, centers, sizes) };
}
