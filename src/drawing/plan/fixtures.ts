import type { Fixture } from '../../job/model.ts';
import type { Claims } from '../claims.ts';
import { circle, group, line, rectangle, text, type Group, type Item, type Point, type TextRun } from '../display-list.ts';
import { around, grown } from '../extent.ts';
import { patched } from '../patch.ts';
import { sourceReference, type FileName } from '../source-reference.ts';
import { fitText } from '../text/fit-text.ts';
import { toX, toY, type PlanView } from './view.ts';

export interface PlacedFixture { readonly fixture: Fixture; readonly x: number; readonly y: number }

/** Those whose place is said, inside the room. */
export function placedFixtures(fixtures: readonly Fixture[], room: { readonly width: number; readonly length: number }): readonly PlacedFixture[] {
    return fixtures.flatMap(fixture => {
        const { x, y } = fixture;
        if (x === undefined || y === undefined || x < 0 || y < 0 || x > room.width || y > room.length) return [];
        return [{ fixture, x, y }];
    });
}

const LEAST_RADIUS = 3.2;

/** Symbols in their own size, with the ground they keep clear dashed around them. Claims what they stand on. */
export function fixtureSymbols(fixtures: readonly PlacedFixture[], view: PlanView, claims: Claims, fileName: FileName): readonly Group[] {
    return fixtures.map(({ fixture, x, y }) => {
        const center: Point = [toX(view, x), toY(view, y)];
        const real = (fixture.diameter?.value ?? 0) / 2 * view.pointsPerTick;
        const radius = Math.max(LEAST_RADIUS, real);
        const clearance = real + Math.max(0, fixture.keepClear?.value ?? 0) * view.pointsPerTick;
        // words stand off the ring that is kept clear too, unless it is so large that they would find no place at all
        claims.take(grown(around(center, radius, radius), Math.max(3, Math.min(clearance - radius, 20))));
        const clear = clearance > real ? [circle(center, clearance, 'hidden')] : [];
        return group(`fixture.${fixture.name}`, { title: `${fixture.kind.replace('-', ' ')} ${fixture.name}`, source: sourceReference(fixture.at, fileName) }, [...clear, ...symbol(fixture.kind, center, radius)]);
    });
}

/** Their names beside them. */
export function fixtureNames(fixtures: readonly PlacedFixture[], view: PlanView, claims: Claims): readonly Group[] {
    return fixtures.map(({ fixture, x, y }) => {
        const center: Point = [toX(view, x), toY(view, y)];
        const radius = Math.max(LEAST_RADIUS, (fixture.diameter?.value ?? 0) / 2 * view.pointsPerTick);
        const runs = claims.placeFirst(nameCandidates(fixture.name, center, radius + 5 + clearOf(fixture, view))) ?? [];
        return group(`fixture-name.${fixture.name}`, {}, runs.flatMap(run => patched(run, 'paper')));
    });
}

/** How far names stand off the symbol so that they clear the ring around it, within reason. */
function clearOf(fixture: Fixture, view: PlanView): number {
    return Math.min(20, Math.max(0, fixture.keepClear?.value ?? 0) * view.pointsPerTick);
}

function* nameCandidates(name: string, [x, y]: Point, off: number): Iterable<readonly TextRun[]> {
    const { text: words, size } = fitText(name, 64, 7, 6);
    const at = (dx: number, dy: number, anchor: 'start' | 'middle' | 'end') => [text([x + dx, y + dy], words, { size, anchor, tone: 'soft' })];
    yield at(off, size * 0.35, 'start');
    yield at(-off, size * 0.35, 'end');
    yield at(0, off + size, 'middle');
    yield at(0, -off - 1, 'middle');
    yield at(off, off + size, 'start');
    yield at(-off, off + size, 'end');
}

/** Round things round, square things square; each kind with a mark of its own, shown in the key. */
export function symbol(kind: string, [x, y]: Point, r: number): readonly Item[] {
    const ring = circle([x, y], r, 'edge', 'paper');
    const square = rectangle(x - r, y - r, x + r, y + r, 'edge', 'paper');
    const out = r + 2.4;
    switch (kind) {
        case 'light': return [ring, line([x - out, y], [x + out, y], 'thin'), line([x, y - out], [x, y + out], 'thin')];
        case 'sprinkler': return [ring, circle([x, y], r * 0.42, null, 'ink')];
        case 'smoke-alarm': return [ring, circle([x, y], r * 0.55, 'thin')];
        case 'speaker': return [ring, line([x - r * 0.7, y - r * 0.7], [x + r * 0.7, y + r * 0.7], 'thin')];
        case 'fan': return [ring, line([x - r * 0.7, y - r * 0.7], [x + r * 0.7, y + r * 0.7], 'thin'), line([x - r * 0.7, y + r * 0.7], [x + r * 0.7, y - r * 0.7], 'thin')];
        case 'register': return [square, line([x - r, y - r], [x + r, y + r], 'thin'), line([x - r, y + r], [x + r, y - r], 'thin')];
        case 'junction-box': return [square, rectangle(x - r * 0.45, y - r * 0.45, x + r * 0.45, y + r * 0.45, null, 'ink')];
        case 'access-panel': return [square, line([x - r, y + r], [x + r, y - r], 'thin')];
        default: return [square];
    }
}
