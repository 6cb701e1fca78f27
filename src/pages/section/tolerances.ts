import { fitAsBuilt } from '../../ceiling/fit.ts';
import type { Section } from '../../ceiling/model.ts';
import type { ToleranceFigure, Zone } from '../../drawing/tolerance/model.ts';
import { isFiberboard } from '../../job/fiberboard.ts';
import type { Bottom, JobSettings } from '../../job/model.ts';
import { capitalized } from '../../plain/words.ts';
import type { Tolerance } from '../../quantity/measure.ts';
import { minus, rootSumSquare, worstCase } from '../../quantity/tolerance.ts';
import type { Source } from '../../provenance/source.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import { GAP_SHOWS } from '../../rules/bottom-gap-shows.ts';
import { sizesOf, type Sizes } from '../../rules/support/words.ts';
import { t } from '../shared/words.ts';

/** A figure that shows what tolerances do, and what it is made from. */
export interface ToleranceCase {
    readonly figure: ToleranceFigure;
    /** What comes of it, in a sentence. */
    readonly verdict: string;
    readonly isWrong: boolean;
    readonly reasons: readonly Reason[];
}
/** One of the lengths or causes behind a figure. */
export interface Reason { readonly words: string; readonly at?: Source }

/** Lengths finer than the tape too. */
export function fineSizes(job: JobSettings): (ticks: number) => string {
    return sizesOf(job).told;
}

/** The bottom between the sides: where it jams, and where the gap shows. */
export function fitCase(section: Section, job: JobSettings): ToleranceCase | undefined {
    const { fit, channelWidth, bottomWidth, profile: { bottom } } = section;
    if (!fit || !bottom || !channelWidth || !bottomWidth) return undefined;
    const f = fineSizes(job), gap = bottom.gap.value, { worst, usual, paint, paintCounts } = fitAsBuilt(fit, job);
    const figures = (reach: { least: number; most: number }) => [f(reach.least), f(reach.most)] as const;
    const isSame = worst.least === worst.most;
    const reasons: Reason[] = [
        { words: between(bottom, sized(channelWidth.ticks, worstCase(channelWidth.tolerance), job)), ...at(channelWidth.why.terms[0]?.at) },
        { words: t('Bottom: {0}', sized(bottomWidth.ticks, worstCase(bottomWidth.tolerance), job)), ...at(bottomWidth.why.terms[0]?.at) },
        { words: t('The gap that is asked for, in all: {0} to {1}', f(gap.least), f(gap.most)), at: bottom.gap.at },
        paintCounts ? { words: t('Paint on the two edges of the bottom: {0} to {1}', f(paint.least), f(paint.most)), at: job.paintFilm.at }
            : { words: t('Paint on its edges ({0} to {1}) is left out: neither width has a tolerance, and the job gives no paint film.', f(paint.least), f(paint.most)), at: job.paintFilm.at },
        ...causes(fit.tolerance, f), ...cancelled(section, f),
    ];
    return {
        figure: {
            id: 'tolerance.fit', title: t('Fit of the bottom'), nominal: fit.ticks,
            wood: bottomAndSide(section),
            description: t('Play of the bottom between the sides, in all: {0} as drawn, {1} to {2} at worst, {3} to {4} as root-sum-square.', f(fit.ticks), ...figures(worst), ...figures(usual)),
            bars: isSame ? [{ kind: 'usual', words: t('as drawn'), ...worst, figures: ['', f(fit.ticks)] }]
                : [{ kind: 'worst', words: t('at worst'), ...worst, figures: figures(worst) }, { kind: 'usual', words: t('root-sum-square'), ...usual, figures: figures(usual) }],
            zones: fitZones(gap),
        },
        ...verdict(worst, gap, sizesOf(job), isSame), reasons,
    };
}

function between({ place }: Bottom, width: string): string {
    return place.value === 'in-rabbets' ? t('Between the rabbets: {0}', width) : t('Between the sides: {0}', width);
}

/** What stands beside each other where a bottom goes between sides. */
export function bottomAndSide({ profile: { bottom, sides } }: Pick<Section, 'profile'>): NonNullable<ToleranceFigure['wood']> {
    return { left: { name: t('bottom'), isSheet: isFiberboard(bottom) }, right: { name: t('side'), isSheet: isFiberboard(sides) } };
}

/** Below nothing it jams; over the gap that is asked for it shows, over `GAP_SHOWS` to everybody. */
export function fitZones(gap: { readonly least: Ticks; readonly most: Ticks }): readonly Zone[] {
    const seen = Math.max(gap.most, GAP_SHOWS);
    return [
        { kind: 'wrong' as const, words: t('jams'), from: -Infinity, to: 0 },
        { kind: 'plain' as const, words: t('tight'), from: 0, to: gap.least },
        { kind: 'asked' as const, words: t('as asked'), from: gap.least, to: gap.most },
        { kind: 'plain' as const, words: t('wide'), from: gap.most, to: seen },
        { kind: 'wrong' as const, words: t('shows'), from: seen, to: Infinity },
    ].filter(zone => zone.to > zone.from);
}

function verdict(worst: { least: number; most: number }, gap: { least: number; most: number }, { told: f, most: upTo }: Sizes, isSame: boolean): Pick<ToleranceCase, 'verdict' | 'isWrong'> {
    const words = [
        ...worst.least < 0 ? [isSame ? t('It jams: it is {0} too wide.', f(-worst.least)) : t('At worst it jams: it is {0} too wide.', f(-worst.least))] : [],
        ...worst.most > Math.max(gap.most, GAP_SHOWS) ? [t('The gap shows: up to {0} in all, {1} a side.', upTo(worst.most), upTo(worst.most / 2))]
            : worst.most > gap.most ? [t('The gap may reach {0} in all, more than the {1} that is asked for.', upTo(worst.most), f(gap.most))] : [],
    ];
    if (words.length > 0) return { verdict: words.join(' '), isWrong: true };
    if (worst.least === 0) return { verdict: isSame ? t('It just goes in, without any play, and no gap shows.') : t('Even at worst it just goes in, and no gap shows.'), isWrong: false };
    return { verdict: isSame ? t('It goes in with {0} of play, and no gap shows.', f(worst.least)) : t('It goes in with {0} of play even at worst, and no gap shows.', f(worst.least)), isWrong: false };
}

/** The spacer between blocking and cleats. */
export function spacerCase(section: Section, job: JobSettings): ToleranceCase | undefined {
    const { spacerRoom, profile: { spacers, cleats } } = section, height = spacers?.height;
    if (!spacerRoom || !height) return undefined;
    const f = fineSizes(job);
    const clear = minus(spacerRoom, height.value);
    const off = worstCase(clear.tolerance), usually = rootSumSquare(clear.tolerance);
    const bars = off === 0 ? [{ kind: 'usual' as const, words: t('as drawn'), least: clear.ticks, most: clear.ticks, figures: ['', f(clear.ticks)] as const }] : [
        { kind: 'worst' as const, words: t('at worst'), least: clear.ticks - off, most: clear.ticks + off, figures: [f(clear.ticks - off), f(clear.ticks + off)] as const },
        { kind: 'usual' as const, words: t('root-sum-square'), least: clear.ticks - usually, most: clear.ticks + usually, figures: [f(clear.ticks - usually), f(clear.ticks + usually)] as const },
    ];
    const below = cleats ? t('cleat') : t('bottom');
    const least = clear.ticks - off;
    return {
        figure: {
            id: 'tolerance.spacer', title: t('Room for the spacer'), nominal: clear.ticks, wood: { left: { name: t('spacer'), isSheet: isFiberboard(spacers) }, right: { name: below, isSheet: isFiberboard(cleats ?? section.profile.bottom) } }, bars,
            description: t('Between the spacer and the {0}: {1} as drawn, {2} to {3} at worst.', below, f(clear.ticks), f(least), f(clear.ticks + off)),
            zones: [{ kind: 'wrong', words: t('runs into it'), from: -Infinity, to: 0 }, { kind: 'asked', words: t('clear'), from: 0, to: Infinity }],
        },
        verdict: spacerVerdict(least, off > 0, below, f),
        isWrong: least < 0,
        reasons: [
            { words: t('Room between blocking and {0}: {1}', below, sized(spacerRoom.ticks, worstCase(spacerRoom.tolerance), job)), ...at(section.sideHeight?.why.terms[0]?.at) },
            { words: t('Spacer: {0} high', sized(height.value.ticks, worstCase(height.value.tolerance), job)), at: height.at },
            ...causes(clear.tolerance, f),
        ],
    };
}

function spacerVerdict(least: number, mayBeOff: boolean, below: string, f: (ticks: number) => string): string {
    if (least < 0) return mayBeOff ? t('At worst the spacer runs {0} into the {1}.', f(-least), below) : t('The spacer runs {0} into the {1}.', f(-least), below);
    return mayBeOff ? t('The spacer stays {0} clear of the {1}, even at worst.', f(least), below) : t('The spacer stays {0} clear of the {1}.', f(least), below);
}

function sized(ticks: Ticks, off: number, job: JobSettings): string {
    return `${sizesOf(job)(ticks)}${off > 0 ? ` ± ${fineSizes(job)(off)}` : ''}`;
}

function at(source: Source | undefined): { at?: Source } {
    return source ? { at: source } : {};
}

function causes(tolerance: Tolerance, f: (ticks: number) => string): readonly Reason[] {
    return tolerance.map(({ cause, reach }) => ({ words: t('{0}: {1} either way', causeWords(cause), f(Math.abs(reach))) }));
}

function causeWords(cause: string): string {
    return cause.startsWith('set-up ') ? t('Fence setting {0}', cause.slice('set-up '.length)) : capitalized(cause);
}

/** What both widths owe to one cause, and so do not owe to each other. */
function cancelled({ channelWidth, bottomWidth, fit }: Section, f: (ticks: number) => string): readonly Reason[] {
    const left = new Set(fit?.tolerance.map(({ cause }) => cause));
    return (channelWidth?.tolerance ?? []).filter(({ cause }) => !left.has(cause) && bottomWidth?.tolerance.some(other => other.cause === cause))
        .map(({ cause, reach }) => ({ words: t('{0}: {1} either way on both, off together, so that it cancels', causeWords(cause), f(Math.abs(reach))) }));
}
