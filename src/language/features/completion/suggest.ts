import { UriUtils, type AstNode, type LangiumDocument } from 'langium';
import * as ast from '../../generated/ast.ts';
import { kindOfBody, kindOfExpression, kindOfNamed } from '../../scope/kind-of.ts';
import { allNames } from '../../scope/layer.ts';
import { namesAt, wordsOfBody } from '../../scope/reach.ts';
import { namesOf } from '../../scope/names.ts';
import type { CofferServices } from '../../coffer-services.ts';
import { importPath, isInside } from '../../workspace/imports.ts';
import { heading, oneLine, typeText } from '../explain.ts';
import { importables } from './auto-import.ts';
import { declarations } from './declarations.ts';
import { filesFrom } from './paths.ts';
import type { Place } from './place.ts';
import { figuresFor } from './figures.ts';
import { namesForFixture, plainNames, type NamesIn } from './plain-names.ts';
import { isRequired, requiredOf, Skeleton } from './skeleton.ts';
import { saidOnce } from '../../types/cut-record.ts';
import { blockKindOf } from '../../types/declared.ts';
import { factsOf } from '../../types/facts.ts';
import { PICTURE, type Suggestion } from './suggestion.ts';
import { gridTemplate, type Around, type Usable } from './templates.ts';

/** The words that are right at a place, and no others. */
export class Suggestions {
    /** `line`: of the text, in which the cursor stands; what it says does not count as said. */
    constructor(
        private readonly services: CofferServices, private readonly document: LangiumDocument, private readonly from: AstNode, private readonly line: number,
        private readonly namesIn: NamesIn,
    ) {}

    for(place: Place): readonly Suggestion[] {
        switch (place.at) {
            case 'declaration': return declarations(this.vocabulary, this.document.parseResult.value as ast.File, this.around());
            case 'keyword': return place.words.map(label => ({ label, kind: PICTURE.keyword }));
            case 'import': return filesFrom(this.document, this.services.shared).map(path => ({ label: `"${path}"`, kind: PICTURE.file, snippet: `"${path}" use $0` }));
            case 'imported': return this.imported(place.path, place.taken);
            case 'line': return this.beginnings(place.body);
            case 'name-of-wall': return this.walls(place.body);
            case 'name-of-fixture': return namesForFixture(place.keyword, this.from, this.namesIn).map(label => ({ label, kind: PICTURE.word }));
            case 'names': return [...allNames(place.layers)].map(([name, node]) => this.named(name, node));
            case 'type': return [...this.vocabulary.types].filter(([, node]) => !ast.isKind(node) || PARAMETERS.has(node.name)).map(([label, node]) => ({ label, kind: PICTURE.class, detail: node.$type.toLowerCase(), about: node }));
            case 'unit': return this.units(place);
            case 'value': return this.valuesAt(place);
            case 'argument': return this.arguments(place);
            case 'after-value': return this.afterValue(place);
        }
    }

    /** What a value may be per, those by which the property goes before the rest. */
    private units({ of, side }: Extract<Place, { at: 'unit' }>): readonly Suggestion[] {
        const named = of ? factsOf(of).reckonedBy : [], per = of?.type?.parts[side]?.per?.$refText;
        const suits = (label: string, { type: measured }: ast.Unit): boolean => (named.length > 0 && per === 'Count'
            ? named.includes(label)
            : per === 'Lumber' ? named.includes(label) || PRICED_BY.has(measured.$refText)
                : measured.$refText === per);
        return [...this.vocabulary.units]
            .map(([label, node]) => ({ label, kind: PICTURE.unit, detail: oneLine(node), about: node, first: suits(label, node) }));
    }

    private get vocabulary() {
        return this.services.vocabulary;
    }

    private imported(path: string, taken: readonly string[]): readonly Suggestion[] {
        const leads = importPath(this.document.uri, path);
        const from = 'uri' in leads && isInside(leads.uri, this.services.shared.workspace.Imports.folders)
            ? this.services.shared.workspace.LangiumDocuments.getDocument(leads.uri) : undefined;
        if (!from) return [];
        return [...namesOf(from)].filter(([name]) => !taken.includes(name)).map(([name, node]) => ({ ...this.named(name, node), detail: `${node.$type.toLowerCase()} of ${UriUtils.basename(from.uri)}` }));
    }

    private beginnings(body: ast.Body): readonly Suggestion[] {
        const kind = kindOfBody(body, this.vocabulary);
        const said = new Set(body.members.filter(member => ast.isLine(member) && this.isElsewhere(member)).map(member => (member as ast.Line).path.map(word => word.$refText).join('.')));
        const found = [...allNames(wordsOfBody(body, this.services.surroundings))]
            .filter(([name, node]) => ast.isPropertyDecl(node) && factsOf(node).severalLines || !said.has(name))
            .map(([name, node]) => this.named(name, node));
        if (ast.isAlternate(body.$container)) return [...found, ...this.elsewhere('Room', new Set(found.map(({ label }) => label)))];
        if (!kind) return found;
        if (kind.name === 'Room') return [...this.nextInRoom(body, said), ...found, ...WORDS_OF_KIND['Room'] ?? []];
        return [...this.allRequired(kind, said), ...found, ...WORDS_OF_KIND[kind.name] ?? []];
    }

    /** A room begins with its walls: two of them make a rectangle. Then comes the grid. */
    private nextInRoom(body: ast.Body, said: ReadonlySet<string>): readonly Suggestion[] {
        const walls = body.members.filter(ast.isFixture).filter(wall => wall.kind === 'wall' && this.isElsewhere(wall));
        const next = walls.length < 2 ? ['north', 'east'].find(side => !walls.some(({ name }) => name === side)) : undefined;
        if (next !== undefined) return [{ label: `wall ${next}`, kind: PICTURE.snippet, detail: 'its length', snippet: `wall ${next}  $1`, first: true }];
        const grid = said.has('grid') ? undefined : gridTemplate(this.around());
        return grid ? [{ label: 'grid of a few lines', kind: PICTURE.snippet, detail: 'how many coffers, of which beam', first: true, ...grid }] : [];
    }

    /** One suggestion for all that has to be said and is not yet. */
    private allRequired(kind: ast.Kind, said: ReadonlySet<string>): readonly Suggestion[] {
        if (kind.name === 'Measured' || this.overrules()) return [];
        const missing = requiredOf(kind, this.vocabulary).filter(property => !said.has(property.name));
        if (missing.length < 2) return [];
        const skeleton = new Skeleton(this.vocabulary);
        const names = missing.map(property => property.name);
        const snippet = missing.map(property => skeleton.property(property)).join('\n');
        return [{ label: names.join(', '), kind: PICTURE.snippet, detail: 'what it still needs', snippet, first: true, opens: this.opens(missing[0]!) }];
    }

    /** In a variant, an alternate and `measured` only what differs is said. */
    private overrules(): boolean {
        for (let at: AstNode | undefined = this.from; at; at = at.$container) {
            if (ast.isAlternate(at) || ast.isProfile(at) && at.base) return true;
            if (ast.isLine(at) && (at.path.length > 1 || at.path[0]?.$refText === 'measured')) return true;
        }
        return false;
    }

    private isElsewhere(member: AstNode): boolean {
        return member.$cstNode?.range.start.line !== this.line;
    }

    private walls(body: ast.Body): readonly Suggestion[] {
        const said = new Set(body.members.filter(ast.isFixture).filter(fixture => fixture.kind === 'wall' && this.isElsewhere(fixture)).map(fixture => fixture.name));
        return ['north', 'east', 'south', 'west'].filter(side => !said.has(side)).map(label => ({ label, kind: PICTURE.word }));
    }

    private valuesAt({ property, wanted, begins }: Extract<Place, { at: 'value' }>): readonly Suggestion[] {
        const type = typeof wanted === 'string' ? wanted : wanted?.ref?.$refText;
        return plainNames(property, this.from, this.namesIn, this.services.shared.workspace.LangiumDocuments)
            ?? [...this.values(wanted), ...property && begins ? figuresFor(property, type) : []];
    }

    /** Stocks and profiles that are in reach, then those that other files offer. */
    private around(): Around {
        const reach = new Map([...IMPORTED].map(kind => [kind, new Map(allNames(namesAt(this.document.parseResult.value, kind, this.services.surroundings)))]));
        const there = importables(this.document, new Map([...reach].map(([kind, names]) => [kind, new Set(names.keys())])), this.services.shared);
        const usable = <T extends ast.Stock | ast.Profile>(kind: T['$type'], isOne: (node: AstNode) => node is T): Usable<T>[] => [
            ...[...reach.get(kind) ?? []].flatMap(([name, node]) => isOne(node) ? [{ name, node }] : []),
            ...there.flatMap(({ name, node, path, edit }) => isOne(node) ? [{ name, node, importing: { path, edit } }] : []),
        ];
        return {
            stocks: usable('Stock', ast.isStock), profiles: usable('Profile', ast.isProfile),
            taken: new Set(namesOf(this.document).keys()),
        };
    }

    private values(wanted: ast.TypeAtom | string | undefined): readonly Suggestion[] {
        const name = typeof wanted === 'string' ? wanted : wanted?.ref?.$refText;
        const type = wanted === undefined || typeof wanted === 'string' ? wanted : oneLine(wanted);
        const reach = [...allNames(namesAt(this.from, name, this.services.surroundings))];
        const fitting = reach.filter(([, node]) => this.fits(node, name, type));
        const leading = reach.filter(([, node]) => !this.fits(node, name, type) && this.leadsTo(node, name));
        return [
            ...fitting.map(([label, node]) => this.named(label, node)),
            ...leading.map(([label, node]) => ({ ...this.named(label, node), snippet: label, last: true })),
            ...name !== undefined && IMPORTED.has(name) ? this.elsewhere(name, new Set(reach.map(([label]) => label))) : [],
        ];
    }

    /** Whether something by its declaration can be what is wanted. Where nothing is known, everything can. */
    private fits(node: AstNode, name: string | undefined, type: string | undefined): boolean {
        if (name === undefined || ast.isWordDecl(node)) return true;
        if (ast.isParam(node)) return typeText(node) === type;
        if (ast.isLet(node)) return node.type ? oneLine(node.type) === type
            : !this.vocabulary.kind(name) || kindOfExpression(node.value, this.vocabulary)?.name === name;
        if (ast.isFixture(node)) return name === 'Name' || this.vocabulary.kindOfFixture(node)?.name === name;
        return node.$type === name;
    }

    /** A length may be that of a board, or of a board of a beam: `wide.width`. */
    private leadsTo(node: AstNode, name: string | undefined): boolean {
        for (let at: AstNode | undefined = this.from; at; at = at.$container) if (at === node) return false;
        const kind = kindOfNamed(node, this.vocabulary)?.name;
        return kind === 'Profile' ? name === 'Length' || name === 'Stock' : kind === 'Stock' && name === 'Length';
    }

    /** What other files have, with the import it takes. */
    private elsewhere(kind: string, taken: ReadonlySet<string>): readonly Suggestion[] {
        return importables(this.document, new Map([[kind, taken]]), this.services.shared)
            .map(({ name, node, path, edit }) => ({ ...this.named(name, node), last: true, importing: { path, edit } }));
    }

    private arguments({ profile, given, wanted }: Extract<Place, { at: 'argument' }>): readonly Suggestion[] {
        const parameters = profile.params.filter(parameter => parameter.name && !given.includes(parameter.name)).map(parameter => ({
            label: parameter.name, kind: PICTURE.variable, detail: oneLine(parameter), about: parameter, snippet: `${parameter.name}: $0`, first: true,
        }));
        return [...parameters, ...given.length === 0 && wanted ? this.values(wanted) : []];
    }

    private afterValue({ declaration, said, side, modifier }: Extract<Place, { at: 'after-value' }>): readonly Suggestion[] {
        const type = said.length > 0 ? modifier?.type : declaration.type;
        const keywords = [type?.seps[side], type?.parts[side]?.per ? 'per' : undefined].filter(word => word !== undefined);
        const taken = saidOnce(said, declaration);
        const modifiers = [...this.vocabulary.modifiers(declaration)].filter(([name]) => !taken.includes(name));
        return [
            ...keywords.map(label => ({ label, kind: PICTURE.keyword, first: true })),
            ...modifiers.map(([label, node]) => ({ label, kind: PICTURE.property, detail: typeText(node), about: node, first: isRequired(node) })),
        ];
    }

    /** Whether there is something to choose from where its first value is to stand, or its first line. */
    private opens(property: ast.PropertyDecl): boolean {
        const block = blockKindOf(property), [required] = block ? requiredOf(block, this.vocabulary) : [];
        if (block) return !required || this.opens(required);
        const type = property.type?.parts[0]?.ref?.$refText;
        return property.default !== undefined || factsOf(property).names !== undefined || figuresFor(property, type).length > 0
            || type !== undefined && (IMPORTED.has(type) || ast.isWords(this.vocabulary.types.get(type)));
    }

    private named(label: string, node: AstNode): Suggestion {
        if (ast.isPropertyDecl(node)) {
            return {
                label, kind: PICTURE.property, detail: typeText(node), about: node, snippet: new Skeleton(this.vocabulary).property(node),
                first: isRequired(node), opens: this.opens(node),
            };
        }
        if (ast.isWordDecl(node)) return { label, kind: PICTURE.word, about: node.$container };
        if (ast.isParam(node)) return { label, kind: PICTURE.variable, detail: oneLine(node), about: node };
        if (ast.isProfile(node) && node.params.some(parameter => !parameter.default)) return { label, kind: PICTURE.class, detail: heading(node), about: node, snippet: `${label}($0)` };
        return { label, kind: PICTURES[node.$type] ?? PICTURE.variable, detail: heading(node), about: node };
    }
}

/** What is fetched from other files where it is wanted. */
const IMPORTED = new Set(['Stock', 'Profile']);

/** What lumber is priced by, besides pieces. */
const PRICED_BY = new Set(['Length', 'Volume']);

/** Kinds of things that a profile can be given; the others are blocks. */
const PARAMETERS = new Set(['Stock', 'Profile']);

const PICTURES: Readonly<Record<string, Suggestion['kind']>> = { Stock: PICTURE.constant, Profile: PICTURE.class, Room: PICTURE.module };

/** What may begin a line besides the properties. */
const WORDS_OF_KIND: Readonly<Record<string, readonly Suggestion[]>> = {
    Profile: [
        { label: 'require', kind: PICTURE.keyword, detail: 'a limit that has to be kept', snippet: 'require $1 "$2"' },
        { label: 'let', kind: PICTURE.keyword, detail: 'a value with a name', snippet: 'let $1 = $2' },
    ],
    Room: [
        { label: 'wall', kind: PICTURE.keyword, detail: 'a wall and its length', snippet: 'wall $1  $2', opens: true },
        { label: 'line', kind: PICTURE.keyword, detail: 'a line of beams that differs', snippet: 'line $1 { $0 }' },
        { label: 'fixture', kind: PICTURE.keyword, detail: 'a light, a sprinkler, a register', snippet: 'fixture $1 $2 at $3' },
        { label: 'crossing', kind: PICTURE.keyword, detail: 'a crossing that differs', snippet: 'crossing $1 { through $0 }' },
    ],
    Measured: [{ label: 'board', kind: PICTURE.keyword, detail: 'a board as it was measured', snippet: 'board $1 $2 { $0 }' }],
};
