import { compareFindings, type Finding } from '../findings/finding.ts';
import { spoiledPieces } from '../job/not-computed.ts';
import type { Room } from '../job/model.ts';
import { sameSource } from '../provenance/source.ts';
import { notVerified } from '../rules/not-verified.ts';
import { wallBows } from '../rules/wall-bows.ts';

/**
 * Why something may not be built as it stands: it goes with a room, and is told at the head of everything that is made from
 * it, with its place in the text. Nothing in it: nothing was found.
 */
export interface Standing {
    /** Errors that stand open: of the text, of the rules, of the dry fit; in the room's file and in what it uses. In the order of the text. */
    readonly errors: readonly Told[];
    /** What is said and not computed yet, and makes a figure wrong or missing. Pieces that it would make wrong are left out of everything. */
    readonly notComputed: readonly Told[];
    /** What is said and not computed yet, while no figure would be another for it: told, and nothing is condemned for it. */
    readonly notUsed: readonly Told[];
    /** What has to be measured or seen to before anything is cut: told, and nothing is condemned for it, since a price may well stand on a sketch. */
    readonly beforeCutting: readonly Told[];
}
/** A finding, with its place as it is told: `den.coffer:12:5`, counted from one. */
export interface Told extends Pick<Finding, 'rule' | 'severity' | 'message' | 'at' | 'room'> { readonly file: string; readonly place: string }

export const SOUND: Standing = { errors: [], notComputed: [], notUsed: [], beforeCutting: [] };

/** Warnings that lengths of pieces hang on. */
const BEFORE_CUTTING: ReadonlySet<string> = new Set<string>([notVerified.name, wallBows.name]);

export function isSound({ errors, notComputed }: Standing): boolean {
    return errors.length === 0 && notComputed.length === 0;
}

/**
 * @param found everything found in the room's file and in the files it is made from
 * @param passed what is wrong there and not with the room: in an alternate, say
 * @param nameOf what a file is called where it is told
 */
export function standingOf(room: Room, found: readonly Finding[], passed: (finding: Finding) => boolean, nameOf: (uri: string) => string): Standing {
    const told = (finding: Finding): Told => toldAs(finding, nameOf);
    const own = found.filter(finding => !passed(finding) && !isOfAnother(finding, room)).sort(compareFindings);
    return {
        errors: own.filter(({ severity, allowed }) => severity === 'error' && !allowed).map(told),
        ...uncomputed(own.filter(finding => !finding.allowed || leavesOut(finding, room)).map(told)),
        beforeCutting: own.filter(({ rule, severity, allowed }) => BEFORE_CUTTING.has(rule) && severity !== 'error' && !allowed).map(told),
    };
}

/** What of it is not computed yet: as a warning where a figure is wrong or missing for it, else as a hint. */
export function uncomputed(told: readonly Told[]): Pick<Standing, 'notComputed' | 'notUsed'> {
    const all = told.filter(({ rule, severity }) => rule === 'not-computed-yet' && severity !== 'error');
    return { notComputed: all.filter(({ severity }) => severity === 'warning'), notUsed: all.filter(({ severity }) => severity !== 'warning') };
}

export function toldAs({ rule, severity, message, at, room }: Finding, nameOf: (uri: string) => string): Told {
    const { uri, range: { start } } = at, file = nameOf(uri);
    return { rule, severity, message, at, ...room !== undefined && { room }, file, place: `${file}:${start.line + 1}:${start.character + 1}` };
}

/** A mistake in the text of another room may reach further than it stands; what a rule finds there does not. */
function isOfAnother({ room: of, at }: Finding, room: Room): boolean {
    return of !== undefined && of !== room.name && at.uri === room.at.uri;
}

/** Allowed or not: the pieces are missing. */
function leavesOut({ at }: Finding, { notComputed }: Room): boolean {
    return notComputed.some(one => spoiledPieces(one) && sameSource(one.at, at));
}

/** Of several rooms; what they share is told once. */
export function standingTogether(standings: readonly Standing[]): Standing {
    const all = (which: keyof Standing): Told[] => once(standings.flatMap(standing => standing[which]));
    return { errors: all('errors'), notComputed: all('notComputed'), notUsed: all('notUsed'), beforeCutting: all('beforeCutting') };
}

function once(all: readonly Told[]): Told[] {
    const seen = new Set<string>();
    return all.filter(({ place, rule, message }) => {
        const key = `${place} ${rule} ${message}`;
        return !seen.has(key) && Boolean(seen.add(key));
    });
}

