import { OPERATORS } from '../grammar-words.ts';
import { problemAt, type Problem } from './problem.ts';
import { impliedAfter, isBoundary, isClose, isOpen, type Token, type TokenTypes } from './token.ts';

/** Blocks and parentheses within each other, or signs before a value. The parser takes twice as many and then throws. */
export const DEEPEST = 64;
/** Operators in one statement: what reads the tree of a value goes as deep as there are operators. */
const LONGEST = 1000;
const LINKS = new Set([...OPERATORS, '.', 'per']);

const TOO_DEEP = `This is nested too deep: ${DEEPEST} levels is the limit. Nothing in here is read.`;
const TOO_LONG = `This value is too long: ${LONGEST} signs such as + or - in one value is the limit. Put part of it into a \`let\`.`;
const TOO_MANY_SIGNS = `There are more than ${DEEPEST} signs before one value.`;

/** Leaves out what is nested so deep, or goes on for so long, that a program reading the tree would run out of room. */
export function boundNesting(tokens: readonly Token[], types: TokenTypes, problems: Problem[]): Token[] {
    const kept: Token[] = [];
    let blocks = 0, parentheses = 0, links = 0, signs = 0;
    let i = 0;
    while (i < tokens.length) {
        const token = tokens[i]!;
        if (isBoundary(token)) {
            parentheses = links = signs = 0;
            if (isOpen(token) && blocks >= DEEPEST) {
                problems.push(problemAt(token, TOO_DEEP));
                if (!isBoundary(kept[kept.length - 1])) kept.push(impliedAfter(types['EOL']!, kept[kept.length - 1]!));
                i = afterBlock(tokens, i);
                continue;
            }
            if (isOpen(token)) blocks++;
            else if (isClose(token)) blocks = Math.max(0, blocks - 1);
        }
        const { image } = token;
        if (image === '(' && blocks + parentheses >= DEEPEST) {
            problems.push(problemAt(token, TOO_DEEP));
            i = afterParenthesis(tokens, i);
            continue;
        }
        if (image === '(') parentheses++;
        else if (image === ')') parentheses = Math.max(0, parentheses - 1);
        signs = image === '-' || image === '+' ? signs + 1 : 0;
        if (LINKS.has(token.tokenType.name)) links++;
        if (signs > DEEPEST || links > LONGEST) {
            problems.push(problemAt(token, signs > DEEPEST ? TOO_MANY_SIGNS : TOO_LONG));
            i = statementEnd(tokens, i);
            continue;
        }
        kept.push(token);
        i++;
    }
    return kept;
}

function afterBlock(tokens: readonly Token[], i: number): number {
    let depth = 0;
    for (; i < tokens.length; i++) {
        if (isOpen(tokens[i]!)) depth++;
        else if (isClose(tokens[i]!) && --depth === 0) return i + 1;
    }
    return i;
}

function afterParenthesis(tokens: readonly Token[], i: number): number {
    let depth = 0;
    for (; i < tokens.length && !isBoundary(tokens[i]); i++) {
        if (tokens[i]!.image === '(') depth++;
        else if (tokens[i]!.image === ')' && --depth === 0) return i + 1;
    }
    return i;
}

function statementEnd(tokens: readonly Token[], i: number): number {
    while (i < tokens.length && !isBoundary(tokens[i])) i++;
    return i;
}
