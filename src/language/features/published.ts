import { AstUtils, type AstNode } from 'langium';
import { dressedSize } from '../../data/dressed-sizes.ts';
import { MOVEMENT } from '../../data/movement.ts';
import { citation } from '../../data/published.ts';
import { STRENGTH } from '../../data/species.ts';
import { sameSource } from '../../provenance/source.ts';
import * as ast from '../generated/ast.ts';
import { readFile } from '../read-file.ts';
import { sourceOfProperty } from '../types/place.ts';

/** Where the published figures of a thing come from, and what they are where its own words do not show them: of a stock, of a species. */
export function publishedFor(node: AstNode): string | undefined {
    if (ast.isStock(node)) return ofStock(node);
    return ast.isWordDecl(node) && node.$container.name === 'Species' ? ofSpecies(node.name) : undefined;
}

/** The standard behind a dressed size, where the size is its and not said. */
function ofStock(declaration: ast.Stock): string | undefined {
    const name = sourceOfProperty(declaration, 'name');
    const stock = readFile(AstUtils.getDocument(declaration)).stocks.find(({ at }) => sameSource(at, name));
    const dressed = stock?.size && dressedSize(stock.size.value.thickness, stock.size.value.width);
    if (!dressed) return undefined;
    const from = (['thickness', 'width'] as const).filter(side => stock[side]?.said === false);
    if (from.length === 0) return undefined;
    return `${from.length === 2 ? 'Dressed size' : `Dressed ${from[0]}`} of ${stock.size!.value.text}: ${citation(dressed.published)}.`;
}

function ofSpecies(name: string): string | undefined {
    const strength = STRENGTH[name], movement = MOVEMENT[name];
    const lines = [
        strength && `- stiffness ${grouped(strength.elasticity * 1e6)} psi (${(strength.elasticity * 6.894757).toFixed(1)} GPa), rupture ${grouped(strength.rupture)} psi (${(strength.rupture * 0.006894757).toFixed(0)} MPa), at 12 % moisture: ${citation(strength)}`,
        movement && `- for each percent of moisture ${percent(movement.tangential)} wider flatsawn, ${percent(movement.radial)} quartersawn: ${citation(movement)}`,
    ].filter(line => line);
    return lines.length > 0 ? lines.join('\n') : undefined;
}

function percent(share: number): string {
    return `${(share * 100).toFixed(2)} %`;
}

/** `1,580,000`. */
function grouped(value: number): string {
    return Math.round(value).toString().replace(/\B(?=(\d{3})+$)/g, ',');
}
