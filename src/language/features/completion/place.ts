import type { AstNode } from 'langium';
import * as ast from '../../generated/ast.ts';
import { OPERATORS, ROOM_WORDS } from '../../grammar-words.ts';
import { kindOfNamed, kindOfType } from '../../scope/kind-of.ts';
import { lookUp, type Layer } from '../../scope/layer.ts';
import { namesAt, wordsAfter, wordsOfBody, type Surroundings } from '../../scope/reach.ts';
import type { Statement, Word } from './statement.ts';

/** What may stand at the cursor. */
export type Place =
    | { readonly at: 'declaration' }
    | { readonly at: 'keyword', readonly words: readonly string[] }
    | { readonly at: 'import' }
    | { readonly at: 'imported', readonly path: string, readonly taken: readonly string[] }
    | { readonly at: 'line', readonly body: ast.Body }
    | { readonly at: 'name-of-wall', readonly body: ast.Body }
    | { readonly at: 'name-of-fixture', readonly keyword: string }
    | { readonly at: 'names', readonly layers: readonly Layer[] }
    | { readonly at: 'type' }
    /** `of`: the property, or the modifier, whose value is per something; `side`: which of its values. */
    | { readonly at: 'unit', readonly of?: ast.PropertyDecl, readonly side: number }
    /** `property`: whose value it is, the property's own or a modifier's. `begins`: nothing of it is written yet. */
    | { readonly at: 'value', readonly wanted: ast.TypeAtom | string | undefined, readonly property?: ast.PropertyDecl, readonly begins?: boolean }
    | { readonly at: 'argument', readonly profile: ast.Profile, readonly given: readonly string[], readonly wanted: ast.TypeAtom | undefined }
    | { readonly at: 'after-value', readonly declaration: ast.PropertyDecl, readonly said: readonly string[], readonly side: number, readonly modifier?: ast.PropertyDecl };

/** Undefined where a name is being invented, or nothing is known. */
export function placeOf(statement: Statement, around: Surroundings): Place | undefined {
    return statement.body ? inBody(statement.before, statement.body, around) : atMargin(statement, around);
}

function atMargin({ before, from }: Statement, around: Surroundings): Place | undefined {
    const [head] = before;
    if (!head) return { at: 'declaration' };
    switch (head.text) {
        case 'from': return inImport(before);
        case 'edition': return before.length === 1 ? { at: 'keyword', words: ['1'] } : undefined;
        case 'let': return inLet(before, from, around);
        case 'profile': return inProfileHead(before, from, around);
        default: return undefined;
    }
}

function inImport(before: readonly Word[]): Place | undefined {
    const last = before.at(-1)!;
    if (before.length === 1) return { at: 'import' };
    if (before.length === 2) return { at: 'keyword', words: ['use'] };
    if (last.text === 'use' || last.text === ',') {
        return { at: 'imported', path: before[1]!.text.replace(/^"|"$/g, ''), taken: before.slice(3).map(word => word.text) };
    }
    return last.text === 'as' ? undefined : { at: 'keyword', words: ['as'] };
}

function inLet(before: readonly Word[], from: AstNode, around: Surroundings): Place | undefined {
    const equals = before.findIndex(word => word.text === '=');
    const type = before[2]?.text === ':' ? before[3]?.text : undefined;
    if (equals >= 0) return new Values(from, around, type).read(before.slice(equals + 1));
    return before.at(-1)!.text === ':' ? { at: 'type' } : undefined;
}

/** `profile name(groove: Length = 1/4", wide: Stock) like other(groove: groove)` */
function inProfileHead(before: readonly Word[], from: AstNode, around: Surroundings): Place | undefined {
    const like = before.findIndex((word, i) => i > 1 && word.text === 'like');
    if (like >= 0) return new Values(from, around, 'Profile').read(before.slice(like + 1));
    let depth = 0, begin = 0;
    for (const [i, { text }] of before.entries()) {
        if (text === '(') depth++;
        if (text === ')') depth--;
        if (depth === 1 && (text === '(' || text === ',')) begin = i + 1;
    }
    if (depth === 0) return before.length > 1 ? { at: 'keyword', words: ['like'] } : undefined;
    const parameter = before.slice(begin);
    if (parameter[1]?.text !== ':') return undefined;
    const equals = parameter.findIndex(word => word.text === '=');
    return equals < 0 ? { at: 'type' } : new Values(from, around, parameter[2]?.text).read(parameter.slice(equals + 1));
}

function inBody(before: readonly Word[], body: ast.Body, around: Surroundings): Place | undefined {
    const { vocabulary } = around;
    const [head] = before;
    if (!head) return { at: 'line', body };
    if (head.text === 'let') return inLet(before, body, around);
    if (head.text === 'require') return new Values(body, around, undefined).read(before.slice(1));
    if (ROOM_WORDS.has(head.text)) {
        if (before.length === 1) return head.text === 'wall' ? { at: 'name-of-wall', body } : { at: 'name-of-fixture', keyword: head.text };
        const kind = vocabulary.kindOfFixture({ kind: head.text } as ast.Fixture);
        return new Values(body, around, (kind && vocabulary.valueOf(kind)) ?? undefined).read(before.slice(2));
    }
    return inLine(before, body, around);
}

function inLine(before: readonly Word[], body: ast.Body, around: Surroundings): Place | undefined {
    const { vocabulary } = around;
    let target = lookUp(wordsOfBody(body, around), before[0]!.text) as ast.Target | undefined;
    const room = ast.isRoom(target) ? target : body;
    let i = 1;
    for (; before[i]?.text === '.'; i += 2) {
        const layers = wordsAfter(target, room, vocabulary);
        if (i + 1 === before.length) return { at: 'names', layers };
        target = lookUp(layers, before[i + 1]!.text) as ast.Target | undefined;
    }
    const declaration = ast.isFixture(target) ? vocabulary.valueOfFixture(target) : target;
    return ast.isPropertyDecl(declaration) ? new Values(room, around, declaration).read(before.slice(i)) : undefined;
}

/** A parenthesis that is open: the arguments of a profile, or only a group. */
interface Open { readonly profile: ast.Profile | undefined; argument: number; parameter: string | undefined; given: string[] }

/** Reads the values and modifiers of a line as far as they are written. */
class Values {
    private readonly declaration: ast.PropertyDecl | undefined;
    private readonly wantedName: string | undefined;
    private modifier: ast.PropertyDecl | undefined;
    private readonly said: string[] = [];
    private readonly open: Open[] = [];
    private side = 0;
    /** Of the property or of the modifier that is being read. */
    private begins = true;

    /** `declared` is the property whose values they are, or the name of the type that is wanted. */
    constructor(private readonly from: AstNode, private readonly around: Surroundings, declared: ast.PropertyDecl | string | undefined) {
        if (typeof declared === 'string') this.wantedName = declared;
        else this.declaration = declared;
    }

    read(words: readonly Word[]): Place | undefined {
        let expecting = true;
        /** What the value just read stands for, as far as it has members or takes arguments. */
        let value: AstNode | undefined;
        for (let i = 0; i < words.length; i++) {
            const { text } = words[i]!;
            const isWord = /^[A-Za-z_]/.test(text) && !BETWEEN.has(text);
            if (expecting) {
                this.begins = false;
                if (text === '(') this.open.push({ profile: undefined, argument: 0, parameter: undefined, given: [] });
                else if (text !== '-' && text !== '+') {
                    value = isWord ? lookUp(this.names(), text) : undefined;
                    expecting = false;
                }
            } else if (text === '.') {
                const kind = ast.isPropertyDecl(value) ? kindOfType(value.type, this.around.vocabulary) : kindOfNamed(value, this.around.vocabulary);
                const members = kind ? [this.around.vocabulary.properties(kind)] : [];
                if (i + 1 === words.length) return { at: 'names', layers: members };
                value = lookUp(members, words[++i]!.text);
            } else if (text === 'per') {
                if (i + 1 === words.length) return { at: 'unit', side: this.side, ...this.open.length === 0 && this.declaration && { of: this.modifier ?? this.declaration } };
                i++;
            } else if (text === '(') {
                this.open.push({ profile: ast.isProfile(value) ? value : undefined, argument: 0, parameter: undefined, given: [] });
                expecting = true;
            } else if (text === ')') this.open.pop();
            else if (text === ',' || text === ':' || BETWEEN.has(text)) {
                this.next(text, words[i - 1]!.text);
                expecting = true;
            } else if (isWord && this.open.length === 0 && this.declaration) {
                this.modifier = this.around.vocabulary.modifiers(this.declaration).get(text);
                this.said.push(text);
                this.side = 0;
                this.begins = true;
                expecting = true;
            }
        }
        return expecting ? this.wanting() : this.afterValue();
    }

    private next(sign: string, before: string): void {
        const open = this.open.at(-1);
        if (sign === ':' && open) {
            open.parameter = before;
            open.given.push(before);
        } else if (sign === ',' && open) {
            open.argument++;
            open.parameter = undefined;
        } else if (sign === ',') this.side = 0;
        else if (sign === 'x' || sign === 'to') this.side++;
    }

    private wanting(): Place {
        const open = this.open.at(-1);
        if (!open?.profile) {
            const property = this.said.length > 0 ? this.modifier : this.declaration;
            return { at: 'value', wanted: this.wanted(), ...property && { property }, begins: this.begins && this.open.length === 0 };
        }
        if (open.parameter !== undefined) return { at: 'value', wanted: open.profile.params.find(each => each.name === open.parameter)?.type?.parts[0] };
        return { at: 'argument', profile: open.profile, given: open.given, wanted: open.profile.params[open.argument]?.type?.parts[0] };
    }

    private afterValue(): Place | undefined {
        if (this.open.length > 0 || !this.declaration) return undefined;
        return { at: 'after-value', declaration: this.declaration, said: this.said, side: this.side, ...this.modifier && { modifier: this.modifier } };
    }

    private wanted(): ast.TypeAtom | string | undefined {
        if (this.wantedName !== undefined) return this.wantedName;
        const type = this.said.length > 0 ? this.modifier?.type : this.declaration?.type;
        return type?.parts[this.side] ?? type?.parts[0];
    }

    private names(): readonly Layer[] {
        const open = this.open.at(-1);
        const parameter = open?.profile?.params.find(each => each.name === open.parameter) ?? open?.profile?.params[open.argument];
        const wanted = open?.profile ? parameter?.type?.parts[0] : this.wanted();
        return namesAt(this.from, typeof wanted === 'string' ? wanted : wanted?.ref?.$refText, this.around);
    }
}

const BETWEEN: ReadonlySet<string> = new Set([...OPERATORS, 'per']);
