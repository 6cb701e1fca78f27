import { replacing as replacingWords, type Fix } from '../../findings/finding.ts';
import type { JobSettings } from '../../job/model.ts';
import type { Given, Source } from '../../provenance/source.ts';
import { printIn } from '../../quantity/print-length.ts';
import type { Measure } from '../../quantity/measure.ts';
import type { Ticks } from '../../quantity/ticks.ts';

/**
 * Quick fixes. None is offered where it could not be trusted: a value that nobody said, one that came through an argument
 * (other places use those words too), or a length that cannot be written out exactly.
 */
export function replacing(given: Given<unknown> | undefined, text: string | undefined, title: string): Fix[] {
    if (!given?.said || given.via?.length || text === undefined) return [];
    return [replacingWords(given.at, text, { title })];
}

/** The words at one place of a longer value, such as the width in a rabbet's `1/4" x 1/4"`. */
export function replacingAt(given: Given<unknown> | undefined, at: Source, text: string | undefined, title: string): Fix[] {
    return given ? replacing({ ...given, at }, text, title) : [];
}

/** A line put in at the top of a block, in the block's own shape: on a line of its own, or on the one line it has. */
export function adding(block: { readonly at: Source; readonly body?: Source }, text: string | undefined, title: string): Fix[] {
    if (!block.body || text === undefined) return [];
    const { uri, range: { start, end } } = block.body;
    const behindBrace = { line: start.line, character: start.character + 1 };
    const written = start.line === end.line ? ` ${text};` : `\n${' '.repeat(block.at.range.start.character + 2)}${text}`;
    return [{ title, edits: [{ uri, range: { start: behindBrace, end: behindBrace }, text: written }], preferred: true }];
}

/** The length as a job writes it; undefined where it has no exact spelling in the job's own system. */
export function spelled(ticks: Ticks, job: JobSettings): string | undefined {
    const text = printIn(ticks, job.show.value);
    return text.startsWith('~') ? undefined : text;
}

/** A new length for a value that may carry a tolerance, which stays. Undefined where it cannot be written in one piece. */
export function spelledLike(old: Measure, ticks: Ticks, job: JobSettings): string | undefined {
    const size = spelled(ticks, job);
    if (size === undefined || old.tolerance.length === 0) return size;
    const reach = old.tolerance.length === 1 ? spelled(Math.abs(old.tolerance[0]!.reach), job) : undefined;
    return reach && `${size} ± ${reach}`;
}
