import { replacing, type Fix, type Said as SaidOfAny } from '../../findings/finding.ts';
import type { Source } from '../../provenance/source.ts';
import type { LanguageRule } from './rules.ts';

/** What a check of the language says. */
export type Said = SaidOfAny & { readonly rule: LanguageRule };
export type Report = (said: Said) => void;

/** One fix for each thing that may have been meant, the likeliest first. */
export function replacingAny(at: Source, texts: readonly string[]): readonly Fix[] {
    return texts.map((text, i) => replacing(at, text, { preferred: i === 0 }));
}
