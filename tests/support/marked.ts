import type { Finding, Severity } from '../../src/findings/finding.ts';
import { compareSources, type Position, type Range } from '../../src/provenance/source.ts';

/**
 * Fixtures that say themselves what is expected of them: job text with comments such as
 *
 *     // error wrong-type "wants a length"
 *     every  »24«
 *     held-down  »0.1"«        // hint rounded-decimal
 *     // no warning
 *     height  3"
 *
 * - An expectation is `[no] error|warning|hint [RULE] ["part of the message" ...]`, at the end of a line or alone above it.
 * - `»` and `«` mark the words it is about; they are taken out of the text. A line with one mark takes all of its
 *   expectations there; with several marks there is one expectation a mark, in order. A line without marks: the finding
 *   begins anywhere on that line.
 * - Other words may be asked for with `verbs` (`value 5 1/2"`): what follows them is kept as it stands, for the test to judge.
 * - `// file PATH` alone on a line begins another file of the same fixture.
 *
 * A fixture that is not well formed is rejected: an expectation that is misread would test nothing.
 */
interface MarkedFile {
    readonly path: string;
    /** The text without marks. Expectation comments stay in it, so that lines keep their numbers. */
    readonly text: string;
    /** Everything between marks, in order. */
    readonly marks: readonly Range[];
    readonly expectations: readonly Expectation[];
}
interface Expectation {
    /** `error`, `warning`, `hint`, or one of the verbs that were asked for. */
    readonly verb: string;
    readonly negated: boolean;
    readonly rule?: string;
    /** Parts of the message, all of which must be in it. */
    readonly parts: readonly string[];
    /** What follows the verb, as it stands. */
    readonly rest: string;
    readonly line: number;
    /** The marked words; undefined: anywhere on the line. */
    readonly range?: Range;
}
interface MarkedOptions { readonly name?: string; readonly verbs?: readonly string[] }

const SEVERITIES = ['error', 'warning', 'hint'];
const EXPECTED = /^(no )?(error|warning|hint)(?: ([a-z][a-z0-9]*(?:-[a-z0-9]+)*))?((?: "(?:[^"\\]|\\.)*")*)$/;

export function readMarked(source: string, options: MarkedOptions = {}): MarkedFile[] {
    const parts: { path: string; first: number; lines: string[] }[] = [{ path: options.name ?? 'main.coffer', first: 0, lines: [] }];
    for (const [number, line] of source.split('\n').entries()) {
        const file = /^\/\/ file (\S+)\s*$/.exec(line);
        if (file) parts.push({ path: file[1]!, first: number + 1, lines: [] });
        else parts.at(-1)!.lines.push(line);
    }
    if (parts.length > 1 && parts[0]!.lines.every(line => line.trim() === '')) parts.shift();
    const paths = parts.map(part => part.path);
    if (new Set(paths).size < paths.length) throw new Error(`A fixture names a file twice: ${paths.join(', ')}`);
    return parts.map(part => readOne(part.path, part.first, part.lines, options.verbs ?? []));
}

function readOne(path: string, first: number, lines: readonly string[], verbs: readonly string[]): MarkedFile {
    const fail = (line: number, what: string): never => { throw new Error(`${path}, line ${first + line + 1} of the fixture: ${what}`); };
    const clean: string[] = [];
    const marks: Range[] = [];
    const marksOfLine: Range[][] = [];
    let open: Position | undefined;
    for (const [number, line] of lines.entries()) {
        let text = '';
        for (const character of line) {
            if (character === '»') {
                if (open) fail(number, 'a mark inside a mark.');
                open = { line: number, character: text.length };
            } else if (character === '«') {
                if (!open) return fail(number, 'a mark is closed that was not opened.');
                const range = { start: open, end: { line: number, character: text.length } };
                marks.push(range);
                (marksOfLine[open.line] ??= []).push(range);
                open = undefined;
            } else text += character;
        }
        clean.push(text);
    }
    if (open) fail(open.line, 'a mark is never closed.');

    const expectations: Expectation[] = [];
    let waiting: Omit<Expectation, 'line' | 'range'>[] = [];
    for (const [number, text] of clean.entries()) {
        const comment = commentOf(text);
        const said = comment === undefined ? []
            : partsOf(comment).map(one => readExpectation(one.trim(), verbs, what => fail(number, what))).filter(one => one !== undefined);
        const alone = text.trimStart().startsWith('//');
        if (alone) { waiting.push(...said); continue; }
        if (text.trim() === '') continue;
        const here = [...waiting, ...said];
        waiting = [];
        const ranges = marksOfLine[number] ?? [];
        if (here.length === 0) continue;
        if (ranges.length > 1 && ranges.length !== here.length) fail(number, `${ranges.length} marks, but ${here.length} expectations.`);
        for (const [i, one] of here.entries()) {
            const range = ranges.length > 1 ? ranges[i] : ranges[0];
            expectations.push({ ...one, line: number, ...range && { range } });
        }
    }
    if (waiting.length) fail(clean.length - 1, 'an expectation with no line below it.');
    return { path, text: clean.join('\n'), marks, expectations };
}

/** The text of the line's comment. A `//` inside a text in quotes is none; a quote after a digit is an inch mark. */
function commentOf(line: string): string | undefined {
    const found = /^(?:\d"|[^"/]|"(?:[^"\\]|\\.)*"|\/(?!\/))*\/\/(.*)$/.exec(line);
    return found?.[1]!.trim();
}

/** What stands between semicolons, those in quotes apart. */
function partsOf(comment: string): string[] {
    return comment.match(/(?:"(?:[^"\\]|\\.)*"|[^;])+/g) ?? [];
}

function readExpectation(text: string, verbs: readonly string[], fail: (what: string) => never): Omit<Expectation, 'line' | 'range'> | undefined {
    const first = text.split(' ', 1)[0]!;
    const second = text.split(' ', 2)[1];
    if (verbs.includes(first)) return { verb: first, negated: false, parts: [], rest: text.slice(first.length).trim() };
    if (!SEVERITIES.includes(first) && !(first === 'no' && SEVERITIES.includes(second ?? ''))) return undefined;
    const found = EXPECTED.exec(text);
    if (!found) return fail(`not an expectation: ${text}`);
    const parts = [...found[4]!.matchAll(/"((?:[^"\\]|\\.)*)"/g)].map(part => part[1]!.replace(/\\(.)/g, '$1'));
    return { verb: found[2]!, negated: found[1] !== undefined, ...found[3] !== undefined && { rule: found[3] }, parts, rest: text };
}

/**
 * What differs between the findings and the expectations of a fixture, in words; an empty list where all is as expected.
 * Every finding must be expected and every expectation met, each by a finding of its own.
 * `only` restricts both to one severity or to some rules, for tests that look at one thing.
 */
export function mismatches(files: readonly { readonly file: MarkedFile; readonly findings: readonly Finding[] }[],
    only: (finding: { readonly severity: Severity; readonly rule: string }) => boolean = () => true): string[] {
    const wrong: string[] = [];
    for (const { file, findings } of files) {
        const left = findings.filter(only).sort((a, b) => compareSources(a.at, b.at));
        for (const one of file.expectations) {
            if (!SEVERITIES.includes(one.verb)) continue;
            const met = left.findIndex(finding => matches(one, finding));
            if (one.negated && met >= 0) wrong.push(`${file.path}:${one.line + 1}: not expected: ${inWords(left[met]!)}`);
            else if (!one.negated && met < 0) wrong.push(`${file.path}:${one.line + 1}: missing: ${one.rest}`);
            if (met >= 0) left.splice(met, 1);
        }
        for (const finding of left) wrong.push(`${file.path}:${finding.at.range.start.line + 1}: not expected: ${inWords(finding)}`);
    }
    return wrong;
}

function matches(one: Expectation, finding: Finding): boolean {
    const { start, end } = finding.at.range;
    const there = one.range
        ? start.line === one.range.start.line && start.character === one.range.start.character
            && end.line === one.range.end.line && end.character === one.range.end.character
        : start.line === one.line;
    return there && finding.severity === one.verb && (one.rule === undefined || finding.rule === one.rule)
        && one.parts.every(part => finding.message.includes(part));
}

function inWords(finding: Finding): string {
    const { start, end } = finding.at.range;
    return `${finding.severity} ${finding.rule} at ${start.character}-${end.line === start.line ? '' : `${end.line + 1}:`}${end.character}: ${finding.message}`;
}
