import type { LaidOut, Layout } from '../ceiling/model.ts';
import type { DryFit } from '../dryfit/model.ts';
import { findingOf, compareFindings, type Finding } from '../findings/finding.ts';
import type { FileContent } from '../job/file.ts';
import { sameSource } from '../provenance/source.ts';
import type { TakeOff } from '../takeoff/model.ts';
import { marked } from './allowances.ts';
import { RULES } from './index.ts';
import { foundIn, type Located } from './sections.ts';
import { moved, ownOfRoom, useOf, usesOf } from './sites.ts';

/**
 * What the rules of the dry fit find in a room, as far as it stands in the room's own file; marked where a comment allows it.
 * It stands at the beams of the room, or of the line, that use the part; a part's own words are a related place.
 */
export function runFitRules(file: FileContent, layout: LaidOut, takeOff: TakeOff, fit: DryFit): Finding[] {
    const { room } = layout;
    const uses = usesOf(layout), isOwn = ownOfRoom(layout, file.uri, uses);
    const located: Located[] = [];
    for (const rule of RULES) rule.check.fit?.({ layout, fit, takeOff, job: room.job }, found => located.push({ rule, ...found }));
    const findings = located.map(one => moved(one, isOwn, isOwn, useOf(uses, one.at)?.at ?? room.at))
        .map(({ rule, at, message, severity, related, fixes }): Finding => (
            findingOf({ rule: rule.name, severity: severity ?? rule.severity, at, message, related, fixes, room: room.name })))
        .filter(({ at }) => at.uri === file.uri);
    return marked(findings, file.allowances).sort(compareFindings);
}

/**
 * Whether an error is told already about a room: in its own file, but for those that a comment allows; or in a detail that it
 * uses. What does not fit for that is not told again.
 */
export function hasError({ room, sections }: Layout, file: FileContent, findings: readonly Finding[]): boolean {
    const open = findings.filter(finding => finding.severity === 'error' && !finding.allowed);
    if (room.broken || open.some(finding => finding.room === room.name)) return true;
    return [...sections.values()].some(section => foundIn(section, room.job).some(({ rule, severity, at }) =>
        (severity ?? rule.severity) === 'error' && (at.uri !== file.uri || open.some(finding => finding.rule === rule.name && [finding, ...finding.related].some(place => sameSource(place.at, at))))));
}
