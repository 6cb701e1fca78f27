import { AstUtils } from 'langium';
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import * as ast from '../../../src/language/generated/ast.ts';
import { kindOfBody } from '../../../src/language/scope/kind-of.ts';
import { readMarked } from '../../support/marked.ts';
import { TestWorkspace } from '../../support/workspace.ts';

const FILES = readMarked(readFileSync(new URL('findings/everything-that-can-be-said.coffer', import.meta.url), 'utf8'));
const workspace = await TestWorkspace.open(Object.fromEntries(FILES.map(file => [file.path, file.text])));

/** The declaration a word leads to: its kind, its name, and the file where it stands. */
function leadsTo(path: string, line: string, word: string): string {
    const text = workspace.text(path);
    const begin = text.indexOf(line);
    if (begin < 0 || text.indexOf(line, begin + 1) >= 0) throw new Error(`${line} is not in ${path} once.`);
    const offset = begin + line.indexOf(word);
    const reference = workspace.document(path).references.find(each => each.$refNode?.offset === offset);
    const target = reference && 'ref' in reference ? reference.ref : undefined;
    if (!target) return 'nothing';
    const name = (target as { name?: string }).name;
    const owner = ast.isPropertyDecl(target) ? `${(target.$container as { name: string }).name}.` : ast.isFixture(target) ? `${target.kind} ` : '';
    return `${target.$type} ${owner}${name} of ${AstUtils.getDocument(target).uri.path.split('/').at(-1)}`;
}

describe('what words lead to', () => {
    test.each([
        ['an import by another name', 'barn/barn.coffer', 'use poplar-1x6 as wide', 'poplar-1x6', 'Stock poplar-1x6 of yard.coffer'],
        ['and where it is used', 'barn/barn.coffer', 'let deep: Stock = wide', 'wide', 'Stock poplar-1x6 of yard.coffer'],
        ['a value of the file', 'barn/barn.coffer', 'lines-east   bay, 2', 'bay', 'Let bay of barn.coffer'],
        ['a member of a value', 'barn/barn.coffer', 'let reveal = deep.width', 'width', 'PropertyDecl Stock.width of builtin.coffer'],
        ['a property by its block', 'barn/barn.coffer', 'height    9\'', 'height', 'PropertyDecl Ceiling.height of builtin.coffer'],
        ['a modifier by its property', 'barn/barn.coffer', 'running north-south first-center', 'running', 'PropertyDecl joists.running of builtin.coffer'],
        ['the same word by another', 'barn/barn.coffer', 'from north-west diameter', 'from', 'PropertyDecl value.from of builtin.coffer'],
        ['a word by what is expected', 'barn/barn.coffer', 'through      north-south', 'north-south', 'WordDecl north-south of builtin.coffer'],
        ['a corner, not a wall', 'barn/barn.coffer', 'diagonal    north-west', 'north-west', 'WordDecl north-west of builtin.coffer'],
        ['a parameter', 'barn/barn.coffer', 'beams        deep-beam(groove: 1/8"', 'groove', 'Param groove of deep-beam.coffer'],
        ['a fixture of the room', 'barn/barn.coffer', 'centered-on  lamp-1', 'lamp-1', 'Fixture fixture lamp-1 of barn.coffer'],
        ['a wall that is overruled', 'barn/barn.coffer', 'north        18\' 1 7/8"', 'north', 'Fixture wall north of barn.coffer'],
        ['a property that is overruled', 'barn/barn.coffer', 'grid.through east-west', 'through', 'PropertyDecl Grid.through of builtin.coffer'],
        ['a room in an alternate', 'barn/barn.coffer', 'loft.B.beams', 'loft', 'Room loft of barn.coffer'],
        ['a line of that room', 'barn/barn.coffer', 'loft.B.beams', 'B', 'Fixture line B of barn.coffer'],
        ['a property of that line', 'barn/barn.coffer', 'loft.B.beams', 'beams', 'PropertyDecl BeamLine.beams of builtin.coffer'],
        ['through the profile of the beams', 'barn/barn.coffer', 'loft.grid.beams.sides.corners', 'corners', 'PropertyDecl Sides.corners of builtin.coffer'],
        ['what was measured, by an alternate', 'barn/barn.coffer', 'loft.measured.north', 'north', 'Fixture wall north of barn.coffer'],
        ['a parameter in its profile', 'barn/deep-beam.coffer', 'rabbet   groove x', 'groove', 'Param groove of deep-beam.coffer'],
        ['a value of the profile', 'barn/deep-beam.coffer', 'rip     inside', 'inside', 'Let inside of deep-beam.coffer'],
        ['the trim\'s own corners', 'barn/deep-beam.coffer', 'corners coped', 'coped', 'WordDecl coped of builtin.coffer'],
        ['a variant\'s path', 'barn/deep-beam.coffer', 'spacers.every  16"', 'every', 'PropertyDecl Spacers.every of builtin.coffer'],
        ['an argument of what it is like', 'barn/deep-beam.coffer', '(groove, deep: poplar-1x6)', 'deep', 'Param deep of deep-beam.coffer'],
        ['a unit', 'yard.coffer', '3.10 USD per ft', 'ft', 'Unit ft of builtin.coffer'],
        ['a type', 'barn/deep-beam.coffer', 'wide: Stock', 'Stock', 'Kind Stock of builtin.coffer'],
    ])('%s', (_, path, line, word, expected) => {
        expect(leadsTo(path, line, word)).toBe(expected);
    });

    test('only names that need no declaration lead nowhere', () => {
        const nowhere = FILES.flatMap(file => workspace.document(file.path).references.filter(each => each.error).map(each => each.$refText));
        expect(nowhere.sort()).toEqual(['A', 'bottom-1', 'bottom-2', 'fence-a', 's-12', 's-12', 's-13', 's-14', 's-14', 's-15', 's-16', 'wall-south']);
    });

    test('the built-in library leads to itself', () => {
        const { file, kinds } = workspace.coffer.vocabulary;
        const document = AstUtils.getDocument(file);
        expect([document.parseResult.lexerErrors, document.parseResult.parserErrors]).toEqual([[], []]);
        expect(document.references.length).toBeGreaterThan(200);
        expect(document.references.filter(each => each.error).map(each => each.$refText)).toEqual([]);
        expect(kinds.size).toBeGreaterThan(15);
    });
});

describe('kinds', () => {
    const { vocabulary } = workspace.coffer;

    test('one has the properties of what it is, behind its own', () => {
        const measured = [...vocabulary.properties(vocabulary.kind('Measured')!).keys()];
        expect(measured.slice(0, 3)).toEqual(['gauge', 'spoiled', 'cut']);
        expect(measured).toEqual(expect.arrayContaining([...vocabulary.properties(vocabulary.kind('Room')!).keys()]));
    });

    test('every block of a file has one, but for the list of an alternate', () => {
        const bodies = FILES.flatMap(file => AstUtils.streamAllContents(workspace.file(file.path)).filter(ast.isBody).toArray());
        expect(bodies.length).toBeGreaterThanOrEqual(30);
        const without = bodies.filter(body => !kindOfBody(body, vocabulary)).map(body => body.$container.$type);
        expect(without).toEqual(['Alternate']);
    });
});

describe('things that depend on themselves', () => {
    test.each([
        'let a = a.width\n', 'let a = b\nlet b = a\nlet c = a.width\n', 'profile p like p { sides.corners butted }\n',
        'let a = b.stock\nlet b = a.sides\n', 'kind K is K { k : K }\n', 'profile p(a: Length = b, b: Length = a) { sides { held-down a } }\n',
    ])('%s', async text => {
        const other = await TestWorkspace.open({ 'ring.coffer': text });
        for (const { error } of other.document('ring.coffer').references) expect(error?.message ?? '').not.toContain('occurred');
        expect(other.rules('ring.coffer')).not.toContain('internal-error');
    });
});
