import { LEVEL } from '../data/gaps.ts';
import { citation } from '../data/published.ts';
import type { JobSettings } from '../job/model.ts';
import { recordWords } from '../job/status.ts';
import { counted, listed } from '../plain/words.ts';
import { TICKS_PER_FOOT, type Ticks } from '../quantity/ticks.ts';
import type { AgainstLevel, OtherPlane } from './other-planes.ts';
import { ON_THE_WALL } from './readings.ts';
import type { Plane } from './surface.ts';
import type { Surveyed } from './survey.ts';
import { surveyWords, type SurveyWords } from './words.ts';

const BY: Readonly<Record<string, string>> = { laser: ' with a laser', 'water-level': ' with a water level', straightedge: ' with a straightedge' };

/** What was read, how the sides hang by it, and what that takes, in sentences. */
export function surveyNotes({ said, surface, chosen, hanging, sides, moved }: Surveyed, job: JobSettings): string[] {
    const words = surveyWords(job), { deep } = words, ups = surface.readings.map(({ up }) => up), by = said.method ? BY[said.method.value] : '';
    const known = recordWords(said), read = `Ceiling surveyed${by} at ${counted(ups.length, 'place')}${known && `, ${known}`}${ups.length === 0 ? '' : `: ${deep(Math.min(...ups))} to ${deep(Math.max(...ups))} above the level line`}.${movedWords(moved, words)}`;
    if (!chosen) return [`${read} Nothing follows from it.`];
    const { plane, scribed, deepest } = chosen, isLevel = plane.east === 0 && plane.south === 0;
    const hang = isLevel ? `Sides hang level, held down as from a flat ceiling at ${deep(plane.at)}${hanging.kind === 'following' && chosen.proved ? ': tilted, they would hang no better' : ''}.`
        : `Sides hang tilted with the ceiling: held down as from one that rises ${riseWords(plane, words)}.`;
    const tooDeep = sides.filter(({ scribes }) => scribes.some(scribe => scribe.deepest.ticks > said.scribe.value)).length;
    const takes = scribed === 0 ? `No side${sides.some(({ unknown }) => unknown.length > 0) ? ', as far as the readings reach,' : ''} has to be scribed.`
        : `${scribed} of ${counted(sides.length, 'side')} ${scribed === 1 ? 'has' : 'have'} to be scribed, ${deep(deepest)} at the deepest${tooDeep > 0 ? `, ${tooDeep} of them deeper than the ${deep(said.scribe.value)} that is allowed` : ''}.`;
    const open = chosen.proved || hanging.kind === 'level' ? '' : ' Not every plane was looked at: another may leave less to scribe.';
    return [read, `${hang} ${takes}${open}${isLevel ? '' : outOfLevelWords(plane, words)}`];
}

function movedWords(moved: number, { deep }: SurveyWords): string {
    return moved === 0 ? '' : ` ${counted(moved, 'place')} ${moved === 1 ? 'lies' : 'lie'} outside of a wall by no more than ${deep(ON_THE_WALL)}, as a tape may be off: taken as on the wall.`;
}

/** Where the sides hang farther out of level than installed work may be, steepest way over it. */
function outOfLevelWords({ east, south }: Plane, { deep, place }: SurveyWords): string {
    const { off, over } = LEVEL;
    return Math.hypot(east, south) * over <= off ? '' : ` Installed work is level to ${deep(off)} in ${place(over)} (${citation(LEVEL)}), and this is not: show it to whoever accepts it first.`;
}

/** A slope is told over so much. */
const OVER: Ticks = 10 * TICKS_PER_FOOT;

function riseWords({ east, south }: Plane, { deep, place }: SurveyWords): string {
    const ways = [east < 0 ? ['west', -east] as const : ['east', east] as const, south < 0 ? ['north', -south] as const : ['south', south] as const];
    return `${listed(ways.filter(([, by]) => deep(by * OVER) !== deep(0)).map(([way, by]) => `${deep(by * OVER)} in ${place(OVER)} to the ${way}`))}`;
}

/** What other planes would leave to be scribed, from level on; the figures of a table. */
export function planeRows(planes: readonly OtherPlane[], job: JobSettings): { readonly plane: string; readonly takes: string }[] {
    const { deep, place } = surveyWords(job);
    return planes.map(({ slope, chosen: { scribed, deepest } }) => ({
        plane: slope === 0 ? 'level' : `up to ${deep(slope * OVER)} in ${place(OVER)}`,
        takes: scribed === 0 ? 'none scribed' : `${counted(scribed, 'side')}, ${deep(deepest)} deep`,
    }));
}

/** How far the beams run out of level beside what is level. */
export function levelWords(all: readonly AgainstLevel[], job: JobSettings): string[] {
    const { deep, place } = surveyWords(job);
    return all.map(({ wall, fixture, over, by }) => (fixture
        ? `Over ${fixture.kind} ${fixture.name} at the ${wall.name} wall the beams run ${deep(by)} out of level, in ${place(over)}.`
        : `Along the ${wall.name} wall they run ${deep(by)} out of level, in ${place(over)}.`));
}
