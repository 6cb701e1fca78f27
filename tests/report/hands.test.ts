import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { planBoards } from '../../src/cutting/first-plan.ts';
import { drawLabels } from '../../src/drawing/boards/labels.ts';
import type { Group, Item } from '../../src/drawing/display-list.ts';
import { readFile } from '../../src/language/read-file.ts';
import { inspect, takeOffOf } from '../../src/pipeline/inspect.ts';
import { SOUND } from '../../src/pipeline/standing.ts';
import { csvCutList } from '../../src/report/cut-list/csv.ts';
import { jsonCutList } from '../../src/report/cut-list/json.ts';
import type { CutListJson } from '../../src/report/cut-list/shape.ts';
import type { House } from '../../src/report/house.ts';
import { csvSaw } from '../../src/report/sawing/csv.ts';
import { sawOf } from '../../src/report/sawing/house-saw.ts';
import type { Piece } from '../../src/takeoff/model.ts';
import { TestWorkspace } from '../support/workspace.ts';
import { files, house } from './samples.ts';

/**
 * Rooms with all that has a hand: grooved sides round an outside corner and out of square, crown coped and mitered outside, moldings that end at a band.
 * What is left and right, and how far an end leans which way, is found here from the corners on the plan alone.
 */
const STOCK = `edition 1
stock board-6 { thickness 3/4"; width 5 1/2"; lengths 16' }
stock board-8 { thickness 3/4"; width 7 1/4"; lengths 16' }
stock strip-2 { thickness 3/4"; width 1 1/2"; lengths 16' }
stock crown { thickness 5/8"; width 3 5/8"; lengths 16' }
profile box {
  blocking { stock board-6 }
  sides { stock board-8; rabbet 1/4" x 1/4" on lower-back }
  cleats { rip 3/4" x 3/4" from strip-2 }
  bottom { stock board-6 }
  trim { stock crown; spring 38°; corners coped }
}
profile molded like box { under { stock strip-2; place under-beam overhang 1/2" } }
`;
const ELL = `${STOCK}room ell {
  wall north 14'
  wall east 6' heading south
  wall inner-south 5' heading west
  wall inner-east 5' heading south
  wall south 9' heading west
  wall west 11' heading north
  grid { lines-north 4'; lines-east 3' 6"; beams box; through north-south; perimeter { kind half-beam; width 2 1/2" } }
}
`;
const ASKEW = `${STOCK}room askew {
  wall north 12' 2"
  wall east 9' 7"
  wall south 12' 6"
  wall west 9' 2"
  diagonal north-west to south-east measures 15' 5"
  grid {
    coffers-north 3; coffers-east 2; beams molded; through north-south; lay-north-south fanned
    perimeter { kind band; stock board-8; below-beams 3/4" }
  }
}
`;

async function printed(text: string) {
    const workspace = await TestWorkspace.open({ 'room.coffer': text });
    const { layouts: [layout] } = inspect(readFile(workspace.document('room.coffer')));
    const takeOff = takeOffOf(layout!.ceiling!), { room } = layout!;
    const made: House = { ...house, job: room.job, rooms: [{ room, takeOff, standing: SOUND }] };
    const saw = sawOf({ house: made, plan: planBoards(takeOff.pieces, room.job) });
    const parsed = (csv: string): Record<string, string>[] => Papa.parse<Record<string, string>>(csv, { header: true, skipEmptyLines: true }).data;
    const rows = (csv: string) => new Map(parsed(csv).map(row => [row.id ?? row.piece, row]));
    const json = new Map((JSON.parse(jsonCutList([made], files)) as CutListJson).pieces.map(each => [each.id, each]));
    const lists = { json, csv: rows(csvCutList([made], files)), atSaw: rows(csvSaw([saw])) };
    return { ...lists, pieces: takeOff.pieces, order: saw.order, labels: drawLabels(saw.order, 'job') };
}

/** From square, left then right, for somebody who faces it: how far its back goes beyond its face at that end. Of what lies, its second edge is the face. */
function leans({ corners: [back, backEnd, faceEnd, face] }: Piece): readonly [number, number] {
    const along = { x: backEnd.x - back.x, y: backEnd.y - back.y }, long = Math.hypot(along.x, along.y);
    const reach = (p: { x: number; y: number }): number => ((p.x - back.x) * along.x + (p.y - back.y) * along.y) / long;
    const aside = ((face.y - back.y) * along.x - (face.x - back.x) * along.y) / long;
    const degrees = (by: number): number => Math.atan2(by, Math.abs(aside)) * 180 / Math.PI;
    const first = degrees(reach(face)), last = degrees(long - reach(faceEnd));
    // y runs south: who looks from the face to the back has the way to his right where the face lies to the right of it
    return aside > 0 ? [first, last] : [last, first];
}

describe.each([['an L', ELL, 'trim'], ['out of square', ASKEW, 'molding']])('%s', (_, text, part) => {
    test('hand and angles of an end are the same in JSON, CSV, at the saw and on labels, and those of the plan', async () => {
        const { pieces, json, csv, atSaw, order, labels } = await printed(text);
        const steps = order.steps.flatMap(step => (step.do === 'miter' ? step.cuts.flatMap(cut => cut.pieces.map(({ id }) => ({ id, end: cut.end, long: cut.long, hand: cut.hand }))) : []));
        let handed = 0;
        for (const piece of pieces) {
            if (piece.part === 'spacer') continue;
            const { left, right, hand } = json.get(piece.id)!, row = csv.get(piece.id)!, own = steps.filter(({ id }) => id === piece.id);
            const [l, r] = leans(piece), coped = piece.ends.some(({ cut }) => cut === 'coped');
            if (!coped) expect([piece.id, left!.angle, right!.angle]).toEqual([piece.id, expect.closeTo(l, 1), expect.closeTo(r, 1)]);
            expect([row.left_degrees, row.right_degrees, row.hand]).toEqual([String(left!.angle), String(right!.angle), hand ?? '']);
            const mitered = [left, right].map(end => end!.cut === 'miter');
            if (piece.hand !== null) {
                expect([piece.id, piece.hand]).toEqual([piece.id, mitered[0] ? 'left' : 'right']);
                expect(hand).toBe(piece.hand);
                handed++;
            }
            expect([piece.id, atSaw.get(piece.id)!.hand]).toEqual([piece.id, piece.hand ?? '']);
            expect(atSaw.get(piece.id)!.left_end).toBe(row.left_end);
            expect(atSaw.get(piece.id)!.right_end).toBe(row.right_end);
            const turns = ([['left', left], ['right', right]] as const).flatMap(([end, { angle = 0 } = {}]) => (Math.round(Math.abs(angle) * 10) > 0 ? [{ end, long: angle > 0 ? 'back' : 'face' }] : []));
            // what fits either way round is laid the one way
            if (own.every(step => step.hand !== 'either')) expect([piece.id, own.map(({ end, long }) => ({ end, long })).sort((a, b) => (a.end < b.end ? -1 : 1))]).toEqual([piece.id, turns]);
            else expect(own.map(({ long }) => long)).toEqual(turns.map(({ long }) => long));
        }
        expect(handed).toBeGreaterThan(1);
        expect(pieces.some(piece => piece.part === part && piece.hand !== null)).toBe(true);
        const laid = labels.flatMap(({ items }) => items).flatMap(groupsIn);
        expect(laid.filter(({ piece }) => piece !== undefined).length).toBeGreaterThan(pieces.filter(piece => piece.part !== 'spacer').length - 1);
        for (const piece of pieces) if (piece.part !== 'spacer') expect([piece.id, slopes(laid.find(each => each.piece === piece.id)!)]).toEqual([piece.id, signs(atSaw.get(piece.id)!)]);
    });
});

function groupsIn(item: Item): Group[] {
    return item.kind === 'group' ? [item, ...item.items.flatMap(groupsIn)] : [];
}

/** Which way the two ends of the picture on a label lean: its upper edge is the back. */
function slopes({ items }: Group): readonly number[] {
    const outline = items.find(item => item.kind === 'polyline' && item.closed);
    if (outline?.kind !== 'polyline') return [NaN, NaN];
    const ys = outline.points.map(([, y]) => y), top = Math.min(...ys), foot = Math.max(...ys);
    const at = (y: number): number[] => outline.points.filter(([, each]) => each === y).map(([x]) => x);
    const [upper, lower] = [at(top), at(foot)];
    return [Math.sign(Math.min(...lower) - Math.min(...upper)), Math.sign(Math.max(...upper) - Math.max(...lower))];
}

/** Of a square end 0, of one whose back is the longer 1, else -1. */
function signs({ left_end, right_end }: Record<string, string>): readonly number[] {
    return [left_end!, right_end!].map(words => (!/\d/.test(words) ? 0 : /longer at the (face|east edge|south edge|south-east edge)/.test(words) ? -1 : 1));
}
