import fc from 'fast-check';
import { URI, type LangiumDocument } from 'langium';
import { readFile } from '../../src/language/read-file.ts';
import { inspect } from '../../src/pipeline/inspect.ts';
import { createServerServices } from '../../src/server/services.ts';
import { Broken, mustStandWithin } from '../hostile/within.ts';
import { TestWorkspace } from '../support/workspace.ts';
import { formats } from './look.ts';
import { inputs, textOf, type Input } from './mutations.ts';
import type { Corpus, Seed } from './texts.ts';

/** What a seed is cut into, and how far mutations may take it: most mistakes of a parser need few words, and few words take little time. */
const SHORT = 90, MOST = 240, STEPS = 4;
/** So many short texts are built at a time, each in a folder of its own: what a build costs by itself is shared. */
const TOGETHER = 100;
/** A text of this length in milliseconds of the processor, far more than it takes. */
const MOST_MS = 500;

/** Very many short texts: parsed, linked, checked, found within, formatted twice. */
export class Swarm {
    private readonly shorts: readonly Seed[];

    private constructor(private readonly workspace: TestWorkspace, corpus: Corpus) {
        this.shorts = shortened(corpus.seeds);
    }

    /** @param corpus whose house is what the short texts may import from */
    static async open(corpus: Corpus): Promise<Swarm> {
        return new Swarm(await TestWorkspace.serve(corpus.house, createServerServices), corpus);
    }

    /** So many texts from a seed. The first that breaks an invariant, shrunk, with why; undefined where none does. */
    async fly(count: number, seed: number): Promise<{ readonly text: string; readonly why: unknown } | undefined> {
        const all = fc.sample(this.inputs, { seed, numRuns: count });
        for (let from = 0; from < all.length; from += TOGETHER) {
            const texts = all.slice(from, from + TOGETHER).map(input => this.textOf(input));
            const before = process.cpuUsage(), failed = await this.together(texts);
            const { user, system } = process.cpuUsage(before);
            if (!failed && (user + system) / 1000 < MOST_MS * 4) continue;
            const property = fc.asyncProperty(this.inputs, input => this.alone(this.textOf(input)));
            const { failed: fails, counterexample, errorInstance } = await fc.check(property, { seed, numRuns: count });
            if (fails && counterexample) return { text: this.textOf(counterexample[0]), why: errorInstance };
            if (failed) return { text: texts.join('\n// and\n'), why: failed };
        }
        return undefined;
    }

    private get inputs(): fc.Arbitrary<Input> {
        return inputs(this.shorts.length, STEPS);
    }

    private textOf(input: Input): string {
        return textOf(input, this.shorts, MOST);
    }

    private async alone(text: string): Promise<void> {
        const before = process.cpuUsage(), failed = await this.together([text]);
        if (failed) throw failed;
        const { user, system } = process.cpuUsage(before);
        if ((user + system) / 1000 > MOST_MS) throw new Broken(`It took ${Math.round((user + system) / 1000)} ms.`);
    }

    private async together(texts: readonly string[]): Promise<Error | undefined> {
        const { LangiumDocuments, LangiumDocumentFactory, DocumentBuilder } = this.workspace.shared.workspace;
        const documents = texts.map((text, i): LangiumDocument => LangiumDocumentFactory.fromString(text, URI.parse(`file:///house/guest-${i}/guest.coffer`)));
        try {
            documents.forEach(document => LangiumDocuments.addDocument(document));
            await DocumentBuilder.build(documents, { validation: true });
            for (const document of documents) mustStandWithin(inspect(readFile(document)).findings, LangiumDocuments);
            texts.forEach(formats);
            return undefined;
        } catch (error) {
            return error as Error;
        } finally {
            await DocumentBuilder.update([], documents.map(({ uri }) => uri));
        }
    }
}

/** The declarations of the seeds, and of long ones their lines, a few at a time. */
function shortened(seeds: readonly Seed[]): readonly Seed[] {
    const shorts = new Set<string>();
    for (const { text } of seeds) {
        for (const declaration of text.split(/\n(?=\S[^\n]*[{=]|\n)/)) {
            const lines = declaration.trim().split('\n');
            for (let short = '', i = 0; i < lines.length; i++) {
                short += `${lines[i]!}\n`;
                if (short.length < SHORT && i < lines.length - 1) continue;
                shorts.add(short.slice(0, MOST));
                short = '';
            }
        }
    }
    return [...shorts].map(text => ({ path: 'guest.coffer', text }));
}
