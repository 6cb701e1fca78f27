import { stream, type AstNode, type AstNodeDescription, type AstNodeDescriptionProvider, type ReferenceInfo, type Scope, type ScopeProvider, type Stream } from 'langium';
import type { CofferServices } from '../services.ts';
import { allNames, lookUp, type Layer } from './layer.ts';
import { inReach } from './reach.ts';

/** Shows Langium the names in reach of a cross-reference. The rules themselves are in `reach.ts`. */
export class CofferScopeProvider implements ScopeProvider {
    private readonly services: CofferServices;

    constructor(services: CofferServices) {
        this.services = services;
    }

    getScope(info: ReferenceInfo): Scope {
        return new LayeredScope(inReach(info, this.services.surroundings), this.services.workspace.AstNodeDescriptionProvider);
    }
}

/** Descriptions belong to a node and a name; a node has nearly always one name. */
const descriptions = new WeakMap<AstNode, AstNodeDescription>();

class LayeredScope implements Scope {
    private readonly layers: readonly Layer[];
    private readonly provider: AstNodeDescriptionProvider;

    constructor(layers: readonly Layer[], provider: AstNodeDescriptionProvider) {
        this.layers = layers;
        this.provider = provider;
    }

    getElement(name: string): AstNodeDescription | undefined {
        const node = lookUp(this.layers, name);
        return node && this.describe(node, name);
    }

    getElements(name: string): Stream<AstNodeDescription> {
        const element = this.getElement(name);
        return stream(element ? [element] : []);
    }

    getAllElements(): Stream<AstNodeDescription> {
        return stream(allNames(this.layers)).map(([name, node]) => this.describe(node, name));
    }

    private describe(node: AstNode, name: string): AstNodeDescription {
        const known = descriptions.get(node);
        if (known?.name === name) return known;
        const description = this.provider.createDescription(node, name);
        descriptions.set(node, description);
        return description;
    }
}
