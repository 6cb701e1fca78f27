import type { Show } from '../../quantity/print-length.ts';
import { group, line, polygon, polyline, rectangle, sheet, text, type Group, type Item, type Point, type Sheet } from '../display-list.ts';
import { endGrain } from '../fill/end-grain.ts';
import { hatch } from '../fill/hatch.ts';
import { drawnFractions } from '../figures.ts';
import { paneGround } from '../paper.ts';
import { patched } from '../patch.ts';
import { fitText, wrapText } from '../text/fit-text.ts';
import { textWidth } from '../text/measure-text.ts';
import { along, axisFor, exaggeration, marksOn, type Axis } from './axis.ts';
import type { Bar, Cut, ToleranceFigure } from './model.ts';

interface DrawnTolerance extends Sheet { /** How many times larger than it is a length across the paper is drawn. */ readonly times: number }

const SIZE = 8.6;
/** Of the lines that fill sheet material; those of what jams stand closer. */
const SHEET_SPACING = 5;
/** Column of the bars' names; on a narrow ground they stand above their bars. */
const NAMES = { width: 84, from: 380 };
const TOP = 6, WOOD = 54, ZONES = 17, RULE = 22, ROW = 19, NAME_ROW = 12, FOOT = 6;

/**
 * A length with all it may be off: the two pieces of wood, between them where the face of one may stand as seen from the
 * other; under it a rule with what is asked and what is wrong; then a bar for the worst and one for the usual.
 */
export function drawTolerance(figure: ToleranceFigure, width: number, show: Show): DrawnTolerance {
    const named = width >= NAMES.from;
    const left = named ? NAMES.width : 8, right = width - 8;
    const axis = axisFor(figure, left, right, show);
    const woodFoot = figure.wood ? TOP + WOOD : TOP;
    const zonesFoot = woodFoot + ZONES, ruleFoot = zonesFoot + RULE;
    const row = named ? ROW : ROW + NAME_ROW;
    const height = ruleFoot + figure.bars.length * row + FOOT;
    const foot = height - FOOT;
    return {
        ...sheet({ id: figure.id, title: figure.title, description: figure.description }, paneGround(width, height), [
            ...figure.wood ? wood(figure, axis, figure.wood) : [],
            zones(figure, axis, woodFoot, zonesFoot),
            rule(axis, zonesFoot, show),
            group('nominal', { title: 'As drawn' }, [line([along(axis, figure.nominal), TOP], [along(axis, figure.nominal), foot], 'center')]),
            ...figure.bars.map((bar, i) => barOf(bar, axis, ruleFoot + i * row, named)),
        ]),
        times: exaggeration(axis),
    };
}

/** The left piece ends at zero; the right one begins where it stands as drawn, and may stand anywhere in the bands. */
function wood(figure: ToleranceFigure, axis: Axis, cuts: NonNullable<ToleranceFigure['wood']>): readonly Group[] {
    const top = TOP, foot = TOP + WOOD - 6, zero = along(axis, 0), face = along(axis, figure.nominal);
    const block = (id: string, from: number, to: number, pith: Point, breakAt: number, { name, isSheet }: Cut, clearOf: number): Group => {
        const corners: readonly Point[] = [[from, top], [to, top], [to, foot], [from, foot]];
        const middle = (top + foot) / 2;
        const edges = breakAt === from ? [[from, top], [to, top], [to, foot], [from, foot]] as const
            : [[to, top], [from, top], [from, foot], [to, foot]] as const;
        // the name stands where no band covers it
        const [nameFrom, nameTo] = breakAt === from ? [from, clearOf] : [clearOf, to];
        const fitted = fitText(name, nameTo - nameFrom - 16, 9.4, 7, 600);
        return group(id, { title: name }, to - from < 4 ? [] : [
            polygon(corners, null, 'paper'), ...isSheet ? hatch(corners, SHEET_SPACING, true) : endGrain([corners], { pith, spacing: 7.2, seed: id }),
            polyline(edges, 'cut'), polyline([[breakAt, top], [breakAt, middle - 8], [breakAt - 4, middle - 3], [breakAt + 4, middle + 3], [breakAt, middle + 8], [breakAt, foot]], 'thin'),
            ...nameTo - nameFrom < textWidth(fitted.text, fitted.size, 600) + 8 ? [] : patched(text([(nameFrom + nameTo) / 2, middle + 3.2], fitted.text, { size: fitted.size, weight: 600, anchor: 'middle' }), 'paper'),
        ]);
    };
    const over = face < zero;
    const bands = figure.bars.map(bar => band(bar, axis, top, foot));
    return [
        block('wood.left', axis.left, zero, [axis.left + (zero - axis.left) * 0.4, foot + 60], axis.left, cuts.left, Math.min(zero, ...figure.bars.map(bar => along(axis, bar.least)))),
        block('wood.right', Math.max(face, zero), axis.right, [axis.right - 20, top - 70], axis.right, cuts.right, Math.max(face, zero, ...figure.bars.map(bar => along(axis, bar.most)))),
        ...over ? [group('wood.over', { title: 'One in the other' }, [rectangle(face, top, zero, foot, 'wrong')])] : [],
        ...bands,
    ];
}

/** Where the face of the right piece may stand. */
function band(bar: Bar, axis: Axis, top: number, foot: number): Group {
    const from = along(axis, bar.least), to = along(axis, bar.most), zero = along(axis, 0);
    if (to - from < 0.5) return group(`band.${bar.kind}`, {}, []);
    const inset = bar.kind === 'worst' ? 0 : 14;
    const corners: readonly Point[] = [[from, top + inset], [to, top + inset], [to, foot - inset], [from, foot - inset]];
    const jammed = Math.min(zero, to);
    return group(`band.${bar.kind}`, { title: bar.words }, [
        polygon(corners, bar.kind === 'worst' ? 'hidden' : 'thin', bar.kind === 'worst' ? 'wash' : 'tint'),
        ...from < zero && bar.kind === 'worst' ? [...hatch([[from, top], [jammed, top], [jammed, foot], [from, foot]], 3.2, true), rectangle(from, top, jammed, foot, 'wrong')] : [],
    ]);
}

function zones({ zones: all }: ToleranceFigure, axis: Axis, top: number, foot: number): Group {
    return group('zones', {}, all.flatMap((zone, i): Item[] => {
        const from = along(axis, Number.isFinite(zone.from) ? zone.from : -1e12), to = along(axis, Number.isFinite(zone.to) ? zone.to : 1e12);
        if (to - from < 0.8) return [];
        const corners: readonly Point[] = [[from, top], [to, top], [to, foot - 3], [from, foot - 3]];
        const fitted = fitText(zone.words, to - from - 6, SIZE, 7, zone.kind === 'plain' ? 400 : 600);
        const fits = textWidth(zone.words, 7) <= to - from - 6;
        const ground = zone.kind === 'asked' ? 'wash' : 'paper';
        return [group(`zone.${i}`, { title: zone.words }, [
            polygon(corners, null, ground), ...zone.kind === 'wrong' ? hatch(corners, 3.2, true) : [],
            polygon(corners, zone.kind === 'wrong' ? 'wrong' : 'thin'),
            ...fits ? patched(text([(from + to) / 2, (top + foot - 3) / 2 + SIZE * 0.35], fitted.text, { size: fitted.size, weight: zone.kind === 'plain' ? 400 : 600, anchor: 'middle', tone: zone.kind === 'wrong' ? 'accent' : 'ink' }), ground) : [],
        ])];
    }));
}

function rule(axis: Axis, top: number, show: Show): Group {
    return group('rule', {}, [
        line([axis.left, top], [axis.right, top], 'dimension'),
        ...marksOn(axis, SIZE, show).flatMap(({ at, text: words }) => [line([at, top - 3], [at, top + 4], 'dimension'), text([at, top + 13.5], words, { size: SIZE, anchor: 'middle', tone: 'soft' })]),
        line([along(axis, 0), TOP], [along(axis, 0), top + 5], 'edge'),
    ]);
}

function barOf(bar: Bar, axis: Axis, top: number, named: boolean): Group {
    const from = along(axis, bar.least), to = along(axis, bar.most), y = top + (named ? ROW : ROW + 2 * NAME_ROW) / 2, half = bar.kind === 'worst' ? 3 : 4.5;
    const [before, after] = bar.figures.map(drawnFractions) as [string, string];
    const names = named ? wrapText(bar.words, NAMES.width - 12, SIZE) : [fitText(bar.words, axis.right - axis.left, SIZE, 7).text];
    const nameAt: Point = named ? [8, y + 3 - (names.length - 1) * 4.6] : [axis.left, top + NAME_ROW - 3];
    return group(`bar.${bar.kind}`, { title: bar.words }, [
        ...names.map((words, i) => text([nameAt[0], nameAt[1] + i * 9.2], words, { size: SIZE, tone: 'ink' })),
        ...to - from < 1 ? [line([from, y - 5], [from, y + 5], 'cut')] : barShape(bar, from, to, y, half),
        ...before === '' ? [] : patched(text([from - 5, y + 3], before, { size: SIZE, weight: 600, anchor: 'end' }), 'paper'),
        ...after === '' ? [] : patched(text([to + 5, y + 3], after, { size: SIZE, weight: 600 }), 'paper'),
    ]);
}

/** The worst is a bracket, the usual a solid bar, a sum is divided into its parts. */
function barShape({ kind, parts = 1 }: Bar, from: number, to: number, y: number, half: number): readonly Item[] {
    if (kind === 'worst') return [line([from, y], [to, y], 'edge'), line([from, y - 5], [from, y + 5], 'edge'), line([to, y - 5], [to, y + 5], 'edge')];
    const cuts = Array.from({ length: Math.max(0, parts - 1) }, (_, i) => from + (to - from) * (i + 1) / parts);
    return [rectangle(from, y - half, to, y + half, 'edge', 'tint'), ...cuts.map(x => line([x, y - half], [x, y + half], 'edge'))];
}
