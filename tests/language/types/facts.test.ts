import { expect, test } from 'vitest';
import { createCofferServices } from '../../../src/language/services.ts';
import { factsOf } from '../../../src/language/types/facts.ts';
import type { PropertyDecl } from '../../../src/language/generated/ast.ts';

const { vocabulary } = createCofferServices().coffer;
const inches = (n: number) => n * 16256;
const properties = [...vocabulary.kinds.values()].flatMap(({ name, props }) => props.flatMap(prop => [
    [`${name}.${prop.name}`, prop] as const, ...prop.mods.map(mod => [`${name}.${prop.name}/${mod.name}`, mod] as const),
]));
const of = (path: string) => factsOf(properties.find(([each]) => each === path)![1]);

test.each(properties)('what is said of %s is read, in every word that it names', (_, property) => {
    const facts = factsOf(property);
    const owner = property.$container;
    const beside = 'mods' in owner ? owner.mods : owner.props;
    const named = (name: string): PropertyDecl | undefined => beside.find(each => each.name === name) ?? ('mods' in owner ? [owner] : []).find(each => each.name === name);
    for (const name of [
        ...facts.insteadOf, ...facts.follows ?? [] ? [facts.follows].filter(each => each !== undefined) : [],
    ]) expect(named(name), name).toBeDefined();
    if (facts.severalLines?.by !== undefined) expect(property.mods.map(({ name }) => name)).toContain(facts.severalLines.by);
    for (const unit of facts.reckonedBy) expect([...vocabulary.units.keys()]).toContain(unit);
    const words = (of: PropertyDecl | undefined) => {
        const list = of?.type?.parts[0]?.ref.ref;
        return list && 'words' in list ? list.words.map(({ name }) => name) : [];
    };
    if (facts.countsWith) expect(words(named(facts.countsWith.property))).toEqual(expect.arrayContaining([...facts.countsWith.words]));
    for (const { only = [] } of facts.notComputed) expect(words(property)).toEqual(expect.arrayContaining([...only]));
    for (const { least, most } of facts.usual) expect(least).toBeLessThan(most);
});

test('lengths, shares, times and gauges are read in their units', () => {
    expect(of('Job.kerf')).toMatchObject({ least: 0, most: inches(1), inMillimeters: [3 * 640], usual: [{ of: 'length', least: inches(1 / 64), most: inches(3 / 8), slip: 'a saw takes about 1/8"' }] });
    expect(of('Stock.lengths')).toMatchObject({ moreThan: 0, usual: [{ of: 'length', least: inches(12), most: inches(24 * 12) }], mostlyInFeet: true, severalLines: {} });
    expect(of('Bid.deposit').usual).toEqual([{ of: 'share', least: 0, most: 1, slip: 'more than the whole price' }]);
    expect(of('Labor.day').usual).toMatchObject([{ of: 'minutes', least: 120, most: 960 }]);
    expect(of('Labor.sides').usual).toEqual([{ of: 'minutes a foot', least: 0, most: 60 }]);
    expect(of('Sides.nails').usual).toEqual([{ of: 'length', least: inches(1 / 2), most: inches(4) }, { of: 'gauge', least: 15, most: 23 }]);
    expect(of('Stock.on-hand').usual).toEqual([{ of: 'length', least: inches(1), most: inches(24 * 12) }, { of: 'count', least: 0, most: 500 }]);
});

test('what is not computed is read with what it makes wrong', () => {
    expect(of('Ceiling.joists').notComputed.map(({ spoils }) => spoils)).toEqual(['nothing']);
    expect(of('Board.length').notComputed).toEqual([]);
    expect(of('Room.trim').notComputed).toEqual([]);
    expect(of('BeamLine.meets').notComputed).toEqual([]);
    expect(of('Fixture.value').notComputed.map(({ only }) => only)).toEqual([['casing'], ['cabinet'], ['soffit'], ['pocket'], ['stair-opening']]);
});
