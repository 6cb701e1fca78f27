import type { AstNode, LangiumDocument, ReferenceInfo } from 'langium';
import type { Finding } from '../../findings/finding.ts';
import type { Source } from '../../provenance/source.ts';
import * as ast from '../generated/ast.ts';
import { kept } from '../../plain/kept.ts';
import { expectedType, isPlainName } from '../scope/expected.ts';
import { declarationOf, kindOfBody, kindOfExpression, kindOfTarget, targetOf } from '../scope/kind-of.ts';
import { allNames } from '../scope/layer.ts';
import { namesOf, usedNames } from '../scope/names.ts';
import { inReach } from '../scope/reach.ts';
import type { Vocabulary } from '../scope/vocabulary.ts';
import { brokenLines, isBroken } from '../types/broken.ts';
import { sourceOfRange } from '../types/place.ts';
import { quoted } from '../types/words.ts';
import { servicesOf } from '../workspace/services-of.ts';
import { blockName } from './block-name.ts';
import { finding } from './make.ts';
import { didYouMean, meantFixes, near, Patience } from './near.ts';
import { importFixes, offeredElsewhere } from './offered.ts';
import { calledHere } from './other-words.ts';
import type { ReadingRule } from './rules.ts';
import { listed } from '../../plain/words.ts';

/**
 * Words that mean nothing where they stand. What hangs on such a word is not reported: the modifiers of an unknown
 * property, the arguments of an unknown profile, the names from a file that is not there. Nor is a name that may well be
 * declared in a line that could not be read.
 */
export function linkFindings(document: LangiumDocument): readonly Finding[] {
    const found: Finding[] = [];
    const guesses: Guesses = { patience: new Patience(), unknownImports: unknownImportsOf(document) };
    for (const reference of document.references) {
        const info = reference.error?.info;
        if (!info?.reference.$refText || !info.reference.$refNode || isBroken(statementOf(info.container))) continue;
        const about = new Unknown(document, info, guesses).finding();
        if (about) found.push(about);
    }
    return found;
}

/** What is known of a file as a whole while its unknown words are gone through. */
interface Guesses {
    readonly patience: Patience;
    /** Names that are imported from files that do not declare them. */
    readonly unknownImports: readonly ast.UsedName[];
}

function unknownImportsOf(document: LangiumDocument): readonly ast.UsedName[] {
    const file = document.parseResult.value;
    return ast.isFile(file) ? file.uses.flatMap(use => use.names.filter(({ target }) => target && !target.ref)) : [];
}

class Unknown {
    private readonly word: string;
    private readonly at: Source;

    constructor(private readonly document: LangiumDocument, private readonly info: ReferenceInfo, private readonly guesses: Guesses) {
        this.word = info.reference.$refText;
        this.at = sourceOfRange(info.container, info.reference.$refNode!.range);
    }

    /** All that could stand here. */
    private get names(): readonly string[] {
        return [...allNames(inReach(this.info, servicesOf(this.document).surroundings))].map(([name]) => name);
    }

    /** What may have been meant by the word. */
    private meant(): readonly string[] {
        if (!this.guesses.patience.for(0)) return [];
        const { names } = this;
        return this.guesses.patience.for(names.length) ? near(this.word, names) : [];
    }

    finding(): Finding | undefined {
        const node = this.info.container;
        if (ast.isLine(node)) return this.property(node, this.info.index ?? 0);
        if (ast.isMod(node)) return this.modifier(node);
        if (ast.isRef(node)) return this.name(node);
        if (ast.isMemberOf(node)) return this.member(node);
        if (ast.isArg(node)) return this.parameter(node);
        if (ast.isUsedName(node)) return this.imported(node);
        if (ast.isRate(node)) return this.say('unknown-unit', `${quoted(this.word)} is not a unit here; there are ${listed(this.names, 'or')}`, this.called('Unit') ?? this.meant());
        if (ast.isTypeAtom(node)) return this.say('unknown-type', `There is no type ${quoted(this.word)}`);
        return this.say('unknown-name', `There is nothing called ${quoted(this.word)}`);
    }

    private get vocabulary() {
        return servicesOf(this.document).vocabulary;
    }

    private say(rule: ReadingRule, message: string, words = this.meant()): Finding {
        return finding(rule, this.at, sentence(message + didYouMean(words)), { fixes: meantFixes(this.at, words) });
    }

    /** The word of a list for what the trade calls otherwise. */
    private called(list: string): readonly string[] | undefined {
        const here = calledHere(list, this.word);
        return here === undefined ? undefined : [here];
    }

    private property(line: ast.Line, index: number): Finding | undefined {
        const body = line.$container;
        if (index > 0) {
            const before = line.path[index - 1];
            if (!before?.ref) return undefined;
            if (!kindOfTarget(before.ref, this.vocabulary)) return this.say('unknown-property', `${quoted(before.$refText)} has no parts, so no dot can follow it`, []);
            return this.say('unknown-property', `There is no property ${quoted(this.word)} in ${quoted(before.$refText)}`);
        }
        if (ast.isAlternate(body?.$container)) return this.isExcused(this.word) ? undefined : this.say('unknown-name', `No room here is called ${quoted(this.word)}; a line of an alternate begins with the name of a room`);
        if (!body || !kindOfBody(body, this.vocabulary)) return undefined;
        const misplaced = this.fixture(line);
        if (misplaced) return misplaced;
        const words = this.meant();
        const elsewhere = words.length > 0 ? [] : this.blocksWith(this.word);
        const where = elsewhere.length > 0 ? `; it belongs in ${listed(elsewhere.map(quoted), 'or')}` : '';
        return this.say('unknown-property', `There is no property ${quoted(this.word)} in ${blockName(body)}${where}`, words);
    }

    /** `light chandelier at 2', 3'` in a room: a fixture without the word. */
    private fixture(line: ast.Line): Finding | undefined {
        const [value] = line.values;
        const kinds = this.vocabulary.words.get('FixtureKind');
        if (kindOfBody(line.$container, this.vocabulary)?.name !== 'Room' || !kinds || !ast.isRef(value) || !value.$cstNode) return undefined;
        const kind = this.vocabulary.wordsOf(kinds).has(this.word) ? this.word : calledHere('FixtureKind', this.word);
        if (kind === undefined) return undefined;
        const meant = `fixture ${value.$cstNode.text} ${kind}`;
        const at = { uri: this.at.uri, range: { start: this.at.range.start, end: value.$cstNode.range.end } };
        return finding('unknown-property', at, `What hangs in a room is a fixture, with its name and then its kind: ${quoted(meant)}.`, { fixes: meantFixes(at, [meant]) });
    }

    /** The blocks in which a property is said that was looked for in the wrong one. */
    private blocksWith(property: string): readonly string[] {
        return blocksByProperty(this.vocabulary).get(property) ?? [];
    }

    private modifier(mod: ast.Mod): Finding | undefined {
        const declared = mod.$container && declarationOf(mod.$container, this.vocabulary);
        if (!declared) return undefined;
        const owner = ast.isFixture(mod.$container) ? mod.$container.kind : declared.name;
        if (this.beginsLine(mod)) return this.newLine(mod, owner);
        if (mod.$container.mods.some(earlier => earlier !== mod && !earlier.decl?.ref && isBefore(earlier, mod))) return undefined;
        if (this.names.length === 0) return this.say('unknown-modifier', `${quoted(owner)} takes nothing after its value`);
        return this.say('unknown-modifier', `${quoted(owner)} takes no ${quoted(this.word)}, only ${listed(this.names.map(quoted), 'or')}`);
    }

    /** `{ stock poplar  height 5" }`: a property of the same block, written on behind another one. */
    private beginsLine(mod: ast.Mod): boolean {
        const body = mod.$container?.$container;
        const kind = ast.isBody(body) ? kindOfBody(body, this.vocabulary) : undefined;
        return kind !== undefined && mod.decl !== undefined && this.vocabulary.properties(kind).has(mod.decl.$refText);
    }

    private newLine(mod: ast.Mod, owner: string): Finding {
        const block = blockName(mod.$container.$container as ast.Body);
        const { start } = this.at.range;
        return finding('unknown-modifier', this.at, `${quoted(this.word)} belongs to ${block}, not to ${quoted(owner)}: put it on a line of its own, or after a semicolon.`, {
            fixes: [{ title: 'Put a semicolon before it', preferred: true, edits: [{ uri: this.at.uri, range: { start: endBefore(mod), end: start }, text: '; ' }] }],
        });
    }

    private name(ref: ast.Ref): Finding | undefined {
        if (hangsOnUnknown(ref) || isPlainName(ref, this.vocabulary) || this.isExcused(this.word)) return undefined;
        const wanted = expectedType(ref, this.vocabulary)?.ref?.$refText;
        const words = wanted === undefined ? undefined : this.vocabulary.words.get(wanted);
        if (words) {
            const all = [...this.vocabulary.wordsOf(words).keys()];
            if (ast.isChain(ref.$container) && ref.$container.operators[0] === '/') return this.twoWords(ref, ref.$container, all);
            const choice = all.length <= 8 ? `; write ${listed(all.map(quoted), 'or')}` : '';
            return this.say('unknown-name', `${quoted(this.word)} is not one of the words for this${choice}`, this.called(wanted!) ?? near(this.word, all));
        }
        const said = this.priceByUnit(ref) ?? this.wayOfWall(ref);
        if (said) return said;
        const noun = ast.isProfile(ref.$container) ? 'profile' : NOUNS[wanted ?? ''] ?? 'name';
        const elsewhere = offeredElsewhere(this.document, this.word);
        if (elsewhere.length === 0) return this.say('unknown-name', `There is no ${noun} ${quoted(this.word)} here`);
        const files = listed(elsewhere.map(each => quoted(each.path)), 'or');
        return finding('unknown-name', this.at, `There is no ${noun} ${quoted(this.word)} here. It is in ${files}: import it from there.`,
            { fixes: importFixes(this.document, this.word, elsewhere) });
    }

    /** `north/south` for `north-south`: one finding for both words. */
    private twoWords(ref: ast.Ref, chain: ast.Chain, words: readonly string[]): Finding | undefined {
        if (chain.operands[0] !== ref || !chain.$cstNode) return undefined;
        const written = chain.$cstNode.text, at = sourceOfRange(chain, chain.$cstNode.range);
        const meant = near(written.replace(/\s*\/\s*/g, '-'), words);
        return finding('unknown-name', at, sentence(`${quoted(written)} is not one of the words for this; write ${listed(words.map(quoted), 'or')}${didYouMean(meant)}`), { fixes: meantFixes(at, meant) });
    }

    /** `2.70 USD / ft`: a unit is no value that something can be divided by. */
    private priceByUnit(ref: ast.Ref): Finding | undefined {
        const chain = ref.$container;
        const unit = this.vocabulary.units.has(this.word) ? this.word : calledHere('Unit', this.word);
        if (unit === undefined || !ast.isChain(chain)) return undefined;
        const i = chain.operands.indexOf(ref), before = chain.operands[i - 1]?.$cstNode;
        if (!before || chain.operators[i - 1] !== '/') return undefined;
        const at = { uri: this.at.uri, range: { start: before.range.end, end: this.at.range.end } };
        return finding('unknown-name', this.at, `A rate takes ${quoted('per')}: ${quoted(`${before.text} per ${unit}`)}.`, {
            fixes: [{ title: `Write ${before.text} per ${unit}`, preferred: true, edits: [{ ...at, text: ` per ${unit}` }] }],
        });
    }

    /** `wall south heading`, `wall south west`: half of the way that a wall runs, where its length is looked for. */
    private wayOfWall(ref: ast.Ref): Finding | undefined {
        const wall = ref.$container;
        if (!ast.isFixture(wall) || wall.kind !== 'wall' || ref.call) return undefined;
        if (this.word === 'heading') return this.say('unknown-name', '`heading` needs the way you walk along the wall, with the room on your right: `heading west`', []);
        if (this.word === 'turn') return this.say('unknown-name', '`turn` needs how far you turn to the right where the wall begins: `turn 90 deg`, to the left `turn -90 deg`', []);
        const headings = this.vocabulary.words.get('Heading');
        if (!headings || !this.vocabulary.wordsOf(headings).has(this.word)) return undefined;
        const meant = `heading ${this.word}`;
        return finding('unknown-name', this.at, `The way a wall runs needs the word ${quoted('heading')}: ${quoted(meant)}.`, { fixes: meantFixes(this.at, [meant]) });
    }

    /** True for a name whose import has been found wrong, or that occurs in a line that could not be read. */
    private isExcused(word: string): boolean {
        const file = this.document.parseResult.value;
        return ast.isFile(file) && (usedNames(file).has(word) || unreadWords(file).has(word) || this.isMisspelledInImport(word));
    }

    /** `use poplar-1x` is found at the import; that `poplar-1x6` is not in reach then follows from it. */
    private isMisspelledInImport(word: string): boolean {
        const { patience, unknownImports } = this.guesses;
        if (unknownImports.length === 0 || !patience.for(unknownImports.length)) return false;
        const { surroundings } = servicesOf(this.document);
        return unknownImports.some(({ target, $container: use }) => {
            if (near(target.$refText, [word]).length === 0) return false;
            const from = surroundings.importOf(use);
            return from !== undefined && namesOf(from).has(word);
        });
    }

    private member(member: ast.MemberOf): Finding | undefined {
        const kind = kindOfExpression(member.of, this.vocabulary);
        if (kind) return this.say('unknown-property', `There is no property ${quoted(this.word)} in a ${kind.name.toLowerCase()}`);
        const owner = ast.isRef(member.of) ? member.of.target : undefined;
        if (!owner?.ref || ast.isLet(owner.ref)) return undefined;
        return this.say('unknown-property', `${quoted(owner.$refText)} has no parts, so no dot can follow it`, []);
    }

    private parameter(argument: ast.Arg): Finding | undefined {
        const target = argument.$container?.target;
        if (!target?.ref) return undefined;
        if (!ast.isProfile(target.ref)) return undefined;           // whether it can be called at all is a matter of types
        const takes = this.names.length === 0 ? 'it takes none' : `it takes ${listed(this.names.map(quoted), 'or')}`;
        return this.say('unknown-parameter', `${quoted(target.$refText)} has no parameter ${quoted(this.word)}; ${takes}`);
    }

    private imported(used: ast.UsedName): Finding | undefined {
        const from = used.$container && servicesOf(this.document).surroundings.importOf(used.$container);
        if (!from || unreadWords(from.parseResult.value).has(this.word)) return undefined;
        return this.say('name-not-exported', `${quoted(used.$container.path)} has no ${quoted(this.word)}`);
    }
}

/** The blocks in which each property is said: the first four of them. */
const blocksByProperty = kept((vocabulary: Vocabulary): ReadonlyMap<string, readonly string[]> => {
    const blocks = new Map<string, Set<string>>();
    for (const kind of vocabulary.kinds.values()) {
        for (const [name, declared] of vocabulary.properties(kind)) {
            const block = kindOfTarget(declared, vocabulary);
            for (const property of block ? vocabulary.properties(block).keys() : []) {
                const known = blocks.get(property) ?? new Set();
                if (known.size < 4) known.add(name);
                blocks.set(property, known);
            }
        }
    }
    return new Map([...blocks].map(([property, names]) => [property, [...names]]));
});

/** The words of the lines that could not be read: what is declared there is not known. */
const unreadWords = kept((root: AstNode): ReadonlySet<string> => {
    const lines = brokenLines(root).size > 0 ? root.$cstNode?.root.fullText.split(/\r\n?|\n/) ?? [] : [];
    return new Set([...brokenLines(root)].flatMap(line => lines[line]?.match(WORD) ?? []));
});
const WORD = /[A-Za-z_]\w*(?:-\w+)*/g;

function statementOf(node: AstNode): AstNode {
    let at = node;
    while (at.$container && !(ast.isMember(at) || ast.isItem(at) || ast.isUse(at) || ast.isParam(at))) at = at.$container;
    return at;
}

function isBefore(a: AstNode, b: AstNode): boolean {
    return (a.$cstNode?.offset ?? 0) < (b.$cstNode?.offset ?? 0);
}

/** Where the words before this one end, so that the space between is taken up by what is put there. */
function endBefore(mod: ast.Mod): Source['range']['end'] {
    const { root: { fullText }, range, offset } = mod.$cstNode!;
    let end = offset;
    while (/[ \t]/.test(fullText[end - 1] ?? '')) end--;
    return { line: range.start.line, character: range.start.character - (offset - end) };
}

const NOUNS: Readonly<Record<string, string>> = { Stock: 'stock', Profile: 'profile', Fixture: 'fixture', Room: 'room' };

/** True where the property or the modifier that would say what kind of name is wanted is itself unknown. */
function hangsOnUnknown(ref: ast.Ref): boolean {
    for (let at: AstNode | undefined = ref.$container; at; at = at.$container) {
        if (ast.isMod(at) && !at.decl?.ref) return true;
        if (ast.isArg(at) && at.param && !at.param.ref) return true;
        if (ast.isRef(at) && !at.target?.ref) return true;
        if (ast.isLine(at)) return !targetOf(at);
        if (ast.isBody(at)) return false;
    }
    return false;
}

function sentence(text: string): string {
    return /[.?]$/.test(text) ? text : `${text}.`;
}
