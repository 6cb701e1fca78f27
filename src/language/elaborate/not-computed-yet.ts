import type { Source } from '../../provenance/source.ts';
import * as ast from '../generated/ast.ts';
import { isBroken } from '../types/broken.ts';
import { declaredType } from '../types/declared.ts';
import { sourceOf, sourceOfProperty } from '../types/place.ts';
import { atom } from '../types/type.ts';
import { quoted } from '../types/words.ts';
import { wordsOf } from '../types/values.ts';
import type { Block } from './block.ts';
import type { Raise, Raised } from './raised.ts';
import type { Reading } from './reading.ts';

/**
 * What the language can say and the program does not compute yet: this one table. Each gets one hint, where it is said;
 * it is never passed over in silence, and no number is made from it that would be wrong.
 *
 * Whoever computes one of these takes its row out.
 */
interface Row {
    /** `Kind.property`, `Kind.property/modifier`; a block's property stands for the whole block. */
    readonly what: string;
    readonly words: string;
    /** Only these words of it are meant. */
    readonly only?: readonly string[];
}
const PROPERTIES: readonly Row[] = [
    { what: 'Room.survey', words: 'what the survey of the ceiling says' },
    { what: 'Room.diagonal', words: 'the true shape of the room from its diagonal' },
    { what: 'Room.trim', words: 'trim of one room: say it in the profile' },
    { what: 'Measured.survey', words: 'what the survey of the ceiling says' },
    { what: 'Measured.diagonal', words: 'the true shape of the room from its diagonal' },
    { what: 'Measured.trim', words: 'trim of one room: say it in the profile' },
    { what: 'Ceiling.joists', words: 'whether blocking and screws find the joists' },
    { what: 'Profile.back', words: 'a panel over the coffers' },
    { what: 'Profile.under', words: 'a molding under the beam' },
    { what: 'Blocking.fit', words: 'a box made at the bench and slipped over the blocking', only: ['bench-box'] },
    { what: 'Bottom.place', words: 'a bottom that is not between the sides', only: ['under-sides', 'in-rabbets'] },
    { what: 'Trim.corners', words: 'trim with coped corners', only: ['coped'] },
    { what: 'Perimeter.kind', words: 'a half beam round the walls', only: ['half-beam'] },
    { what: 'Grid.square-to', words: 'lines set square to one wall' },
    { what: 'Fixture.value', words: 'whether a fixture at the wall is in the way', only: ['casing', 'cabinet', 'soffit', 'pocket'] },
    { what: 'Fixture.value/keep-clear', words: 'whether a fixture is kept clear' },
    { what: 'Fixture.value/wants', words: 'whether a fixture is where it wants to be', only: ['coffer-center', 'beam-center'] },
    { what: 'Board.width', words: 'what follows from the width of a measured board' },
    { what: 'Board.thickness', words: 'what follows from the thickness of a measured board' },
    { what: 'Board.length', words: 'what follows from the length of a measured board' },
    { what: 'BeamLine.from', words: 'a line that runs part way' },
    { what: 'BeamLine.until', words: 'a line that runs part way' },
    { what: 'BeamLine.meets', words: 'a beam that dies into another', only: ['dies-into'] },
];
/** By kind, then by property or `property/modifier`. */
const ROWS = new Map<string, Map<string, Row>>();
for (const row of PROPERTIES) {
    const [kind, property] = row.what.split('.') as [string, string];
    const rows = ROWS.get(kind);
    if (rows) rows.set(property, row);
    else ROWS.set(kind, new Map([[property, row]]));
}
const NONE = new Map<string, Row>();
const PROFILE = atom('Profile');

function hint(at: Source, words: string): Raised {
    return { rule: 'not-computed-yet', severity: 'hint', at, message: `Not computed yet: ${words}.` };
}

/** What a block says that is not computed yet. */
export function notComputed(reading: Reading, raise: Raise): void {
    const { block } = reading;
    const rows = ROWS.get(block.kind.name) ?? NONE;
    if (rows.size > 0) {
        for (const [name, { lines, broken }] of block.entries) {
            const row = rows.get(name);
            if (row && !broken) for (const line of lines) raiseLine(reading, row, name, line, raise);
        }
        for (const [name, inner] of block.blocks) {
            const row = rows.get(name);
            const word = inner.words[0];
            if (row && word) raise(hint(sourceOfProperty(word.line, 'path', word.index), row.words));
        }
    }
    for (const { line, index } of block.beyond) {
        const into = line.path[index], word = into?.$refText;
        if (ast.isPropertyDecl(into?.ref) && declaredType(into.ref.type) === PROFILE) continue;
        raise(hint(sourceOfProperty(line, 'path', index), `a change within ${quoted(word)} from here: write a profile that is like it, and name that`));
    }
}

/** A property that counts only with some of its words is judged by its value, so that it may come through a parameter. */
function raiseLine(reading: Reading, row: Row, name: string, line: ast.Line, raise: Raise): void {
    if (!row.only) return raise(hint(wordsOf(line), row.words));
    const given = reading.word(name);
    if (given?.said && row.only.includes(given.value)) raise({ ...hint(given.at, row.words), via: given.via });
}

/** What stands on the line of a wall or a fixture. */
export function fixtureNotComputed(fixture: ast.Fixture, kind: ast.Kind | undefined, raise: Raise): void {
    if (fixture.kind === 'crossing') return raise(hint(sourceOfProperty(fixture, 'name'), 'which line runs through at one crossing'));
    const rows = kind && ROWS.get(kind.name);
    if (!rows || isBroken(fixture)) return;
    const row = rows.get('value'), value = fixture.values[0];
    if (row && saysOne(row, value)) raise(hint(sourceOf(value!), row.words));
    for (const mod of fixture.mods) {
        const inner = rows.get(`value/${mod.decl?.ref?.name}`);
        if (inner && (!inner.only || saysOne(inner, mod.values[0]))) raise(hint(inner.only ? sourceOf(mod.values[0]!) : sourceOfProperty(mod, 'decl'), inner.words));
    }
}

function saysOne(row: Row, value: ast.Expr | undefined): boolean {
    return ast.isRef(value) && row.only?.includes(value.target?.$refText) === true;
}

export function toleranceUnused(at: Source, name: string): Raised {
    return hint(at, `what a tolerance of ${quoted(name)} does`);
}

/** Where a profile says parts that have no place in its section yet. */
export function partsNotComputed(block: Block): Source[] {
    return ['back', 'under'].flatMap(name => {
        const word = block.blocks.get(name)?.words[0];
        return word ? [sourceOfProperty(word.line, 'path', word.index)] : [];
    });
}
