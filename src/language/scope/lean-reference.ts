import { AstUtils, DocumentState, isAstNode, isAstNodeDescription, isLinkingError, type AstNode, type AstNodeDescription, type CstNode, type LinkingError, type Reference, type ReferenceInfo } from 'langium';

/** What a word asks to find out what it leads to: the linker. */
export interface Asked {
    loadAstNode(description: AstNodeDescription): AstNode | undefined;
    getLinkedNode(info: ReferenceInfo): { node?: AstNode, descr?: AstNodeDescription, error?: LinkingError };
    createLinkingError(info: ReferenceInfo, description?: AstNodeDescription): LinkingError;
}
const BEING_FOUND = Symbol('being found');

/**
 * A word that leads to what it names. Langium's own makes an object with three functions of its own for each, and a text of a thousand words has
 * as many; here they share them. It behaves as that does: who asks before its file is linked has it found at once, and in a circle it is told.
 */
export class LeanReference implements Reference {
    /** Of these two names, as Langium's linker sets them when it links a file in one go; a symbol while it is being found. */
    private _ref: AstNode | LinkingError | symbol | undefined = undefined;
    private _nodeDescription: AstNodeDescription | undefined = undefined;

    constructor(private readonly linker: Asked, private readonly node: AstNode, private readonly property: string,
        readonly $refNode: CstNode | undefined, readonly $refText: string) {}

    get ref(): AstNode | undefined {
        if (isAstNode(this._ref)) return this._ref;
        const info: ReferenceInfo = { reference: this, container: this.node, property: this.property };
        if (isAstNodeDescription(this._nodeDescription)) {
            this._ref = this.linker.loadAstNode(this._nodeDescription) ?? this.linker.createLinkingError(info, this._nodeDescription);
        } else if (this._ref === undefined) this.find(info);
        else if (typeof this._ref === 'symbol') throw new Error(`What ${this.$refText} leads to depends on itself (${this.node.$type}, ${this.property}).`);
        return isAstNode(this._ref) ? this._ref : undefined;
    }

    get $nodeDescription(): AstNodeDescription | undefined {
        return this._nodeDescription;
    }

    get error(): LinkingError | undefined {
        return isLinkingError(this._ref) ? this._ref : undefined;
    }

    /** Not for good where the names of its file are not known yet. */
    private find(info: ReferenceInfo): void {
        this._ref = BEING_FOUND;
        const document = AstUtils.findRootNode(this.node).$document;
        const { node, descr, error } = this.linker.getLinkedNode(info);
        if (error && document && document.state < DocumentState.ComputedScopes) {
            this._ref = undefined;
            return;
        }
        this._ref = node ?? error;
        this._nodeDescription = descr;
        document?.references.push(this);
    }
}
