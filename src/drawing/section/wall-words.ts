import type { Section } from '../../ceiling/model.ts';
import { sizeWithUnit } from '../figures.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import type { SectionContext } from './context.ts';
import type { PartNote } from './notes.ts';
import { spot, type SectionView } from './view.ts';
import type { AlongWalls, WallPart, WallShape } from './wall-shape.ts';
import { ceilingNotes, nailWords, stockWords, trimWords } from './words.ts';

/** What is said of each part of a section along a wall. */
export function wallNotes({ own }: AlongWalls, shape: WallShape, beams: Section | undefined, context: SectionContext, view: SectionView): readonly PartNote[] {
    const f = (ticks: Ticks) => sizeWithUnit(ticks, context.job.show.value), by = (a: Ticks, b: Ticks) => `${f(a)} × ${f(b)}`;
    const size = ({ x, y }: WallPart): readonly [Ticks, Ticks] => [x[1] - x[0], y[1] - y[0]];
    const across = (part: WallPart, share: number, downShare: number) => spot(view, part.x[0] + size(part)[0] * share, part.y[0] + size(part)[1] * downShare);
    const profile = own.kind === 'half-beam' ? own.section.profile : undefined;
    const said = shape.parts.map((part): PartNote => {
        const [wide, high] = size(part);
        switch (part.id) {
            case 'band': return {
                id: 'band', name: 'Band', spots: [across(part, 0.5, 0.55)],
                words: [
                    `${by(wide, high)}${stockWords(own.perimeter.stock)}`, ...nailWords(own.perimeter.nails, f), ...part.y[0] > 0 ? [`its upper edge ${f(part.y[0])} down`] : [], beside(shape, f),
                ],
            };
            case 'blocking': return { id: 'blocking', name: 'Blocking', words: [`${by(high, wide)}${stockWords(profile?.blocking?.stock)}`], spots: [across(part, 0.4, 0.7)] };
            case 'side': return {
                id: 'side', name: own.kind === 'half-beam' && own.section.isOther ? 'Other side' : 'Side', spots: [across(part, 0.6, 0.36)],
                words: [`${by(wide, high)}, held down ${f(part.y[0])}${stockWords(profile?.sides?.stock)}`, ...nailWords(profile?.sides?.nails, f)],
            };
            case 'cleat': return { id: 'cleats', name: 'Cleat at the side', words: [`${by(wide, high)}, ${f(profile?.cleats?.shortEachEnd.value ?? 0)} short at each end`], spots: [across(part, 0.6, 0.3)] };
            case 'wall-cleat': return { id: 'wall-cleat', name: 'Wall cleat', words: [`${by(wide, high)}, the bottom’s other edge bears on it`], spots: [across(part, 0.5, 0.4)] };
            case 'bottom': return {
                id: 'bottom', name: 'Bottom', spots: [across(part, 0.55, 0.55)],
                words: [
                    `${by(high, wide)} as it stands${stockWords(profile?.bottom?.stock)}`,
                    ...shape.scribe ? [`ripped ${f(shape.scribe.width)} wider, its edge at the wall scribed`] : [],
                    ...part.x[1] > shape.face ? [`${f(part.x[1] - shape.face)} beyond the face of the side`] : [], beside(shape, f),
                ],
            };
            case 'timber': return {
                id: 'timber', name: 'Timber', spots: [across(part, 0.55, 0.55)],
                words: [
                    `${by(wide, high)} as it stands${stockWords(profile?.solid?.stock)}`, ...shape.scribe ? [`ripped ${f(shape.scribe.width)} wider, its edge at the wall scribed`] : [], beside(shape, f),
                ],
            };
            case 'molding': return {
                id: 'molding', name: 'Molding', spots: [across(part, 0.8, 0.5)],
                words: [
                    `${profile?.under?.place.value === 'under-beam' ? by(high, wide) : by(wide, high)}${stockWords(profile?.under?.stock)}`,
                    part.x[1] === shape.face ? 'flush with the face of the side' : `${f(part.x[1] - shape.face)} beyond the face of the side`, ...nailWords(profile?.under?.nails, f),
                ],
            };
            default: return {
                id: 'trim', name: 'Ceiling trim', spots: [across(part, 0.5, 0.5)],
                words: beams ? [`${trimWords({ thickness: wide, height: high, ...beams.profile.trim?.spring && { leans: wide } }, beams.profile, f)}, ${beams.profile.trim?.corners.value ?? 'mitered'}${stockWords(beams.profile.trim?.stock)}`] : [],
            };
        }
    });
    return [...ceilingNotes(context, view, shape.panel, f), ...said, { id: 'wall', name: 'Wall, as found', words: [], spots: [[view.middle - 8, (view.top + view.ceiling) / 2 - 6]] }];
}

/** How it hangs beside the beams that come to it. */
function beside({ depth, beams }: WallShape, f: (ticks: Ticks) => string): string {
    if (beams === undefined) return 'no beam comes to it';
    return depth === beams ? 'flush with the beams' : `its lower edge ${f(Math.abs(depth - beams))} ${depth > beams ? 'below' : 'above'} the beams’ undersides`;
}
