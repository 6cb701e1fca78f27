import type { LangiumDocument } from 'langium';
import { faultAt, topOf } from '../findings/fault.ts';
import { compareFindings, type Finding } from '../findings/finding.ts';
import type { FileContent } from '../job/file.ts';
import type { Profile, Room, Stock } from '../job/model.ts';
import { alternatesWithinLimits, withinLimits } from '../job/said-much.ts';
import * as ast from './generated/ast.ts';
import { allowancesOf } from './elaborate/allowances.ts';
import { checkCurrencies, checkRates } from './elaborate/currencies.ts';
import { House } from './elaborate/house.ts';
import { readEachAlternate } from './elaborate/alternates.ts';
import { findingsOf, type Raised } from './elaborate/raised.ts';
import { storeOf } from './elaborate/store.ts';
import { languageFindings } from './findings/collect.ts';

/**
 * All that one file says, as plain data, with what the language found wrong in it. The document has to be linked.
 * As long as nothing the file reaches changes, the answer is the same object; and as long as nothing a shared stock or
 * profile reaches changes, those are the same objects in every answer.
 */
export function readFile(document: LangiumDocument): FileContent {
    const store = storeOf(document);
    return store.content ??= readBehindWall(document);
}

/** Never throws: where reading fails, the file says nothing but that. */
function readBehindWall(document: LangiumDocument): FileContent {
    try {
        return read(document);
    } catch (error) {
        const uri = document.uri.toString(), house = new House(document);
        return {
            uri, job: house.noJob, rates: house.noRates, stocks: [], profiles: [], rooms: [], alternates: [], allowances: [],
            findings: [faultAt(topOf(uri), error, 'reading this file'), ...languageFindings(document)],
        };
    }
}

function read(document: LangiumDocument): FileContent {
    const root = document.parseResult.value;
    const uri = document.uri.toString();
    const house = new House(document);
    const raised: Raised[] = [];
    const raise = (one: Raised) => { raised.push(one); };
    const file = ast.isFile(root) ? root : undefined;
    const job = house.jobFor(document);
    const stocks: Stock[] = [], profiles: Profile[] = [], rooms: Room[] = [];
    for (const item of file?.items ?? []) {
        if (ast.isLet(item)) house.fileValue(item);
        else if (ast.isJob(item)) house.job(item);
        else if (ast.isLabor(item)) house.labor(item);
        else if (ast.isBid(item)) house.bid(item);
        else if (ast.isStock(item)) pushIf(stocks, house.stock(item));
        else if (ast.isRoom(item)) {
            const room = house.room(item)!;
            checkCurrencies(room, raise);
            rooms.push(room);
        }
        else if (ast.isProfile(item)) {
            const baseline = house.baseline(item);
            if (!baseline) continue;
            raised.push(...baseline.raised);
            if (baseline.complete) profiles.push(baseline.profile);
        }
    }
    const alternates = alternatesWithinLimits(readEachAlternate(file?.items.filter(ast.isAlternate) ?? [], house, raise));
    const rates = house.ratesFor(document);
    if (file?.items.some(ast.isJob)) checkRates(rates, job, job.currency.at, raise);
    else if (rooms[0] && rates !== house.ratesOfJob(document)) checkRates(rates, job, rooms[0].at, raise);
    const allowances = allowancesOf(document, raise);
    const own = [...storeOf(document).raised, ...raised].filter(one => one.at.uri === uri);
    const findings = together(languageFindings(document), findingsOf(own));
    return { uri, job, rates, stocks, profiles, rooms: withinLimits(rooms), alternates, findings, allowances };
}

/** What reading found is left out where the text of the line is already known to be wrong. */
function together(language: readonly Finding[], reading: readonly Finding[]): Finding[] {
    const syntax = new Set(language.filter(one => one.rule === 'syntax').map(one => one.at.range.start.line));
    return [...language, ...reading.filter(one => !syntax.has(one.at.range.start.line))].sort(compareFindings);
}

function pushIf<T>(list: T[], value: T | undefined): void {
    if (value !== undefined) list.push(value);
}
