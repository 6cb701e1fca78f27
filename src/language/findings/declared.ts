import { AstUtils, UriUtils, type AstNode, type LangiumDocument } from 'langium';
import type { Finding } from '../../findings/finding.ts';
import * as ast from '../generated/ast.ts';
import { sourceOf, sourceOfKeyword, sourceOfProperty } from '../types/place.ts';
import { quoted } from '../types/words.ts';
import { servicesOf } from '../workspace/services-of.ts';
import { MOST_IN_FOLDER } from '../workspace/jobs.ts';
import { finding, removeLines } from './make.ts';

/**
 * Things that are there twice: one name for two of them, two labor blocks, two jobs in a folder.
 * What is said twice within a block is found with its types (types/blocks.ts).
 */
export function declaredFindings(document: LangiumDocument, file: ast.File): readonly Finding[] {
    const found = [...twice(file.items.filter(isGlobal), 'in this file'), ...twice(file.items.filter(ast.isAlternate), 'in this file')];
    for (const profile of file.items.filter(ast.isProfile)) found.push(...twice(profile.params, 'among these parameters'));
    found.push(...onlyOnce(file.items.filter(ast.isLabor), 'labor'), ...onlyOnce(file.items.filter(ast.isBid), 'bid'));
    return [...found, ...roomFindings(document, file), ...jobFindings(document, file), ...ratesFindings(document, file)];
}

/** What shares the names of a file: a stock and a profile may not be called alike. */
function isGlobal(item: ast.Item): item is ast.Stock | ast.Profile | ast.Room | ast.Let {
    return ast.isStock(item) || ast.isProfile(item) || ast.isRoom(item) || ast.isLet(item);
}

function twice(nodes: readonly (AstNode & { name?: string })[], where: string): Finding[] {
    const first = new Map<string, AstNode>();
    const found: Finding[] = [];
    for (const node of nodes) {
        if (!node.name) continue;
        const before = first.get(node.name);
        if (before) found.push(declaredTwice(node, before, `${quoted(node.name)} is defined twice ${where}. Take one out, or give it another name.`));
        else first.set(node.name, node);
    }
    return found;
}

function declaredTwice(node: AstNode, before: AstNode, message: string): Finding {
    return finding('declared-twice', sourceOfProperty(node, 'name'), message, {
        related: [{ at: sourceOfProperty(before, 'name'), message: 'First defined here.' }],
    });
}

function onlyOnce(nodes: readonly AstNode[], keyword: string): Finding[] {
    return nodes.slice(1).map(node => finding('declared-twice', sourceOfKeyword(node, keyword), `A file can have only one ${keyword} block. Move its lines into the first.`, {
        related: [{ at: sourceOfKeyword(nodes[0]!, keyword), message: 'The first one.' }],
        fixes: [removeLines(`Take this ${keyword} block out`, sourceOf(node))],
    }));
}

/** Pieces of two rooms that are called alike could not be told apart. It is said at all but the first. */
function roomFindings(document: LangiumDocument, file: ast.File): Finding[] {
    const { Rooms } = servicesOf(document).shared.workspace;
    return file.items.filter(ast.isRoom).flatMap(room => {
        const other = Rooms.namesake(document, room);
        if (!other) return [];
        const where = UriUtils.relative(UriUtils.dirname(document.uri), AstUtils.getDocument(other).uri);
        const message = `Another room of this house is called ${quoted(room.name)} (${where}), and pieces are named by their room, so every name would be there twice. Give one of the rooms another name.`;
        return [finding('declared-twice', sourceOfProperty(room, 'name'), message, { severity: 'warning', related: [{ at: sourceOfProperty(other, 'name'), message: 'The other room.' }] })];
    });
}

/** One job a folder: with two, nobody could say which holds. It is said at all but the first. */
function jobFindings(document: LangiumDocument, file: ast.File): Finding[] {
    const [first] = servicesOf(document).shared.workspace.Jobs.beside(document).jobs;
    return file.items.filter(ast.isJob).filter(job => job !== first).map(job => {
        const title = first?.title ? ` (${quoted(first.title)})` : '';
        return finding('two-jobs', sourceOfKeyword(job, 'job'), `This folder has another job${title}, and a folder can have only one, since a job applies to every room in its folder. Take one out, or move it to a folder of its own.`, {
            related: first ? [{ at: sourceOfKeyword(first, 'job'), message: 'The other job.' }] : [],
        });
    });
}

/** Rates that are said in very many files of one folder are not all read. */
function ratesFindings(document: LangiumDocument, file: ast.File): Finding[] {
    const { labor, bids } = servicesOf(document).shared.workspace.Jobs.beside(document);
    const unread = (nodes: readonly AstNode[], read: readonly AstNode[], keyword: string): Finding[] =>
        read.length < MOST_IN_FOLDER ? [] : nodes.filter(node => !read.includes(node)).map(node =>
        finding('declared-twice', sourceOfKeyword(node, keyword), `This folder has more than ${MOST_IN_FOLDER} ${keyword} blocks, and this is not among the first ${MOST_IN_FOLDER}: it is not read. Put the rates in one file, or in folders of their own.`));
    return [...unread(file.items.filter(ast.isLabor), labor, 'labor'), ...unread(file.items.filter(ast.isBid), bids, 'bid')];
}
