import type { LangiumDocument } from 'langium';
import { findingOf, type Finding } from '../../findings/finding.ts';
import { CURRENCIES } from '../../data/currencies.ts';
import * as ast from '../generated/ast.ts';
import { kindOfBody } from '../scope/kind-of.ts';
import type { Vocabulary } from '../scope/vocabulary.ts';
import { jobOf, servicesOf } from '../workspace/services-of.ts';
import { checkComplete, checkSaidTwice } from './blocks.ts';
import { isBroken } from './broken.ts';
import { declaredType } from './declared.ts';
import { Inference } from './infer.ts';
import { sourceOf, sourceOfKeyword, sourceOfProperty } from './place.ts';
import type { Report } from './report.ts';
import type { Wont } from './suggest.ts';
import { CONDITION } from './type.ts';
import { checkMember } from './values.ts';
import { quoted } from './words.ts';

/**
 * What is wrong in a document as far as types and shape go: the wrong kind of thing, a value or a property missing, one
 * thing said twice. Nothing about an expression that touches an unknown name, nor about a line with a syntax error.
 */
export function typeFindings(document: LangiumDocument): Finding[] {
    const file = document.parseResult.value;
    if (!ast.isFile(file)) return [];
    const findings: Finding[] = [];
    new Walk(servicesOf(document).vocabulary, said => findings.push(findingOf(said)), wontOf(document)).file(file);
    return findings;
}

/** What the job says of its units: where it shows millimeters, a bare figure most likely means them. */
function wontOf(document: LangiumDocument): Wont {
    const members = jobOf(document)?.body?.members ?? [];
    const saidOf = (name: string): string | undefined => {
        const line = members.find(member => ast.isLine(member) && member.path[0]?.$refText === name);
        const [value] = ast.isLine(line) ? line.values : [];
        return ast.isRef(value) ? value.target?.$refText : ast.isTextLit(value) ? value.text : undefined;
    };
    const currency = saidOf('currency') ?? 'USD';
    return { isMetric: saidOf('show') === 'millimeters', currency: Object.hasOwn(CURRENCIES, currency) ? currency : undefined };
}

class Walk {
    private readonly inference: Inference;

    constructor(private readonly vocabulary: Vocabulary, private readonly report: Report, wont: Wont) {
        this.inference = new Inference(vocabulary, report, wont);
    }

    file(file: ast.File): void {
        for (const item of file.items) {
            if (ast.isLet(item)) this.let(item);
            else if (ast.isProfile(item)) this.profile(item);
            else if (ast.isKind(item)) item.props.forEach(property => this.property(property));
            else if ('body' in item && item.body && !ast.isLoose(item) && !ast.isStray(item)) {
                this.body(item.body);
                const at = () => ast.isLabor(item) || ast.isBid(item) ? sourceOfKeyword(item, item.$type.toLowerCase()) : sourceOfProperty(item, ast.isJob(item) ? 'title' : 'name');
                if (!ast.isAlternate(item)) this.complete(item.body, ast.isJob(item) ? item.title : 'name' in item ? item.name : item.$type.toLowerCase(), at);
            }
        }
    }

    private profile(profile: ast.Profile): void {
        for (const parameter of profile.params) if (parameter.default
            && !isBroken(parameter)) this.inference.check(parameter.default, { want: declaredType(parameter.type), what: quoted(parameter.name) });
        const base = profile.base;
        if (base && !isBroken(profile)) {
            this.inference.infer(base);
            const target = base.target?.ref;
            if (target && !ast.isProfile(target)) this.report({ rule: 'wrong-type', at: sourceOf(base), message: `A profile can only be like a profile; ${quoted(base.target.$refText)} is none.` });
        }
        if (!profile.body) return;
        this.body(profile.body);
        if (!base) this.complete(profile.body, profile.name, () => sourceOfProperty(profile, 'name'));
    }

    private complete(body: ast.Body, name: string, at: () => ReturnType<typeof sourceOf>): void {
        const kind = kindOfBody(body, this.vocabulary);
        if (kind) checkComplete(body, kind, name, at, this.vocabulary, this.report);
    }

    private body(body: ast.Body): void {
        checkSaidTwice(body, this.report);
        for (const member of body.members) {
            if (ast.isLet(member)) this.let(member);
            else if (ast.isRequire(member)) this.require(member);
            else if (ast.isLine(member) || ast.isFixture(member)) {
                checkMember(member, this.vocabulary, this.inference, this.report);
                if (!member.body) continue;
                this.body(member.body);
                if (ast.isFixture(member)) this.complete(member.body, `${member.kind} ${member.name}`, () => sourceOfProperty(member, 'name'));
            }
        }
    }

    private let(declaration: ast.Let): void {
        if (!isBroken(declaration)) this.inference.check(declaration.value, { want: declaredType(declaration.type), what: quoted(declaration.name) });
    }

    private require(require: ast.Require): void {
        if (!isBroken(require)) this.inference.check(require.cond, { want: CONDITION, what: '`require`' });
    }

    private property(property: ast.PropertyDecl): void {
        if (property.default) this.inference.check(property.default, { want: declaredType(property.type), what: quoted(property.name) });
        property.mods.forEach(mod => this.property(mod));
    }
}
