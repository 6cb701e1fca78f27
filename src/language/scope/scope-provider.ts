import { AstUtils, stream, type AstNode, type AstNodeDescription, type DocumentSegment, type ReferenceInfo, type Scope, type ScopeProvider, type Stream, type URI } from 'langium';
import type { CofferServices } from '../coffer-services.ts';
import { allNames, lookUp, type Layer } from './layer.ts';
import { inReach } from './reach.ts';

/** Shows Langium the names in reach of a cross-reference. The rules themselves are in `reach.ts`. */
export class CofferScopeProvider implements ScopeProvider {
    constructor(private readonly services: CofferServices) {}

    getScope(info: ReferenceInfo): Scope {
        return new LayeredScope(inReach(info, this.services.surroundings), this.services);
    }
}

class LayeredScope implements Scope {
    constructor(private readonly layers: readonly Layer[], private readonly services: CofferServices) {}

    getElement(name: string): AstNodeDescription | undefined {
        const node = lookUp(this.layers, name);
        return node && new Description(node, name, this.services);
    }

    getElements(name: string): Stream<AstNodeDescription> {
        const element = this.getElement(name);
        return stream(element ? [element] : []);
    }

    getAllElements(): Stream<AstNodeDescription> {
        return stream(allNames(this.layers)).map(([name, node]) => new Description(node, name, this.services));
    }
}

/** What Langium wants to know of a named thing; most of it only when somebody renames something, so it is found then. */
class Description implements AstNodeDescription {
    constructor(readonly node: AstNode, readonly name: string, private readonly services: CofferServices) {}

    get type(): string { return this.node.$type; }
    get documentUri(): URI { return AstUtils.getDocument(this.node).uri; }
    get path(): string { return this.services.workspace.AstNodeLocator.getAstNodePath(this.node); }
    get nameSegment(): DocumentSegment | undefined { return this.full().nameSegment; }
    get selectionSegment(): DocumentSegment | undefined { return this.full().selectionSegment; }

    private full(): AstNodeDescription {
        return this.services.workspace.AstNodeDescriptionProvider.createDescription(this.node, this.name);
    }
}
