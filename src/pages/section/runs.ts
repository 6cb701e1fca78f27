import type { Ceiling, Run } from '../../ceiling/model.ts';
import { pressedRuns, shareOfEach } from '../../ceiling/run-errors.ts';
import { figure } from '../../drawing/figures.ts';
import { printLength } from '../../quantity/print-length.ts';
import type { RunPart, RunStrip } from '../../drawing/tolerance/model.ts';
import type { Spacing } from '../../job/model.ts';
import { grouped } from '../../plain/groups.ts';
import type { Source } from '../../provenance/source.ts';
import { roundTo } from '../../quantity/round.ts';
import { MOST_PRESS } from '../../rules/press-adds-up.ts';
import { COFFERS_DIFFER } from '../../rules/rounding-left-over.ts';
import { EASED_IN_PLACE } from '../../rules/run-pinches-channel.ts';
import { linesNamed } from '../../rules/support/words.ts';
import { t } from '../shared/words.ts';
import { bottomAndSide, fineSizes, fitZones, type Reason, type ToleranceCase } from './tolerances.ts';

/** One direction of the room, wall to wall: the strip of its parts, and what rounding, press and the saw do along it. */
interface RunCase { readonly strip: RunStrip; readonly cases: readonly ToleranceCase[] }

export function runCases(ceiling: Ceiling): readonly RunCase[] {
    return [ceiling.across, ceiling.down].filter(run => run.lines.length > 0).map(run => ({
        strip: stripOf(run, ceiling),
        cases: [roundingCase(run, ceiling), ...pressCases(run, ceiling), ...channelCases(run, ceiling)],
    }));
}

const isAcross = (run: Run): boolean => run.along === 'east-west';
const runTitle = (run: Run): string => isAcross(run) ? t('Along the north wall') : t('Along the east wall');

function stripOf(run: Run, { room, band, width, length }: Ceiling): RunStrip {
    const { show } = room.job, { cutCoffers } = run.residue;
    const usual = roundTo(run.coffers[Math.floor(run.coffers.length / 2)] ?? 0, room.job.cutTo.value);
    const equal = Math.max(...run.coffers) - Math.min(...run.coffers) <= 1;
    const before = run.start, after = (isAcross(run) ? width : length) - run.end;
    const bandPart = (ticks: number): RunPart[] => band && ticks > 0 ? [{ kind: 'band', name: t('band'), width: ticks, figure: figure(band.thickness.ticks, show.value) }] : [];
    const parts: RunPart[] = [...bandPart(before), ...run.coffers.flatMap((coffer, i): RunPart[] => {
        const cut = cutCoffers[i] ?? coffer, line = run.lines[i];
        const differs = equal ? cut - usual : cut - roundTo(coffer, room.job.cutTo.value);
        return [
            { kind: 'coffer', name: '', width: coffer, figure: figure(cut, show.value), ...differs !== 0 && { differs: `${differs > 0 ? '+' : '−'}${fineSizes(room.job)(Math.abs(differs))}` } },
            ...line ? [{ kind: 'line' as const, name: line.name, width: line.high - line.low, figure: figure(line.high - line.low, show.value) }] : [],
        ];
    }), ...bandPart(after)];
    return { id: `run.${run.along}`, title: runTitle(run), parts, description: parts.map(part => part.kind === 'coffer' ? t('coffer {0}', part.figure) : `${part.name} ${part.figure}`).join(', ') };
}

/** What equal coffers, cut to the tape, leave over, and who takes it. */
function roundingCase(run: Run, { room }: Ceiling): ToleranceCase {
    const { job } = room, f = fineSizes(job), { ticks, place, cutCoffers, rest } = run.residue;
    const half = job.cutTo.value / 2, step = job.cutTo.value;
    const first = cutCoffers[0] ?? 0, last = cutCoffers.at(-1) ?? 0, show = job.show.value;
    const taken = Math.abs(ticks) <= half ? t('Nobody can cut that finely: it stays where it is.')
        : place === 'band' ? t('The band takes {0}.', f(Math.abs(rest)))
        : place === 'spread' ? t('It is spread over the coffers, which differ by a step.')
        : first === last ? t('The outer coffers take it: both are cut at {0}.', printLength(first, show)) : t('The outer coffers take it: they are cut at {0} and {1}.', printLength(first, show), printLength(last, show));
    const said = ticks === 0 ? t('The coffers come out even: nothing is left over.') : ticks > 0 ? t('{0} is left over in the run. {1}', f(ticks), taken) : t('{0} is missing in the run. {1}', f(-ticks), taken);
    return {
        figure: {
            id: `tolerance.rounding.${run.along}`, title: t('Rounding'), nominal: ticks, description: said,
            bars: [{ kind: 'sum', words: t('left over'), least: Math.min(0, ticks), most: Math.max(0, ticks), figures: ticks < 0 ? [f(ticks), ''] : ['', f(ticks)] }],
            zones: [
                { kind: 'wrong', words: t('is seen'), from: -Infinity, to: -COFFERS_DIFFER }, { kind: 'plain', words: t('not seen'), from: -COFFERS_DIFFER, to: -half },
                { kind: 'asked', words: t('even'), from: -half, to: half },
                { kind: 'plain', words: t('not seen'), from: half, to: COFFERS_DIFFER }, { kind: 'wrong', words: t('is seen'), from: COFFERS_DIFFER, to: Infinity },
            ],
        },
        verdict: said, isWrong: Math.abs(ticks) > COFFERS_DIFFER,
        reasons: [
            { words: t('{0} coffers, each set to the {1} of the tape', run.coffers.length, f(step)), ...at(saidBy(run.spacing) ?? room.grid?.at) },
            ...run.coffers[0] === undefined ? [] : [{ words: t('A coffer is {0} before it is rounded', exactly(run.coffers[Math.floor(run.coffers.length / 2)]!, f, show)) }],
            { words: t('Cut lengths go by steps of {0}', f(step)), at: job.cutTo.at },
        ],
    };
}

function exactly(ticks: number, f: (ticks: number) => string, show: 'feet-inches' | 'millimeters'): string {
    const printed = printLength(ticks, show);
    return printed.startsWith('~') ? f(ticks) : printed;
}

/** Bottoms cut long: what they press adds up along the run. */
function pressCases(run: Run, ceiling: Ceiling): readonly ToleranceCase[] {
    const f = fineSizes(ceiling.room.job);
    return pressedRuns(ceiling).filter(({ lines }) => lines[0]!.runs === run.along).flatMap(({ lines, pieces }): ToleranceCase[] => {
        const press = lines[0]!.section.profile.bottom?.press;
        if (!press || !(press.value > 0)) return [];
        const sum = pieces * press.value, named = linesNamed(lines.map(line => line.name)), isWrong = sum > MOST_PRESS;
        return [{
            figure: {
                id: `tolerance.press.${run.along}.${lines[0]!.name}`, title: t('Press in {0}', named), nominal: sum, description: t('{0} pieces, {1} long each: {2} in all.', pieces, f(press.value), f(sum)),
                bars: [{ kind: 'sum', words: t('pressed in all'), least: 0, most: sum, parts: pieces, figures: ['', f(sum)] }],
                zones: [{ kind: 'asked', words: t('closes the joints'), from: 0, to: MOST_PRESS }, { kind: 'wrong', words: t('bows, or drives lines apart'), from: MOST_PRESS, to: Infinity }],
            },
            verdict: isWrong ? t('{0} pieces press {1} in one run; {2} in all is the most.', pieces, f(sum), f(MOST_PRESS)) : t('{0} pieces press {1} in one run, of {2} at most.', pieces, f(sum), f(MOST_PRESS)),
            isWrong, reasons: [{ words: t('Each bottom is cut {0} long', f(press.value)), at: press.at }, { words: t('{0} at most in a run: common practice, no source', f(MOST_PRESS)) }],
        }];
    });
}

/** Crosscuts that are off push the lines: what each channel of the run gains or loses, against the play of its bottom. */
function channelCases(run: Run, ceiling: Ceiling): readonly ToleranceCase[] {
    const { job } = ceiling.room, allowed = job.cutTolerance;
    const crossing = isAcross(run) ? ceiling.down : ceiling.across;
    if (!allowed || !(allowed.value > 0) || crossing.lines.length === 0) return [];
    const f = fineSizes(job), { worst, usual, settings } = shareOfEach(run, allowed.value);
    const byFit = grouped(run.lines.filter(({ section }) => section.fit), ({ section: { fit, profile } }) => {
        const gap = profile.bottom?.gap.value;
        return `${fit!.ticks} ${gap?.least} ${gap?.most}`;
    });
    return [...byFit.values()].flatMap((lines): ToleranceCase[] => {
        const { fit, profile: { bottom } } = lines[0]!.section, gap = bottom?.gap.value;
        if (!bottom || !gap || !fit) return [];
        const least = fit.ticks - worst, most = fit.ticks + worst, named = linesNamed(lines.map(line => line.name));
        const isWrong = usual - fit.ticks > EASED_IN_PLACE || fit.ticks + usual - gap.most > EASED_IN_PLACE;
        const reasons: Reason[] = [
            { words: t('Every crosscut may be {0} off, either way', f(allowed.value)), at: allowed.at },
            { words: t('{0} coffers x {1} / {2} channels = {3} each at worst', run.coffers.length, f(allowed.value), run.lines.length, f(worst)) },
            { words: t('Cut at one setting of the stop, so off together: {0} coffers', settings.join(' + ')) },
            { words: t('Play of the bottom as drawn: {0}', f(fit.ticks)), at: bottom.gap.at },
        ];
        return [{
            figure: {
                id: `tolerance.channel.${run.along}.${lines[0]!.name}`, title: t('Channel of {0}', named), nominal: fit.ticks, wood: bottomAndSide(lines[0]!.section),
                description: t('Play of the bottom once the sides push: {0} to {1} at worst.', f(least), f(most)),
                bars: [{ kind: 'worst', words: t('at worst'), least, most, figures: [f(least), f(most)] }, { kind: 'usual', words: t('root-sum-square'), least: fit.ticks - usual, most: fit.ticks + usual, figures: [f(fit.ticks - usual), f(fit.ticks + usual)] }],
                zones: fitZones(gap),
            },
            verdict: !isWrong && least < 0 ? t('At worst the bottom is {0} too wide: it is eased as it goes in.', f(-least))
                : !isWrong && most > gap.most ? t('At worst the gap is {0}: it is filled.', f(most))
                : least < 0 ? t('Sides that are cut long pinch the channel: at worst its bottom is {0} too wide. Leave that much play, or fit the first bay dry and set the stop again.', f(-least))
                : most > gap.most ? t('Sides that are cut short open the channel: the gap may reach {0}. Leave less play, or fit the first bay dry and set the stop again.', f(most)) : t('The bottom still goes in, with {0} of play at worst.', f(least)),
            isWrong, reasons,
        }];
    });
}

function saidBy(spacing: Spacing): Source | undefined {
    return spacing.by === 'number' ? spacing.coffers.at : spacing.by === 'size' ? spacing.size.at : undefined;
}
function at(source: Source | undefined): { at?: Source } {
    return source ? { at: source } : {};
}
