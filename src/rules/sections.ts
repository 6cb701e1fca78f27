import type { Section } from '../ceiling/model.ts';
import { sectionOf } from '../ceiling/section.ts';
import type { JobSettings, Profile } from '../job/model.ts';
import { kept } from '../plain/kept.ts';
import { sameSource, type Source } from '../provenance/source.ts';
import { RULES } from './index.ts';
import type { Found, Rule } from './rule.ts';
import { profileTroublesOf } from './support/troubles.ts';

/** What a check found, and the rule it is. */
export interface Located extends Found { readonly rule: Rule }

/** The section of a profile as it is, without a line's own held-down. */
export const ownSection = kept((profile: Profile): Section => sectionOf(profile));

/**
 * Everything wrong with a section, what follows from something else left away. Kept by profile and job, which stay the
 * same objects while a room that uses them is being edited.
 */
export function foundIn(section: Section, job: JobSettings): readonly Located[] {
    if (section.heldDown !== section.profile.sides?.heldDown) return look(section, job);
    return foundUnder(section.profile, section)(job);
}

/** Whether one of the profiles that this one varies has the same wrong at the same words: then it is said there. */
export function foundInherited(one: Located, base: Profile | undefined, job: JobSettings): boolean {
    for (let profile = base; profile; profile = profile.variesFrom) {
        const there = foundIn(ownSection(profile), jobAt(profile, job));
        if (there.some(other => other.rule === one.rule && sameSource(other.at, one.at))) return true;
    }
    return false;
}

const foundUnder = kept((_: Profile, section: Section) => kept((job: JobSettings): readonly Located[] => look(section, job)));

/** Of flanks that are unlike each is looked at; what is only wrong with the other one says so. */
function look(section: Section, job: JobSettings): Located[] {
    const own = lookAtFlank(section, job), other = section.other ? lookAtFlank(section.other, job) : [];
    const isTold = (one: Located): boolean => own.some(({ rule, at, message }) => rule === one.rule && message === one.message && sameSource(at, one.at));
    return [...own, ...other.filter(one => !isTold(one)).map(one => ({ ...one, message: one.message.includes('other side') ? one.message : `${one.message} That is on the flank with the other side.` }))];
}

function lookAtFlank(section: Section, job: JobSettings): Located[] {
    const located: Located[] = [];
    for (const rule of RULES) rule.check.section?.({ section, job }, found => located.push({ rule, ...found }));
    return causes(located, section);
}

/** One cause, one error: a size that is nothing makes all others meaningless, a broken requirement what its arguments lead to. */
function causes(located: readonly Located[], section: Section): Located[] {
    if (profileTroublesOf(section, 'not-positive').length > 0) return located.filter(({ rule }) => rule.name === 'not-positive');
    const broken = located.filter(({ rule }) => rule.name === 'require-fails');
    const arguments_ = broken.flatMap(({ via }) => via ?? []);
    const isSilenced = ({ rule, at, via }: Located): boolean =>
        rule.name !== 'require-fails' && includesAny(via ?? [], arguments_)
        || located.some(other => rule.silentAfter?.includes(other.rule.name) === true && sameSource(other.at, at));
    return located.filter(one => !isSilenced(one));
}

function includesAny(places: readonly Source[], others: readonly Source[]): boolean {
    return places.some(place => others.some(other => sameSource(place, other)));
}

/**
 * The settings under which the profile's own file was looked at, as far as a section depends on them: a job holds in its
 * folder and below. Outside of it nobody has said how thick the paint is.
 */
function jobAt(profile: Profile, job: JobSettings): JobSettings {
    const folder = job.at?.uri.slice(0, job.at.uri.lastIndexOf('/') + 1);
    if (!job.paintFilm.said || (folder !== undefined && profile.at.uri.startsWith(folder))) return job;
    return unsaid(job);
}
const unsaid = kept((job: JobSettings): JobSettings => ({ ...job, paintFilm: { ...job.paintFilm, said: false } }));
