import type { AstNode } from 'langium';
import type { Stock } from '../../job/model.ts';
import { worstCase } from '../../quantity/tolerance.ts';
import { toTicks } from '../../quantity/rational.ts';
import * as ast from '../generated/ast.ts';
import { declarationOf } from '../scope/kind-of.ts';
import { isBroken } from '../types/broken.ts';
import { declaredType } from '../types/declared.ts';
import { LENGTH, type Type } from '../types/type.ts';
import { documentOf, Evaluator } from './evaluate.ts';
import { House } from './house.ts';
import { inInches, inMillimeters, printValue } from './print.ts';
import type { Known, Value } from './value.ts';

/**
 * What something comes to, for a hover: a length in both systems, a stock's dressed size, a parameter's default.
 * Takes a stock, a parameter, a `let`, a line of a block, a wall or fixture, a modifier, an expression, or a name of one.
 * Undefined where it is unknown, or where its words say it all. The values in a profile are those of its defaults.
 */
export function describe(node: AstNode): string | undefined {
    const document = documentOf(node);
    if (!document) return undefined;
    const target = ast.isRef(node) || ast.isUsedName(node) ? node.target?.ref : node;
    const house = new House(document);
    if (ast.isStock(target)) return describeStock(house, target);
    const evaluator = evaluatorAt(node, house);
    if (ast.isParam(target)) {
        const value = evaluatorAt(target, house).parameter(target)?.value;
        const text = value?.is === 'stock' ? `${value.stock.name}, ${dressed(value.stock)}` : inBothSystems(value);
        return text && `default ${text}`;
    }
    if (ast.isLet(target)) return inBothSystems((ast.isFile(target.$container) ? house.fileValue(target) : evaluator.value(target))?.value);
    if (ast.isLine(node) || ast.isFixture(node)) {
        const type = declaredType(declarationOf(node, house.vocabulary)?.type);
        return isBroken(node) ? undefined : listOf(node.values.map(value => evaluator.bound(value, oneOf(type))));
    }
    if (ast.isMod(node)) return listOf(node.values.map(value => evaluator.bound(value, oneOf(declaredType(node.decl?.ref?.type)))));
    return ast.isExpr(node) ? inBothSystems(evaluator.evaluate(node)?.value) : undefined;
}

function oneOf(type: Type | undefined): Type | undefined {
    return type?.is === 'many' ? type.of : type;
}

function listOf(values: readonly (Known | undefined)[]): string | undefined {
    const texts = values.map(value => inBothSystems(value?.value));
    return texts.length > 0 && texts.every(text => text !== undefined) ? texts.join(', ') : undefined;
}

/** Within a profile its own defaults hold. What is wrong has been said elsewhere. */
function evaluatorAt(node: AstNode, house: House): Evaluator {
    const quiet = () => { /* reported when the file was read */ };
    let profile: AstNode | undefined = node;
    while (profile && !ast.isProfile(profile)) profile = profile.$container;
    const values = profile && house.baseline(profile)?.values;
    return new Evaluator(house, quiet, new Map((profile as ast.Profile | undefined)?.params.map((parameter, i) => [parameter, values?.[i]])));
}

function describeStock(house: House, declaration: ast.Stock): string | undefined {
    const stock = house.stock(declaration);
    return stock?.thickness && stock.width ? dressed(stock) : undefined;
}

function dressed({ thickness, width }: Stock): string {
    const sizes = [thickness, width].map(size => size?.value.ticks);
    const inches = sizes.map(ticks => ticks === undefined ? '?' : inInches(ticks)), millimeters = sizes.map(ticks => ticks === undefined ? '?' : inMillimeters(ticks));
    return `dressed ${inches.join(' x ')} (${millimeters.join(' x ').replace(/ mm(?=.* mm$)/g, '')})`;
}

/** `5 1/2" (139.7 mm)`, `1/4" x 3/8" (6.35 x 9.53 mm)`, `18 ga x 1 1/4" (31.75 mm)`; other quantities as they would be written. */
function inBothSystems(value: Value | undefined): string | undefined {
    if (!value) return undefined;
    const inches = lengths(value, inInches), millimeters = lengths(value, inMillimeters);
    if (inches && millimeters) return `${inches} (${millimeters.replace(/ mm(?=.* mm$)/g, '')})`;
    if (value.is === 'pair' || value.is === 'range') {
        const first = inBothSystems(value.first.value) ?? printValue(value.first.value);
        const second = inBothSystems(value.second.value) ?? printValue(value.second.value);
        return `${first} ${value.is === 'pair' ? 'x' : 'to'} ${second}`;
    }
    return value.is === 'quantity' ? printValue(value) : undefined;
}

/** Undefined where it holds anything but lengths. */
function lengths(value: Value, print: (ticks: number) => string): string | undefined {
    if (value.is === 'pair' || value.is === 'range') {
        const first = lengths(value.first.value, print), second = lengths(value.second.value, print);
        return first && second && `${first} ${value.is === 'pair' ? 'x' : 'to'} ${second}`;
    }
    if (value.is !== 'quantity' || value.type !== LENGTH) return undefined;
    const off = worstCase(value.tolerance);
    return off === 0 ? print(toTicks(value.exact)) : `${print(toTicks(value.exact))} ± ${print(off)}`;
}
