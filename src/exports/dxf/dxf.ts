import { DxfWriter, HatchBoundaryPaths, HatchPolylineBoundary, HatchPredefinedPatterns, LWPolylineFlags, point3d, TextHorizontalAlignment, TextVerticalAlignment, Units } from '@tarikjabiri/dxf';
import type { Circle, Item, Line, Point, Polyline, Sheet, TextRun } from '../../drawing/display-list.ts';
import { penOf, type PenName } from '../../drawing/pens.ts';
import { CAP_HEIGHT } from '../../drawing/text/measure-text.ts';
import type { Show } from '../../quantity/print-length.ts';
import { TICKS_PER_INCH, TICKS_PER_MM } from '../../quantity/ticks.ts';
import { circlePoints, cover, uncovered, type Cover, type Segment } from './hidden-lines.ts';
import { colorOf, kindOf, layerName, SHEET_KIND, weightOf, type Kind } from './layers.ts';
import { plainText } from '../../text/dxf.ts';
import type { DxfText } from '../../text/fit.ts';
import { atOnce, eachInSteps, type Steps } from '../../plain/steps.ts';

/**
 * A sheet as a DXF file (AC1021, text in UTF-8) in model space at true size: inches, or millimeters where the job shows
 * them, y upward, from the sheet's own zero (the room's south-west corner, the middle of the beam). Border, words and
 * dimensions stand round it as large as they must be to come out right when it is plotted at the sheet's scale.
 * Dimensions are lines and text, so that every reader shows the figures of the drawing and reckons none of its own.
 */
export function toDxf(sheet: Sheet, show: Show): DxfText {
    return atOnce(dxfInSteps(sheet, show));
}

/** The same step by step. */
export function* dxfInSteps(sheet: Sheet, show: Show): Steps<DxfText> {
    const drawing = new Drawing(sheet, show);
    yield* eachInSteps(sheet.items, 1, item => drawing.add([item]));
    yield;
    return (yield* drawing.text()) as DxfText;
}

type Drawn = { readonly item: Line | Polyline | Circle; readonly kind: Kind; readonly covers: number };
/** Lines whose hidden parts are found in one step. */
const AT_ONCE = 1000;
const FONT = 'arial.ttf';
/** The sheet's own lettering is narrower than the one that every machine has. */
const NARROW = 0.8;

class Drawing {
    private readonly writer = new DxfWriter();
    private readonly drawn: Drawn[] = [];
    private readonly covers: Cover[] = [];
    private readonly texts: { readonly run: TextRun; readonly kind: Kind }[] = [];
    private readonly zero: Point;
    /** Real inches or millimeters a point of the paper stands for. */
    private readonly unitsPerPoint: number;

    constructor(sheet: Sheet, show: Show) {
        const { measured, paper } = sheet;
        const ticksPerUnit = show === 'millimeters' ? TICKS_PER_MM : TICKS_PER_INCH;
        this.zero = measured?.origin ?? [0, paper.height];
        this.unitsPerPoint = measured === undefined ? TICKS_PER_INCH / 72 / ticksPerUnit : 1 / (measured.pointsPerTick * ticksPerUnit);
        const { writer } = this;
        writer.setUnits(show === 'millimeters' ? Units.Millimeters : Units.Inches);
        const [left, foot] = this.place([0, paper.height]);
        const [right, top] = this.place([paper.width, 0]);
        writer.setVariable('$MEASUREMENT', { 70: show === 'millimeters' ? 1 : 0 });
        writer.setVariable('$EXTMIN', { 10: left, 20: foot, 30: 0 });
        writer.setVariable('$EXTMAX', { 10: right, 20: top, 30: 0 });
        writer.setVariable('$LASTSAVEDBY', { 1: 'Cofferwright' });
        writer.document.styleStandard.fontFileName = FONT;
        writer.document.styleStandard.widthFactor = NARROW;
    }

    /** In the order of the drawing: what is filled covers what came before. */
    add(items: readonly Item[], kind: Kind = SHEET_KIND): void {
        for (const item of items) {
            switch (item.kind) {
                case 'group': if (!item.outOfScale) this.add(item.items, kindOf(item, kind)); break;
                case 'text': this.texts.push({ run: item, kind }); break;
                case 'line': this.drawn.push({ item, kind, covers: this.covers.length }); break;
                case 'polyline':
                case 'circle':
                    if (item.fill !== null) this.covers.push(cover(item.kind === 'circle' ? circlePoints(item.center, item.radius) : item.points));
                    this.drawn.push({ item, kind, covers: this.covers.length });
            }
        }
    }

    *text(): Steps<string> {
        for (const [i, { item, kind, covers }] of this.drawn.entries()) {
            if (i % AT_ONCE === AT_ONCE - 1) yield;
            if (item.kind !== 'line' && item.fill === 'ink') this.filled(item, kind);
            if (item.pen === null) continue;
            const layer = this.layerOf(kind, item.pen);
            if (item.kind === 'circle') this.circle(item, layer, covers);
            else this.strokes(item.kind === 'line' ? [item.from, item.to] : item.points, item.kind === 'polyline' && item.closed, layer, covers);
        }
        for (const { run, kind } of this.texts) this.words(run, kind);
        yield;
        return `${this.writer.stringify()}\n`;
    }

    private place([x, y]: Point): Point {
        return [this.length(x - this.zero[0]), this.length(this.zero[1] - y)];
    }

    /** To the millionth of a unit: far below what is drawn, and no figure needs an exponent. */
    private length(points: number): number {
        return Math.round(points * this.unitsPerPoint * 1e6) / 1e6 + 0;
    }

    private at(point: Point): { x: number; y: number } {
        const [x, y] = this.place(point);
        return { x, y };
    }

    private strokes(points: readonly Point[], closed: boolean, layer: string, coversFrom: number): void {
        const ends = closed ? [...points, points[0]!] : points;
        const stretches = ends.slice(1).map((end, i) => uncovered([ends[i]!, end], this.covers, coversFrom));
        const whole = stretches.every((stretch, i) => stretch.length === 1 && stretch[0]![0] === ends[i] && stretch[0]![1] === ends[i + 1]);
        if (whole) return this.polyline(points, closed, layer);
        const runs: Point[][] = [];
        for (const [from, to] of stretches.flat()) {
            const last = runs.at(-1);
            if (last?.at(-1) === from) last.push(to);
            else runs.push([from, to]);
        }
        runs.forEach(run => this.polyline(run, false, layer));
    }

    private polyline(points: readonly Point[], closed: boolean, layer: string): void {
        if (points.length === 2) {
            const [from, to] = points.map(point => this.at(point)) as [{ x: number; y: number }, { x: number; y: number }];
            this.writer.addLine(point3d(from.x, from.y), point3d(to.x, to.y), { layerName: layer });
        } else {
            const flags = closed ? LWPolylineFlags.Closed : LWPolylineFlags.None;
            this.writer.addLWPolyline(points.map(point => ({ point: this.at(point) })), { layerName: layer, flags });
        }
    }

    private circle({ center, radius }: Circle, layer: string, coversFrom: number): void {
        const points = circlePoints(center, radius);
        const whole = points.every((point, i) => {
            const side: Segment = [point, points[(i + 1) % points.length]!];
            return uncovered(side, this.covers, coversFrom)[0] === side;
        });
        if (!whole) return this.strokes(points, true, layer, coversFrom);
        const { x, y } = this.at(center);
        this.writer.addCircle(point3d(x, y), this.length(radius), { layerName: layer });
    }

    private filled(item: Polyline | Circle, kind: Kind): void {
        const boundary = new HatchBoundaryPaths();
        boundary.addPolylineBoundary(new HatchPolylineBoundary(item.kind === 'polyline' ? item.points.map(point => this.at(point)) : this.roundBoundary(item)));
        this.writer.addHatch(boundary, { name: HatchPredefinedPatterns.SOLID }, { layerName: this.layerOf(kind, 'fill') });
    }

    /** Two half circles: a bulge of 1 is one (the tangent of a quarter of its angle). */
    private roundBoundary({ center: [x, y], radius }: Circle): { x: number; y: number; bulge: number }[] {
        return [{ ...this.at([x - radius, y]), bulge: 1 }, { ...this.at([x + radius, y]), bulge: 1 }];
    }

    private words(run: TextRun, kind: Kind): void {
        if (run.text.trim() === '') return;
        const { x, y } = this.at(run.at);
        const horizontalAlignment = {
            start: TextHorizontalAlignment.Left, middle: TextHorizontalAlignment.Center, end: TextHorizontalAlignment.Right,
        }[run.anchor];
        this.writer.addText(point3d(x, y), this.length(run.size * CAP_HEIGHT), plainText(run.text), {
            layerName: this.layerOf(kind, 'text'), relativeXScaleFactor: NARROW, rotation: run.turned, horizontalAlignment, verticalAlignment: TextVerticalAlignment.BaseLine,
            ...(run.anchor === 'start' ? {} : { secondAlignmentPoint: point3d(x, y) }), ...(run.tone === 'ink' ? {} : { colorNumber: colorOf(run.tone) }),
        });
    }

    /** The layer for a pen, made where it is first needed. */
    private layerOf(kind: Kind, drawn: PenName | 'text' | 'fill'): string {
        const name = layerName(kind, drawn);
        const { tables } = this.writer;
        if (tables.layer(name) !== undefined) return name;
        const pen = drawn === 'text' || drawn === 'fill' ? null : drawn;
        const layer = tables.addLayer(name, colorOf(pen === null ? 'ink' : penOf(pen).tone), this.lineTypeOf(pen));
        if (pen === null) return name;
        // the library gives every layer the weight 0 (group code 370) and takes no other
        const plain = layer.dxfy.bind(layer);
        layer.dxfy = dx => {
            const from = dx.lines.length;
            plain(dx);
            for (let i = from; i < dx.lines.length; i += 2) if (dx.lines[i] === 370) dx.lines[i + 1] = weightOf(pen);
        };
        return name;
    }

    /** Dashes as long on the plot as on the sheet. */
    private lineTypeOf(pen: PenName | null): string {
        const dashes = pen === null ? undefined : penOf(pen).dashes;
        if (pen === null || dashes === undefined) return 'Continuous';
        const name = pen.toUpperCase();
        if (!this.writer.tables.ltypeTable.exist(name)) this.writer.addLType(name, `${name.toLowerCase()} line`, dashes.map((dash, i) => this.length(dash) * (i % 2 === 0 ? 1 : -1)));
        return name;
    }
}

