import { createDefaultCoreModule, createDefaultSharedCoreModule, EmptyFileSystem, inject, type LangiumCoreServices } from 'langium';
import { frontModule } from './front-module.ts';
import { CofferGeneratedModule, CofferGeneratedSharedModule } from './generated/module.ts';

/** Lexer and parser alone, for what asks nothing about names: the formatter, and tests. */
export function createFront(): LangiumCoreServices {
    const shared = inject(createDefaultSharedCoreModule(EmptyFileSystem), CofferGeneratedSharedModule);
    const front = inject(createDefaultCoreModule({ shared }), CofferGeneratedModule, frontModule);
    shared.ServiceRegistry.register(front);
    return front;
}
