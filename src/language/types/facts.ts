import { type Part, PARTS } from '../../job/part.ts';
import type { Spoils } from '../../job/not-computed.ts';
import { readLength } from '../../quantity/read-length.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import type * as ast from '../generated/ast.ts';
import { kept } from '../../plain/kept.ts';

/**
 * What the built-in library says in parentheses behind the type of a property or of a modifier, read once. All that is true of every
 * value of it stands there and nowhere else; builtin.coffer explains the words.
 */
export interface Facts {
    /** Lengths that are read: more than this … */
    readonly moreThan?: Ticks;
    /** … at least this … */
    readonly least?: Ticks;
    /** … and at most this. */
    readonly most?: Ticks;
    /** What hardly any job is outside of; of a value with two figures there may be one for each. */
    readonly usual: readonly Usual[];
    /** As long as a room or a board, and mostly said in feet or in meters. */
    readonly mostlyInFeet: boolean;
    /** What holds unsaid where a job shows millimeters, and the declared default is no whole figure in them: one figure, or least and most. */
    readonly inMillimeters?: readonly Ticks[];
    /** Each line that says it adds to what is known; `by`: the modifier in which they have to differ. */
    readonly severalLines?: { readonly by?: string };
    /** Properties (of a modifier: modifiers) that say the same another way, so that one takes the place of the other. */
    readonly insteadOf: readonly string[];
    /** Of a modifier: it says more of the one before it, and may be said again after the next. */
    readonly follows?: string;
    /** It counts only with one of these words of another property. */
    readonly countsWith?: { readonly property: string; readonly words: readonly string[] };
    /** What a tolerance does is computed. */
    readonly keepsTolerance: boolean;
    /** What one of it is, where it is the price or the time of something counted. */
    readonly reckonedBy: readonly string[];
    /** What its names stand for, where nobody declares them. */
    readonly names?: string;
    readonly notComputed: readonly NotComputedFact[];
}
/** What is usual. Outside of it the pen most likely slipped. */
export interface Usual {
    /** What least and most are: ticks, shares (1 is 100 %), minutes, minutes a foot, a number, a gauge. */
    readonly of: 'length' | 'share' | 'minutes' | 'minutes a foot' | 'count' | 'gauge';
    readonly least: number; readonly most: number;
    /** What the slip most likely is, where somebody knows better than the figure. */
    readonly slip?: string;
}
/** What can be said and is not computed yet: of all values, or only of some words. */
export interface NotComputedFact {
    readonly words: string;
    readonly only?: readonly string[];
    /** What it makes wrong. `told`: the layout has an error of its own for it, and makes nothing that would be wrong. */
    readonly spoils: Spoils | 'told';
}

export const factsOf = kept((property: ast.PropertyDecl): Facts => property.facts.map(read).reduce<Facts>(together, NONE));

const NONE: Facts = { usual: [], mostlyInFeet: false, insteadOf: [], keepsTolerance: false, reckonedBy: [], notComputed: [] };

/** Of what may be said more than once all is kept. */
function together(facts: Facts, one: Partial<Facts>): Facts {
    return { ...facts, ...one, usual: [...facts.usual, ...one.usual ?? []], notComputed: [...facts.notComputed, ...one.notComputed ?? []] };
}

function read(fact: ast.Fact): Partial<Facts> {
    const [first, second, ...others] = fact.words, rest = [second, ...others].filter(word => word !== undefined);
    switch (first) {
        case 'more': return { moreThan: lengthOf(fact) };
        case 'at': return second === 'least' ? { least: lengthOf(fact) } : { most: lengthOf(fact) };
        case 'usual': return { usual: [usualOf(fact)] };
        case 'mostly': return { mostlyInFeet: true };
        case 'in': return { inMillimeters: fact.figures.map(figure => valueOf(figure).value) };
        case 'on': return { severalLines: { ...others[2] !== undefined && { by: others[2] } } };
        case 'instead': return { insteadOf: listOf(others) };
        case 'follows': return { follows: second! };
        case 'counts': return { countsWith: { property: others[0]!, words: listOf(others.slice(1)) } };
        case 'keeps': return { keepsTolerance: true };
        case 'reckoned': return { reckonedBy: listOf(others) };
        case 'names': return { names: rest.join(' ') };
        case 'not': return { notComputed: [notComputedOf(fact, second === 'computed' ? others : others.slice(1), second === 'laid')] };
        default: throw new Error(`builtin.coffer says \`${fact.$cstNode?.text}\` of \`${fact.$container.name}\`, and nothing reads that.`);
    }
}

/** `band or half-beam`. */
function listOf(words: readonly string[]): string[] {
    return words.filter(word => word !== 'or');
}

function lengthOf({ figures }: ast.Fact): Ticks {
    return valueOf(figures[0]!).value;
}

/** `usual up to 2"`, `usual 1' to 24'`, `usual up to 60 min per ft`, each with a text where somebody knows the slip. */
function usualOf({ figures, per, texts: [slip] }: ast.Fact): Usual {
    const values = figures.map(valueOf), { of, value: most } = values.at(-1)!;
    const least = values.length > 1 ? values[0]!.value : 0;
    return { of: per === undefined ? of : 'minutes a foot', least, most, ...slip !== undefined && { slip } };
}

function valueOf(figure: string): { of: Usual['of']; value: number } {
    const number = Number.parseFloat(figure.replace('#', ''));
    if (/^#|ga/.test(figure)) return { of: 'gauge', value: number };
    if (figure.endsWith('%')) return { of: 'share', value: number / 100 };
    if (/min$|h$/.test(figure)) return { of: 'minutes', value: figure.endsWith('h') ? number * 60 : number };
    const length = readLength(figure);
    return length ? { of: 'length', value: Math.round(length.valueOf()) } : { of: 'count', value: number };
}

/** `casing "what is not computed" "what can be said instead"`, `spoiling trim "what is not computed"`, `spoiling figures "…"`. */
function notComputedOf({ texts: [said, instead] }: ast.Fact, words: readonly string[], isTold: boolean): NotComputedFact {
    const spoiling = words.indexOf('spoiling'), only = listOf(spoiling < 0 ? words : words.slice(0, spoiling));
    const parts: readonly Part[] = spoiling < 0 ? [] : PARTS.filter(part => words.indexOf(part) > spoiling);
    const spoils = isTold ? 'told' : instead !== undefined ? { instead } : parts.length > 0 ? { parts } : words.includes('figures') ? 'figures' : 'nothing';
    return { words: said!, ...only.length > 0 && { only }, spoils };
}
