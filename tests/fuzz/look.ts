import type { LangiumDocument } from 'langium';
import { formatText } from '../../src/language/format/index.ts';
import { readFile } from '../../src/language/read-file.ts';
import { inspect, layoutOf, takeOffOf } from '../../src/pipeline/inspect.ts';
import { inspectClosely } from '../../src/pipeline/inspect-closely.ts';
import { price } from '../../src/pipeline/price.ts';
import { createServerServices } from '../../src/server/services.ts';
import { Broken, mustStandWithin } from '../hostile/within.ts';
import { TestWorkspace } from '../support/workspace.ts';
import type { Corpus } from './texts.ts';

/**
 * A house that is kept warm, as an editor has it: one file after the other gets a text that somebody mutilated, is looked at in
 * every way, and is put back.
 */
export class FuzzedHouse {
    private spoiled: string | undefined;

    private constructor(private readonly corpus: Corpus, private readonly workspace: TestWorkspace) {}

    static async open(corpus: Corpus): Promise<FuzzedHouse> {
        return new FuzzedHouse(corpus, await TestWorkspace.serve(corpus.house, createServerServices));
    }

    /**
     * Throws `Broken` where an invariant does not hold. `closely`: also puts rooms together and prices them; `cold`: also compares with a
     * house that is opened anew.
     */
    async look(path: string, text: string, { closely, cold }: { closely: boolean; cold: boolean }): Promise<void> {
        const before = this.spoiled !== undefined && this.spoiled !== path ? { [this.spoiled]: this.corpus.house[this.spoiled] } : {};
        this.spoiled = path;
        await this.workspace.edit({ ...before, [path]: text });
        for (const document of this.documents()) this.lookAt(document, closely && document.uri.path.endsWith(path));
        formats(text);
        if (cold) await this.compare(path, text);
    }

    private documents(): LangiumDocument[] {
        return this.workspace.shared.workspace.LangiumDocuments.all.toArray().filter(({ uri }) => uri.scheme === 'file');
    }

    private lookAt(document: LangiumDocument, closely: boolean): void {
        const content = readFile(document), { findings } = inspect(content);
        mustStandWithin(findings, this.workspace.shared.workspace.LangiumDocuments);
        if (!closely) return;
        mustStandWithin(inspectClosely(content), this.workspace.shared.workspace.LangiumDocuments);
        for (const room of content.rooms) {
            const { ceiling } = layoutOf(room);
            if (ceiling && takeOffOf(ceiling).pieces.some(piece => !(piece.cutFace > 0 && piece.cutBack > 0))) throw new Broken(`A piece of ${room.name} has no length.`);
        }
        if (content.rooms.length > 0) price(content.rooms, content.job);
    }

    /** The same texts, opened anew, have the same findings. */
    private async compare(path: string, text: string): Promise<void> {
        const fresh = await TestWorkspace.serve({ ...this.corpus.house, [path]: text }, createServerServices);
        for (const each of new Set([...Object.keys(this.corpus.house), path])) {
            const warm = JSON.stringify(this.workspace.document(each).diagnostics), cold = JSON.stringify(fresh.document(each).diagnostics);
            if (warm !== cold) throw new Broken(`${each} has other findings when it is opened anew:\n${warm}\n${cold}`);
        }
    }
}

/** A formatted text is in its form: formatting it again changes nothing. */
export function formats(text: string): void {
    const once = formatText(text);
    if (once === undefined) return;
    const twice = formatText(once);
    if (twice !== once) throw new Broken(`Formatting is not done with one go:\n${JSON.stringify(once)}\n${JSON.stringify(twice)}`);
}
