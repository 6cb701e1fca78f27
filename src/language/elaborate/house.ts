import { AstUtils, type AstNode, type CstNode, type LangiumDocument } from 'langium';
import type { JobSettings, Profile, Room, Stock } from '../../job/model.ts';
import type { Bid, Labor, Rates } from '../../job/rates.ts';
import * as ast from '../generated/ast.ts';
import { isPlainName } from '../scope/expected.ts';
import type { Vocabulary } from '../scope/vocabulary.ts';
import { sourceOf } from '../types/place.ts';
import { builtinDocument } from '../workspace/builtin.ts';
import { jobOf, servicesOf } from '../workspace/services-of.ts';
import { Block, type Word } from './block.ts';
import { Evaluator, type Arguments, type Elsewhere } from './evaluate.ts';
import { changedProfile, instanceOf, type Family, type Instance, type Profiles } from './instance.ts';
import { readJob } from './job.ts';
import { Progress } from './progress.ts';
import { shownAtUser, type Raise } from './raised.ts';
import { ratesTogether, readBid, readLabor } from './rates.ts';
import { Reading, type Reader } from './reading.ts';
import { readRoom } from './room.ts';
import { readStock } from './stock.ts';
import { storeOf, type Store } from './store.ts';
import type { Known } from './value.ts';
import { atKey } from '../../plain/at-key.ts';

/**
 * One reading of a document and of what it reaches: shared things are worked out when somebody asks, once, and kept in the
 * stores of the documents they stand in.
 */
export class House implements Elsewhere, Reader, Profiles {
    /** What is being worked out in this reading. */
    readonly progress = new Progress();
    readonly vocabulary: Vocabulary;
    readonly builtin: Evaluator;
    private readonly library: LangiumDocument;
    private readonly lost = new Map<LangiumDocument, readonly CstNode[]>();
    private readonly stores = new Map<AstNode, Store | undefined>();

    constructor(document: LangiumDocument) {
        const services = servicesOf(document);
        this.vocabulary = services.vocabulary;
        this.library = builtinDocument(services.shared);
        this.builtin = new Evaluator(this, raised => storeOf(this.library).raised.push(raised));
    }

    /** Whether a name within some words of a document leads nowhere. */
    hasLostName(document: LangiumDocument, { offset, end }: CstNode): boolean {
        const lost = atKey(this.lost, document, () => document.references
            .flatMap(({ error, $refNode: words }) => error && words && !this.isPlain(words.astNode) ? [words] : []).sort((a, b) => a.offset - b.offset));
        let from = 0, to = lost.length;
        while (from < to) {
            const middle = (from + to) >> 1;
            if (lost[middle]!.offset < offset) from = middle + 1;
            else to = middle;
        }
        const next = lost[from];
        return next !== undefined && next.end <= end;
    }

    /** A name that means nothing but itself, such as the line after `until`: nobody has to find it. */
    private isPlain(node: AstNode): boolean {
        return ast.isRef(node) && isPlainName(node, this.vocabulary);
    }

    store(node: AstNode): Store | undefined {
        const root = AstUtils.findRootNode(node);
        if (!this.stores.has(root)) this.stores.set(root, root.$document && storeOf(root.$document));
        return this.stores.get(root);
    }

    /** A `let` of a file. */
    fileValue(declaration: ast.Let): Known | undefined {
        const store = this.store(declaration);
        if (!store) return undefined;
        return new Evaluator(this, raised => store.raised.push(raised), undefined, store.values).value(declaration);
    }

    stock(declaration: ast.Stock): Stock | undefined {
        const store = this.store(declaration);
        if (!store) return undefined;
        if (!store.stocks.has(declaration)) {
            const raise: Raise = raised => store.raised.push(raised);
            const stock = this.progress.guarded(declaration, raise, () => readStock(declaration, this, raise));
            if (this.progress.isWorkingOn(declaration)) return undefined;
            store.stocks.set(declaration, stock);
        }
        return store.stocks.get(declaration);
    }

    /** The profile that a name with its arguments stands for. What it raises because of them is shown at the name. */
    profile(ref: ast.Ref, declaration: ast.Profile, given: Arguments, raise: Raise): Profile | undefined {
        const instance = this.progress.guarded(declaration, raise, () => instanceOf(this, declaration, given), ref);
        if (!instance) return undefined;
        const { baseline } = this.family(declaration);
        if (instance !== baseline) for (const one of shownAtUser(instance.raised, baseline?.raised ?? [], sourceOf(ref))) raise(one);
        return instance.complete ? instance.profile : undefined;
    }

    /** A profile with its own defaults; parameters without one are unknown in it. */
    baseline(declaration: ast.Profile): Instance | undefined {
        const raised: Raise = one => this.store(declaration)?.raised.push(one);
        return this.progress.guarded(declaration, raised, () => instanceOf(this, declaration, new Map()));
    }

    /** The profile that a name stands for, with something in it said otherwise where it is used. */
    changedProfile(profile: Profile, changes: readonly Word[], raise: Raise): Profile {
        const changed = changedProfile(this, profile, changes);
        if (!changed) return profile;
        for (const one of shownAtUser(changed.raised, [], sourceOf(changes[0]!.line))) raise(one);
        return changed.profile;
    }

    family(declaration: ast.Profile): Family {
        const store = this.store(declaration);
        return store ? atKey(store.profiles, declaration, () => ({ varied: [] })) : { varied: [] };
    }

    job(declaration: ast.Job): JobSettings {
        const store = this.store(declaration);
        let job = store?.jobs.get(declaration);
        if (!job) {
            job = readJob(this.reading('Job', declaration.body, raised => store?.raised.push(raised), declaration.title ?? ''), declaration);
            store?.jobs.set(declaration, job);
        }
        return job;
    }

    /** A room of this or another file, under the job and the rates that hold there. */
    room(declaration: ast.Room): Room | undefined {
        const store = this.store(declaration), document = AstUtils.findRootNode(declaration).$document;
        if (!store || !document) return undefined;
        return atKey(store.rooms, declaration, () =>
            readRoom(declaration, { job: this.jobFor(document), rates: this.ratesFor(document) }, this, raised => store.raised.push(raised)));
    }

    /** A room that another one waits for. A chain of them that is too long to follow, or a ring that nobody told before, is raised. */
    roomBefore(declaration: ast.Room, user: ast.Expr): Room | undefined {
        const store = this.store(declaration);
        return store?.rooms.get(declaration) ?? this.progress.guarded(declaration, raised => store?.raised.push(raised), () => this.room(declaration), user);
    }

    /** The settings of the nearest job, or the built-in defaults. */
    jobFor(document: LangiumDocument): JobSettings {
        const job = jobOf(document);
        return job ? this.job(job) : this.noJob;
    }

    /** The settings where there is no job. */
    get noJob(): JobSettings {
        return readJob(this.reading('Job', undefined, () => { /* defaults hold */ }, ''), undefined);
    }

    /** The rates that hold for a document: what the nearest folder says, and for the rest what those above it say. */
    ratesFor(document: LangiumDocument): Rates {
        const { Jobs } = servicesOf(document).shared.workspace;
        return ratesTogether(Jobs.labor(document).map(one => this.labor(one)), Jobs.bids(document).map(one => this.bid(one)), this.noRates);
    }

    /** The rates that hold where the job of a document is said. */
    ratesOfJob(document: LangiumDocument): Rates | undefined {
        const job = jobOf(document);
        const home = job && AstUtils.findRootNode(job).$document;
        return home && this.ratesFor(home);
    }

    labor(declaration: ast.Labor): Labor {
        const store = this.store(declaration)!;
        return atKey(store.labor, declaration, () =>
            readLabor(this.reading('Labor', declaration.body, raised => store.raised.push(raised), 'labor'), declaration, this.dayAbove(declaration)));
    }

    /** The working day that holds for a `labor` which says none: that of the nearest one above it that does. */
    private dayAbove(declaration: ast.Labor): Labor['day'] | undefined {
        const document = AstUtils.findRootNode(declaration).$document;
        const all = document ? servicesOf(document).shared.workspace.Jobs.labor(document) : [];
        return all.slice(all.indexOf(declaration) + 1).map(far => this.labor(far).day).find(day => day.said);
    }

    bid(declaration: ast.Bid): Bid {
        const store = this.store(declaration)!;
        return atKey(store.bids, declaration, () => readBid(this.reading('Bid', declaration.body, raised => store.raised.push(raised), 'bid'), declaration));
    }

    /** Where nobody says any rates there are still the declared defaults. */
    get noRates(): Rates {
        const store = storeOf(this.library), silent: Raise = () => { /* nothing is said */ };
        return store.noRates ??= { labor: readLabor(this.reading('Labor', undefined, silent, ''), undefined), bid: readBid(this.reading('Bid', undefined, silent, ''), undefined) };
    }

    /** A declaration's block, read by itself. */
    reading(kind: string, body: ast.Body | undefined, raise: Raise, owner: string): Reading {
        const block = new Block(this.vocabulary.kind(kind)!, this.vocabulary).add(body);
        return new Reading(block, new Evaluator(this, raise), this.builtin, owner);
    }
}
