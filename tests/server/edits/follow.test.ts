import fc from 'fast-check';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { expect, test } from 'vitest';
import { editBetween, editsOf, follow, type Edit, type Span } from '../../../src/server/edits/follow.ts';
import { runs } from '../../support/full.ts';

/** The text with the words between « and » followed through the edits; undefined where they are lost. */
function followed(marked: string, after: string | ((before: string) => Edit[])): string | undefined {
    const before = marked.replace(/[«»]/g, ''), from = marked.indexOf('«');
    const edits = typeof after === 'string' ? [editBetween(before, after)] : after(before);
    let span: Span | undefined = { from, to: marked.indexOf('»') - 1 }, text = before;
    for (const edit of edits) {
        span &&= follow(span, edit);
        text = edit.before.slice(0, edit.from) + edit.text + edit.before.slice(edit.to);
    }
    return span && `${text.slice(0, span.from)}«${text.slice(span.from, span.to)}»${text.slice(span.to)}`;
}
const replaced = (old: string, words: string) => (before: string): Edit[] => {
    const from = before.indexOf(old);
    return [{ before, from, to: from + old.length, text: words }];
};

test.each<[what: string, marked: string, after: string | ((before: string) => Edit[]), expected: string | undefined]>([
    ['a line above', 'a\nsides «deep»\n', 'a\nb\nsides deep\n', 'a\nb\nsides «deep»\n'],
    ['a letter before it', 'sides «deep»\n', replaced('sides', 'ssides'), 'ssides «deep»\n'],
    ['behind it, and it does not grow', 'sides «deep» x', replaced(' x', 'er x'), 'sides «deep»er x'],
    ['before it, and it does not grow', 'sides «deep»', 'sides xdeep', 'sides x«deep»'],
    ['inside it', 'sides «deep»', 'sides deeep', 'sides «deeep»'],
    ['a value written over', 'gap «1/16"»\n', replaced('1/16"', '3/32"'), 'gap «3/32"»\n'],
    ['its line taken away', 'a\ngap «1/16"»\nb\n', 'a\nb\n', undefined],
    ['the words taken away', 'gap «1/16"»\n', 'gap \n', undefined],
    ['its beginning overwritten', 'line «B thick» end', replaced('line B ', 'x '), 'x «thick» end'],
    ['its end overwritten', 'line «B thick» end', replaced(' thick end', ' y'), 'line «B»  y'.replace('  ', ' ')],
    ['lines changed around it', 'a 1\ngap «1/16"»\nb 1\n', 'a 2\ngap 1/16"\nb 2\n', 'a 2\ngap «1/16"»\nb 2\n'],
    ['lines moved and set in columns', 'a 1\ngap «1/16"»\nb 1\n', 'a 2\n\n    gap   1/16"\nb 2\n', 'a 2\n\n    gap   «1/16"»\nb 2\n'],
    ['one of two lines alike', 'a 1\ngap «1/16"»\ngap 1/16"\nb 1\n', 'a 2\ngap 1/16"\nb 2\n', undefined],
    ['another text altogether', 'room den\n  gap «1/16"»\n', 'edition 1\nstock\n', undefined],
])('%s', (_, marked, after, expected) => {
    expect(followed(marked, after)).toBe(expected);
});

test('words that no edit touches are the same words afterwards, through any edits, in any spelling of these', () => {
    const scrap = fc.stringMatching(/^[ab\n]{0,6}$/);
    const step = fc.record({ inFront: fc.boolean(), at: fc.nat(40), length: fc.nat(8), text: scrap });
    fc.assert(fc.property(scrap, scrap, fc.array(step, { maxLength: 5 }), (head, tail, steps) => {
        const words = 'WORDS';
        const document = TextDocument.create('file:///a', '', 0, `${head}${words}${tail}`);
        let span: Span | undefined = { from: head.length, to: head.length + words.length };
        const changes: { range: { start: ReturnType<TextDocument['positionAt']>; end: ReturnType<TextDocument['positionAt']> }; text: string }[] = [];
        const scratch = TextDocument.create('file:///a', '', 0, document.getText());
        for (const { inFront, at, length, text } of steps) {
            const place = scratch.getText().indexOf(words), behind = place + words.length;
            const from = inFront ? Math.min(at, place) : Math.min(behind + at, scratch.getText().length);
            const to = inFront ? Math.min(from + length, place) : Math.min(from + length, scratch.getText().length);
            const change = { range: { start: scratch.positionAt(from), end: scratch.positionAt(to) }, text };
            changes.push(change);
            TextDocument.update(scratch, [change], 0);
        }
        for (const edit of editsOf(document, changes)) span &&= follow(span, edit);
        expect(span && document.getText().slice(span.from, span.to)).toBe(words);
        expect(document.getText()).toBe(scratch.getText());
        const between = follow({ from: head.length, to: head.length + words.length }, editBetween(`${head}${words}${tail}`, scratch.getText()));
        if (between) expect(scratch.getText().slice(between.from, between.to)).toBe(words);
    }), { seed: 7, numRuns: runs(2000) });
});
