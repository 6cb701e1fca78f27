import type { LangiumDocument } from 'langium';
import { faultAt, topOf } from '../../findings/fault.ts';
import { compareFindings, type Finding } from '../../findings/finding.ts';
import * as ast from '../generated/ast.ts';
import { brokenLines } from '../types/broken.ts';
import { typeFindings } from '../types/findings.ts';
import { isBuiltin } from '../workspace/builtin.ts';
import { servicesOf } from '../workspace/services-of.ts';
import { declaredFindings } from './declared.ts';
import { headFindings } from './head.ts';
import { importFindings } from './imports.ts';
import { linkFindings } from './links.ts';
import { misplacedFindings } from './misplaced.ts';
import { syntaxFindings } from './syntax.ts';
import { withinText } from './within-text.ts';

/**
 * All that can be wrong with a file as a text in the job language, in the order of the text. A line that could not be
 * read says nothing more than that: what else seems wrong with it only follows from there.
 */
export function languageFindings(document: LangiumDocument): readonly Finding[] {
    const syntax = withinText(document, syntaxFindings(document));
    try {
        return withinText(document, withNames(document, syntax));
    } catch (error) {
        return [faultAt(topOf(document.uri.toString()), error, 'checking the words of this file'), ...syntax];
    }
}

function withNames(document: LangiumDocument, syntax: readonly Finding[]): readonly Finding[] {
    const file = document.parseResult.value;
    if (!ast.isFile(file)) return syntax;
    if (isBuiltin(document.uri)) return [...syntax, ...linkFindings(document), ...typeFindings(document)].sort(compareFindings);
    const { vocabulary } = servicesOf(document);
    const found = [
        ...linkFindings(document),
        ...headFindings(file),
        ...importFindings(document, file),
        ...declaredFindings(document, file),
        ...misplacedFindings(file, vocabulary),
        ...typeFindings(document),
    ];
    return [...syntax, ...unbroken(found, file)].sort(compareFindings);
}

function unbroken(found: readonly Finding[], file: ast.File): readonly Finding[] {
    const lines = brokenLines(file);
    return lines.size === 0 ? found : found.filter(each => !lines.has(each.at.range.start.line));
}
