import { expect, test } from 'vitest';
import { layOut } from '../../src/ceiling/layout.ts';
import type { LaidOut } from '../../src/ceiling/model.ts';
import { dryFit } from '../../src/dryfit/dry-fit.ts';
import type { Finding } from '../../src/findings/finding.ts';
import { inspectClosely } from '../../src/pipeline/inspect-closely.ts';
import { inches } from '../../src/quantity/rational.ts';
import { runFitRules } from '../../src/rules/run-fit.ts';
import type { Piece, TakeOff } from '../../src/takeoff/model.ts';
import { takeOff } from '../../src/takeoff/take-off.ts';
import { exampleRoom } from '../support/example-room.ts';
import { NO_RATES } from '../support/no-rates.ts';

const room = exampleRoom(), layout = layOut(room) as LaidOut, { ceiling } = layout;
const uri = room.at.uri;
const file = { uri, job: room.job, rates: NO_RATES, stocks: [], profiles: [], rooms: [room], alternates: [], findings: [], allowances: [] };

function findingsWith(change: (piece: Piece) => Partial<Piece>): Finding[] {
    const off = takeOff(ceiling), changed: TakeOff = { ...off, pieces: off.pieces.map(piece => ({ ...piece, ...change(piece) })) };
    return runFitRules(file, layout, changed, dryFit(ceiling, changed)).filter(ofFit);
}

/** How bottoms get past their biscuits is told of this room besides. */
function ofFit({ rule }: Finding): boolean {
    return rule !== 'closing-piece';
}

test('a room that goes together has nothing to tell', () => {
    expect(inspectClosely(file).filter(ofFit)).toEqual([]);
});

test('a finding names both pieces, how deep and why, at the beams of the room, with the words of the part beside it', () => {
    const [finding, ...others] = findingsWith(piece => piece.id === 'parlor.spacer-A-1-2' ? { cutBack: inches('5 5/16') } : {});
    expect(others).toEqual([]);
    expect(finding).toMatchObject({ rule: 'pieces-overlap', severity: 'error', room: 'parlor', at: room.grid!.beams!.at });
    expect(finding!.message).toContain('Spacer A-1-2 runs into cleat A-1-north by 1/16" and cleat A-1-south by 1/16". In the list it is 5 5/16" long and its place takes 5".');
    expect(finding!.related.map(place => place.at)).toContainEqual(room.grid!.beams!.value.spacers!.at);
});

test('of many different faults the first five are told, and how many more there are', () => {
    const off = takeOff(ceiling);
    const spoiled = off.pieces.filter(piece => piece.part === 'side').slice(0, 8).map(piece => piece.id);
    const findings = findingsWith(piece => spoiled.includes(piece.id) ? { thickness: piece.thickness - 100 * (spoiled.indexOf(piece.id) + 1) } : {});
    expect(findings.map(finding => finding.rule)).toEqual(Array.from({ length: 5 }, () => 'joint-opens'));
    expect(findings.filter(finding => finding.message.includes('There are 3 more of this kind: `cofferwright dry-fit` lists all.'))).toHaveLength(1);
});

test('an allowance in the text marks it', () => {
    const off = takeOff(ceiling), pieces = off.pieces.filter(piece => piece.id !== 'parlor.trim-3-east');
    const at = room.grid!.beams!.value.trim!.at, line = room.grid!.beams!.at.range.start.line;
    const allowed = { ...file, allowances: [{ rule: 'piece-miscounted', reason: 'behind the cabinet', at, line }] };
    const [finding] = runFitRules(allowed, layout, { ...off, pieces }, dryFit(ceiling, { ...off, pieces }));
    expect(finding).toMatchObject({ rule: 'piece-miscounted', allowed: { reason: 'behind the cabinet' } });
    expect(finding!.message).toMatch(/^Trim 3-east is missing in the cut list/);
});
