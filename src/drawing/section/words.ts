import type { Section } from '../../ceiling/model.ts';
import type { Nails, Profile, Stock } from '../../job/model.ts';
import type { Given } from '../../provenance/source.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import { sizeWithUnit } from '../figures.ts';
import type { SectionContext } from './context.ts';
import type { PartNote } from './notes.ts';
import { listed } from '../../plain/words.ts';
import { faceAt, sideAt, type Hand, type SectionShape } from './shape.ts';
import { down, spot, type SectionView } from './view.ts';

/** What the sheet says of each part beside its picture, and where its leader points. */
export function partNotes(
    section: Section, shape: SectionShape, context: SectionContext, view: SectionView,
): { readonly inside: readonly PartNote[]; readonly beside: readonly PartNote[] } {
    const f = (ticks: Ticks) => sizeWithUnit(ticks, context.job.show.value);
    const every = (ticks: Ticks) => `every ${f(ticks)}`;
    const by = (a: Ticks, b: Ticks) => `${f(a)} × ${f(b)}`;
    const { profile } = section;
    const { innerWidth, outerWidth, depth, side, other, blocking, bottom, cleat, spacer, trim, molding } = shape;
    const inside: PartNote[] = [];
    const beside: PartNote[] = [];

    if (shape.isSolid) return {
        inside: [], beside: [
            ...ceilingNotes(context, view, shape.panel, f),
            ...trim ? [{ id: 'trim', name: 'Ceiling trim', words: [`${trimWords(trim, profile, f)}, ${profile.trim?.corners.value ?? 'mitered'}${stockWords(profile.trim?.stock)}`, ...nailWords(profile.trim?.nails, f)], spots: [spot(view, faceAt(shape, 1) + trim.thickness * 0.55, trim.height * 0.62)] }] : [],
            { id: 'timber', name: 'Timber', words: [`${by(outerWidth, depth)}${stockWords(profile.solid?.stock)}`, 'in one piece, against the ceiling'], spots: [spot(view, outerWidth * 0.25, depth * 0.6)] },
        ],
    };
    const screws = profile.blocking?.screws?.value;
    if (blocking.isWrapped) inside.push({
        id: 'blocking', name: 'What it wraps',
        words: [`${by(blocking.width, blocking.thickness)}, ${f((innerWidth - blocking.width) / 2)} clear on either side`], spots: [spot(view, 0, blocking.thickness * 0.5)],
    });
    else inside.push({
        id: 'blocking', name: 'Blocking',
        words: [
            `${by(blocking.thickness, blocking.width)}${stockWords(profile.blocking?.stock)}`,
            screws ? `#${screws.gauge} × ${f(screws.length)} ${every(screws.every)}, into framing` : 'screwed up through the ceiling into framing',
        ],
        spots: [spot(view, 0, blocking.thickness * 0.72)],
    });
    if (spacer && profile.spacers) {
        inside.push({
            id: 'spacer', name: 'Spacer, beyond',
            words: [`${section.spacerThickness ? `${f(section.spacerThickness.ticks)} × ` : ''}${by(spacer.height, spacer.width)}${stockWords(profile.spacers.stock)}`, `first ${f(profile.spacers.fromEnd.value)} from an end, then at most ${every(profile.spacers.every.value)}`],
            spots: [],
        });
    }
    if (cleat && profile.cleats) {
        const gauge = profile.cleats.gauge?.value.ticks;
        inside.push({
            id: 'cleats', name: 'Cleats',
            words: [
                `${by(cleat.thickness, cleat.foot - cleat.top)}, ${f(profile.cleats.shortEachEnd.value)} short at each end`,
                gauge === undefined ? 'gauged with a scrap of the bottom’s own stock' : `gauged with a ${f(gauge)} block`,
                ...nailWords(profile.cleats.nails, f),
            ],
            spots: ([-1, 1] as const).map(hand => spot(view, hand * (innerWidth / 2 - cleat.thickness * 0.55), cleat.top + (cleat.foot - cleat.top) * 0.3)),
        });
    }

    beside.push(...ceilingNotes(context, view, shape.panel, f));
    const hidden = Math.max(side.top, other?.top ?? side.top);
    if (trim) {
        beside.push({
            id: 'trim', name: 'Ceiling trim',
            words: [`${trimWords(trim, profile, f)}, ${profile.trim?.corners.value ?? 'mitered'}${stockWords(profile.trim?.stock)}`, ...nailWords(profile.trim?.nails, f), hidden > 0 ? `hides the ${f(hidden)} above the ${hidden > side.top ? 'other side' : 'side'}` : 'against the ceiling'],
            spots: [spot(view, faceAt(shape, 1) + trim.thickness * 0.55, trim.height * 0.62)],
        });
    }
    const sideNote = (id: string, name: string, hand: Hand, sides: Profile['sides'], also: readonly string[]): PartNote => {
        const { thickness, height, top } = sideAt(shape, hand);
        return {
            id, name, words: [`${by(thickness, height)}, held down ${f(top)}${stockWords(sides?.stock)}`, ...nailWords(sides?.nails, f), ...also],
            spots: [spot(view, hand * (faceAt(shape, hand) - thickness * 0.4), top + height * 0.36)],
        };
    };
    if (other) beside.push(sideNote('other-side', 'Other side', 1, profile.otherSide, otherSideWords(context)));
    beside.push(sideNote('side', 'Side', other ? -1 : 1, profile.sides, []));
    const proud = bottom.top + bottom.thickness - depth;
    beside.push({
        id: 'bottom', name: 'Bottom',
        words: [
            `${by(bottom.thickness, bottom.width)}${stockWords(profile.bottom?.stock)}`,
            ...bottom.place === 'under-sides' ? [underSides(shape, f)] : bottom.place === 'in-rabbets' ? [`let ${letIn(shape, f)}${proud === 0 ? ', flush with them' : ''}`] : [],
            ...bottom.place !== 'between-sides' && proud === 0 ? [] : [proud === 0 ? `${cleat ? 'up against the cleats' : 'between the sides'}, flush with ${cleat ? 'the sides' : 'them'}` : `ends ${f(Math.abs(proud))} ${proud > 0 ? 'below' : 'above'} the sides’ lower edge`],
            ...(shape.channel !== null && bottom.width > shape.channel ? [`does not go in: ${f(bottom.width - shape.channel)} too wide`] : []),
            ...(bottom.ease > 0 ? [`back edges eased ${f(bottom.ease)}`] : []),
            ...(profile.bottom?.biscuits ? [`${profile.bottom.biscuits.value.count} × ${profile.bottom.biscuits.value.size} biscuit${profile.bottom.biscuits.value.count === 1 ? '' : 's'} in each butt joint`] : []),
        ],
        spots: [spot(view, bottom.aside + bottom.width * 0.33, bottom.top + bottom.thickness * 0.55)],
    });
    if (molding && profile.under) {
        const isUnder = profile.under.place.value === 'under-beam', [out, high] = [molding.inside + molding.beyond, molding.foot - molding.top];
        beside.push({
            id: 'molding', name: 'Molding',
            words: [
                `${isUnder ? by(high, out) : by(out, high)}${stockWords(profile.under.stock)}`,
                isUnder ? molding.beyond === 0 ? 'under the beam, flush with the faces' : `under the beam, ${f(molding.beyond)} beyond each face` : 'against the sides, level with their lower edge',
                ...nailWords(profile.under.nails, f),
            ],
            spots: [spot(view, faceAt(shape, 1) + molding.beyond * 0.5, molding.top + high * 0.5)],
        });
    }
    const hands: readonly Hand[] = other ? [1, -1] : [1];
    for (const hand of bottom.place === 'in-rabbets' ? [] : hands) {
        const { rabbet, top } = sideAt(shape, hand);
        if (!rabbet) continue;
        const { width, height, edge, face } = rabbet;
        const lower = edge === 'lower', back = face === 'back';
        beside.push({
            id: other && hand > 0 ? 'other-rabbet' : 'rabbet', name: `${lower && back ? 'Groove' : 'Rabbet'}${other && hand > 0 ? ', other side' : ''}`,
            words: [`${f(width.ticks)} wide × ${f(height.ticks)} high, rabbet on the ${edge} ${face} edge`, profile.sides?.corners.value === 'mitered' ? 'turns the corner: sides are mitered' : 'stops where the sides butt'],
            spots: [spot(
                view,
                hand * (back ? innerWidth / 2 + width.ticks / 2 : faceAt(shape, hand) - width.ticks / 2),
                lower ? depth - height.ticks / 2 : top + height.ticks / 2,
            )],
        });
    }
    if (context.bandEdge !== undefined) {
        const below = context.bandEdge - depth;
        beside.push({ id: 'band', name: 'Band, beyond', words: [below === 0 ? 'flush with the beams' : `${f(Math.abs(below))} ${below > 0 ? 'lower' : 'higher'} than the beams`], spots: [[view.right - 10, down(view, context.bandEdge)]] });
    }
    return { inside, beside };
}

/** What is over all of it: the ceiling as it was found, and the panel under it where the beam has one. */
export function ceilingNotes({ covering }: Pick<SectionContext, 'covering'>, view: SectionView, panel: Ticks, f: (ticks: Ticks) => string): readonly PartNote[] {
    const x = view.right - 12, board = covering?.thickness?.value;
    return [
        board ? { id: 'ceiling', name: 'Ceiling board, as found', words: [`${f(board)} ${covering!.kind.value}`], spots: [[x, down(view, -panel - board / 2)]] }
            : { id: 'ceiling', name: 'Ceiling, as found', words: [], spots: [[x, down(view, -panel)]] },
        ...panel > 0 ? [{ id: 'panel', name: 'Panel over the coffers', words: [`${f(panel)}; the beam hangs under it`], spots: [[x - 14, down(view, -panel / 2)] as const] }] : [],
    ];
}

/** Flat, its thickness and height; of a crown how it leans, and what it reaches out and down. */
export function trimWords({ thickness, height, leans }: NonNullable<SectionShape['trim']>, { trim }: Profile, f: (ticks: Ticks) => string): string {
    if (leans === undefined || !trim?.spring) return `${f(thickness)} × ${f(height)}`;
    return `crown, spring ${trim.spring.value}°, ${f(thickness)} out and ${f(height)} down`;
}

/** On which flanks the lines have it. */
function otherSideWords({ otherSides }: Pick<SectionContext, 'otherSides'>): readonly string[] {
    return otherSides === undefined || otherSides.length === 0 ? [] : [`on the ${listed(otherSides)}`];
}

function letIn({ side, other }: SectionShape, f: (ticks: Ticks) => string): string {
    const [own, theirs] = [side, other ?? side].map(({ rabbet }) => rabbet?.width.ticks ?? 0) as [Ticks, Ticks];
    return own === theirs ? `${f(own)} into each side` : `${f(own)} into the side and ${f(theirs)} into the other side`;
}

function underSides({ bottom, outerWidth }: SectionShape, f: (ticks: Ticks) => string): string {
    const beyond = (bottom.width - outerWidth) / 2;
    return beyond === 0 ? 'under the sides, flush with their faces' : `under the sides, ${f(Math.abs(beyond))} ${beyond > 0 ? 'beyond' : 'short of'} the face of each`;
}

export function stockWords(stock: Given<Stock> | undefined): string {
    const size = stock?.value.size?.value.text;
    return size === undefined ? '' : `, from ${size}`;
}

export function nailWords(nails: Given<Nails> | undefined, f: (ticks: Ticks) => string): readonly string[] {
    return nails === undefined ? [] : [`${nails.value.gauge} ga × ${f(nails.value.length)} nails every ${f(nails.value.every)}`];
}
