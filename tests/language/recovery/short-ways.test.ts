import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { createLangiumParser, isAstNode, isReference } from 'langium';
import { describe, expect, test } from 'vitest';
import { createFront } from '../../../src/language/front.ts';
import { FULL } from '../../support/full.ts';

// The reference is Langium's own parser of the same grammar, which takes every rule the long way.
const front = createFront(), ours = front.parser.LangiumParser, langiums = createLangiumParser(front);

/** What a tree says: each node with what is in it, and where each node and each name stands. */
function said(value: unknown): unknown {
    if (Array.isArray(value)) return value.map(said);
    if (isReference(value)) return { name: value.$refText, from: value.$refNode?.offset, end: value.$refNode?.end };
    if (!isAstNode(value)) return value;
    const { $cstNode: words, $containerProperty, $containerIndex, ...rest } = value;
    const inside = Object.entries(rest).filter(([name]) => name !== '$container' && name !== '$document');
    const place = { from: words?.offset, end: words?.end, range: words?.range, leads: words?.astNode === value };
    return { ...Object.fromEntries(inside.map(([name, part]) => [name, said(part)])), $containerProperty, $containerIndex, ...place };
}

function check(text: string): number {
    const { value, parserErrors } = ours.parse(text);
    if (parserErrors.length > 0) return 0;
    expect(said(value)).toEqual(said(langiums.parse(text).value));
    return 1;
}

describe('a name and a value are found at once, and the tree is the one of the long way', () => {
    for (const folder of ['src/language/kinds', 'examples/quince-lane']) {
        const files = readdirSync(folder).filter(name => name.endsWith('.coffer'));
        test(folder, () => {
            for (const file of files) expect(check(readFileSync(`${folder}/${file}`, 'utf8')), file).toBe(1);
        });
    }

    test('values of every form, in every place one can stand', () => {
        const word = fc.constantFrom('width', 'x1', 'like', 'wall', 'line', 'of', 'poplar-1x6', 'as', 'edition');
        const literal = fc.constantFrom('12\' 6 1/2"', '5 ½”', '20 mm', '12.50 USD', '$1,200', '3 h', '45 deg', '10 %', '18 ga', '#8', '1x6', '2026-03-04', '7', '5 1/2', '"a text"');
        const { value } = fc.letrec<{ value: string, one: string }>(tie => ({
            one: fc.oneof({ weight: 4, arbitrary: literal }, { weight: 4, arbitrary: word },
                fc.tuple(word, fc.array(fc.oneof(tie('value'), fc.tuple(word, tie('value')).map(([name, given]) => `${name}: ${given}`)), { maxLength: 2 })).map(([name, all]) => `${name}(${all.join(', ')})`),
                tie('value').map(inner => `(${inner})`), tie('one').map(inner => `-${inner}`), fc.tuple(tie('one'), word).map(([inner, name]) => `${inner}.${name}`),
                fc.tuple(tie('one'), word).map(([inner, name]) => `${inner} per ${name}`)),
            value: fc.oneof({ depthSize: 'small' }, tie('one'), fc.tuple(tie('one'), fc.constantFrom('+', '-', '*', '/', 'x', 'to', '±', '+/-', '<', '>='), tie('value')).map(part => part.join(' '))),
        }));
        const line = fc.tuple(word, fc.array(value, { maxLength: 3 }), fc.array(fc.tuple(word, value), { maxLength: 2 }))
            .map(([name, values, mods]) => [name, values.join(', '), ...mods.flat()].filter(Boolean).join(' '));
        let agreed = 0;
        const runs = FULL ? 3000 : 100;
        fc.assert(fc.property(fc.array(line, { minLength: 1, maxLength: 4 }), value, (lines, given) => {
            agreed += check(`let a = ${given}\nroom hall { // so far\n  ${lines.join('\n  /* a note */ ')}\n}\n`);
        }), { numRuns: runs });
        expect(agreed).toBeGreaterThan(runs / 4);
    });
});
