import type { Layout } from '../ceiling/model.ts';
import { compareFindings, findingOf, type Finding } from '../findings/finding.ts';
import type { FileContent } from '../job/file.ts';
import type { JobSettings, Profile, Stock } from '../job/model.ts';
import { sameSource, type Source } from '../provenance/source.ts';
import type { Piece } from '../takeoff/model.ts';
import { takeOffOf } from '../takeoff/take-off.ts';
import { marked, unused } from './allowances.ts';
import { RULES } from './index.ts';
import { notSupportedLayout } from './not-supported-layout.ts';
import { partVanishes } from './part-vanishes.ts';
import type { Checks, Report } from './rule.ts';
import { foundIn, foundInherited, ownSection, type Located } from './sections.ts';
import { isOneOf, moved, ownOfRoom, sitesOf, useOf, usesOf } from './sites.ts';

/**
 * Everything the rules find in one file, in the order of the text; what a comment allows is marked so.
 *
 * One cause, one error, and each file shows only what stands in it:
 * - a profile's findings are those of its defaults, and stand in its own file. A profile that varies another one, or a room
 *   that uses one, repeats none of them;
 * - what comes about only through arguments, or through a room, stands at the argument or the `beams` that bring it about,
 *   with the place in the profile as related place.
 *
 * Never throws on a job that is only half known: rules skip what is undefined. `ofAlternates`: what was found in the rooms
 * that the file's alternates make.
 */
export function runRules(file: FileContent, layouts: readonly Layout[], ofAlternates: readonly Finding[] = []): Finding[] {
    const located = [
        ...file.job.at?.uri === file.uri ? inJob(file.job) : [],
        ...file.stocks.flatMap(stock => inStock(stock, file.job)),
        ...file.profiles.flatMap(profile => inProfile(profile, file)),
    ].map(one => toldOf(one));
    const inRooms = layouts.flatMap(layout => findingsInRoom(layout, file.uri));
    const findings = once([...located, ...inRooms, ...ofAlternates]).filter(finding => finding.at.uri === file.uri);
    return [...marked(findings, file.allowances), ...unused([...file.findings, ...findings], file, layouts)].sort(compareFindings);
}

/** What is wrong in one room, shown in the file of that address where it stands there, and else at what brings it about. */
export function findingsInRoom(layout: Layout, uri: string): Finding[] {
    return inRoom(layout, uri).map(one => toldOf(one, layout.room.name));
}

function inJob(job: JobSettings): Located[] {
    return gather((check, report) => check.job?.({ job }, report));
}

function inStock(stock: Stock, job: JobSettings): Located[] {
    return gather((check, report) => check.stock?.({ stock, job }, report));
}

/** What is wrong with a profile's defaults, and is not wrong with the profile it varies too. */
function inProfile(profile: Profile, { uri, job }: FileContent): Located[] {
    const base = profile.variesFrom;
    const isOwn = (at: Source): boolean => at.uri === uri && !(base && isOneOf(sitesOf(base), at));
    return foundIn(ownSection(profile), job)
        .filter(one => !foundInherited(one, base, job))
        .map(one => moved(one, isOwn, at => at.uri === uri, profile.at));
}

function inRoom(layout: Layout, uri: string): Located[] {
    const { room } = layout;
    const uses = usesOf(layout);
    const located = uses.flatMap(({ section, profile, at, heldDown, isOwn }) => {
        const base = heldDown || profile.isDefault ? profile : profile.variesFrom;       // whose own file says what is wrong with it
        return foundIn(section, room.job).filter(one => !foundInherited(one, base, room.job)).map(one => moved(one, isOwn, isOwn, at));
    });
    if (room.broken) return located;
    const isOwn = ownOfRoom(layout, uri, uses);
    const ofRoom = gather((check, report) => check.room?.({ layout, job: room.job, pieces: () => piecesOf(layout) }, report));
    return [...located, ...ofRoom.map(one => moved(one, isOwn, isOwn, useOf(uses, one.at)?.at ?? room.at))];
}

/** Also those that are left out of lists: they have their names, and will have their length once somebody computes it. */
function piecesOf({ ceiling }: Layout): readonly Piece[] {
    if (!ceiling) return [];
    const { pieces, leftOut } = takeOffOf(ceiling);
    return leftOut.length === 0 ? pieces : [...pieces, ...leftOut];
}

/**
 * What the language found, marked where a comment allows it, and less what a rule says better: that something is not computed
 * yet, where a room is not laid out for it on the same line; that a figure is a likely slip, where a part vanishes by it.
 */
export function besideRules({ findings, allowances }: FileContent, ofRules: readonly Finding[]): Finding[] {
    const lines = new Set(ofRules.filter(({ rule }) => rule === notSupportedLayout.name).map(({ at }) => at.range.start.line));
    const vanishing = ofRules.filter(({ rule }) => rule === partVanishes.name).flatMap(({ at, related }) => [at, ...related.map(place => place.at)]);
    const isSaidBetter = ({ rule, at }: Finding): boolean => rule === 'not-computed-yet' ? lines.has(at.range.start.line)
        : rule === 'likely-slip' && vanishing.some(place => sameSource(place, at));
    return marked(findings.filter(one => !isSaidBetter(one)), allowances);
}

/** Runs one kind of check of every rule. */
function gather(run: (check: Checks, report: Report) => void): Located[] {
    const located: Located[] = [];
    for (const rule of RULES) run(rule.check, found => located.push({ rule, ...found }));
    return located;
}

function toldOf({ rule, severity, at, message, related, fixes }: Located, room?: string): Finding {
    return findingOf({ rule: rule.name, severity: severity ?? rule.severity, at, message, related, fixes, room });
}

/** The same words about the same place, found on two ways, are one finding. */
function once(findings: readonly Finding[]): Finding[] {
    const known = new Set<string>();
    return findings.filter(({ rule, message, at: { uri, range: { start, end } } }) => {
        const key = [rule, uri, start.line, start.character, end.line, end.character, message].join(' ');
        return !known.has(key) && known.add(key);
    });
}
