import type { Profile } from '../../job/model.ts';
import { sameSource } from '../../provenance/source.ts';
import * as ast from '../generated/ast.ts';
import { isBroken } from '../types/broken.ts';
import { sourceOf, sourceOfProperty } from '../types/place.ts';
import { quoted } from '../types/words.ts';
import { Block, type Word } from './block.ts';
import type { Vocabulary } from '../scope/vocabulary.ts';
import { Evaluator, type Arguments, type Elsewhere } from './evaluate.ts';
import { warnNoEffect, warnUnusedBeside } from './no-effect.ts';
import { isLeftOut, notComputed, partsNotComputed } from './not-computed-yet.ts';
import { readParts } from './parts.ts';
import { printValue } from './print.ts';
import { sameRaised, shownAtUser, type Raised } from './raised.ts';
import { Reading } from './reading.ts';
import { requirementsOf } from './requirements.ts';
import { keyOfDeclaration } from './stock.ts';
import { raisedFor } from './uncounted.ts';
import { keyOf, sameValue, type Known } from './value.ts';

/** A profile with its arguments applied, what that raised, and the values it was made with. */
export interface Instance {
    readonly profile: Profile;
    readonly raised: readonly Raised[];
    /** False where a parameter has neither an argument nor a default: then the profile is only known in part. */
    readonly complete: boolean;
    readonly values: readonly (Known | undefined)[];
}

/** The instances of one profile: with its own defaults, and with arguments. */
export interface Family { baseline?: Instance; readonly varied: Instance[] }

/** Where profiles that are worked out are kept, and what they are worked out with. */
export interface Profiles extends Elsewhere {
    readonly vocabulary: Vocabulary;
    /** Works out what the built-in library says holds unsaid. */
    readonly builtin: Evaluator;
    family(declaration: ast.Profile): Family;
    /** A profile with its own defaults; parameters without one are unknown in it. */
    baseline(declaration: ast.Profile): Instance | undefined;
}

/** Instances with arguments that are kept beside the default one. */
const MOST_KEPT = 64;

/**
 * A profile's key holds those of the profiles it is given. A few profiles that hand each other on twice over make a key
 * longer than any text can be; nothing a person builds comes near this.
 */
const LONGEST_KEY = 20_000;

/**
 * The instance of a profile for some arguments. The same declaration with equal arguments, given at the same places, is
 * the same object as long as nothing that the declaration reaches has changed. (The places count because the values
 * carry them: a finding is shown at the argument that caused it.)
 */
export function instanceOf(profiles: Profiles, declaration: ast.Profile, given: Arguments): Instance {
    const family = profiles.family(declaration);
    family.baseline ??= make(profiles, declaration, new Map(), undefined);
    if (given.size === 0) return family.baseline;
    const own = family.baseline.values;
    const values = declaration.params.map((parameter, i) => given.has(parameter) ? given.get(parameter) : own[i]);
    if (values.every((value, i) => sameValue(value?.value, own[i]?.value))) return family.baseline;
    const kept = family.varied.find(one => one.values.every((value, i) => isSame(value, values[i])));
    if (kept) return kept;
    const made = make(profiles, declaration, given, family.baseline);
    family.varied.push(made);
    if (family.varied.length > MOST_KEPT) family.varied.shift();
    return made;
}

/** What a profile was made from, for whoever changes something of it. */
const origins = new WeakMap<Profile, { readonly declaration: ast.Profile; readonly given: Arguments; readonly raised: readonly Raised[] }>();

/** The same profile with something in it said otherwise, by lines whose path goes on into it: `beams.sides.corners butted`. */
export function changedProfile(profiles: Profiles, profile: Profile, changes: readonly Word[]): {
    readonly profile: Profile; readonly raised: readonly Raised[];
} | undefined {
    const origin = origins.get(profile);
    if (!origin) return undefined;
    const changed = make(profiles, origin.declaration, origin.given, { profile, raised: origin.raised, complete: true, values: [] }, changes);
    return { profile: changed.profile, raised: changed.raised.filter(one => !origin.raised.some(other => sameRaised(one, other))) };
}

function isSame(a: Known | undefined, b: Known | undefined): boolean {
    if (a === b) return true;
    if (!a || !b || a.via.length !== b.via.length) return false;
    return sameValue(a.value, b.value) && a.via.every((source, i) => sameSource(source, b.via[i]!));
}

function make(profiles: Profiles, declaration: ast.Profile, given: Arguments, baseline: Instance | undefined, changes: readonly Word[] = []): Instance {
    const raised: Raised[] = [];
    const evaluator = new Evaluator(profiles, one => raised.push(one), given);
    const values = declaration.params.map(parameter => evaluator.parameter(parameter));
    const chain = lineage(declaration, evaluator);
    const block = new Block(profiles.vocabulary.kind('Profile')!, profiles.vocabulary);
    for (const profile of chain.profiles) block.add(profile.body);
    for (const { line, index } of changes) block.addLine(line, index + 1);

    const key = keyOfDeclaration(declaration);
    const reading = new Reading(block, evaluator, profiles.builtin, key);
    const isChanged = (i: number): boolean => baseline !== undefined && changes.length === 0 && !sameValue(values[i]?.value, baseline.values[i]?.value);
    const changed = declaration.params.flatMap((parameter, i) => (isChanged(i) ? [{ parameter, value: values[i] }] : []));
    const words = changes.map(({ line }) => line.$cstNode?.text ?? '');
    const own = ownKey(key, declaration, values, words);
    if (own === undefined) raised.push(tooMuchInside(declaration));
    const complete = own !== undefined && declaration.params.every(parameter => parameter.default ?? given.has(parameter));
    const base = chain.sound ? chain.profiles.at(-2) : undefined;
    const variesFrom = baseline ? (baseline.complete ? baseline : undefined) : base && profiles.baseline(base);
    const profile: Profile = {
        name: declaration.name ?? '', at: sourceOfProperty(declaration, 'name'), key: own ?? key, isDefault: !baseline && complete,
        ...(baseline ? baseline.complete && { defaultKey: baseline.profile.key } : complete && { defaultKey: own }),
        ...variesFrom?.complete && { variesFrom: variesFrom.profile },
        label: changes.length > 0 && baseline ? `${baseline.profile.label}, changed` : labelOf(declaration, changed),
        ...readParts(reading, declaration),
        requires: requirementsOf(block, evaluator), notComputed: partsNotComputed(block),
    };
    checkSection(declaration, reading, chain.sound, one => raised.push(one));
    reportNotComputed(reading, raised);
    const solid = block.blocks.get('solid');
    if (solid) warnUnusedBeside(solid, { profile: declaration, block }, one => raised.push(one));
    const shown = base ? shownAtUser(raised, profiles.baseline(base)?.raised ?? [], sourceOf(declaration)) : raised;
    origins.set(profile, { declaration, given, raised: shown });
    return { profile, raised: shown, complete, values };
}

/** What a profile is known by: its declaration and the values of its parameters. Undefined where that is too long to be kept. */
function ownKey(key: string, declaration: ast.Profile, values: Instance['values'], changes: readonly string[]): string | undefined {
    const keys = [...values.map((value, i) => `${declaration.params[i]!.name}: ${keyOf(value?.value)}`), ...changes];
    return keys.reduce((sum, each) => sum + each.length, 0) > LONGEST_KEY ? undefined : `${key}(${keys.join(', ')})`;
}

function tooMuchInside(declaration: ast.Profile): Raised {
    return { rule: 'out-of-range', at: sourceOfProperty(declaration, 'name'), message: `${quoted(declaration.name)} is given profiles that are given profiles, and so on, too many deep to follow.` };
}

/** So many profiles may stand behind one by `like`; every one of them is read with all that stand behind it. */
const LONGEST_LINEAGE = 32;

/** A profile and what it is like, the deepest first. Parameters of what it is like are bound on the way. */
function lineage(declaration: ast.Profile, evaluator: Evaluator): { profiles: ast.Profile[]; sound: boolean } {
    const profiles = [declaration];
    for (let ref = declaration.base; ref; ref = profiles.at(-1)!.base) {
        const base = ref.target?.ref;
        if (!ast.isProfile(base) || isBroken(profiles.at(-1)!)) return { profiles: profiles.reverse(), sound: false };
        if (profiles.includes(base)) {
            if (base === declaration) evaluator.raise(ringOf(profiles, ref));
            return { profiles: profiles.reverse(), sound: false };
        }
        if (profiles.length > LONGEST_LINEAGE) {
            evaluator.raise(tooLong(declaration));
            return { profiles: profiles.reverse(), sound: false };
        }
        evaluator.give(evaluator.argumentsOf(ref));
        profiles.push(base);
    }
    return { profiles: profiles.reverse(), sound: true };
}

function tooLong(declaration: ast.Profile): Raised {
    const at = sourceOf(declaration.base ?? declaration);
    return { rule: 'out-of-range', at, message: `${quoted(declaration.name)} is like a profile that is like another, and so on: ${LONGEST_LINEAGE} in a row is the limit. Make it like a profile nearer the start of the chain.` };
}

function ringOf(profiles: readonly ast.Profile[], closing: ast.Ref): Raised {
    const own = profiles[0]!;
    const names = profiles.map(profile => quoted(profile.name));
    const at = sourceOf(own.base ?? closing);
    if (profiles.length === 1) return { rule: 'goes-round-in-a-ring', at, message: `${names[0]} is like itself; it has to be like another profile, or give everything itself.` };
    return { rule: 'goes-round-in-a-ring', at, message: `${[...names, names[0]].join(' is like ')}: one of them has to give everything itself.` };
}

/** Without blocking the inside of the beam has no width, which its block alone does not tell. */
function checkSection(declaration: ast.Profile, reading: Reading, sound: boolean, raise: (raised: Raised) => void): void {
    const { block } = reading;
    if (!sound || block.blocks.has('solid') || block.blocks.has('blocking') || block.entries.has('wraps') || reading.lost('blocking', undefined) || !block.blocks.has('bottom') || declaration.body === undefined) return;
    raise({ rule: 'not-said', at: sourceOfProperty(declaration, 'name'), message: `${quoted(declaration.name)} has no ${quoted('blocking')}, and the blocking sets the inside width of the beam. Give it a stock: blocking { stock ... }; or write what the beam wraps: wraps 5" x 9".` });
}

function reportNotComputed(reading: Reading, raised: Raised[]): void {
    notComputed(reading, one => raised.push(raisedFor(one)));
    for (const name of reading.block.blocks.keys()) {
        if (isLeftOut(reading.block, name)) continue;
        notComputed(reading.inner(name)!, one => raised.push(raisedFor(one)));
        warnNoEffect(reading.inner(name)!, one => raised.push(one));
    }
}

/** `groove-box(groove: 6 mm)`: only what differs from the defaults. */
function labelOf(declaration: ast.Profile, changed: readonly { parameter: ast.Param; value: Known | undefined }[]): string {
    const name = declaration.name ?? '';
    if (changed.length === 0) return name;
    return `${name}(${changed.map(({ parameter, value }) => `${parameter.name}: ${printValue(value?.value)}`).join(', ')})`;
}

