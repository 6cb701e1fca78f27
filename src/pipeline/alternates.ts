import type { Layout } from '../ceiling/model.ts';
import type { Finding } from '../findings/finding.ts';
import type { Alternate, ChangedRoom } from '../job/alternate.ts';
import type { FileContent } from '../job/file.ts';
import type { Room } from '../job/model.ts';
import { isWithin } from '../provenance/source.ts';
import { notLaidOut } from '../rules/not-laid-out.ts';
import { findingsInRoom } from '../rules/run.ts';

/**
 * What is wrong with the rooms that alternates make and is right in the rooms themselves. It is shown where the alternate
 * says it, or else at the alternate's name: the room's own text is as it should be.
 */
export function findingsOfAlternates({ alternates, uri }: FileContent, layoutOf: (room: Room) => Layout): Finding[] {
    return alternates.flatMap(alternate => alternate.rooms.flatMap(changed => newFindings(changed, uri, layoutOf).map(finding => shownAt(alternate, finding))));
}

/** What is wrong with a changed room, or not computed there, and not with the room it is instead of. Other hints are for what is going to be built. */
export function newFindings(changed: ChangedRoom, uri: string, layoutOf: (room: Room) => Layout): Finding[] {
    return [...changed.findings, ...ofRules(changed, uri, layoutOf)].filter(({ severity, rule }) => severity !== 'hint' || rule === 'not-computed-yet');
}

function ofRules({ instead, room }: ChangedRoom, uri: string, layoutOf: (room: Room) => Layout): Finding[] {
    const found = findingsInRoom(layoutOf(room), uri);
    if (found.length === 0) return found;
    // that a room is not laid out follows from the rest
    const rest = found.filter(({ rule }) => rule !== notLaidOut.name);
    const before = new Set(findingsInRoom(layoutOf(instead), uri).map(({ rule, message }) => `${rule} ${message}`));
    return (rest.length > 0 ? rest : found).filter(({ rule, message }) => !before.has(`${rule} ${message}`));
}

function shownAt({ name, title, at, whole }: Alternate, finding: Finding): Finding {
    if (isWithin(finding.at, whole)) return finding;
    const said = finding.related.find(place => isWithin(place.at, whole));
    if (said) return { ...finding, at: said.at, fixes: [], related: [{ at: finding.at, message: 'It comes about here.' }, ...finding.related.filter(place => place !== said)] };
    return {
        ...finding, at, fixes: [], message: `With "${title ?? name}"${finding.room === undefined ? '' : ` in room ${finding.room}`}: ${finding.message}`,
        related: [{ at: finding.at, message: 'It comes about here.' }, ...finding.related],
    };
}
